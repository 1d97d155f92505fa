import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import {
  dewPoint,
  dewPointOfAir,
  relativeHumidity,
  saturationPressure,
  saturationPressureOverWater,
  vapourConcentration,
  vapourPressure,
  vapourPressureOfWeather,
} from '../../../src/calculators/moisture/psychrometrics.ts';

const temp = fc.double({ min: -60, max: 80, noNaN: true });
const share = fc.double({ min: 0.01, max: 1, noNaN: true });

describe('saturationPressure', () => {
  // By hand: exp(17.269 · 20 / 257.3) = exp(1.342324) = 3.82793; 610.5 · 3.82793 = 2336.95
  it('matches a hand calculation over water', () => {
    expect(saturationPressure(20)).toBeCloseTo(2336.95, 1);
  });
  // By hand: exp(21.875 · -10 / 255.5) = exp(-0.856164) = 0.424788; 610.5 · 0.424788 = 259.33
  it('matches a hand calculation over ice', () => {
    expect(saturationPressure(-10)).toBeCloseTo(259.33, 1);
  });
  it('has no step at the freezing point', () => {
    expect(saturationPressure(0)).toBe(610.5);
    expect(saturationPressure(-1e-9)).toBeCloseTo(610.5, 6);
  });
  it('rises with temperature', () => {
    fc.assert(
      fc.property(temp, temp, (a, b) => {
        fc.pre(b - a > 1e-6);
        expect(saturationPressure(b)).toBeGreaterThan(saturationPressure(a));
      }),
    );
  });
  it('lies lower over ice than over supercooled water', () => {
    for (let t = -60; t < 0; t += 1) {
      expect(saturationPressure(t)).toBeLessThan(saturationPressureOverWater(t));
    }
  });
  it.each([-60.1, 80.1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d °C', (t) => {
    expect(() => saturationPressure(t)).toThrow(Refusal);
    expect(() => saturationPressureOverWater(t)).toThrow(/from -60 to 80/);
  });
});

describe('dewPoint', () => {
  it('gives the temperature back over the whole range', () => {
    fc.assert(
      fc.property(temp, (t) => {
        expect(Math.abs(dewPoint(saturationPressure(t)) - t)).toBeLessThan(1e-9);
      }),
    );
  });
  it('never lies above the air temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: -19, max: 80, noNaN: true }), share, (t, rh) => {
        expect(dewPointOfAir(t, rh)).toBeLessThanOrEqual(t + 1e-9);
      }),
    );
  });
  it('refuses air without vapour, and a pressure beyond 80 °C', () => {
    expect(() => dewPoint(0)).toThrow(Refusal);
    expect(() => dewPoint(60_000)).toThrow(Refusal);
  });
});

describe('humidity conversions', () => {
  it('turn humidity into pressure and back', () => {
    fc.assert(
      fc.property(temp, share, (t, rh) => {
        expect(relativeHumidity(t, vapourPressure(t, rh))).toBeCloseTo(rh, 12);
      }),
    );
  });
  it('read a weather record over water: the same as the plain form above freezing, more below', () => {
    expect(vapourPressureOfWeather(10, 0.7)).toBe(vapourPressure(10, 0.7));
    expect(vapourPressureOfWeather(-10, 0.7)).toBeGreaterThan(vapourPressure(-10, 0.7));
  });
  // By hand: 1168.5 Pa / (461.5 · 293.15 K) = 8.637e-3 kg/m³
  it('give grams per cubic metre', () => {
    expect(vapourConcentration(20, 1168.5)).toBeCloseTo(8.637, 3);
  });
  it('refuse a humidity in percent or below nought', () => {
    expect(() => vapourPressure(20, 50)).toThrow(/rh/);
    expect(() => vapourPressure(20, -0.1)).toThrow(Refusal);
    expect(() => vapourPressureOfWeather(20, 1.2)).toThrow(Refusal);
    expect(() => relativeHumidity(20, -1)).toThrow(Refusal);
    expect(() => vapourConcentration(20, -1)).toThrow(Refusal);
  });
});
