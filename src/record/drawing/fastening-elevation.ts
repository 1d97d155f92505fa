import type { RankedAssembly } from '../../advice/advice-schema.ts';
import type { ScheduleStep, ScheduleZone } from '../../assessment/schedule/schedule-schema.ts';
import type { Point } from './svg-parts.ts';

export type FastenerMark = 'dot' | 'ring' | 'cross';

/** A stretch of wall seen from outside with its fasteners, in drawing units. The corner of the house is on the left. */
export type FasteningElevation = {
  readonly width: number;
  readonly height: number;
  /** Drawing units to an inch. */
  readonly scale: number;
  readonly wall: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  /** Where the corner zone ends. */
  readonly corner_end: number;
  readonly studs: readonly number[];
  /** Outlines of the outermost boards, joints offset from row to row. */
  readonly boards: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
  readonly lines: readonly {
    readonly step: ScheduleStep;
    readonly mark: FastenerMark;
    readonly points: readonly Point[];
  }[];
};

/** Field that is shown beside the corner zone. */
const FIELD_IN = 64;
const WIDEST_CORNER_IN = 144;
const HEIGHT_IN = 52;
const DRAWN_WIDTH = 600;
const LEFT = 46;
const TOP = 36;
const BELOW = 70;
const BOARD_HEIGHT_IN = 48;
const BOARD_WIDTH_IN = 96;
/** First fastener from the lower edge. */
const FROM_EDGE_IN = 3;
const MOST_LINES = 3;
const MARKS: readonly FastenerMark[] = ['dot', 'ring', 'cross'];

/**
 * Fasteners of the lines that are spaced over the wall (boards, what carries, what hangs on it), to scale.
 *
 * @returns null when nothing is spaced
 */
export function fasteningElevation(wall: RankedAssembly): FasteningElevation | null {
  const { steps, corner_zone } = wall.fastening_schedule;
  const spaced = steps
    .filter((step) => step.does !== 'joins' && step.zones.some(isSpaced) && !isBuck(step))
    // What carries first: it is what somebody measures on site.
    .sort((a, b) => Number(b.does === 'carries') - Number(a.does === 'carries'))
    .slice(0, MOST_LINES);
  if (spaced.length === 0) return null;
  const stud_in = wall.fastening.stud_spacing_in;
  const corner_in = Math.min(WIDEST_CORNER_IN, Math.max(stud_in, corner_zone.corner_width_ft * 12));
  const wall_in = corner_in + FIELD_IN;
  const scale = DRAWN_WIDTH / wall_in;
  const x = (inch: number) => LEFT + inch * scale;
  const y = (inch: number) => TOP + (HEIGHT_IN - inch) * scale;
  const studs = range(0.75, wall_in, stud_in);
  return {
    width: x(wall_in) + 14,
    height: y(0) + BELOW,
    scale,
    wall: { left: x(0), right: x(wall_in), top: y(HEIGHT_IN), bottom: y(0) },
    corner_end: x(corner_in),
    studs: studs.map(x),
    boards: boards(x, y, wall_in),
    lines: spaced.map((step, i) => ({
      step,
      mark: MARKS[i] ?? 'dot',
      points: pointsOf(step, { studs, stud_in, corner_in, shift: i }).map((point) => ({
        x: x(point.x),
        y: y(point.y),
      })),
    })),
  };
}

function isSpaced({ spacing_along_in }: ScheduleZone): boolean {
  return spacing_along_in !== null;
}

function isBuck({ fixes }: ScheduleStep): boolean {
  return /\bbuck\b/.test(fixes);
}

type Field = {
  readonly studs: readonly number[];
  readonly stud_in: number;
  readonly corner_in: number;
  readonly shift: number;
};

function pointsOf(step: ScheduleStep, { studs, stud_in, corner_in, shift }: Field): Point[] {
  return studs.flatMap((stud, i) => {
    const isCorner = stud <= corner_in;
    const zone = step.zones.find((one) => one.zone === (isCorner ? 'corner' : 'field'));
    const along = zone?.spacing_along_in ?? null;
    if (along === null || along <= 0) return [];
    // A line on every second stud: its spacing across is twice that of the studs.
    const everyNth = Math.max(1, Math.round((zone?.spacing_across_in ?? stud_in) / stud_in));
    if (i % everyNth !== 0) return [];
    return range(FROM_EDGE_IN + shift * 1.5, HEIGHT_IN, along).map((up) => ({
      x: stud + shift * 1.2,
      y: up,
    }));
  });
}

function boards(
  x: (inch: number) => number,
  y: (inch: number) => number,
  wall_in: number,
): FasteningElevation['boards'] {
  return range(0, HEIGHT_IN, BOARD_HEIGHT_IN).flatMap((from, row) => {
    const starts = range(row % 2 === 0 ? 0 : -BOARD_WIDTH_IN / 2, wall_in, BOARD_WIDTH_IN);
    const upTo = Math.min(HEIGHT_IN, from + BOARD_HEIGHT_IN);
    return starts.map((start) => {
      const [a, b] = [Math.max(0, start), Math.min(wall_in, start + BOARD_WIDTH_IN)];
      return { x: x(a), y: y(upTo), width: x(b) - x(a), height: y(from) - y(upTo) };
    });
  });
}

function range(from: number, below: number, step: number): number[] {
  return Array.from(
    { length: Math.max(0, Math.ceil((below - from) / step - 1e-9)) },
    (_, i) => from + i * step,
  );
}
