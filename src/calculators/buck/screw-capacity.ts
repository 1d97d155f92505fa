import { LOAD_DURATION, wetServiceFactor } from '../connections/adjustment-factors.ts';
import { lateralReference } from '../connections/lateral.ts';
import { pullThroughReference_lb } from '../connections/pull-through.ts';
import { withdrawalReference_lb_per_in } from '../connections/withdrawal.ts';
import type { BuckScrew } from './buck-types.ts';

export type ScrewJoint = {
  readonly screw: BuckScrew;
  readonly member_gravity: number;
  readonly framing_gravity: number;
  /** Bearing length in the buck member, in. */
  readonly side_in: number;
  /** Penetration into the framing, in. */
  readonly penetration_in: number;
  readonly thread_length_in: number;
  readonly head_diameter_in: number;
  readonly gap_in: number;
  readonly wet_service: boolean;
};

/** Reference values of one screw with wet service, before load duration, lb. */
export type ScrewCapacity = {
  readonly lateral_lb: number;
} & ScrewTension;

/** What holds a screw that is pulled, lb, as {@link ScrewCapacity}. */
export type ScrewTension = {
  readonly withdrawal_lb: number;
  readonly pull_through_lb: number;
  /** The lesser of the two. */
  readonly tension_lb: number;
};

/**
 * What one screw between buck and framing carries, lb, for normal load duration.
 *
 * Sources: the connection functions it calls (NDS-2018 chapter 12).
 */
export function screwCapacity(joint: ScrewJoint): ScrewCapacity {
  const { screw } = joint;
  const lateral = lateralReference({
    fastener: 'wood-screw',
    diameter_in: screw.diameter_in,
    root_diameter_in: screw.root_diameter_in,
    bending_yield_psi: screw.bending_yield_psi,
    side: { length_in: joint.side_in, specific_gravity: joint.member_gravity },
    main: { length_in: joint.penetration_in, specific_gravity: joint.framing_gravity },
    gap_in: joint.gap_in,
    load_to_grain: 'perpendicular',
  }).reference_lb;
  return { lateral_lb: lateral * wet(joint, 'lateral'), ...screwTension(joint) };
}

/** {@link screwCapacity} of a screw that is only pulled. Sources: NDS-2018 12.2.2 and 12.2.5. */
export function screwTension(joint: Omit<ScrewJoint, 'gap_in'>): ScrewTension {
  const { screw } = joint;
  const withdrawal_lb =
    withdrawalReference_lb_per_in('wood-screw', screw.diameter_in, joint.framing_gravity) *
    Math.min(joint.penetration_in, joint.thread_length_in) *
    wet(joint, 'withdrawal');
  const pull_through_lb =
    pullThroughReference_lb(joint.head_diameter_in, joint.side_in, joint.member_gravity) *
    wet(joint, 'pull-through');
  return { withdrawal_lb, pull_through_lb, tension_lb: Math.min(withdrawal_lb, pull_through_lb) };
}

function wet(
  { wet_service }: Pick<ScrewJoint, 'wet_service'>,
  check: 'lateral' | 'withdrawal' | 'pull-through',
): number {
  return wet_service ? wetServiceFactor(check, 'wood-screw') : 1;
}

export const DEAD = LOAD_DURATION.permanent;
export const DEAD_AND_WIND = LOAD_DURATION.wind_or_seismic;

const STEEL_E_PSI = 29_000_000;

/**
 * Shear stiffness of one screw, lb/in.: slip in the wood, and bending of the screw across a gap, in series. Its head is
 * held from turning in a wood member, free in a flange.
 *
 * Source: NDS-2018 11.3.6 slip modulus (180,000 D^1.5 for dowels in wood, from memory); beam fixed at both ends
 * over the gap, or at the framing alone.
 */
export function screwStiffness_lb_per_in(
  screw: BuckScrew,
  gap_in: number,
  slip_lb_per_in_1_5: number,
  head: 'held' | 'free' = 'held',
): number {
  const slip = slip_lb_per_in_1_5 * screw.diameter_in ** 1.5;
  const inertia = (Math.PI * screw.root_diameter_in ** 4) / 64;
  return 1 / (1 / slip + gap_in ** 3 / ((head === 'held' ? 12 : 3) * STEEL_E_PSI * inertia));
}
