import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  combinedNailCapacity_lb,
  combinedNailUse,
  combinedScrewCapacity_lb,
  combinedScrewUse,
} from '../../../src/calculators/connections/combined.ts';

const load = fc.double({ min: 0, max: 400, noNaN: true });
const capacity = fc.double({ min: 5, max: 500, noNaN: true });

describe('combined lateral and withdrawal load', () => {
  it('gives the pure values at 0° and 90°', () => {
    expect(combinedScrewCapacity_lb(80, 150, 0)).toBeCloseTo(80, 9);
    expect(combinedScrewCapacity_lb(80, 150, 90)).toBeCloseTo(150, 9);
    expect(combinedNailCapacity_lb(80, 20, 0)).toBeCloseTo(80, 9);
    expect(combinedNailCapacity_lb(80, 20, 90)).toBeCloseTo(20, 9);
  });
  // At 45° by hand, Z 100, W 50: screws 50 × 100 / (25 + 50) = 66.67; nails 50 × 100 / (0.70711 × 150) = 47.14.
  it('matches hand calculations at 45°', () => {
    expect(combinedScrewCapacity_lb(100, 50, 45)).toBeCloseTo(66.667, 3);
    expect(combinedNailCapacity_lb(100, 50, 45)).toBeCloseTo(47.14, 2);
  });
  it('agrees with the linear use of nails', () => {
    // 30 lb of shear and 30 lb of pull act at 45°: 42.43 / 47.14 = 0.9.
    expect(combinedNailUse(30, 30, 100, 50)).toBeCloseTo(0.9, 9);
  });
  it('never goes down when a screw gets more load', () => {
    fc.assert(
      fc.property(load, load, load, load, capacity, capacity, (v, t, moreV, moreT, z, w) => {
        expect(combinedScrewUse(v + moreV, t + moreT, z, w)).toBeGreaterThanOrEqual(
          combinedScrewUse(v, t, z, w) - 1e-9,
        );
      }),
    );
  });
  it('is nothing without load', () => expect(combinedScrewUse(0, 0, 80, 150)).toBe(0));
  it('refuses an angle past 90°', () => {
    expect(() => combinedScrewCapacity_lb(80, 150, 91)).toThrow(/angle_deg/);
  });
});
