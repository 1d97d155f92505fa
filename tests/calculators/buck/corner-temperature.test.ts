import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import {
  type BuckCorner,
  cornerTemperatureFactor,
} from '../../../src/calculators/buck/corner-temperature.ts';
import { sectionFactor } from './section-solution.ts';

// 0.25 m²·K/W is 1.4195657 h·ft²·°F/Btu (ISO 13788:2012 clause 5, from memory).
const corner: BuckCorner = {
  buck_thickness_in: 1.5,
  covered_in: 2.25,
  reveal_in: 6.75,
  wood_r_per_in: 1.25,
  lining_r: 0.45,
  outside_r: 0.17,
  inside_film_r: 1.4195657,
};
const at = (over: Partial<BuckCorner>) => cornerTemperatureFactor({ ...corner, ...over });

describe('cornerTemperatureFactor', () => {
  // U = 1/(1.4196 + 0.45 + 0.9375) = 0.35624; m = √(0.35624/(0.8·1.5)) = 0.54486; tanh(3.678) = 0.99872;
  // B = 0.8·0.54486·0.99872 = 0.43533; A = 1/(2.8125 + 0.17) = 0.33529; wood 0.56490;
  // surface 1 − 0.43510·1.41957·0.35624 = 0.77997.
  it('matches the fin formula worked by hand', () => {
    expect(cornerTemperatureFactor(corner)).toBeCloseTo(0.77997, 4);
  });

  // The accuracy that its description claims.
  it.each([0.75, 1.5])(
    'is at most 0.05 below and 0.01 above two-dimensional solutions, %f in. buck',
    (buck_in) => {
      for (const insulation_in of [1.5, 3, 5.5]) {
        for (const studs_in of [3.5, 5.5]) {
          const covered_in = 2.25;
          const reveal_in = insulation_in + 0.5 + studs_in - covered_in;
          const section = { buck_in, insulation_in, studs_in, covered_in, sheathing_in: 0.5 };
          const difference = at({ buck_thickness_in: buck_in, reveal_in }) - sectionFactor(section);
          expect(difference).toBeGreaterThan(-0.05);
          expect(difference).toBeLessThan(0.01);
        }
      }
    },
  );

  it('is nearly as warm as the room behind much insulation, and cools to the outside without any cover', () => {
    expect(at({ outside_r: 60 })).toBeGreaterThan(0.97);
    expect(at({ covered_in: 0, outside_r: 0.05 })).toBeLessThan(0.55);
  });
  it('without a reveal takes the wood as cold as outdoors: 1 − film · U = 1 − 1.4196/2.8071', () => {
    expect(at({ reveal_in: 0 })).toBeCloseTo(0.49429, 4);
  });

  const n = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  it('lies between outdoors and the room, and never falls with more cover, insulation outside, or reveal', () => {
    const any = fc.record({
      buck_thickness_in: n(0.5, 2),
      covered_in: n(0, 10),
      reveal_in: n(0, 20),
      wood_r_per_in: n(0.5, 2),
      lining_r: n(0, 15),
      outside_r: n(0.05, 40),
      inside_film_r: n(0.1, 4),
    });
    fc.assert(
      fc.property(any, n(0, 2), (one, more) => {
        const factor = cornerTemperatureFactor(one);
        expect(factor).toBeGreaterThanOrEqual(0);
        expect(factor).toBeLessThanOrEqual(1);
        for (const key of ['covered_in', 'outside_r', 'reveal_in'] as const) {
          expect(cornerTemperatureFactor({ ...one, [key]: one[key] + more })).toBeGreaterThanOrEqual(
            factor - 1e-12,
          );
        }
      }),
    );
  });

  it.each([
    ['buck_thickness_in', 3],
    ['covered_in', -1],
    ['reveal_in', 30],
    ['outside_r', 0],
    ['inside_film_r', Number.NaN],
  ])('refuses %s of %f', (field, value) => {
    expect(() => at({ [field]: value })).toThrow(Refusal);
    expect(() => at({ [field]: value })).toThrow(field);
  });
});
