import { LOAD_DURATION } from '../connections/adjustment-factors.ts';
import { combinedNailUse, combinedScrewUse } from '../connections/combined.ts';
import { lateralReference } from '../connections/lateral.ts';
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

/** What one fastener carries and what holds it, lb. */
type Held = {
  readonly fastener: FastenerData;
  readonly gravity_load_lb: number;
  readonly wind_load_lb: number;
  /** Of {@link lateralAcrossGap_lb}. */
  readonly lateral_reference_lb: number;
  /** The lesser of withdrawal and head pull-through, already at the load duration of wind. */
  readonly wind_capacity_lb: number;
};

/**
 * Use of one fastener through insulation under weight and outward wind at once (1 is the limit).
 *
 * Strength against strength: both values are those of the timber standard, at the load duration of the shortest load
 * (1.6 with wind). The limit of slow sag behind the code table (`gapCapacityWood_lb`, yield load over 3.0) is another
 * thing: it holds for the weight alone, has no load duration, and is never put into this sum.
 *
 * Source: NDS-2018 12.4.1 (lag and wood screws) and 12.4.2 (nails), section numbers and equations from memory; load
 * duration of NDS-2018 Table 2.3.2.
 */
export function combinedUse(held: Held): CombinedUse {
  const { fastener, gravity_load_lb, wind_load_lb, lateral_reference_lb, wind_capacity_lb } = held;
  const together = fastener.kind === 'smooth-nail' ? combinedNailUse : combinedScrewUse;
  return {
    lateral_reference_lb,
    weight_alone: gravity_load_lb / (lateral_reference_lb * LOAD_DURATION.permanent),
    weight_and_wind: together(
      gravity_load_lb,
      wind_load_lb,
      lateral_reference_lb * LOAD_DURATION.wind_or_seismic,
      wind_capacity_lb,
    ),
  };
}

/**
 * Lateral value of one fastener across the gap, lb, before load duration. The insulation counts as an empty gap. The
 * outer member is the furring, or the 3/8 in. of wood that stands for cladding or lath fastened direct.
 *
 * @param gap_in  insulation and any drainage mat
 * @returns null for steel studs and for a fastener that can't hold in wood
 *
 * Source: NDS-2018 12.3.1 with the gap of AWC Technical Report 12 (gap equations from memory).
 */
export function lateralAcrossGap_lb(
  asked: Omit<FasteningCase, 'fastener' | 'fastener_spacing_in'>,
  fastener: FastenerData,
  gap_in: number,
  tables: FasteningTables,
): number | null {
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
    gap_in,
    // Weight runs along upright studs and furring.
    load_to_grain: 'parallel',
  }).reference_lb;
}

function isForWood(
  fastener: FastenerData,
): fastener is FastenerData & { readonly kind: keyof typeof LATERAL_KINDS } {
  return fastener.kind !== 'steel-screw';
}
