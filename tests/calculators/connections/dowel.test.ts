import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import {
  bendingYieldStrength_psi,
  type DowelJoint,
  dowelBearingStrength_psi,
  dowelYieldModes_lb,
  YIELD_MODES,
} from '../../../src/calculators/connections/dowel.ts';

const joint = fc.record({
  d: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
  fyb: fc.double({ min: 40_000, max: 140_000, noNaN: true }),
  fes: fc.double({ min: 1500, max: 62_000, noNaN: true }),
  fem: fc.double({ min: 1500, max: 9000, noNaN: true }),
  ls: fc.double({ min: 0.1, max: 4, noNaN: true }),
  lm: fc.double({ min: 0.6, max: 6, noNaN: true }),
  gap: fc.double({ min: 0, max: 6, noNaN: true }),
});

function build(j: {
  d: number;
  fyb: number;
  fes: number;
  fem: number;
  ls: number;
  lm: number;
  gap: number;
}): DowelJoint {
  return {
    bearing_diameter_in: j.d,
    bending_diameter_in: j.d,
    bending_yield_psi: j.fyb,
    side: { bearing_psi: j.fes, length_in: j.ls },
    main: { bearing_psi: j.fem, length_in: j.lm },
    gap_in: j.gap,
  };
}

/** NDS-2018 Table 12.3.1A, single shear, closed forms (12.3-1 to 12.3-6) without the reduction term. */
function closedForms(j: { d: number; fyb: number; fes: number; fem: number; ls: number; lm: number }) {
  const { d, fyb, fes, fem, ls, lm } = j;
  const Re = fem / fes;
  const Rt = lm / ls;
  const k1 =
    (Math.sqrt(Re + 2 * Re ** 2 * (1 + Rt + Rt ** 2) + Rt ** 2 * Re ** 3) - Re * (1 + Rt)) / (1 + Re);
  const k2 = -1 + Math.sqrt(2 * (1 + Re) + (2 * fyb * (1 + 2 * Re) * d ** 2) / (3 * fem * lm ** 2));
  const k3 = -1 + Math.sqrt((2 * (1 + Re)) / Re + (2 * fyb * (2 + Re) * d ** 2) / (3 * fem * ls ** 2));
  return {
    Im: d * lm * fem,
    Is: d * ls * fes,
    II: k1 * d * ls * fes,
    IIIm: (k2 * d * lm * fem) / (1 + 2 * Re),
    IIIs: (k3 * d * ls * fem) / (2 + Re),
    IV: d ** 2 * Math.sqrt((2 * fem * fyb) / (3 * (1 + Re))),
  };
}

