import { inRange } from '../../base/refusal.ts';
import { wetServiceFactor } from '../connections/adjustment-factors.ts';
import { dowelBearingStrength_psi } from '../connections/dowel.ts';
import { reductionTerms } from '../connections/reduction-term.ts';
import type { BuckScrew } from './buck-types.ts';

/**
 * Reference lateral value of a screw that holds a flange over a gap, lb: a cantilever out of the framing.
 *
 * A window flange clamps nothing, so only the framing holds the screw. Two ways to yield, the smaller decides: the
 * screw bends where its moment is largest, P·g + P²/(2q) = Fyb·d³/6, or it turns stiff in the wood, with bearing one
 * way near the face and the other way at its point: P = q·(√((2g + p)² + p²) − (2g + p)). q is the bearing strength
 * times the root diameter, p the penetration, g the gap. Divided by the reduction term of mode III.
 *
 * @param gap_in          from the flange to the framing: board and sheathing, none of it counted as holding
 * @param penetration_in  into the framing, above 0
 * @throws Refusal outside gap 0 to 24 in. or the ranges of the dowel equations
 *
 * Source: AWC Technical Report 12 (general dowel equations with a gap, from memory), with a side member that gives no
 * clamping; own derivation of that limit. NDS-2018 Table 12.3.1B for the reduction term.
 */
export function flangeScrewLateral_lb(
  screw: BuckScrew,
  gap_in: number,
  penetration_in: number,
  framing_gravity: number,
  wet_service: boolean,
): number {
  const g = inRange(gap_in, 'gap_in', 0, 24, 'a gap in inches');
  const p = inRange(penetration_in, 'penetration_in', 0.1, 24, 'a penetration in inches');
  const root = screw.root_diameter_in;
  const q = dowelBearingStrength_psi(framing_gravity, screw.diameter_in, 'perpendicular') * root;
  const moment = (screw.bending_yield_psi * root ** 3) / 6;
  // Both roots written as quotients, so that a wide gap loses no digits.
  const bends = (2 * moment) / (g + Math.sqrt(g ** 2 + (2 * moment) / q));
  const turns = (q * p ** 2) / (2 * g + p + Math.sqrt((2 * g + p) ** 2 + p ** 2));
  const term = reductionTerms('wood-screw', screw.diameter_in, root, 'perpendicular').IIIm;
  return (Math.min(bends, turns) / term) * (wet_service ? wetServiceFactor('lateral', 'wood-screw') : 1);
}
