import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airLayerResistance,
  insideSurfaceResistance,
  outsideSurfaceResistance,
} from '../../../src/calculators/thermal/air-layers.ts';
import {
  slightlyVentilatedR,
  totalRWithAirLayer,
  ventilationOf,
} from '../../../src/calculators/thermal/ventilated-layers.ts';
import { thermalTable } from './read-table.ts';

const iso = thermalTable.iso_6946;

describe('airLayerResistance', () => {
  it('grows with a reflecting face', () => {
    const layer = { thickness_m: 0.02, direction: 'horizontal' } as const;
    const plain = airLayerResistance(iso, layer);
    expect(airLayerResistance(iso, { ...layer, emissivities: [0.05, 0.9] })).toBeGreaterThan(2 * plain);
  });
  it('is the same on both branches at a difference of 5 K, within 0.2 %', () => {
    for (const direction of ['horizontal', 'up', 'down'] as const) {
      // Thick enough for convection to govern in every direction.
      const layer = { thickness_m: 0.2, direction };
      const below = airLayerResistance(iso, layer);
      const above = airLayerResistance(iso, { ...layer, difference_k: 5.001 });
      expect(Math.abs(above / below - 1)).toBeLessThan(0.002);
    }
  });
  it('falls with a larger difference across it', () => {
    const layer = { thickness_m: 0.05, direction: 'horizontal' } as const;
    expect(airLayerResistance(iso, { ...layer, difference_k: 20 })).toBeLessThan(
      airLayerResistance(iso, layer),
    );
  });
  it.each([
    [{ thickness_m: 0.31, direction: 'up' } as const, /thickness_m: 0\.31 .*0 to 0\.3/],
    [{ thickness_m: -0.01, direction: 'up' } as const, /thickness_m/],
    [{ thickness_m: 0.02, direction: 'up', emissivities: [0, 0.9] } as const, /emissivities\[0\]/],
    [{ thickness_m: 0.02, direction: 'up', mean_temp_c: 200 } as const, /mean_temp_c/],
  ])('refuses %j', (layer, message) => {
    expect(() => airLayerResistance(iso, layer)).toThrow(message);
  });
});

describe('surface resistances', () => {
  it('outside, fall with wind', () => {
    expect(outsideSurfaceResistance(iso, 0)).toBeCloseTo(0.116, 3);
    expect(outsideSurfaceResistance(iso, 10)).toBeLessThan(outsideSurfaceResistance(iso, 4));
    expect(() => outsideSurfaceResistance(iso, -1)).toThrow(/wind_m_s/);
  });
  it('inside, fall with temperature', () => {
    expect(insideSurfaceResistance(iso, 'up', 30)).toBeLessThan(insideSurfaceResistance(iso, 'up', 10));
  });
});

describe('ventilated layers', () => {
  it.each([
    [0, 'unventilated'],
    [500, 'unventilated'],
    [501, 'slightly-ventilated'],
    [1499, 'slightly-ventilated'],
    [1500, 'well-ventilated'],
  ] as const)('%d mm² per m is %s', (openings, kind) => {
    expect(ventilationOf(iso, openings)).toBe(kind);
  });
  it('interpolates total resistance between the limits', () => {
    expect(slightlyVentilatedR(iso, 500, 3, 2)).toBe(3);
    expect(slightlyVentilatedR(iso, 1000, 3, 2)).toBeCloseTo(2.5, 12);
    expect(slightlyVentilatedR(iso, 1500, 3, 2)).toBe(2);
    expect(() => slightlyVentilatedR(iso, 1600, 3, 2)).toThrow(/500 to 1500/);
  });
  const wall = {
    inner_r: 3,
    air_layer_r: 0.18,
    outer_r: 0.1,
    film_outside_r: 0.04,
    film_still_air_r: 0.13,
    openings_mm2_per_m: 0,
  };
  it('count cladding and air when sealed, and neither when well ventilated', () => {
    expect(totalRWithAirLayer(iso, wall)).toBeCloseTo(3.32, 12);
    expect(totalRWithAirLayer(iso, { ...wall, openings_mm2_per_m: 20_000 })).toBeCloseTo(3.13, 12);
  });
  it('never gain from more opening', () => {
    const openings = fc.double({ min: 0, max: 3000, noNaN: true });
    fc.assert(
      fc.property(openings, openings, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(totalRWithAirLayer(iso, { ...wall, openings_mm2_per_m: more })).toBeLessThanOrEqual(
          totalRWithAirLayer(iso, { ...wall, openings_mm2_per_m: less }) + 1e-12,
        );
      }),
    );
  });
});
