import { Refusal, showValue } from '../../base/refusal.ts';

/**
 * A sill piece resting on the rough sill. Axis: x = 0 at the outside face of the framing, positive outward.
 */
export type BearingCase = {
  /** Window and buck, lb. */
  readonly weight_lb: number;
  /** Where the weight acts, in.; negative inside the face. */
  readonly eccentricity_in: number;
  /** Depth of rough sill under the piece, in. */
  readonly bearing_length_in: number;
  /** Of the tie screws from the face, in. */
  readonly tie_distance_in: number;
  /** Length along the wall over which the setting blocks spread their load, in. */
  readonly spread_length_in: number;
  /** Depth of the strip that takes the reaction once the weight overhangs, in. */
  readonly strip_in: number;
};

export type BearingForces = {
  /** Pull in all ties together, lb. */
  readonly tie_lb: number;
  /** On the rough sill, lb. */
  readonly reaction_lb: number;
  /** Compression perpendicular to grain, psi. */
  readonly stress_psi: number;
};

/**
 * Forces under a bearing buck: the weight outside the face tips the sill piece about a strip at the outer edge of
 * the rough sill, and screws at its inner end hold it down.
 *
 * Moments about the strip's centre: T = W (e + a/2) / (d − a/2); R = W + T. With the weight inside the strip's
 * centre no tie is needed: the reaction stands under the weight, over twice its distance from the edge.
 *
 * @throws Refusal when the ties stand inside the strip: there is no lever
 *
 * Source: statics; own derivation.
 */
export function bearingForces(buck: BearingCase): BearingForces {
  const { weight_lb, eccentricity_in, strip_in } = buck;
  const lever = buck.tie_distance_in - strip_in / 2;
  if (lever <= 0) {
    throw new Refusal({
      field: 'tie_distance_in',
      value: showValue(buck.tie_distance_in),
      accepted: `Put the tie screws more than ${strip_in / 2} in. back from the face of the framing.`,
    });
  }
  if (eccentricity_in <= -strip_in / 2) {
    const depth = Math.min(buck.bearing_length_in, 2 * Math.abs(eccentricity_in));
    return { tie_lb: 0, reaction_lb: weight_lb, stress_psi: weight_lb / (depth * buck.spread_length_in) };
  }
  const tie_lb = (weight_lb * (eccentricity_in + strip_in / 2)) / lever;
  const reaction_lb = weight_lb + tie_lb;
  return { tie_lb, reaction_lb, stress_psi: reaction_lb / (strip_in * buck.spread_length_in) };
}

export type JambCase = {
  /** On one jamb, lb. */
  readonly weight_lb: number;
  /** From the load to the row of screws in the trimmer, in. */
  readonly lever_in: number;
  readonly screws: number;
  /** Between the screws, in. */
  readonly spacing_in: number;
};

/**
 * Largest shear on a screw between a projecting jamb and the trimmer, lb: the jamb is a bracket in its own plane,
 * its share of the weight is direct shear, the lever a couple taken by the screws up and down the row.
 *
 * @returns vertical (direct) and horizontal (couple) shear on the most loaded screw
 *
 * Source: elastic screw group; own derivation.
 */
export function jambScrewShear_lb(jamb: JambCase): { direct_lb: number; couple_lb: number } {
  const heights = Array.from(
    { length: jamb.screws },
    (_, i) => (i - (jamb.screws - 1) / 2) * jamb.spacing_in,
  );
  const inertia = heights.reduce((sum, y) => sum + y ** 2, 0);
  const outermost = Math.max(...heights);
  return {
    direct_lb: jamb.weight_lb / jamb.screws,
    couple_lb: (jamb.weight_lb * jamb.lever_in * outermost) / inertia,
  };
}
