import { pullThroughReference_lb } from '../connections/pull-through.ts';
import { withdrawalReference_lb_per_in } from '../connections/withdrawal.ts';
import { pullOutAllowable_lb } from '../steel-screws.ts';
import type { FasteningCase } from './fastening-input.ts';
import type { FastenerData, FasteningTables } from './fastening-tables.ts';

/** Load duration factor for wind, NDS Table 2.3.2. */
const WIND_DURATION = 1.6;

/** Furring is bought as spruce-pine-fir unless somebody says better; denser studs don't make it denser. */
const FURRING_GRAVITY = 0.42;

export type WindCapacity = {
  /** Withdrawal from wood, or pull-out from steel; null where no method exists. */
  readonly holding_lb: number | null;
  /** Head through wood furring; null where no method exists. */
  readonly pull_through_lb: number | null;
  /** The smaller of what is known; null when the holding isn't known. */
  readonly capacity_lb: number | null;
};

/**
 * What one fastener holds against outward wind, lb, allowable-stress level.
 *
 * Wood studs: NDS withdrawal per inch times the least penetration required (less a lag's point) times 1.6; nails
 * count as smooth. Steel studs: AISI S100 pull-out over 3.0. Over furring also the NDS head pull-through times 1.6
 * through wood of gravity 0.42 or less. Through lath or cladding fastened direct no method is published: null.
 * A longer fastener than required isn't credited, so the figure doesn't jump with stock lengths.
 */
export function windCapacity_lb(
  asked: Omit<FasteningCase, 'fastener' | 'fastener_spacing_in'>,
  fastener: FastenerData,
  tables: FasteningTables,
): WindCapacity {
  const holding_lb = holding(asked, fastener, tables);
  const furring_in = asked.outboard_thickness_in - asked.mat_thickness_in;
  const pull_through_lb =
    asked.support === 'furring'
      ? pullThroughReference_lb(
          fastener.head_diameter_in,
          furring_in,
          Math.min(asked.specific_gravity, FURRING_GRAVITY),
        ) * WIND_DURATION
      : null;
  return {
    holding_lb,
    pull_through_lb,
    capacity_lb: holding_lb === null ? null : Math.min(holding_lb, pull_through_lb ?? holding_lb),
  };
}

function holding(
  asked: Omit<FasteningCase, 'fastener' | 'fastener_spacing_in'>,
  fastener: FastenerData,
  tables: FasteningTables,
): number | null {
  if (asked.framing === 'wood') {
    if (fastener.kind === 'steel-screw') return null;
    const perInch = withdrawalReference_lb_per_in(
      fastener.kind,
      fastener.diameter_in,
      asked.specific_gravity,
    );
    return perInch * (fastener.min_penetration_in - fastener.tip_in) * WIND_DURATION;
  }
  if (fastener.kind !== 'steel-screw') return null;
  const stud = tables.fasteners.steel_studs.find((s) => s.framing === asked.framing);
  return stud ? pullOutAllowable_lb(fastener.diameter_in, stud.design_thickness_in, stud.fu_psi) : null;
}
