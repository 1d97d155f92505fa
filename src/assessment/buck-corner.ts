import { loadOpeningDetails } from '../assembly/opening-details.ts';
import { cornerTemperatureFactor } from '../calculators/buck/corner-temperature.ts';
import { memberNamed } from '../calculators/buck/wood-table.ts';
import {
  type RequiredTemperatureFactor,
  requiredTemperatureFactor,
} from '../calculators/moisture/surface-mould.ts';
import { rUsFromSi } from '../calculators/moisture/units.ts';
import type { AnswerContext } from './answer-context.ts';
import { yearConditions } from './moisture-part.ts';
import type { Support } from './support.ts';
import { LINING } from './wall-layers.ts';

/** The year as the mould check reads it; null when the months of the site are not known. */
export function cornerNeed(
  context: AnswerContext,
):
  | (RequiredTemperatureFactor & { readonly months: readonly { inside_c: number; outside_c: number }[] })
  | null {
  const year = yearConditions(context);
  if (!year) return null;
  const months = year.outside_temp_c.map((outside_temp_c, i) => ({
    inside_temp_c: year.inside_temp_c[i] ?? Number.NaN,
    inside_pa: year.inside_pa[i] ?? Number.NaN,
    outside_temp_c,
  }));
  return {
    ...requiredTemperatureFactor(months, context.tables.moisture.surface_mould.critical_rh),
    months: months.map((m) => ({ inside_c: m.inside_temp_c, outside_c: m.outside_temp_c })),
  };
}

/** Temperature factor that keeps mould away in the critical month; 0 where no month asks for one. */
export function requiredCornerFactor(context: AnswerContext): number | null {
  const need = cornerNeed(context);
  return need && Math.max(0, need.required ?? 0);
}

export type BuckCornerEstimate =
  | { readonly factor: number; readonly not_estimated: null }
  | { readonly factor: null; readonly not_estimated: string };

/**
 * Temperature factor estimated for the coldest inside corner at a buck, where the lined reveal meets the window frame;
 * for metal, where the estimate doesn't hold, the reason why there is none.
 *
 * The estimate is a fin of wood that only the room warms and only its outer end cools. A steel stud or bracket beside
 * the wood carries heat past it sideways, in three dimensions; leaving that out would call the corner warmer than it
 * is, and no simple formula bounds it.
 *
 * A frame that reaches back behind the insulation (no buck, thin board) rests on the framing, with the board outside
 * the wood. Where the buck stands past the insulation into the space of the furring, that part has outdoor air round
 * it and keeps nothing warm: it counts as outdoors.
 */
export function buckCorner(
  { buck, build, sheathing, place }: Support,
  { brief, tables }: AnswerContext,
): BuckCornerEstimate {
  if (buck.support === 'steel-bracket') {
    return {
      factor: null,
      not_estimated:
        'Not estimated: steel brackets carry heat past the wood at points, which only a calculation in three dimensions (ISO 10211) shows; take the corner as colder than a wood buck’s.',
    };
  }
  if (brief.framing.material !== 'wood') {
    return {
      factor: null,
      not_estimated:
        'Not estimated: steel studs beside the opening carry heat past the buck, and no simple formula bounds it; ask for a two-dimensional calculation (ISO 10211), with a thermal break between buck and stud.',
    };
  }
  const { films, wood_r_per_in } = tables.thermal;
  const frame_in = loadOpeningDetails().frame_inside_flange_in.value;
  const out_in = build.thickness_in + place.beyond_insulation_in;
  const wall_in = out_in + sheathing.thickness_in + brief.framing.depth_in;
  const inFraming_in = Math.max(0, frame_in - out_in);
  const hasBuck = buck.support !== 'flange-over-insulation';
  return {
    factor: cornerTemperatureFactor({
      buck_thickness_in: buck.member
        ? Math.min(memberNamed(buck.member.nominal, tables.openings.wood).thickness_in, STUD_IN)
        : STUD_IN,
      covered_in: hasBuck ? Math.max(0, frame_in - place.beyond_insulation_in) : inFraming_in,
      reveal_in: Math.max(0, wall_in - frame_in),
      wood_r_per_in: wood_r_per_in.value,
      lining_r: LINING.r,
      outside_r: films.outside_winter_r.value + (hasBuck ? 0 : build.r),
      inside_film_r: rUsFromSi(tables.moisture.surface_mould.rsi_m2kw),
    }),
    not_estimated: null,
  };
}

/** A trimmer stud, where no buck lines the opening. */
const STUD_IN = 1.5;
