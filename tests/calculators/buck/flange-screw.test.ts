import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flangeScrewLateral_lb } from '../../../src/calculators/buck/flange-screw.ts';
import { lateralReference } from '../../../src/calculators/connections/lateral.ts';

const NO_10 = { diameter_in: 0.19, root_diameter_in: 0.152, length_in: 3.5, bending_yield_psi: 80_000 };
const lateral = (gap_in: number, penetration_in = 1.5, screw = NO_10) =>
  flangeScrewLateral_lb(screw, gap_in, penetration_in, 0.42, false);

describe('a screw that holds a flange over a gap', () => {
  // Bearing 16,600 × 0.42^1.84 = 3,364 psi, on 0.152 in.: q = 511.3 lb/in. Moment 80,000 × 0.152³/6 = 46.82 lb·in.
  // Reduction 10 × 0.19 + 0.5 = 2.4 (NDS-2018 Table 12.3.1B).
  it('meets equilibrium worked out apart: P·g + P²/2q = M', () => {
    const q = 16_600 * 0.42 ** 1.84 * 0.152;
    const moment = (80_000 * 0.152 ** 3) / 6;
    const yieldLoad = lateral(1.9375) * 2.4;
    expect(yieldLoad * 1.9375 + yieldLoad ** 2 / (2 * q)).toBeCloseTo(moment, 6);
    expect(lateral(1.9375)).toBeCloseTo(23.88 / 2.4, 2);
  });
  it('turns stiff in the wood where it goes in but little', () => {
    // A rigid stake: bearing q over p with one reversal, moments about the load: q(p²/2 − x²)=... solved by hand for g = 1, p = 0.5.
    const q = 16_600 * 0.42 ** 1.84 * 0.152;
    const p = 0.5;
    const g = 1;
    // Reversal at depth x from the face: P = q(2x − p); moment about the face: P·g = q(p²/2 − x²).
    const x = -g + Math.sqrt(g ** 2 + p * g + p ** 2 / 2);
    expect(lateral(g, p) * 2.4).toBeCloseTo(q * (2 * x - p), 6);
  });
  it('holds less than the same screw in a wood side member across the same gap', () => {
    for (const gap_in of [0.5, 1, 1.9375]) {
      const { reference_lb } = lateralReference({
        fastener: 'wood-screw',
        diameter_in: 0.19,
        root_diameter_in: 0.152,
        bending_yield_psi: 80_000,
        side: { length_in: 1.5, specific_gravity: 0.42 },
        main: { length_in: 1.5, specific_gravity: 0.42 },
        gap_in,
        load_to_grain: 'perpendicular',
      });
      expect(lateral(gap_in)).toBeLessThan(reference_lb);
      // With a hinge at one end only, between half of it (a wide gap) and all.
      expect(lateral(gap_in)).toBeGreaterThan(0.45 * reference_lb);
    }
  });
  it('holds less over a wider gap, more with more wood behind it', () => {
    const gap = fc.double({ min: 0, max: 4, noNaN: true });
    fc.assert(
      fc.property(gap, gap, fc.double({ min: 0.3, max: 3, noNaN: true }), (a, b, p) => {
        expect(lateral(Math.max(a, b), p)).toBeLessThanOrEqual(lateral(Math.min(a, b), p) + 1e-9);
        expect(lateral(a, p + 0.5)).toBeGreaterThanOrEqual(lateral(a, p) - 1e-9);
      }),
    );
  });
  it('is refused without penetration', () => {
    expect(() => lateral(1, 0)).toThrow(/penetration_in/);
  });
});