describe('dowelYieldModes_lb', () => {
  it('equals the closed forms of the design standard at zero gap', () => {
    fc.assert(
      fc.property(joint, (j) => {
        const general = dowelYieldModes_lb(build({ ...j, gap: 0 }));
        const closed = closedForms(j);
        for (const mode of YIELD_MODES) {
          expect(Math.abs(general[mode] / closed[mode] - 1)).toBeLessThan(1e-8);
        }
      }),
    );
  });

  // By hand: D 0.2, Fe 4000 both sides, L 2 both, Fyb 90,000: q = 800, M = 90,000 × 0.008 / 6 = 120.
  // Mode IV with gap 1: P/800 ... (1/1600 + 1/1600) P² + P − 240 = 0 → P = (−1 + √(1 + 1.2)) / 0.0025 = 193.30.
  it('matches a hand calculation of mode IV with a 1 in. gap', () => {
    const modes = dowelYieldModes_lb(
      build({ d: 0.2, fyb: 90_000, fes: 4000, fem: 4000, ls: 2, lm: 2, gap: 1 }),
    );
    expect(modes.Im).toBeCloseTo(1600, 6);
    expect(modes.IV).toBeCloseTo(193.3, 1);
  });

  it('bends with the bending diameter and bears on the bearing diameter', () => {
    const base = build({ d: 0.2, fyb: 90_000, fes: 4000, fem: 4000, ls: 2, lm: 2, gap: 0 });
    const thin = dowelYieldModes_lb({ ...base, bending_diameter_in: 0.15 });
    const full = dowelYieldModes_lb(base);
    expect(thin.Im).toBe(full.Im);
    expect(thin.II).toBe(full.II);
    // Mode IV without gap goes with √(M q): (0.15/0.2)^1.5.
    expect(thin.IV / full.IV).toBeCloseTo(0.75 ** 1.5, 9);
    expect(thin.IIIs).toBeLessThan(full.IIIs);
  });

  it('never rises with the gap, in any mode', () => {
    fc.assert(
      fc.property(joint, fc.double({ min: 0, max: 4, noNaN: true }), (j, more) => {
        const near = dowelYieldModes_lb(build(j));
        const far = dowelYieldModes_lb(build({ ...j, gap: j.gap + more }));
        for (const mode of YIELD_MODES) expect(far[mode]).toBeLessThanOrEqual(near[mode] * (1 + 1e-12));
      }),
    );
  });

  it('stays accurate for a very wide gap, where mode IV tends to 2 M / g', () => {
    const modes = dowelYieldModes_lb(
      build({ d: 0.2, fyb: 90_000, fes: 4000, fem: 4000, ls: 2, lm: 2, gap: 24 }),
    );
    expect(modes.IV).toBeLessThan(10);
    expect(modes.IV).toBeGreaterThan(9.9 * 0.98);
  });

  it.each([
    ['bearing_diameter_in', 0.05],
    ['bearing_diameter_in', 1.2],
    ['bending_diameter_in', Number.NaN],
    ['bending_yield_psi', 0],
    ['gap_in', -0.1],
  ])('refuses %s = %f by name', (field, value) => {
    const good = build({ d: 0.2, fyb: 90_000, fes: 4000, fem: 4000, ls: 2, lm: 2, gap: 0 });
    expect(() => dowelYieldModes_lb({ ...good, [field]: value })).toThrow(new RegExp(field));
  });
  it('refuses a member without length', () => {
    const good = build({ d: 0.2, fyb: 90_000, fes: 4000, fem: 4000, ls: 2, lm: 2, gap: 0 });
    expect(() => dowelYieldModes_lb({ ...good, main: { bearing_psi: 4000, length_in: 0 } })).toThrow(
      /main\.length_in/,
    );
  });
});

describe('dowelBearingStrength_psi', () => {
  it('looks at the grain from 1/4 in. up only', () => {
    expect(dowelBearingStrength_psi(0.42, 0.249, 'parallel')).toBe(
      dowelBearingStrength_psi(0.42, 0.249, 'perpendicular'),
    );
    expect(dowelBearingStrength_psi(0.42, 0.25, 'parallel')).toBeGreaterThan(
      dowelBearingStrength_psi(0.42, 0.25, 'perpendicular'),
    );
  });
  it('never falls with specific gravity', () => {
    const g = fc.double({ min: 0.3, max: 0.75, noNaN: true });
    fc.assert(
      fc.property(g, g, fc.double({ min: 0.1, max: 1, noNaN: true }), (a, b, d) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        for (const grain of ['parallel', 'perpendicular'] as const) {
          expect(dowelBearingStrength_psi(high, d, grain)).toBeGreaterThanOrEqual(
            dowelBearingStrength_psi(low, d, grain),
          );
        }
      }),
    );
  });
  it('refuses wood lighter than any in the tables', () => {
    expect(() => dowelBearingStrength_psi(0.2, 0.19, 'parallel')).toThrow(/specific_gravity/);
  });
});

describe('bendingYieldStrength_psi', () => {
  it('refuses a nail thicker than the classes and a lag thinner than 1/4 in.', () => {
    expect(() => bendingYieldStrength_psi('nail', 0.4)).toThrow(Refusal);
    expect(() => bendingYieldStrength_psi('lag-screw', 0.2)).toThrow(Refusal);
  });
  it('takes the lower value between lag sizes', () => {
    expect(bendingYieldStrength_psi('lag-screw', 0.28)).toBe(60_000);
    expect(bendingYieldStrength_psi('lag-screw', 0.5)).toBe(45_000);
  });
});
