import { pullOutAllowable_lb, pullOverAllowable_lb, shearAllowable_lb } from '../steel-screws.ts';
import type { FasteningCase } from './fastening-input.ts';
import type { FastenerData, FasteningTables } from './fastening-tables.ts';

/** What one steel screw holds in this stud, lb, allowable-stress level. */
export type SteelChecks = {
  /** Threads out of the stud. */
  readonly pull_out_lb: number;
  /** 33 mil steel furring over the head; null without furring. */
  readonly pull_over_lb: number | null;
  /** A 33 mil strip sheared against the stud with nothing between: an upper bound for a wall with insulation. */
  readonly shear_in_contact_lb: number;
};

/**
 * The screw connection limits of AISI S100 for one fastener in a cold-formed stud; null for wood studs and for
 * fasteners that are not steel screws.
 *
 * Source: AISI S100 J4.3.1, J4.4.1, J4.4.2 over 3.0 (section numbers from memory).
 */
export function steelChecks(
  asked: Pick<FasteningCase, 'framing' | 'support'>,
  fastener: FastenerData,
  { fasteners }: FasteningTables,
): SteelChecks | null {
  const steel = (framing: FasteningCase['framing']) =>
    fasteners.steel_studs.find((stud) => stud.framing === framing);
  const stud = steel(asked.framing);
  const strip = steel('steel-33mil');
  if (!stud || !strip || fastener.kind !== 'steel-screw') return null;
  const ply = (of: typeof stud) => ({ thickness_in: of.design_thickness_in, fu_psi: of.fu_psi });
  return {
    pull_out_lb: pullOutAllowable_lb(fastener.diameter_in, stud.design_thickness_in, stud.fu_psi),
    pull_over_lb:
      asked.support === 'furring'
        ? pullOverAllowable_lb(fastener.head_diameter_in, strip.design_thickness_in, strip.fu_psi)
        : null,
    shear_in_contact_lb: shearAllowable_lb({
      diameter_in: fastener.diameter_in,
      head_side: ply(strip),
      thread_side: ply(stud),
    }),
  };
}
