import { LOAD_DURATION } from '../connections/adjustment-factors.ts';
import { combinedNailUse, combinedScrewUse } from '../connections/combined.ts';
import { lateralReference } from '../connections/lateral.ts';
import type { Evaluation } from './evaluate-fastening.ts';
import type { FasteningCase } from './fastening-input.ts';
import type { FastenerData, FasteningTables } from './fastening-tables.ts';
import { ruleSide_in } from './gap-rule.ts';

export type CombinedUse = {
  /** Lateral value across the gap before load duration, lb. */
  readonly lateral_reference_lb: number;
  /** Weight alone, load duration 0.9. */
  readonly weight_alone: number;
  /** Weight as shear and outward wind as tension together, load duration 1.6. */
  readonly weight_and_wind: number;
};

/** How the connection calculators name the fasteners that they know a lateral value for. */
const LATERAL_KINDS = {
  'smooth-nail': 'nail',
  'wood-screw': 'wood-screw',
  'lag-screw': 'lag-screw',
} as const;

/**
 * Use of one fastener through insulation under weight and outward wind at once (1 is the limit).
 *
 * A check of strength beside the code table, which limits slow sag and is the stricter of the two for weight. The
 * insulation counts as an empty gap. The outer member is the furring, or the 3/8 in. of wood that stands for
 * cladding or lath fastened direct; tension is held by the lesser of withdrawal and head pull-through.
 *
 * @param e  of the same case, from `evaluateFastening`
 * @returns null for steel studs, for a fastener that can't hold in wood, and wherever the equation behind the code
 *          table gives no figure either (more than 4 in. of gap, 25 psf, wood under specific gravity 0.42)
 *
 * Source: NDS-2018 12.4.1 (screws) and 12.4.2 (nails); lateral value by NDS-2018 12.3.1 with the gap of AWC
 * Technical Report 12 (gap equations from memory); load duration of NDS-2018 Table 2.3.2.
 */
export function combinedUse(
  asked: FasteningCase,
  e: Evaluation,
  tables: FasteningTables,
): CombinedUse | null {
  const lateral_reference_lb = lateralAcrossGap_lb(asked, e, tables);
  if (lateral_reference_lb === null || e.gravity_capacity_lb === null || e.wind.capacity_lb === null)
    return null;
  const together = e.fastener.kind === 'smooth-nail' ? combinedNailUse : combinedScrewUse;
  return {
    lateral_reference_lb,
    weight_alone: e.gravity_load_lb / (lateral_reference_lb * LOAD_DURATION.permanent),
    weight_and_wind: together(
      e.gravity_load_lb,
      e.wind_load_lb,
      lateral_reference_lb * LOAD_DURATION.wind_or_seismic,
      // Already at the load duration of wind.
      e.wind.capacity_lb,
    ),
  };
}

function lateralAcrossGap_lb(asked: FasteningCase, e: Evaluation, tables: FasteningTables): number | null {
  const { fastener } = e;
  if (asked.framing !== 'wood' || !isForWood(fastener)) return null;
  const { bearing_diameter_in: root_diameter_in, bending_yield_psi } = fastener;
  if (root_diameter_in === null || bending_yield_psi === null) return null;
  const furring_in = asked.outboard_thickness_in - asked.mat_thickness_in;
  return lateralReference({
    fastener: LATERAL_KINDS[fastener.kind],
    diameter_in: fastener.diameter_in,
    root_diameter_in,
    bending_yield_psi,
    side: {
      length_in: ruleSide_in(asked.support, furring_in, tables),
      specific_gravity: tables.foam.rule.specific_gravity,
    },
    main: { length_in: fastener.min_penetration_in, specific_gravity: asked.specific_gravity },
    gap_in: e.gap_in,
    // Weight runs along upright studs and furring.
    load_to_grain: 'parallel',
  }).reference_lb;
}

function isForWood(
  fastener: FastenerData,
): fastener is FastenerData & { readonly kind: keyof typeof LATERAL_KINDS } {
  return fastener.kind !== 'steel-screw';
}
