import { inRange, Refusal, showValue } from '../../base/refusal.ts';

/** What stands between a window and its rough opening, in. */
export type OpeningRoom = {
  /** Shim and seal space on each side. */
  readonly clearance_in: number;
  /** Buck thickness inside the opening on each side; 0 for a buck on the face of the framing. */
  readonly buck_takes_in: number;
  /** Rise of the sloped sill from its outer to its inner edge. */
  readonly sill_slope_in: number;
};

export type RoughOpening = { readonly width_in: number; readonly height_in: number };
export type UnitSize = { readonly width_in: number; readonly height_in: number };

/**
 * Rough opening that a unit needs, in.: unit + clearances + buck on both sides; in height also the sill slope.
 *
 * @throws Refusal for a unit under 6 in. or room below 0
 *
 * Source: geometry; clearance 1/4 to 1/2 in. a side is common practice (about 13 mm all round seen in Canadian
 * installation practice).
 */
export function openingNeeded(
  unit: OpeningRoom & { readonly unit_width_in: number; readonly unit_height_in: number },
): RoughOpening {
  const width = inRange(unit.unit_width_in, 'unit_width_in', 6, 240, 'the unit width in inches');
  const height = inRange(unit.unit_height_in, 'unit_height_in', 6, 180, 'the unit height in inches');
  const taken = roomTaken(unit);
  return { width_in: width + taken.width_in, height_in: height + taken.height_in };
}

/**
 * Largest unit left in an opening that can't change, in.; the reverse of {@link openingNeeded}.
 *
 * @throws Refusal when less than 6 in. is left either way
 */
export function windowLeft(
  opening: OpeningRoom & { readonly opening_width_in: number; readonly opening_height_in: number },
): UnitSize {
  const taken = roomTaken(opening);
  return {
    width_in: left(opening.opening_width_in, taken.width_in, 'opening_width_in'),
    height_in: left(opening.opening_height_in, taken.height_in, 'opening_height_in'),
  };
}

/** Rise of a sill that slopes outward, in.: depth of the sill × tan of its slope (5 to 6° is common). */
export function sillRise_in(depth_in: number, slope_deg: number): number {
  const slope = inRange(slope_deg, 'slope_deg', 0, 45, 'a slope in degrees');
  return inRange(depth_in, 'depth_in', 0, 24, 'a sill depth in inches') * Math.tan((slope * Math.PI) / 180);
}

function roomTaken(room: OpeningRoom): { width_in: number; height_in: number } {
  const clearance = inRange(room.clearance_in, 'clearance_in', 0, 2, 'a clearance in inches');
  const buck = inRange(room.buck_takes_in, 'buck_takes_in', 0, 6, 'a buck thickness in inches');
  const slope = inRange(room.sill_slope_in, 'sill_slope_in', 0, 4, 'a sill rise in inches');
  const both = 2 * (clearance + buck);
  return { width_in: both, height_in: both + slope };
}

function left(opening_in: number, taken_in: number, field: string): number {
  const unit = opening_in - taken_in;
  if (!Number.isFinite(unit) || unit < 6) {
    throw new Refusal({
      field,
      value: showValue(opening_in),
      accepted: `Give an opening of at least ${taken_in + 6} in.: buck, clearance and slope take ${taken_in} in., and less than 6 in. of window would be left.`,
    });
  }
  return unit;
}
