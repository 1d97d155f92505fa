import { Refusal, showValue } from '../../base/refusal.ts';
import type { ScrewRow } from './screw-layout.ts';

/** A frame that hangs on screws through the sheathing into the framing. */
export type FaceCase = {
  /** Window and buck, lb. */
  readonly weight_lb: number;
  /** Of the weight outside the face of the framing, in. */
  readonly eccentricity_in: number;
  /** Suction on the whole window, lb, allowable-stress level, not below 0. */
  readonly suction_lb: number;
  /** Rows that share the weight: all of a rigid frame, or the sill row alone. */
  readonly rows: readonly ScrewRow[];
  /** All screws that share the suction. */
  readonly suction_screws: number;
  /** Height of the strip at the bottom edge on which the frame turns, in. */
  readonly contact_in: number;
};

export type FaceForces = {
  /** On each screw that shares the weight, lb. */
  readonly shear_lb: number;
  /** From the weight, on the most loaded screw, lb. */
  readonly gravity_tension_lb: number;
  /** From suction, on each screw, lb. */
  readonly wind_tension_lb: number;
};

/**
 * Forces on the screws of a face-fastened buck. The weight outside the face tips the top outward about a strip at
 * the bottom edge; tension grows with height above it: T = W e (y − a/2) / Σ n (y − a/2)².
 *
 * With all rows of a frame whose corners are joined this is an upper bound of what it carries; with the sill row
 * alone, a lower one.
 *
 * @throws Refusal when no row stands above the middle of the contact strip: there is no lever
 *
 * Source: statics; own derivation.
 */
export function faceForces(buck: FaceCase): FaceForces {
  const pivot = buck.contact_in / 2;
  const shared = buck.rows.reduce((sum, row) => sum + row.count, 0);
  const inertia = buck.rows.reduce((sum, row) => sum + row.count * (row.height_in - pivot) ** 2, 0);
  const highest = Math.max(...buck.rows.map((row) => row.height_in)) - pivot;
  if (!(highest > 0) || shared === 0) {
    throw new Refusal({
      field: 'rows',
      value: showValue(buck.rows),
      accepted: `Give at least one row of screws higher than ${pivot} in. above the bottom edge.`,
    });
  }
  return {
    shear_lb: buck.weight_lb / shared,
    gravity_tension_lb: (buck.weight_lb * Math.max(0, buck.eccentricity_in) * highest) / inertia,
    wind_tension_lb: buck.suction_lb / buck.suction_screws,
  };
}
