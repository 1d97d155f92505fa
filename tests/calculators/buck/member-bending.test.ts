import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acrossSill,
  alongSill,
  betweenScrewsUse,
  jambBracket,
  type ProjectingBuck,
} from '../../../src/calculators/buck/member-bending.ts';
import { memberNamed } from '../../../src/calculators/buck/wood-table.ts';
import { TABLES } from './tables.ts';

const WOOD = TABLES.wood;
const lumber: ProjectingBuck = {
  member: memberNamed('2x6', WOOD),
  gravity: 0.42,
  window_lb: 300,
  weight_lb: 360,
  eccentricity_in: 3,
  width_in: 72,
  height_in: 72,
  spread_length_in: 14,
  uncut: 1,
};
const panel: ProjectingBuck = {
  ...lumber,
  member: memberNamed('plywood-3/4', WOOD),
  gravity: 0.5,
  spread_length_in: 11,
};

// Hand calculations with beam formulas. For gravity 0.42 the lowest of spruce-pine-fir and all denser No. 2 lumber (NDS
// Supplement Table 4A): Fb 850 and E 1,300,000 psi of hem-fir, Fv 135 psi of spruce-pine-fir.
describe('the sill across the wall', () => {
  it('of a panel bends across its weaker axis (panel values from memory)', () => {
    // M = 360 × 3 = 1,080 lb·in.; 225 × 0.9 × 11/12 = 185.6.
    expect(acrossSill(panel, WOOD).use).toBeCloseTo(1080 / 185.625, 6);
    // 360 × 27 / (3 × 29,500 × 11/12).
    expect(acrossSill(panel, WOOD).sag_in).toBeCloseTo(9720 / 81_125, 6);
    expect(acrossSill({ ...panel, uncut: 0.5 }, WOOD).use).toBeCloseTo((4 * 1080) / 185.625, 6);
  });
  it('of lumber has no strength that may be counted, only a stiffness', () => {
    const { use, sag_in } = acrossSill(lumber, WOOD);
    expect(use).toBeNull();
    // I = 14 × 1.5³/12 = 3.9375 in.⁴; E across = 1,300,000 × 0.045.
    expect(sag_in).toBeCloseTo((360 * 27) / (3 * 58_500 * 3.9375), 9);
  });
  it('carries nothing past the framing where the weight stands inside it', () => {
    expect(acrossSill({ ...lumber, eccentricity_in: -1 }, WOOD)).toEqual({ use: 0, sag_in: 0 });
  });
});

describe('the strip of the sill that brings the blocks’ load to the jambs', () => {
  it('is a beam with half the window 4 in. from each jamb', () => {
    // M = 150 × 4 = 600 lb·in.; S = 2.25 × 1.5²/6 = 0.84375 in.³; 850 × 0.9 × S = 645.5.
    expect(alongSill(lumber, WOOD).use).toBeCloseTo(600 / 645.469, 5);
    // Handbook: P a² (3L − 4a) / (6 E I), I = 2.25 × 1.5³/12 = 0.6328 in.⁴.
    expect(alongSill(lumber, WOOD).sag_in).toBeCloseTo((150 * 16 * (216 - 16)) / (6 * 1.3e6 * 0.6328125), 9);
  });
  it('lets laminated lumber 1-3/4 in. thick carry 430 lb and a 2x not: an engineer, or the thicker one', () => {
    expect(alongSill({ ...lumber, window_lb: 430 }, WOOD).use).toBeGreaterThan(1);
    const laminated = { ...lumber, member: memberNamed('LVL-1-3/4', WOOD), gravity: 0.5, window_lb: 430 };
    // 860 lb·in. over 900 × 0.9 × 2.25 × 1.75²/6.
    expect(alongSill(laminated, WOOD).use).toBeCloseTo(860 / 930.23, 4);
  });
});

describe('a jamb as a bracket', () => {
  it('takes shear along its grain and a little tension across it', () => {
    const { shear_use, across_grain_psi } = jambBracket(lumber, WOOD);
    // V = 180 lb on 1.5 × 72 in.: 1.5 × 180/108 = 2.5 psi of 121.5; 6 × 180 × 3/(1.5 × 72²) = 0.417 psi.
    expect(shear_use).toBeCloseTo(2.5 / 121.5, 9);
    expect(across_grain_psi).toBeCloseTo(3240 / 7776, 9);
  });
  it('of a panel has crossed layers: nothing pulls across its grain', () => {
    expect(jambBracket(panel, WOOD).across_grain_psi).toBe(0);
  });
});

describe('a sill piece between two screws', () => {
  it('bends under a block midway', () => {
    // 160 lb × 12 in. / 4 = 480 lb·in.; 850 × 0.9 × 3 × 1.5²/6 = 860.6.
    expect(betweenScrewsUse(320, 12, 3, 1.5, 0.42, WOOD)).toBeCloseTo(480 / 860.625, 9);
  });
});

describe('for any weight and projection', () => {
  it('use and sag never fall with weight nor with the distance it stands out', () => {
    const weight = fc.double({ min: 20, max: 600, noNaN: true });
    const out = fc.double({ min: 0, max: 6, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(lumber, panel),
        weight,
        fc.double({ min: 0, max: 100, noNaN: true }),
        out,
        out,
        (one, w, more, e, f) => {
          const near = { ...one, window_lb: w, weight_lb: w, eccentricity_in: Math.min(e, f) };
          const far = { ...near, window_lb: w + more, weight_lb: w + more, eccentricity_in: Math.max(e, f) };
          expect(acrossSill(far, WOOD).use ?? 0).toBeGreaterThanOrEqual(acrossSill(near, WOOD).use ?? 0);
          expect(acrossSill(far, WOOD).sag_in).toBeGreaterThanOrEqual(acrossSill(near, WOOD).sag_in);
          expect(alongSill(far, WOOD).use).toBeGreaterThanOrEqual(alongSill(near, WOOD).use);
          expect(jambBracket(far, WOOD).sag_in).toBeGreaterThanOrEqual(jambBracket(near, WOOD).sag_in);
        },
      ),
    );
  });
});
