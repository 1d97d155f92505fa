import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { monthlyCondensation } from '../../src/calculators/moisture/monthly-condensation.ts';
import { saturationPressure } from '../../src/calculators/moisture/psychrometrics.ts';
import type { WallLayers } from '../../src/calculators/moisture/wall-planes.ts';
import { anyWall, DAY_S, steadyIndoors, winterMonth } from '../calculators/moisture/wall-cases.ts';

// The same physics worked in another way: the tangent construction is the solution of an obstacle problem
// (p'' = 0 where p < psat, p <= psat), which projected relaxation solves without any geometry.
const DELTA = 2e-10;

/** Saturation pressures at the planes of a wall that the method does not cut further. */
function planePressures(wall: WallLayers, ti: number, te: number): number[] {
  const total = wall.r_m2kw.reduce((sum, r) => sum + r, wall.rsi_m2kw + wall.rse_m2kw);
  let r = wall.rsi_m2kw;
  return [r, ...wall.r_m2kw.map((layer) => (r += layer))].map((at) =>
    saturationPressure(ti - ((ti - te) * at) / total),
  );
}

/** Relaxation; planes with water are held at saturation. Returns the rates at the inner planes, kg/(m²·s). */
function relaxedRates(
  sd: readonly number[],
  psat: readonly number[],
  pi: number,
  pe: number,
  water: readonly number[],
  rounds: number,
): number[] {
  const at = (list: readonly number[], i: number) => list[i] ?? Number.NaN;
  const p = [...psat];
  p[0] = pi;
  p[sd.length] = pe;
  for (let round = 0; round < rounds; round++) {
    for (let k = 1; k < sd.length; k++) {
      const a = 1 / at(sd, k - 1);
      const b = 1 / at(sd, k);
      const free = (at(p, k - 1) * a + at(p, k + 1) * b) / (a + b);
      p[k] = at(water, k) > 1e-9 ? at(psat, k) : Math.min(at(psat, k), free);
    }
  }
  return psat.map((_, k) =>
    k === 0 || k === sd.length
      ? 0
      : DELTA * ((at(p, k - 1) - at(p, k)) / at(sd, k - 1) - (at(p, k) - at(p, k + 1)) / at(sd, k)),
  );
}

describe('tangent construction against relaxation of the obstacle problem', () => {
  it('gives the same rates at every plane', () => {
    fc.assert(
      fc.property(anyWall(0.25), winterMonth, (drawn, month) => {
        // Relaxation creeps where neighbouring layers differ a thousandfold: here by twenty at most.
        const wall = { ...drawn, sd_m: drawn.sd_m.map((sd) => 0.5 + sd / 2) };
        const year = steadyIndoors(
          { temp_c: 20, rh: month.inside_rh },
          Array(12).fill({ temp_c: month.outside_c, rh: month.outside_rh }),
        );
        const result = monthlyCondensation(wall, year);
        fc.pre(result.inside_capped.length === 0 && result.outside_capped.length === 0);
        const psat = planePressures(wall, 20, month.outside_c);
        const none = psat.map(() => 0);
        const rates = relaxedRates(
          wall.sd_m,
          psat,
          year.inside_pa[0] ?? 0,
          year.outside_pa[0] ?? 0,
          none,
          4000,
        );
        const expected = rates.reduce((sum, rate) => sum + Math.max(0, rate), 0) * 30 * DAY_S;
        expect(Math.abs((result.months[0]?.condensate_kg_m2 ?? Number.NaN) - expected)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('monthly method against hour-by-hour stepping', () => {
  it('agrees through a whole year with two planes that wet and dry', () => {
    const wall = { r_m2kw: [0.17, 0.1, 0.06], sd_m: [1, 1, 2], rsi_m2kw: 0.13, rse_m2kw: 0.04 };
    const outside = [-8, -9, -4, 3, 9, 14, 17, 16, 12, 6, 0, -5].map((temp_c) => ({ temp_c, rh: 0.8 }));
    const year = steadyIndoors({ temp_c: 20, rh: 0.55 }, outside);
    const result = monthlyCondensation(wall, year);
    const water = [0, 0, 0, 0];
    for (const month of result.months) {
      const i = month.index;
      const psat = planePressures(wall, 20, outside[i]?.temp_c ?? Number.NaN);
      for (let step = 0; step < 720; step++) {
        const rates = relaxedRates(
          wall.sd_m,
          psat,
          year.inside_pa[i] ?? 0,
          year.outside_pa[i] ?? 0,
          water,
          100,
        );
        for (const [k, rate] of rates.entries()) {
          water[k] = Math.max(0, (water[k] ?? 0) + rate * 3600);
        }
      }
      const held = water.reduce((sum, w) => sum + w, 0);
      // One hour of drying is the error of the stepping: about 2e-7 kg/(m²·s) · 3600 s.
      expect(Math.abs(month.accumulated_kg_m2 - held), `month ${i}`).toBeLessThan(0.001);
    }
    expect(result.peak_kg_m2).toBeGreaterThan(0.1);
    expect(result.dries_out).toBe(true);
  });
});

describe('units', () => {
  // The same flow in US units: perm · inHg = grain/(h·ft²); 1 grain = 64.79891 mg, 1 inHg = 3386.389 Pa.
  it('give the same condensate worked in perms and grains', () => {
    const permsInside = 5;
    const permsOutside = 0.8;
    const year = steadyIndoors({ temp_c: 20, rh: 0.5 }, Array(12).fill({ temp_c: -20, rh: 0.8 }));
    const wall = {
      r_m2kw: [0.25, 0.21],
      sd_m: [3.4957 / permsInside, 3.4957 / permsOutside],
      rsi_m2kw: 0.13,
      rse_m2kw: 0.17,
    };
    const inHg = (pa: number) => pa / 3386.389;
    const grains_h_ft2 =
      permsInside * inHg(0.5 * 2336.95 - 610.5) - permsOutside * inHg(610.5 - 0.8 * 102.74);
    const kg_m2 = (grains_h_ft2 * 24 * 30 * 64.79891e-6) / 0.09290304;
    const found = monthlyCondensation(wall, year).months[0]?.condensate_kg_m2 ?? Number.NaN;
    expect(Math.abs(found / kg_m2 - 1)).toBeLessThan(2e-4);
  });
});
