import { wetServiceFactor } from '../connections/adjustment-factors.ts';
import { combinedScrewUse } from '../connections/combined.ts';
import { withdrawalReference_lb_per_in } from '../connections/withdrawal.ts';
import { unitArea_ft2 } from '../window-weight.ts';
import {
  ASSUMED,
  type BuckContext,
  type BuckOption,
  type BuckScrew,
  type BuckStrength,
  type BuckWindow,
  NO_UTILISATION,
} from './buck-types.ts';
import { lengthShortfall, minimumScrewLength_in, percent } from './check-parts.ts';
import { faceForces } from './face-statics.ts';
import { flangeScrewLateral_lb } from './flange-screw.ts';
import { DEAD, DEAD_AND_WIND, screwStiffness_lb_per_in } from './screw-capacity.ts';
import { frameLayout } from './screw-layout.ts';
import type { WoodTable } from './wood-table.ts';

/** Height of a flange against the board, over which its screws stand in the middle, in. */
const FLANGE_IN = 1.5;

/**
 * Strength of a window held by its flange over bare board: screws through flange, board and sheathing into the
 * framing. Board and sheathing are a gap; nothing but the screws is counted, neither friction nor a block under the
 * unit.
 *
 * Not in it: the flange itself and the screw heads in its slots, for which the window maker's rating stands.
 *
 * @throws Refusal outside the ranges of the connection formulas
 *
 * Source: statics as for a frame on the face (own derivation); {@link flangeScrewLateral_lb}; NDS-2018 12.2.2 and
 * 12.4.1.
 */
export function checkFlange(
  option: BuckOption,
  screw: BuckScrew,
  spacing_in: number,
  window: BuckWindow,
  context: BuckContext & { readonly framing_gravity: number },
  table: WoodTable,
): BuckStrength {
  const { statics, serviceability } = table;
  const gap_in = context.projection_in + (context.gap_in ?? ASSUMED.gap_in);
  const layout = frameLayout(
    window.width_in,
    window.height_in,
    spacing_in,
    FLANGE_IN,
    statics.first_screw_from_corner_in,
  );
  const min_screw_length_in = minimumScrewLength_in(0, gap_in, screw, table);
  const fixed = {
    screws_per_side: layout.per_jamb,
    min_screw_length_in,
    screw_count: `Screws: ${layout.per_jamb} in each jamb flange, ${layout.per_sill} in the sill flange and ${layout.per_sill} in the head flange, through the board into solid framing.`,
  };
  const short = lengthShortfall(screw, min_screw_length_in);
  if (short) return { ...fixed, utilisation: NO_UTILISATION, failures: [short], sag_in: null, notes: [] };

  const penetration_in = Math.min(screw.length_in - gap_in, context.framing_depth_in);
  const wet = context.wet_service ?? false;
  const lateral_lb = flangeScrewLateral_lb(screw, gap_in, penetration_in, context.framing_gravity, wet);
  const withdrawal_lb =
    withdrawalReference_lb_per_in('wood-screw', screw.diameter_in, context.framing_gravity) *
    Math.min(penetration_in, option.thread_length_in ?? ASSUMED.thread_length_in) *
    (wet ? wetServiceFactor('withdrawal', 'wood-screw') : 1);
  const forces = faceForces({
    weight_lb: window.weight_lb,
    eccentricity_in: gap_in,
    suction_lb: Math.abs(context.outward_wind_psf) * unitArea_ft2(window.width_in, window.height_in),
    rows: layout.rows,
    suction_screws: layout.total,
    contact_in: statics.face_contact_strip_in,
  });
  const use = (tension_lb: number, duration: number) =>
    combinedScrewUse(forces.shear_lb, tension_lb, lateral_lb * duration, withdrawal_lb * duration);
  const gravity = use(forces.gravity_tension_lb, DEAD);
  const wind = forces.wind_tension_lb / (withdrawal_lb * DEAD_AND_WIND);
  const combined = use(forces.gravity_tension_lb + forces.wind_tension_lb, DEAD_AND_WIND);
  return {
    ...fixed,
    utilisation: { gravity, wind, combined, bearing: null },
    failures: flangeFailures(gravity, wind, combined),
    sag_in:
      (serviceability.creep_factor * forces.shear_lb) /
      screwStiffness_lb_per_in(screw, gap_in, serviceability.slip_lb_per_in_1_5, 'free'),
    notes: [
      `Counted as screws that stand ${Number(gap_in.toFixed(3))} in. free out of the framing, through board and sheathing: neither friction on the board nor a block under the unit is counted.`,
      'The flange itself and the screw heads in its slots are not in it: the window maker’s rating and consent decide.',
    ],
  };
}

function flangeFailures(gravity: number, wind: number, combined: number): string[] {
  if (gravity > 1) {
    return [
      `The weight uses the screws through the board to ${percent(gravity)}: put them closer, use thicker ones, or give the window a buck.`,
    ];
  }
  if (wind > 1) {
    return [
      `Suction uses the flange screws to ${percent(wind)}: put them closer or drive longer threads into the framing.`,
    ];
  }
  return combined > 1
    ? [`Weight and suction together use the flange screws to ${percent(combined)}: put them closer.`]
    : [];
}
