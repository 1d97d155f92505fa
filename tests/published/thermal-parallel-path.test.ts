import { describe, expect, it } from 'vitest';
import { parallelPathU } from '../../src/calculators/thermal/parallel-path.ts';
import { transmittanceToSi } from '../../src/calculators/thermal/si-units.ts';
import { steelFrameU } from '../../src/calculators/thermal/steel-frame.ts';
import { thermalTable } from '../calculators/thermal/read-table.ts';

/** Half of the last printed figure (0.001) with a hair for the rounding of printed inputs. */
const PRINTED = 0.0006;

const deckU = (r: number) =>
  parallelPathU({ series_r: 0.61 + 0.17, cavity_r: r, framing_r: 1, framing_fraction: 0 });

describe('series resistances and films: roofs with insulation entirely above deck', () => {
  // ASHRAE 90.1-2010 Table A2.2 and 90.1-2013/2016 Table A2.2.3, as reprinted in state energy codes.
  const seen: readonly (readonly [number, number])[] = [
    [1, 0.562],
    [2, 0.36],
    [3, 0.265],
    [4, 0.209],
    [5, 0.173],
    [6, 0.147],
    [7, 0.129],
    [8, 0.114],
    [9, 0.102],
    [10, 0.093],
    [11, 0.085],
    [12, 0.078],
    [13, 0.073],
    [14, 0.068],
    [15, 0.063],
    [16, 0.06],
    [17, 0.056],
    [18, 0.053],
    [19, 0.051],
    [20, 0.048],
    [21, 0.046],
    [22, 0.044],
    [23, 0.042],
    [24, 0.04],
    [25, 0.039],
    [26, 0.037],
    [27, 0.036],
    [28, 0.035],
    [29, 0.034],
    [30, 0.032],
    [35, 0.028],
    [40, 0.025],
    [45, 0.022],
    [50, 0.02],
    [55, 0.018],
    [60, 0.016],
  ];
  it.each(seen)('R-%d gives U %f', (r, u) => {
    expect(Math.abs(deckU(r) - u)).toBeLessThanOrEqual(PRINTED);
  });
  it('no insulation gives U 1.282', () => {
    expect(Math.abs(deckU(0) - 1.282)).toBeLessThanOrEqual(PRINTED);
  });
});

/** ASHRAE 90.1 Appendix A base layers of framed walls: films, two 5/8 in. gypsum boards, stucco. */
const BASE_R = 0.68 + 0.56 + 0.56 + 0.08 + 0.17;

const woodU = (cavity_r: number, ci_r: number, framing_r = 4.375, framing_fraction = 0.25) =>
  parallelPathU({ series_r: BASE_R + ci_r, cavity_r, framing_r, framing_fraction });

describe('wood-framed walls by parallel paths', () => {
  // Code maxima paired with their R options, Ontario Supplementary Standard SB-10 Table SB5.5-5, printed in SI.
  it.each([
    [7.5, 0.29],
    [3.8, 0.36],
  ])('3.5 in. studs, R-13 + R-%f continuous give %f W/(m²·K)', (ci_r, u_si) => {
    expect(Math.abs(transmittanceToSi(woodU(13, ci_r)) - u_si)).toBeLessThanOrEqual(0.006);
  });

  // Trade article on 90.1 arithmetic: effective with 25 % framing; layers outside the figure from 90.1.
  it('5.5 in. studs with R-20.5 give U 0.061', () => {
    expect(Math.abs(woodU(20.5, 0, 6.875) - 0.061)).toBeLessThanOrEqual(PRINTED);
  });

  // State energy-office R-value table with a worked wall; its printed total is 12.03, its own paths give 12.07.
  it('3.5 in. studs, R-13, plywood and bevel siding give R-12.03 within 0.06', () => {
    const series_r = 0.68 + 0.45 + 0.63 + 0.8 + 0.17;
    const u = parallelPathU({ series_r, cavity_r: 13, framing_r: 4.38, framing_fraction: 0.25 });
    expect(Math.abs(1 / u - 12.03)).toBeLessThanOrEqual(0.06);
  });

  // UK home-energy page, brick wall with battens, path totals 0.59 and 0.88 m²·K/W, 10 % battens.
  it('battens over brick give 0.61 m²·K/W', () => {
    const u = parallelPathU({ series_r: 0, cavity_r: 0.59, framing_r: 0.88, framing_fraction: 0.1 });
    expect(Math.abs(1 / u - 0.61)).toBeLessThanOrEqual(0.005);
  });
});

