import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moistureProfile } from '../../../src/calculators/moisture/moisture-profile.ts';
import { saturationPressure, vapourPressure } from '../../../src/calculators/moisture/psychrometrics.ts';
import { anyWall, winterMonth } from './wall-cases.ts';

const WALL = { r_m2kw: [0.25, 0.21], sd_m: [1, 4], rsi_m2kw: 0.13, rse_m2kw: 0.17 };

describe('moistureProfile', () => {
  // By hand: R total 0.76, boundary at 0.38, half way: (20 + 0)/2 = 10 °C, saturation 1227 Pa.
  // Dry room: 0.3 · 2337 = 701 Pa; outdoors 0.8 · 610.5 = 488.4 Pa; after 1 of 5 m: 701 - (701 - 488.4)/5 = 658.5 Pa
  it('matches a hand calculation of a dry wall', () => {
    const points = moistureProfile(WALL, {
      inside_temp_c: 20,
      inside_pa: vapourPressure(20, 0.3),
      outside_temp_c: 0,
      outside_pa: vapourPressure(0, 0.8),
    });
    expect(points.map((p) => p.layer)).toEqual([-1, 0, 1]);
    expect(points[1]?.temp_c).toBeCloseTo(10, 10);
    expect(points[1]?.vapour_pa).toBeCloseTo(658.5, 0);
    expect(points[1]?.condenses).toBe(false);
    expect(points[2]?.vapour_pa).toBeCloseTo(488.4, 6);
  });

  it('shows where the line touches saturation: dew point equals temperature there', () => {
    const points = moistureProfile(WALL, {
      inside_temp_c: 20,
      inside_pa: vapourPressure(20, 0.6),
      outside_temp_c: -20,
      outside_pa: vapourPressure(-20, 0.8),
    });
    expect(points[1]?.condenses).toBe(true);
    expect(points[1]?.dew_point_c).toBeCloseTo(points[1]?.temp_c ?? Number.NaN, 9);
  });

  it('cools from inside to outside and never passes saturation', () => {
    fc.assert(
      fc.property(anyWall(4), winterMonth, (wall, month) => {
        const points = moistureProfile(wall, {
          inside_temp_c: 20,
          inside_pa: vapourPressure(20, month.inside_rh),
          outside_temp_c: month.outside_c,
          outside_pa: vapourPressure(month.outside_c, month.outside_rh),
        });
        expect(points).toHaveLength(wall.r_m2kw.length + 1);
        for (const [i, point] of points.entries()) {
          expect(point.temp_c).toBeLessThanOrEqual((points[i - 1]?.temp_c ?? 20) + 1e-9);
          expect(point.vapour_pa).toBeLessThanOrEqual(saturationPressure(point.temp_c) * (1 + 1e-9));
        }
      }),
    );
  });

  it('has no dew point for air that is bone dry', () => {
    const points = moistureProfile(WALL, {
      inside_temp_c: 20,
      inside_pa: 0,
      outside_temp_c: 0,
      outside_pa: 0,
    });
    expect(points.every((p) => p.dew_point_c === null)).toBe(true);
  });
});
