import { inRange } from '../../base/refusal.ts';

/**
 * Allowable load of one screw pulled at an angle to the wood surface, lb.
 *
 * @param lateral_lb     allowable lateral value Z′ (pure shear), above 0
 * @param withdrawal_lb  allowable withdrawal value W′p (pure tension), above 0
 * @param angle_deg      angle between load and wood surface, 0 (shear) to 90 (tension)
 * @throws Refusal for an angle outside 0 to 90
 *
 * Source: NDS-2018 12.4.1 (lag and wood screws): Z′α = W′p Z′ / (W′p cos²α + Z′ sin²α).
 */
export function combinedScrewCapacity_lb(
  lateral_lb: number,
  withdrawal_lb: number,
  angle_deg: number,
): number {
  const a = checkedAngle(angle_deg);
  return (withdrawal_lb * lateral_lb) / (withdrawal_lb * Math.cos(a) ** 2 + lateral_lb * Math.sin(a) ** 2);
}

/**
 * Allowable load of one nail pulled at an angle to the wood surface, lb.
 *
 * Parameters as in {@link combinedScrewCapacity_lb}.
 *
 * Source: NDS-2018 12.4.2 (nails and spikes): Z′α = W′p Z′ / (W′p cosα + Z′ sinα).
 */
export function combinedNailCapacity_lb(
  lateral_lb: number,
  withdrawal_lb: number,
  angle_deg: number,
): number {
  const a = checkedAngle(angle_deg);
  return (withdrawal_lb * lateral_lb) / (withdrawal_lb * Math.cos(a) + lateral_lb * Math.sin(a));
}

/**
 * Use of one screw under shear and tension together (1 is the limit).
 *
 * Where one capacity is more than twice the other the screw formula dips below the larger single use
 * (some tension would seem to help a sheared screw). The single uses are kept as a floor, so more load never
 * lowers the use.
 *
 * @param shear_lb, tension_lb       load on the screw, not below 0
 * @param lateral_lb, withdrawal_lb  its allowable values, above 0
 */
export function combinedScrewUse(
  shear_lb: number,
  tension_lb: number,
  lateral_lb: number,
  withdrawal_lb: number,
): number {
  const resultant = Math.hypot(shear_lb, tension_lb);
  if (resultant === 0) return 0;
  const angle = (Math.atan2(tension_lb, shear_lb) * 180) / Math.PI;
  return Math.max(
    resultant / combinedScrewCapacity_lb(lateral_lb, withdrawal_lb, angle),
    shear_lb / lateral_lb,
    tension_lb / withdrawal_lb,
  );
}

/** Use of one nail under shear and tension together; the linear form of NDS-2018 12.4.2. */
export function combinedNailUse(
  shear_lb: number,
  tension_lb: number,
  lateral_lb: number,
  withdrawal_lb: number,
): number {
  return shear_lb / lateral_lb + tension_lb / withdrawal_lb;
}

function checkedAngle(angle_deg: number): number {
  return (inRange(angle_deg, 'angle_deg', 0, 90, 'an angle in degrees') * Math.PI) / 180;
}