describe('wood-framed walls, 3.5 in. studs at 16 in., ASHRAE 90.1 Table A3.4.3.1 from memory', () => {
  const rows: readonly (readonly [number, readonly (number | null)[]])[] = [
    [0, [0.292, 0.223, null, 0.152, 0.132, 0.116, 0.104, 0.094, null, 0.079]],
    [11, [0.096, 0.087, 0.079, 0.073, 0.068, 0.063, 0.059, 0.056, null, 0.05]],
    [13, [null, 0.08, 0.074, 0.068, 0.063, 0.059, 0.056, 0.053, null, 0.047]],
    [15, [null, 0.075, 0.069, 0.064, 0.06, 0.056, 0.053, null, 0.047, 0.045]],
  ];
  const cells = rows.flatMap(([cavity_r, us]) =>
    us.flatMap((u, ci_r) => (u === null ? [] : [[cavity_r, ci_r, u] as const])),
  );
  it.each(cells)('from memory: R-%d + R-%d continuous give U %f', (cavity_r, ci_r, u) => {
    const counted = cavity_r === 0 ? thermalTable.empty_cavity_r.value : cavity_r;
    expect(Math.abs(woodU(counted, ci_r) - u)).toBeLessThanOrEqual(PRINTED);
  });
});

describe('residential code pairs of U-factor and R-value (2018 Tables R402.1.2 and R402.1.4, public data copy)', () => {
  // The layers are the usual ones: 1/2 in. gypsum, 7/16 in. OSB, siding, 25 % framing (from memory).
  const series_r = 0.68 + 0.45 + 0.62 + 0.62 + 0.17;
  it.each([
    ['R-13', 13, 0, 4.375, 0.084],
    ['R-20', 20, 0, 6.875, 0.06],
    ['R-20 + R-5 continuous', 20, 5, 6.875, 0.045],
  ])('%s comes to the printed U-factor', (_, cavity_r, ci_r, framing_r, u) => {
    const wall = { series_r: series_r + ci_r, cavity_r, framing_r, framing_fraction: 0.25 };
    expect(Math.abs(parallelPathU(wall) - u)).toBeLessThanOrEqual(PRINTED);
  });
  it.each([
    ['R-13 + R-5 continuous', 5, 0.06],
    ['R-13 + R-10 continuous', 10, 0.045],
  ])('%s lies below the printed U-factor it stands beside', (_, ci_r, u) => {
    const wall = { series_r: series_r + ci_r, cavity_r: 13, framing_r: 4.375, framing_fraction: 0.25 };
    expect(parallelPathU(wall)).toBeLessThanOrEqual(u);
  });
});

describe('steel-framed walls by cavity correction factors', () => {
  const steelU = (depth_in: number, spacing_in: number, insulation_r: number, ci_r = 0) =>
    steelFrameU(thermalTable.steel_cavities, { series_r: BASE_R + ci_r, depth_in, spacing_in, insulation_r });

  // ASHRAE 90.1-2016 Table A3.3.3.1, one cell quoted in an engineering question-and-answer thread.
  it('6 in. studs at 16 in. with R-19 give U 0.109', () => {
    expect(Math.abs(steelU(6, 16, 19) - 0.109)).toBeLessThanOrEqual(PRINTED);
  });

  // Ontario Supplementary Standard SB-10 Table SB5.5-5, printed in SI.
  it('3.5 in. studs at 16 in., R-13 + R-10 continuous give 0.31 W/(m²·K)', () => {
    expect(Math.abs(transmittanceToSi(steelU(3.5, 16, 13, 10)) - 0.31)).toBeLessThanOrEqual(0.006);
  });

  // Effective seen in a building-code forum answer, base layers as above: arithmetic on seen figures.
  it('3.5 in. studs at 16 in. with R-11 give U 0.132', () => {
    expect(Math.abs(steelU(3.5, 16, 11) - 0.132)).toBeLessThanOrEqual(PRINTED);
  });

  it.each([
    [3.5, 16, 0, 0.352],
    [3.5, 24, 13, 0.108],
    [6, 16, 21, 0.106],
  ])('from memory: %f in. studs at %d in. with R-%d give U %f', (depth_in, spacing_in, insulation_r, u) => {
    expect(Math.abs(steelU(depth_in, spacing_in, insulation_r) - u)).toBeLessThanOrEqual(PRINTED);
  });

  // Factors of the IECC 2018 steel-stud table, public data copy (cavity R, factor, unrounded product).
  it.each([
    [3.5, 16, 13, 0.46],
    [3.5, 16, 15, 0.43],
    [3.5, 24, 13, 0.55],
    [3.5, 24, 15, 0.52],
    [6, 16, 19, 0.37],
    [6, 16, 21, 0.35],
    [6, 24, 19, 0.45],
    [6, 24, 21, 0.43],
    [8, 16, 25, 0.31],
    [8, 24, 25, 0.38],
  ])(
    '%f in. at %d in., R-%d: the factor is %f and the effective R is its product within 0.1',
    (depth, spacing, r, factor) => {
      const row = thermalTable.steel_cavities.find(
        (c) => c.depth_in === depth && c.spacing_in === spacing && c.insulation_r === r,
      );
      expect(row?.correction_factor).toBe(factor);
      expect(Math.abs((row?.effective_r ?? 0) - factor * r)).toBeLessThanOrEqual(0.1);
    },
  );
});
