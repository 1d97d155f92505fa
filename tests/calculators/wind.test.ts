import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import {
  computeWind,
  edgeZoneWidth_ft,
  elevationFactor,
  exposureCoefficient,
  wallPressuresWithoutMinimum,
  windInputSchema,
} from '../../src/calculators/wind.ts';

const example = {
  standard: 'ASCE 7-16',
  basic_wind_speed_mph: 140,
  exposure: 'C',
  mean_roof_height_ft: 30,
  wall_zone: 5,
  effective_area_ft2: 10,
} as const;

const wind = (input: unknown) => computeWind(parseInput(windInputSchema, input));

const windCase = fc.record({
  standard: fc.constantFrom('ASCE 7-16', 'ASCE 7-22'),
  basic_wind_speed_mph: fc.integer({ min: 85, max: 210 }),
  exposure: fc.constantFrom('B', 'C', 'D'),
  mean_roof_height_ft: fc.integer({ min: 5, max: 50 }),
  wall_zone: fc.constantFrom(4, 5),
  effective_area_ft2: fc.double({ min: 1, max: 1000, noNaN: true }),
});

describe('computeWind', () => {
  it('matches a hand calculation', () => {
    // Kz = 2.01 (30/900)^(2/9.5) = 0.98226; qh = 0.00256 x 0.98226 x 0.85 x 140^2 = 41.893 psf;
    // outward 41.893 x (1.4 + 0.18) = 66.19; inward 41.893 x 1.18 = 49.43; 0.6 of each.
    const result = wind(example);
    expect(result.velocity_pressure_psf).toBeCloseTo(41.89, 1);
    expect(result.strength.outward_psf).toBeCloseTo(-66.19, 1);
    expect(result.strength.inward_psf).toBeCloseTo(49.43, 1);
    expect(result.allowable.outward_psf).toBeCloseTo(-39.71, 1);
    expect(result.allowable.inward_psf).toBeCloseTo(29.66, 1);
  });

  it('scales with the topographic and elevation factors', () => {
    const flat = wind(example).velocity_pressure_psf;
    expect(wind({ ...example, kzt: 1.5 }).velocity_pressure_psf).toBeCloseTo(1.5 * flat, 8);
    expect(wind({ ...example, ke: 0.8 }).velocity_pressure_psf).toBeCloseTo(0.8 * flat, 8);
  });

  it('presses harder on a partially enclosed building', () => {
    // (1.4 + 0.55) / (1.4 + 0.18)
    const partly = wind({ ...example, enclosure: 'partially-enclosed' }).strength.outward_psf;
    expect(partly / wind(example).strength.outward_psf).toBeCloseTo(1.95 / 1.58, 8);
  });

  it('keeps the 16 psf minimum and says when it governs', () => {
    const calm = {
      ...example,
      basic_wind_speed_mph: 85,
      exposure: 'B',
      mean_roof_height_ft: 15,
      wall_zone: 4,
    } as const;
    const result = wind(calm);
    expect(result.strength).toEqual({ inward_psf: 16, outward_psf: -16 });
    expect(result.allowable.outward_psf).toBeCloseTo(-9.6, 10);
    expect(result.notes.join(' ')).toMatch(/16 psf governs inward .* and outward/);
    const bare = wallPressuresWithoutMinimum(parseInput(windInputSchema, calm));
    expect(bare.inward_psf).toBeLessThan(16);
    expect(bare.outward_psf).toBeGreaterThan(-16);
    expect(wind(example).notes.join(' ')).not.toMatch(/governs/);
  });

  it('pushes harder with more speed, height and openness, and less on a larger area', () => {
    fc.assert(
      fc.property(windCase, (c) => {
        const suction = (more: object) =>
          -wallPressuresWithoutMinimum(parseInput(windInputSchema, { ...c, ...more })).outward_psf;
        const base = suction({});
        expect(suction({ basic_wind_speed_mph: c.basic_wind_speed_mph + 10 })).toBeGreaterThan(base);
        expect(suction({ mean_roof_height_ft: c.mean_roof_height_ft + 10 })).toBeGreaterThanOrEqual(base);
        expect(suction({ effective_area_ft2: c.effective_area_ft2 * 2 })).toBeLessThanOrEqual(base + 1e-9);
        expect(suction({ wall_zone: 5 })).toBeGreaterThanOrEqual(suction({ wall_zone: 4 }) - 1e-9);
        expect(suction({ exposure: 'D' })).toBeGreaterThan(suction({ exposure: 'C' }));
        expect(suction({ exposure: 'C' })).toBeGreaterThan(suction({ exposure: 'B' }));
      }),
    );
  });

  it('is flat outside 10 to 500 ft²', () => {
    expect(wind({ ...example, effective_area_ft2: 1 })).toEqual(wind(example));
    expect(wind({ ...example, effective_area_ft2: 2000 })).toEqual(
      wind({ ...example, effective_area_ft2: 500 }),
    );
  });

  it('uses the value at 15 ft below that height', () => {
    expect(exposureCoefficient('ASCE 7-16', 'C', 5)).toBe(exposureCoefficient('ASCE 7-16', 'C', 15));
  });

  it.each([
    ['basic_wind_speed_mph', 84],
    ['basic_wind_speed_mph', 221],
    ['mean_roof_height_ft', 61],
    ['effective_area_ft2', 0],
    ['wall_zone', 3],
    ['exposure', 'A'],
    ['standard', 'ASCE 7-10'],
    ['kzt', 0.5],
    ['ke', Number.NaN],
    ['enclosure', 'open'],
    ['speed', 100],
  ])('refuses %s %s by name', (field, value) => {
    expect(() => wind({ ...example, [field]: value })).toThrow(new RegExp(`^${field}: `));
    expect(() => wind({ ...example, [field]: value })).toThrow(Refusal);
  });
});

describe('helpers', () => {
  it('elevation lowers the pressure: 0.83 at a mile, from memory of ASCE 7 Table 26.9-1', () => {
    expect(elevationFactor(0)).toBe(1);
    expect(elevationFactor(5280)).toBeCloseTo(0.83, 2);
  });

  it('refuses an elevation and a plan dimension outside the method', () => {
    expect(() => elevationFactor(20_000)).toThrow(/elevation_ft/);
    expect(() => edgeZoneWidth_ft(0, 20)).toThrow(/least_dimension_ft/);
    expect(() => edgeZoneWidth_ft(40, 80)).toThrow(/mean_roof_height_ft/);
  });
});
