import { describe, expect, it } from 'vitest';
import {
  airLayerResistance,
  insideSurfaceResistance,
  outsideSurfaceResistance,
} from '../../src/calculators/thermal/air-layers.ts';
import {
  combineLimits,
  type IsoLayer,
  iso6946Combined,
  iso6946Limits,
} from '../../src/calculators/thermal/iso-6946.ts';
import {
  correctionIsNegligible,
  isoAirGapCorrection,
  isoFastenerCorrection,
} from '../../src/calculators/thermal/iso-corrections.ts';
import type { HeatFlow } from '../../src/calculators/thermal/thermal-table.ts';
import { thermalTable } from '../calculators/thermal/read-table.ts';

const iso = thermalTable.iso_6946;
const plain = (r: number): IsoLayer => [{ fraction: 1, r }];

// Scottish building-standards guidance, worked examples of the combined method: 6.B.2 and 6.B.3.
describe('combined method, Scottish guidance 6.B', () => {
  it('6.B.2, timber-framed wall: limits 3.435 and 3.304 m²·K/W, U 0.30', () => {
    const wall = {
      series_r: 0.04 + 0.132 + 0.18 + 0.069 + 0.06 + 0.13,
      cavity_r: 3.5,
      framing_r: 1.167,
      framing_fraction: 0.15,
    };
    const { upper_r, lower_r, u_factor } = iso6946Combined(iso, wall);
    expect(Math.abs(upper_r - 3.435)).toBeLessThanOrEqual(0.0015);
    expect(Math.abs(lower_r - 3.304)).toBeLessThanOrEqual(0.0015);
    expect(Math.abs(u_factor - 0.297)).toBeLessThanOrEqual(0.0005);
  });

  it('6.B.3, two bridged layers: limits 3.617 and 3.136 m²·K/W, U 0.30', () => {
    const layers: IsoLayer[] = [
      plain(0.04),
      plain(0.102 / 0.77),
      plain(0.18),
      [
        { fraction: 0.933, r: 0.125 / 0.11 },
        { fraction: 0.067, r: 0.125 / 0.88 },
      ],
      [
        { fraction: 0.882, r: 0.089 / 0.038 },
        { fraction: 0.118, r: 0.089 / 0.13 },
      ],
      plain(0.0125 / 0.21),
      plain(0.13),
    ];
    const limits = iso6946Limits(layers);
    expect(Math.abs(limits.upper_r - 3.617)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(limits.lower_r - 3.136)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(combineLimits(iso, limits).u_factor - 0.3)).toBeLessThanOrEqual(0.005);
  });
});

// DIN EN ISO 6946, table of unventilated air layers, trade reprint: all 27 cells, printed to 0.01.
describe('unventilated air layers', () => {
  const thickness_mm = [0, 5, 7, 10, 15, 25, 50, 100, 300];
  const printed: Readonly<Record<HeatFlow, readonly number[]>> = {
    horizontal: [0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18],
    up: [0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16],
    down: [0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23],
  };
  const directions = ['horizontal', 'up', 'down'] as const;
  const cells = directions.flatMap((direction) =>
    thickness_mm.map((mm, i) => [direction, mm, printed[direction][i] ?? Number.NaN] as const),
  );
  it('has 27 cells', () => {
    expect(cells).toHaveLength(27);
  });
  it.each(cells)('%s, %d mm: %f m²·K/W', (direction, mm, r) => {
    const computed = airLayerResistance(iso, { thickness_m: mm / 1000, direction });
    expect(Math.round(computed * 100) / 100).toBe(r);
  });
});

// ISO 6946 Annex C gives 0.13, 0.10, 0.17 inside and 0.04 outside; unrounded values of an HVAC engineering library.
describe('surface resistances', () => {
  it.each([
    ['horizontal', 0.1309],
    ['up', 0.0986],
    ['down', 0.1712],
  ] as const)('inside, heat flow %s: %f m²·K/W', (direction, r) => {
    expect(Math.abs(insideSurfaceResistance(iso, direction) - r)).toBeLessThanOrEqual(0.0001);
  });
  it('outside at 4 m/s: 0.0406 m²·K/W', () => {
    expect(Math.abs(outsideSurfaceResistance(iso) - 0.0406)).toBeLessThanOrEqual(0.0001);
  });
  it('the rounded values of the table are the computed ones to two decimals', () => {
    const rounded = iso.surface.rounded_m2kw;
    expect(insideSurfaceResistance(iso, 'horizontal')).toBeCloseTo(rounded.inside_horizontal, 2);
    expect(insideSurfaceResistance(iso, 'up')).toBeCloseTo(rounded.inside_up, 2);
    expect(insideSurfaceResistance(iso, 'down')).toBeCloseTo(rounded.inside_down, 2);
    expect(outsideSurfaceResistance(iso)).toBeCloseTo(rounded.outside, 2);
  });
});

describe('corrections of ISO 6946 Annex F', () => {
  // Hand calculation with the annex's formula: 0.8 · 50 · 1.81e-5 · 4 / 0.05 · 0.5² = 0.01448.
  it('four 4.8 mm steel fasteners per m² through a 50 mm board: 0.01448 W/(m²·K)', () => {
    const delta = isoFastenerCorrection(iso, {
      conductivity_w_mk: 50,
      area_m2: 1.81e-5,
      per_m2: 4,
      insulation_m: 0.05,
      penetration_m: 0.05,
      layer_share: 0.5,
    });
    expect(Math.abs(delta - 0.01448)).toBeLessThanOrEqual(0.00005);
  });
  // Levels 0, 1, 2 of the annex: 0, 0.01, 0.04 W/(m²·K).
  it.each([
    [0, 0],
    [1, 0.01],
    [2, 0.04],
  ] as const)('air-gap level %d over the whole resistance: %f W/(m²·K)', (level, delta) => {
    expect(isoAirGapCorrection(iso, level, 1)).toBe(delta);
  });
  // 3 % rule, two trade articles on DIN EN ISO 6946 and BS EN ISO 6946.
  it('corrections below 3 % of U may be left out, others not', () => {
    expect(correctionIsNegligible(iso, 0.0059, 0.2)).toBe(true);
    expect(correctionIsNegligible(iso, 0.0061, 0.2)).toBe(false);
  });
});
