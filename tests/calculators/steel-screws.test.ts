import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import {
  pullOutAllowable_lb,
  pullOverAllowable_lb,
  shearAllowable_lb,
} from '../../src/calculators/steel-screws.ts';

const MIL_33 = { thickness_in: 0.0346, fu_psi: 45_000 };
const MIL_43 = { thickness_in: 0.0451, fu_psi: 45_000 };
const MIL_54 = { thickness_in: 0.0566, fu_psi: 65_000 };

describe('steel screws', () => {
  it('matches hand calculations of pull-out', () => {
    // 0.85 x 0.0451 x 0.190 x 45000 / 3 and 0.85 x 0.0566 x 0.190 x 65000 / 3
    expect(pullOutAllowable_lb(0.19, MIL_43.thickness_in, MIL_43.fu_psi)).toBeCloseTo(109.25, 2);
    expect(pullOutAllowable_lb(0.19, MIL_54.thickness_in, MIL_54.fu_psi)).toBeCloseTo(198.05, 2);
  });

  it('credits a head of at most 1/2 in for pull-over', () => {
    // 1.5 x 0.0346 x 0.5 x 45000 / 3
    expect(pullOverAllowable_lb(0.5, 0.0346, 45_000)).toBeCloseTo(389.25, 2);
    expect(pullOverAllowable_lb(1, 0.0346, 45_000)).toBe(pullOverAllowable_lb(0.5, 0.0346, 45_000));
  });

  it('lets equal thin sheets tilt', () => {
    // 4.2 (0.0346^3 x 0.19)^0.5 x 45000 / 3 = 176.74; bearing 2.7 x 0.0346 x 0.19 x 45000 / 3 = 266.25
    expect(shearAllowable_lb({ diameter_in: 0.19, head_side: MIL_33, thread_side: MIL_33 })).toBeCloseTo(
      176.74,
      1,
    );
  });

  it('holds a thin sheet on a thick one by bearing alone from 2.5 times the thickness', () => {
    const thick = { thickness_in: 2.5 * 0.0346, fu_psi: 45_000 };
    expect(shearAllowable_lb({ diameter_in: 0.19, head_side: MIL_33, thread_side: thick })).toBeCloseTo(
      266.25,
      1,
    );
  });

  it('never jumps and never falls as the stud gets thicker', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.17, noNaN: true }), (t) => {
        const shear = (thickness_in: number) =>
          shearAllowable_lb({
            diameter_in: 0.19,
            head_side: MIL_33,
            thread_side: { thickness_in, fu_psi: 45_000 },
          });
        const step = shear(t + 1e-4) - shear(t);
        expect(step).toBeGreaterThanOrEqual(-1e-9);
        expect(step).toBeLessThan(3);
      }),
    );
  });

  it('refuses screws and steel outside the equations', () => {
    expect(() => pullOutAllowable_lb(0.05, 0.0346, 45_000)).toThrow(/screw_diameter_in/);
    expect(() => pullOutAllowable_lb(0.3, 0.0346, 45_000)).toThrow(Refusal);
    expect(() => pullOutAllowable_lb(0.19, 0.25, 45_000)).toThrow(/stud_thickness_in/);
    expect(() => pullOverAllowable_lb(0.4, 0.0346, 20_000)).toThrow(/furring_fu_psi/);
    expect(() => pullOverAllowable_lb(0, 0.0346, 45_000)).toThrow(/head_diameter_in/);
  });
});
