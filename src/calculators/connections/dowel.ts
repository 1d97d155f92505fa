import { inRange, Refusal, showValue } from '../../base/refusal.ts';
import { DOWEL_DIAMETER_RANGE_IN, GRAVITY_RANGE } from './ranges.ts';

export type LoadToGrain = 'parallel' | 'perpendicular';
export type BendingKind = 'nail' | 'wood-screw' | 'lag-screw';
export const YIELD_MODES = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'] as const;
export type YieldMode = (typeof YIELD_MODES)[number];
export type YieldModes = Readonly<Record<YieldMode, number>>;

/** Two members in single shear, with or without a space between them. */
export type DowelJoint = {
  /** Diameter that presses on the wood, in. */
  readonly bearing_diameter_in: number;
  /** Diameter that bends (the root where threads cross the joint), in. */
  readonly bending_diameter_in: number;
  readonly bending_yield_psi: number;
  readonly side: { readonly bearing_psi: number; readonly length_in: number };
  readonly main: { readonly bearing_psi: number; readonly length_in: number };
  /** Space between the members, in.; foam counts as space. */
  readonly gap_in: number;
};

/**
 * Dowel bearing strength of wood, psi.
 *
 * @param specific_gravity  0.3 to 0.75
 * @param diameter_in       0.099 to 1 in.
 * @param load_to_grain     matters from 0.25 in. up
 * @throws Refusal outside those ranges
 *
 * Source: NDS-2018 Table 12.3.3 and 12.3-11: 16600 G^1.84 under 0.25 in. (also in a public restatement and
 * checked by worked examples); from 0.25 in. 11200 G parallel, 6100 G^1.45 / √D perpendicular (from memory; with
 * them every legible cell of Table 12K comes out as printed). Known oddity: the value jumps at 0.25 in.
 */
export function dowelBearingStrength_psi(
  specific_gravity: number,
  diameter_in: number,
  load_to_grain: LoadToGrain,
): number {
  const g = inRange(
    specific_gravity,
    'specific_gravity',
    GRAVITY_RANGE.min,
    GRAVITY_RANGE.max,
    'a specific gravity',
  );
  const d = checkDiameter(diameter_in, 'diameter_in');
  if (d < 0.25) return 16600 * g ** 1.84;
  return load_to_grain === 'parallel' ? 11200 * g : (6100 * g ** 1.45) / Math.sqrt(d);
}

/** Dowel bearing strength of ASTM A653 Grade 33 steel side plates, psi. Source: as needed to meet NDS-2018 Table 12K. */
export const STEEL_SIDE_BEARING_PSI = 61_850;

/** Bending yield strength of ordinary (not hardened) nails and wood screws up to each diameter, in. */
const SMALL_DOWEL_STEPS = [
  { upTo_in: 0.142, psi: 100_000 },
  { upTo_in: 0.177, psi: 90_000 },
  { upTo_in: 0.236, psi: 80_000 },
  { upTo_in: 0.273, psi: 70_000 },
  { upTo_in: 0.344, psi: 60_000 },
  { upTo_in: 0.375, psi: 45_000 },
] as const;

/**
 * Bending yield strength to use when the maker's is not known, psi.
 *
 * @param kind         hardened nails and structural screws have higher values in their own reports
 * @param diameter_in  nominal diameter: nails and wood screws 0.099 to 0.375 in., lag screws 0.25 to 1 in.
 * @throws Refusal outside those ranges
 *
 * Source: NDS-2018 Table I1: nail rows agree with a public restatement of the table; lag rows from memory, borne
 * out by Table 12K; wood screws as nails (80,000 psi at 0.19 in. in a worked example, the rest from memory).
 * Between the listed lag sizes the value of the next larger size (the lower one) is taken.
 */
export function bendingYieldStrength_psi(kind: BendingKind, diameter_in: number): number {
  if (kind === 'lag-screw') {
    const d = inRange(diameter_in, 'diameter_in', 0.25, DOWEL_DIAMETER_RANGE_IN.max, 'a diameter in inches');
    if (d <= 0.25) return 70_000;
    return d <= 0.3125 ? 60_000 : 45_000;
  }
  const d = inRange(
    diameter_in,
    'diameter_in',
    DOWEL_DIAMETER_RANGE_IN.min,
    0.375,
    'a diameter in inches (or give bending_yield_psi)',
  );
  return SMALL_DOWEL_STEPS.find((step) => d <= step.upTo_in)?.psi ?? 45_000;
}

/**
 * 5 % offset yield load of one fastener in single shear for each yield mode, lb, before any reduction term.
 *
 * Bearing works on the bearing diameter, modes III and IV bend with the bending diameter. The lowest is the
 * joint's yield load.
 *
 * @throws Refusal when a length, strength or diameter is not above zero, or the gap is below zero
 *
 * Source: general dowel equations for solid cross sections with a gap, AWC Technical Report 12 (from memory);
 * at zero gap equal to the closed forms of NDS-2018 Table 12.3.1A within rounding.
 */
export function dowelYieldModes_lb(joint: DowelJoint): YieldModes {
  const bearing = checkDiameter(joint.bearing_diameter_in, 'bearing_diameter_in');
  const bending = checkDiameter(joint.bending_diameter_in, 'bending_diameter_in');
  const fyb = checkPositive(joint.bending_yield_psi, 'bending_yield_psi', 'psi');
  const ls = checkPositive(joint.side.length_in, 'side.length_in', 'inches');
  const lm = checkPositive(joint.main.length_in, 'main.length_in', 'inches');
  const qs = checkPositive(joint.side.bearing_psi, 'side.bearing_psi', 'psi') * bearing;
  const qm = checkPositive(joint.main.bearing_psi, 'main.bearing_psi', 'psi') * bearing;
  const gap = inRange(joint.gap_in, 'gap_in', 0, 24, 'a gap in inches');
  const moment = (fyb * bending ** 3) / 6;
  return {
    Im: qm * lm,
    Is: qs * ls,
    II: positiveRoot(
      1 / (4 * qs) + 1 / (4 * qm),
      ls / 2 + gap + lm / 2,
      -(qs * ls ** 2) / 4 - (qm * lm ** 2) / 4,
    ),
    IIIm: positiveRoot(1 / (2 * qs) + 1 / (4 * qm), gap + lm / 2, -moment - (qm * lm ** 2) / 4),
    IIIs: positiveRoot(1 / (4 * qs) + 1 / (2 * qm), ls / 2 + gap, -(qs * ls ** 2) / 4 - moment),
    IV: positiveRoot(1 / (2 * qs) + 1 / (2 * qm), gap, -2 * moment),
  };
}

/** Positive root of a x² + b x + c with a > 0, b ≥ 0, c < 0; written so that a wide gap loses no digits. */
function positiveRoot(a: number, b: number, c: number): number {
  return (-2 * c) / (b + Math.sqrt(b ** 2 - 4 * a * c));
}

function checkDiameter(value: number, field: string): number {
  return inRange(
    value,
    field,
    DOWEL_DIAMETER_RANGE_IN.min,
    DOWEL_DIAMETER_RANGE_IN.max,
    'a diameter in inches',
  );
}

function checkPositive(value: number, field: string, unit: string): number {
  if (!Number.isFinite(value) || value <= 0) {
    throw new Refusal({ field, value: showValue(value), accepted: `Give ${unit} above zero.` });
  }
  return value;
}
