import { dowelBearingStrength_psi, dowelYieldModes_lb } from '../connections/dowel.ts';
import type { FastenerData, FasteningTables, Framing, Support } from './fastening-tables.ts';

/** Weight on one fastener, lb: cladding psf over the wall area that it holds. */
export function gravityLoad_lb(
  cladding_psf: number,
  fastener_spacing_in: number,
  framing_spacing_in: number,
): number {
  return (cladding_psf * fastener_spacing_in * framing_spacing_in) / 144;
}

/**
 * Sustained weight that one fastener carries across a gap, lb, by the rule behind the code table for wood framing.
 *
 * General dowel equations (AWC Technical Report 12) with the insulation as an empty gap, both members at specific
 * gravity 0.42 (denser wood is not credited, as in the table), 5 % offset yield load divided by 3.0.
 * Reproduces the 96 seen cells of the furring table. The divisor limits slip; it isn't the NDS reduction term.
 *
 * @param gap_in   insulation and any drainage mat, in
 * @param side_in  furring, or 3/8 in standing for cladding fastened direct
 * @param stud_gravity  of lighter studs than the table was made for; the rule itself holds for 0.42 only
 * @returns null for screws into steel: no such equation is known for them
 * Ignores foam stiffness and friction (so it is a lower bound) and creep beyond the slip limit.
 */
export function gapCapacityWood_lb(
  fastener: FastenerData,
  side_in: number,
  gap_in: number,
  tables: FasteningTables,
  stud_gravity: number = tables.foam.rule.specific_gravity,
): number | null {
  const { bearing_diameter_in: diameter, bending_yield_psi } = fastener;
  if (diameter === null || bending_yield_psi === null) return null;
  const { divisor, specific_gravity } = tables.foam.rule;
  const bearingOf_psi = (gravity: number) => dowelBearingStrength_psi(gravity, diameter, 'parallel');
  const modes = dowelYieldModes_lb({
    bearing_diameter_in: diameter,
    bending_diameter_in: diameter,
    bending_yield_psi,
    side: { bearing_psi: bearingOf_psi(specific_gravity), length_in: side_in },
    main: { bearing_psi: bearingOf_psi(stud_gravity), length_in: fastener.min_penetration_in },
    gap_in,
  });
  return Math.min(modes.Im, modes.Is, modes.II, modes.IIIm, modes.IIIs, modes.IV) / divisor;
}

/**
 * Sustained weight that one screw into a steel stud carries across a gap, lb: straight line along the upper edge
 * of the recalled cells of the code's steel tables. Not a published equation, so only an order of magnitude.
 * Null beyond the thickest foam that those tables print for the screw.
 */
export function gapCapacitySteel_lb(
  fastener: FastenerData,
  framing: Framing,
  gap_in: number,
  tables: FasteningTables,
): number | null {
  const line = steelLine(fastener, framing, tables);
  if (!line || gap_in > line.max_gap_in) return null;
  // The tables print nothing under 1/2 in; the line isn't drawn further than they go.
  return (line.zero_load_gap_in - Math.max(gap_in, tables.foam.rule.least_in)) / line.gap_per_lb_in;
}

/**
 * What a fastener carries across a gap at the most, lb, also past the limits in which the rule was proved: good for
 * ruling a wall out, never for letting one pass. In wood the dowel equations go on, with the studs no denser than the
 * table's; in steel nothing is carried further than where the line through the cells ends, so its end is the most.
 *
 * @returns null where not even that is known
 */
export function gapCapacityAtMost_lb(
  fastener: FastenerData,
  side_in: number,
  gap_in: number,
  studs: { readonly framing: Framing; readonly specific_gravity: number },
  tables: FasteningTables,
): number | null {
  if (studs.framing === 'wood') {
    const stud_gravity = Math.min(studs.specific_gravity, tables.foam.rule.specific_gravity);
    return gapCapacityWood_lb(fastener, side_in, gap_in, tables, stud_gravity);
  }
  const drawn_in = steelLine(fastener, studs.framing, tables)?.max_gap_in;
  if (drawn_in === undefined) return null;
  return gapCapacitySteel_lb(fastener, studs.framing, Math.min(gap_in, drawn_in), tables);
}

function steelLine(fastener: FastenerData, framing: Framing, tables: FasteningTables) {
  return tables.fasteners.steel_gravity_lines.find(
    (l) => l.fastener === fastener.id && l.framing.includes(framing),
  );
}

/** Thickness of the outer member in the rule, in: at most what the table was made with. */
export function ruleSide_in(support: Support, furring_in: number, tables: FasteningTables): number {
  const { furring_side_in, direct_side_in } = tables.foam.rule;
  return support === 'furring' ? Math.min(furring_in, furring_side_in) : direct_side_in;
}

/**
 * Thickest foam by the rule behind the code table for wood framing, in.
 *
 * Largest multiple of 0.05 in whose {@link gapCapacityWood_lb} is not below the weight on one fastener; under
 * 0.50 in it is null (the code's "design required"); never above the size's largest printed cell.
 */
export function tableRuleMaxGap_in(
  fastener: FastenerData,
  support: Support,
  load_lb: number,
  tables: FasteningTables,
): number | null {
  const { step_in, least_in, furring_side_in } = tables.foam.rule;
  const side_in = ruleSide_in(support, furring_side_in, tables);
  const holds = (steps: number) => {
    const capacity = gapCapacityWood_lb(fastener, side_in, steps * step_in, tables);
    return capacity !== null && capacity >= load_lb;
  };
  let low = Math.round(least_in / step_in);
  let high = Math.round(fastener.max_gap_in / step_in);
  if (!holds(low)) return null;
  if (holds(high)) return fastener.max_gap_in;
  // Capacity falls as the gap grows, so halving finds the last step that holds.
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return Math.round(low * step_in * 100) / 100;
}
