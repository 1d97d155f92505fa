import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import { iso6946Combined } from '../../../src/calculators/thermal/iso-6946.ts';
import {
  type FramedWall,
  framedLayerR,
  isothermalPlanesU,
  parallelPathU,
} from '../../../src/calculators/thermal/parallel-path.ts';
import { thermalTable } from './read-table.ts';

const wall = { series_r: 4, cavity_r: 16, framing_r: 6, framing_fraction: 0.25 };

/** Walls of ordinary proportions, within reach of all three methods. */
const anyWall: fc.Arbitrary<FramedWall> = fc.record({
  series_r: fc.double({ min: 1, max: 30, noNaN: true }),
  cavity_r: fc.double({ min: 0.5, max: 40, noNaN: true }),
  framing_r: fc.double({ min: 0.5, max: 15, noNaN: true }),
  framing_fraction: fc.double({ min: 0, max: 1, noNaN: true }),
});

describe('parallelPathU', () => {
  // By hand: 0.75/20 + 0.25/10 = 0.0625
  it('matches a hand calculation', () => {
    expect(parallelPathU(wall)).toBeCloseTo(0.0625, 12);
  });
  it('is the plain series sum without framing', () => {
    expect(parallelPathU({ ...wall, framing_fraction: 0 })).toBeCloseTo(1 / 20, 12);
  });
  it('falls as any layer grows', () => {
    const more = fc.double({ min: 0.01, max: 20, noNaN: true });
    const key = fc.constantFrom('series_r', 'cavity_r', 'framing_r');
    fc.assert(
      fc.property(anyWall, more, key, (w, extra, which) => {
        const thicker = { ...w, [which]: w[which] + extra };
        expect(parallelPathU(thicker)).toBeLessThanOrEqual(parallelPathU(w) + 1e-12);
      }),
    );
    expect(parallelPathU({ ...wall, cavity_r: 17 })).toBeLessThan(parallelPathU(wall));
  });
  it.each([
    [{ ...wall, framing_fraction: 1.01 }, /framing_fraction: 1\.01 .*0 to 1/],
    [{ ...wall, framing_fraction: -0.01 }, /framing_fraction/],
    [{ ...wall, cavity_r: -1 }, /cavity_r: -1/],
    [{ ...wall, framing_r: -1 }, /framing_r: -1/],
    [{ ...wall, series_r: Number.NaN }, /series_r/],
    [{ ...wall, series_r: 0, cavity_r: 0 }, /above 0/],
  ])('refuses %j', (bad, message) => {
    expect(() => parallelPathU(bad)).toThrow(Refusal);
    expect(() => parallelPathU(bad)).toThrow(message);
  });
});

describe('isothermalPlanesU', () => {
  // By hand: layer 1/(0.75/16 + 0.25/6) = 11.2941…; 4 + 11.2941 = 15.2941
  it('matches a hand calculation', () => {
    expect(framedLayerR(wall)).toBeCloseTo(11.294118, 6);
    expect(1 / isothermalPlanesU(wall)).toBeCloseTo(15.294118, 6);
  });
  it('refuses a framed layer without resistance', () => {
    expect(() => isothermalPlanesU({ ...wall, cavity_r: 0 })).toThrow(/cavity_r: 0 .*0\.91/);
  });
});

describe('the three methods', () => {
  it('put parallel paths above the ISO mean and isothermal planes below it', () => {
    const ratioAllowed = {
      ...thermalTable.iso_6946,
      max_limit_ratio: { value: 1e9, source: 'test', provenance: 'memory' as const },
    };
    fc.assert(
      fc.property(anyWall, (w) => {
        const iso = iso6946Combined(ratioAllowed, w);
        const slack = 1e-9 * iso.r;
        expect(1 / parallelPathU(w)).toBeGreaterThanOrEqual(iso.r - slack);
        expect(1 / isothermalPlanesU(w)).toBeLessThanOrEqual(iso.r + slack);
      }),
    );
  });
  it('agree where framing and cavity have the same resistance', () => {
    const even = { ...wall, cavity_r: 7, framing_r: 7 };
    expect(parallelPathU(even)).toBeCloseTo(1 / 11, 12);
    expect(isothermalPlanesU(even)).toBeCloseTo(1 / 11, 12);
  });
});
