import { inRange } from '../base/refusal.ts';

/** Divides nominal strength to allowable strength (ASD) for screw connections, AISI S100 section J4. */
export const SCREW_SAFETY_FACTOR = 3.0;

/** Washer or head diameter credited in pull-over, in. Sources disagree on 1/2 or 3/4 in; the smaller is used. */
export const PULL_OVER_HEAD_CAP_IN = 0.5;

function checkedScrew(diameter_in: number): number {
  return inRange(diameter_in, 'screw_diameter_in', 0.08, 0.25, 'the nominal screw diameter in inches');
}

function checkedSteel(thickness_in: number, fu_psi: number, name: string): void {
  inRange(thickness_in, `${name}_thickness_in`, 0.0149, 0.1875, 'the steel design thickness in inches');
  inRange(fu_psi, `${name}_fu_psi`, 40_000, 80_000, 'the tensile strength of the steel in psi');
}

/**
 * Allowable pull-out of one screw from steel, lb: 0.85 t d Fu / 3.0.
 *
 * @param diameter_in   nominal screw diameter, 0.08 to 0.25 in
 * @param thickness_in  design thickness of the steel that holds the threads, in
 * @param fu_psi        tensile strength of that steel, psi
 * @throws Refusal outside those ranges
 *
 * Source: AISI S100 J4.4.1, allowable-stress form (section number from memory). For plies in contact; pull-out
 * doesn't depend on what lies between.
 */
export function pullOutAllowable_lb(diameter_in: number, thickness_in: number, fu_psi: number): number {
  const d = checkedScrew(diameter_in);
  checkedSteel(thickness_in, fu_psi, 'stud');
  return (0.85 * thickness_in * d * fu_psi) / SCREW_SAFETY_FACTOR;
}

/**
 * Allowable pull-over of steel (a steel furring flange) off a screw head, lb: 1.5 t dw Fu / 3.0.
 *
 * @param head_diameter_in  head or washer diameter, in; at most 1/2 in is credited
 * @param thickness_in      design thickness of the steel under the head, in
 * @param fu_psi            tensile strength of that steel, psi
 * @throws Refusal outside the ranges
 *
 * Source: AISI S100 J4.4.2, allowable-stress form (section number from memory).
 */
export function pullOverAllowable_lb(head_diameter_in: number, thickness_in: number, fu_psi: number): number {
  const head = inRange(head_diameter_in, 'head_diameter_in', 0.1, 4, 'the head or washer diameter in inches');
  checkedSteel(thickness_in, fu_psi, 'furring');
  return (1.5 * thickness_in * Math.min(head, PULL_OVER_HEAD_CAP_IN) * fu_psi) / SCREW_SAFETY_FACTOR;
}

/**
 * Allowable shear of one screw joining two steel parts in contact, limited by tilting and bearing, lb.
 *
 * With t1 under the head and t2 holding the threads: t2/t1 up to 1.0 takes the least of 4.2 (t2³ d)^½ Fu2,
 * 2.7 t1 d Fu1 and 2.7 t2 d Fu2; from 2.5 the least of the two 2.7 terms; linear between; all over 3.0.
 *
 * @throws Refusal outside the ranges
 * Source: AISI S100 J4.3.1, allowable-stress form (section number from memory). The screw's own shear strength
 * comes from its maker's tests. Not for parts with insulation between them: there the screw bends.
 */
export function shearAllowable_lb(joint: {
  readonly diameter_in: number;
  readonly head_side: { readonly thickness_in: number; readonly fu_psi: number };
  readonly thread_side: { readonly thickness_in: number; readonly fu_psi: number };
}): number {
  const d = checkedScrew(joint.diameter_in);
  const { thickness_in: t1, fu_psi: fu1 } = joint.head_side;
  const { thickness_in: t2, fu_psi: fu2 } = joint.thread_side;
  checkedSteel(t1, fu1, 'head_side');
  checkedSteel(t2, fu2, 'thread_side');
  const tilting = 4.2 * Math.sqrt(t2 ** 3 * d) * fu2;
  const bearing = Math.min(2.7 * t1 * d * fu1, 2.7 * t2 * d * fu2);
  const thin = Math.min(tilting, bearing);
  // 0 where the parts tilt as thin sheets do, 1 where the thick part holds the screw straight.
  const share = Math.min(1, Math.max(0, (t2 / t1 - 1) / 1.5));
  return (thin + share * (bearing - thin)) / SCREW_SAFETY_FACTOR;
}
