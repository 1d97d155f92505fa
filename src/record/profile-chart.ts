import type { ProfileSeason } from '../advice/wall-physics-schema.ts';
import type { Layer } from './record-document.ts';

/** A point of a curve in drawing units. */
export type Point = { readonly x: number; readonly y: number };

/** Where everything of the chart stands, in drawing units; inside on the left. */
export type ProfileChart = {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Temperature through the cavity insulation, from the indoor to the outdoor air. */
  readonly temperature: readonly Point[];
  /** Null for steel studs. */
  readonly stud: readonly Point[] | null;
  /** Null where it is not known. */
  readonly dewPoint: readonly Point[] | null;
  /** Planes where temperature and dew point meet. */
  readonly meeting: readonly Point[];
  /** Boundaries between layers. */
  readonly boundaries: readonly number[];
  /** Number of each layer over its middle; thin sheets have none. */
  readonly keys: readonly { readonly key: number; readonly x: number }[];
  readonly ticks: readonly { readonly temp_f: number; readonly y: number }[];
};

const WIDTH = 600;
const HEIGHT = 320;
const LEFT = 52;
const RIGHT = 16;
const TOP = 28;
const BOTTOM = 40;
/** Room for the air on either side. */
const AIR = 36;
const NARROWEST_KEY = 14;
const STEPS_F = [5, 10, 20, 40];
/** Closer than this, °F, the two figures are the same but for their rounding. */
const MEETS_F = 0.15;

/**
 * A temperature profile laid out over the thickness of the wall, to scale.
 *
 * @param layers  of the same wall, inside to outside; where they don't match the planes, these are spread evenly
 * @returns       null when there are no planes to draw
 */
export function profileChart(season: ProfileSeason, layers: readonly Layer[]): ProfileChart | null {
  const { cavity, stud, indoor_temp_f, outdoor_temp_f } = season;
  if (cavity.length < 3) return null;
  const from = LEFT + AIR;
  const to = WIDTH - RIGHT - AIR;
  const shares = planeShares(cavity.length, layers);
  const xs = [LEFT, ...shares.map((share) => from + (to - from) * share), WIDTH - RIGHT];
  // The last plane is the outdoor air itself: the outer face of the wall lies where the last layer ends.
  const temps = [indoor_temp_f, ...cavity.map((plane) => plane.temp_f)];
  const dews = dewPoints(season);
  const scale = scaleOf([
    ...temps,
    ...(stud ?? []).map((plane) => plane.temp_f),
    ...(dews ?? []),
    outdoor_temp_f,
  ]);
  const curve = (values: readonly number[]) =>
    values.map((value, i) => ({ x: xs[i] ?? LEFT, y: scale.y(value) }));
  const walls = xs.slice(1, -1);
  return {
    width: WIDTH,
    height: HEIGHT,
    left: LEFT,
    right: WIDTH - RIGHT,
    top: TOP,
    bottom: HEIGHT - BOTTOM,
    temperature: curve(temps),
    stud: stud ? curve([indoor_temp_f, ...stud.map((plane) => plane.temp_f)]) : null,
    dewPoint: dews ? curve(dews) : null,
    meeting: temps.flatMap((temp, i) => {
      const dew = dews?.[i];
      return dew !== undefined && dew >= temp - MEETS_F ? [{ x: xs[i] ?? LEFT, y: scale.y(temp) }] : [];
    }),
    boundaries: walls,
    keys: walls.slice(1).flatMap((x, i) => {
      const before = walls[i] ?? x;
      return x - before >= NARROWEST_KEY ? [{ key: i + 1, x: (before + x) / 2 }] : [];
    }),
    ticks: scale.ticks,
  };
}

/** From the indoor air outward; null unless every plane has one. */
function dewPoints({ cavity, indoor_dew_point_f }: ProfileSeason): number[] | null {
  const values = [indoor_dew_point_f, ...cavity.map((plane) => plane.dew_point_f)];
  const known = values.filter((value) => value !== null);
  return known.length === values.length ? known : null;
}

/** How far through the wall each plane but the outdoor air lies, 0 to 1. */
function planeShares(planes: number, layers: readonly Layer[]): number[] {
  const inWall = planes - 1;
  const total = layers.reduce((sum, layer) => sum + layer.thickness_in, 0);
  if (layers.length !== inWall - 1 || !(total > 0)) {
    return Array.from({ length: inWall }, (_, i) => i / (inWall - 1));
  }
  let passed = 0;
  return [
    0,
    ...layers.map((layer) => {
      passed += layer.thickness_in;
      return passed / total;
    }),
  ];
}

function scaleOf(values: readonly number[]) {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const step = STEPS_F.find((candidate) => (high - low) / candidate <= 7) ?? 40;
  const from = Math.floor(low / step) * step;
  const to = Math.max(Math.ceil(high / step) * step, from + step);
  const y = (temp_f: number) => HEIGHT - BOTTOM - ((temp_f - from) / (to - from)) * (HEIGHT - BOTTOM - TOP);
  const ticks: { temp_f: number; y: number }[] = [];
  for (let at = from; at <= to; at += step) ticks.push({ temp_f: at, y: y(at) });
  return { y, ticks };
}
