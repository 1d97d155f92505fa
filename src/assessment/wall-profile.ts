import type { Candidate } from '../assembly/candidates.ts';
import { fahrenheitFromCelsius } from '../calculators/moisture/units.ts';
import { woodFramingR } from '../calculators/thermal/framing-fraction.ts';
import { type WinterLayer, winterProfile } from '../calculators/thermal/temperature-dependence.ts';
import {
  type Interface,
  type ResistanceLayer,
  temperatureProfile,
} from '../calculators/thermal/temperature-profile.ts';
import { INSIDE_FILM, OUTSIDE_FILM } from '../calculators/thermal/thermal-paths.ts';
import type { TemperatureCurve } from '../calculators/thermal/thermal-table.ts';
import type { OutdoorMonth } from '../site/site.ts';
import type { AnswerContext } from './answer-context.ts';
import { yearConditions } from './moisture-part.ts';
import { dewPointF, planeDewPoints, vapourOf } from './wall-dew-points.ts';
import { type WallLayer, wallLayers } from './wall-layers.ts';

/** The outer face of a layer. */
export type ProfilePlane = {
  /** Label of the layer passed. */
  readonly after: string;
  readonly role: WallLayer['role'] | 'film';
  readonly temp_f: number;
  /** Of the vapour at this plane; null where humidity or retarder are not known. */
  readonly dew_point_f: number | null;
};

export type SeasonProfile = {
  readonly season: 'winter' | 'summer';
  /** The coldest or the warmest month of the site, 1 to 12. */
  readonly month: number;
  readonly indoor_temp_f: number;
  readonly outdoor_temp_f: number;
  readonly indoor_dew_point_f: number | null;
  readonly outdoor_dew_point_f: number | null;
  /** Of the exterior insulation as taken on the cavity path, h·ft²·°F/Btu. */
  readonly insulation_r: number;
  /** Whether some board is colder than its resistance was measured at. */
  readonly is_beyond_measurements: boolean;
  /** Through the cavity insulation, inside to outside; the last plane is the outdoor air. */
  readonly cavity: readonly ProfilePlane[];
  /** Through a stud; null for steel studs. */
  readonly stud: readonly Interface[] | null;
};

/** Winter and summer; null without the months of the site. */
export type WallProfile = {
  readonly winter: SeasonProfile;
  readonly summer: SeasonProfile;
} | null;

/**
 * Temperature and dew point through one wall in the coldest and in the warmest month of its site, steady state, by
 * monthly mean air temperatures.
 *
 * In winter each board is taken at its own temperature where measurements exist, gains included; the code U-factor and
 * the sheathing check do otherwise (rated value; losses alone). Vapour pressures are those of the monthly method.
 *
 * Source: series resistances; vapour line with tangents as in ISO 13788:2012, clause 6.
 */
export function wallProfile(candidate: Candidate, context: AnswerContext): WallProfile {
  const months = context.site.climate?.monthly;
  const coldest = extreme(months ?? [], (a, b) => a.temp_c < b.temp_c);
  const warmest = extreme(months ?? [], (a, b) => a.temp_c > b.temp_c);
  if (!coldest || !warmest) return null;
  const { indoor_winter, indoor_summer } = context.tables.moisture;
  const { outside_winter_r, outside_summer_r } = context.tables.thermal.films;
  const curve = curveOf(candidate, context);
  return {
    winter: season(
      'winter',
      coldest,
      indoor_winter.temp_f,
      outside_winter_r.value,
      curve,
      candidate,
      context,
    ),
    summer: season('summer', warmest, indoor_summer.temp_f, outside_summer_r.value, null, candidate, context),
  };
}

/** What was measured of the exterior insulation at other temperatures than the rating's; null where nothing is known. */
export function curveOf({ build }: Candidate, { tables }: AnswerContext): TemperatureCurve | null {
  return tables.thermal.temperature_curves.find((c) => c.insulation === build.insulation.id) ?? null;
}

type DatedMonth = { readonly index: number; readonly month: OutdoorMonth };

function extreme(
  months: readonly OutdoorMonth[],
  goesBefore: (a: OutdoorMonth, b: OutdoorMonth) => boolean,
): DatedMonth | null {
  let found: DatedMonth | null = null;
  for (const [index, month] of months.entries()) {
    if (!found || goesBefore(month, found.month)) found = { index, month };
  }
  return found;
}

function season(
  name: SeasonProfile['season'],
  { index, month }: DatedMonth,
  indoor_temp_f: number,
  film_outside_r: number,
  curve: TemperatureCurve | null,
  candidate: Candidate,
  context: AnswerContext,
): SeasonProfile {
  const outdoor_temp_f = fahrenheitFromCelsius(month.temp_c);
  const { framed, brief, tables } = context;
  const layers = wallLayers(candidate, {
    depth_in: brief.framing.depth_in,
    cavity_r: framed.cavity_r,
    label: framed.label,
  });
  const path = (framing?: ResistanceLayer): WinterLayer[] => [
    { label: INSIDE_FILM, r: tables.thermal.films.inside_vertical_r.value },
    ...layers.map((layer) => {
      if (layer.role === 'framing' && framing) return framing;
      const plain = { label: layer.label, r: layer.r };
      return layer.role === 'insulation' && curve ? { ...plain, curve } : plain;
    }),
    { label: OUTSIDE_FILM, r: film_outside_r },
  ];
  const through = (given: readonly WinterLayer[]) =>
    curve
      ? winterProfile(given, indoor_temp_f, outdoor_temp_f, true)
      : {
          layers: given,
          interfaces: temperatureProfile(given, indoor_temp_f, outdoor_temp_f),
          beyond_measurements: [],
        };
  const cavity = through(path());
  const vapour = vapourOf(index, yearConditions(context));
  const dewPoints = vapour
    ? planeDewPoints(candidate, layers, cavity.layers, { indoor_temp_f, outdoor_temp_f, ...vapour }, context)
    : null;
  return {
    season: name,
    month: month.month,
    indoor_temp_f,
    outdoor_temp_f,
    indoor_dew_point_f: vapour ? dewPointF(vapour.inside_pa) : null,
    outdoor_dew_point_f: vapour ? dewPointF(vapour.outside_pa) : null,
    insulation_r: cavity.layers.reduce(
      (sum, layer, i) => (layers[i - 1]?.role === 'insulation' ? sum + layer.r : sum),
      0,
    ),
    is_beyond_measurements: cavity.beyond_measurements.length > 0,
    cavity: cavity.interfaces.map((plane, i) => ({
      after: plane.after,
      role: layers[i - 1]?.role ?? 'film',
      temp_f: plane.temp_f,
      dew_point_f: dewPoints?.[i] ?? null,
    })),
    stud:
      brief.framing.material === 'wood'
        ? through(path(woodStud(context))).interfaces.map(({ after, temp_f }) => ({ after, temp_f }))
        : null,
  };
}

function woodStud({ tables, brief }: AnswerContext): ResistanceLayer {
  const { depth_in } = brief.framing;
  return { label: `wood stud ${depth_in} in. deep`, r: woodFramingR(tables.thermal, depth_in) };
}
