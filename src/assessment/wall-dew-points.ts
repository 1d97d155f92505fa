import type { Candidate } from '../assembly/candidates.ts';
import { moistureProfile } from '../calculators/moisture/moisture-profile.ts';
import type { YearConditions } from '../calculators/moisture/monthly-condensation.ts';
import { sdFromPerm } from '../calculators/moisture/permeance.ts';
import { dewPoint } from '../calculators/moisture/psychrometrics.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius, rSiFromUs } from '../calculators/moisture/units.ts';
import type { ResistanceLayer } from '../calculators/thermal/temperature-profile.ts';
import type { AnswerContext } from './answer-context.ts';
import type { WallLayer } from './wall-layers.ts';
import { waterLayers, wetWall } from './wall-water.ts';

/** Vapour pressures on both sides of a wall in one month, Pa. */
export type Vapour = { readonly inside_pa: number; readonly outside_pa: number };

/** Those of the monthly method; null when the humidity of the months is not known. */
export function vapourOf(index: number, year: YearConditions | null): Vapour | null {
  const inside_pa = year?.inside_pa[index];
  const outside_pa = year?.outside_pa[index];
  return inside_pa === undefined || outside_pa === undefined ? null : { inside_pa, outside_pa };
}

/** Drier air has a dew point below -60 °C, where the formula ends. */
const DRIEST_PA = 1.03;

/** Dew point of a vapour pressure, °F; null for air too dry to have one. */
export function dewPointF(pa: number): number | null {
  return pa < DRIEST_PA ? null : fahrenheitFromCelsius(dewPoint(pa));
}

/**
 * Dew point at each plane of a temperature profile, °F: room face, outer face of each layer, outdoor air.
 *
 * @param layers   of the wall, inside to outside
 * @param settled  the same with both films before and after, with the resistances that the profile was drawn with
 * @returns        null when the retarder is not known
 *
 * Source: ISO 13788:2012, clause 6: vapour line with tangents.
 */
export function planeDewPoints(
  candidate: Candidate,
  layers: readonly WallLayer[],
  settled: readonly ResistanceLayer[],
  air: Vapour & { readonly indoor_temp_f: number; readonly outdoor_temp_f: number },
  context: AnswerContext,
): (number | null)[] | null {
  const { retarder } = candidate.inside;
  if (!retarder) return null;
  const points = moistureProfile(
    {
      r_m2kw: settled.slice(1, -1).map((layer) => rSiFromUs(layer.r)),
      sd_m: vapourResistances(layers, wetWall(candidate, retarder), context),
      rsi_m2kw: rSiFromUs(settled[0]?.r ?? 0),
      rse_m2kw: rSiFromUs(settled.at(-1)?.r ?? 0),
    },
    {
      inside_temp_c: celsiusFromFahrenheit(air.indoor_temp_f),
      inside_pa: air.inside_pa,
      outside_temp_c: celsiusFromFahrenheit(air.outdoor_temp_f),
      outside_pa: air.outside_pa,
    },
  );
  const inF = points.map(({ dew_point_c }) =>
    dew_point_c === null ? null : fahrenheitFromCelsius(dew_point_c),
  );
  return [...inF, dewPointF(air.outside_pa)];
}

/** sd of each layer, m; none for layers that the monthly method leaves out. */
function vapourResistances(
  layers: readonly WallLayer[],
  wall: ReturnType<typeof wetWall>,
  context: AnswerContext,
): number[] {
  const perms = new Map(waterLayers(wall, context).map(({ role, perm }) => [role, perm]));
  return layers.map(({ role, thickness_in }) => {
    const perm = perms.get(role);
    if (perm === undefined) return 0;
    // The boards of one build are alike: each takes its share of the whole.
    return sdFromPerm(perm) * (role === 'insulation' ? thickness_in / wall.build.thickness_in : 1);
  });
}
