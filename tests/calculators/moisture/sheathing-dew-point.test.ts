import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import {
  meanOfThreeColdest,
  sheathingDewPoint,
} from '../../../src/calculators/moisture/sheathing-dew-point.ts';

const INDOOR = { temp_f: 70, rh: 0.35 };
const resistance = fc.double({ min: 0.5, max: 60, noNaN: true });
const winter = fc.double({ min: -40, max: 65, noNaN: true });

describe('sheathingDewPoint', () => {
  // By hand: share (20 - 14)/20 = 0.3; 20 + 50 · 0.3 = 35 °F; indoor dew point 41.1 °F, so 6.1 °F too cold;
  // share needed (41.12 - 20)/(70 - 20) = 0.4224
  it('matches a hand calculation', () => {
    const found = sheathingDewPoint(
      { r_inside_of_sheathing: 14, r_total: 20, winter_mean_temp_f: 20 },
      INDOOR,
    );
    expect(found.exterior_r_share).toBeCloseTo(0.3, 12);
    expect(found.sheathing_temp_f).toBeCloseTo(35, 12);
    expect(found.indoor_dew_point_f).toBeCloseTo(41.12, 2);
    expect(found.dew_point_margin_f).toBeCloseTo(-6.12, 2);
    expect(found.min_exterior_r_share).toBeCloseTo(0.4224, 3);
  });

  it('gives null, never a pass, where the climate is not known', () => {
    const found = sheathingDewPoint(
      { r_inside_of_sheathing: 14, r_total: 20, winter_mean_temp_f: null },
      INDOOR,
    );
    expect(found.sheathing_temp_f).toBeNull();
    expect(found.dew_point_margin_f).toBeNull();
    expect(found.min_exterior_r_share).toBeNull();
    expect(found.exterior_r_share).toBeCloseTo(0.3, 12);
  });

  it('asks for no share where the winter is warmer than the indoor dew point', () => {
    const found = sheathingDewPoint(
      { r_inside_of_sheathing: 14, r_total: 15, winter_mean_temp_f: 55 },
      INDOOR,
    );
    expect(found.min_exterior_r_share).toBe(0);
    expect(found.dew_point_margin_f).toBeGreaterThan(0);
  });

  it('is at outdoor temperature with all resistance inside', () => {
    const found = sheathingDewPoint(
      { r_inside_of_sheathing: 20, r_total: 20, winter_mean_temp_f: 10 },
      INDOOR,
    );
    expect(found.sheathing_temp_f).toBe(10);
  });

  it('never gets colder in winter with more exterior insulation', () => {
    fc.assert(
      fc.property(
        resistance,
        resistance,
        fc.double({ min: 0, max: 40, noNaN: true }),
        winter,
        (inside, outside, more, t) => {
          const before = sheathingDewPoint(
            { r_inside_of_sheathing: inside, r_total: inside + outside, winter_mean_temp_f: t },
            INDOOR,
          );
          const after = sheathingDewPoint(
            { r_inside_of_sheathing: inside, r_total: inside + outside + more, winter_mean_temp_f: t },
            INDOOR,
          );
          expect(after.sheathing_temp_f ?? Number.NaN).toBeGreaterThanOrEqual(
            (before.sheathing_temp_f ?? Number.NaN) - 1e-9,
          );
        },
      ),
    );
  });

  it('has a margin exactly when the exterior share reaches its minimum', () => {
    fc.assert(
      fc.property(resistance, resistance, winter, (inside, outside, t) => {
        const found = sheathingDewPoint(
          { r_inside_of_sheathing: inside, r_total: inside + outside, winter_mean_temp_f: t },
          INDOOR,
        );
        const margin = found.dew_point_margin_f ?? Number.NaN;
        fc.pre(Math.abs(margin) > 1e-6);
        expect(margin > 0).toBe(found.exterior_r_share > (found.min_exterior_r_share ?? Number.NaN));
      }),
    );
  });

  it('does not depend on the unit system', () => {
    fc.assert(
      fc.property(resistance, resistance, winter, (inside, outside, t) => {
        const us = sheathingDewPoint(
          { r_inside_of_sheathing: inside, r_total: inside + outside, winter_mean_temp_f: t },
          INDOOR,
        );
        // The same wall in SI, worked as heat flow: q = ΔT/R, plane = inside - q·R.
        const te = (t - 32) / 1.8;
        const ti = (70 - 32) / 1.8;
        const q = (ti - te) / ((inside + outside) * 0.1761101838);
        const plane_c = ti - q * inside * 0.1761101838;
        expect(us.sheathing_temp_f).toBeCloseTo(plane_c * 1.8 + 32, 9);
      }),
    );
  });

  it('refuses a plane outside the wall and figures outside the ranges, by name', () => {
    const ask = (r_inside_of_sheathing: number, r_total: number, winter_mean_temp_f: number) => () =>
      sheathingDewPoint({ r_inside_of_sheathing, r_total, winter_mean_temp_f }, INDOOR);
    expect(ask(21, 20, 20)).toThrow(/r_inside_of_sheathing/);
    expect(ask(0, 20, 20)).toThrow(Refusal);
    expect(ask(10, 20, 200)).toThrow(/winter_mean_temp_f/);
    expect(() =>
      sheathingDewPoint(
        { r_inside_of_sheathing: 1, r_total: 2, winter_mean_temp_f: 20 },
        { temp_f: 70, rh: 35 },
      ),
    ).toThrow(/indoor.rh/);
  });
});

describe('meanOfThreeColdest', () => {
  it('finds them wherever they stand', () => {
    expect(meanOfThreeColdest([30, 33, 45, 50, 60, 70, 75, 74, 65, 52, 40, 27])).toBe(30);
  });
  it('is null when a month is not known', () => {
    expect(meanOfThreeColdest([30, 33, 45, null, 60, 70, 75, 74, 65, 52, 40, 27])).toBeNull();
  });
  it('refuses eleven months', () => {
    expect(() => meanOfThreeColdest(new Array(11).fill(30))).toThrow(/twelve/);
  });
});
