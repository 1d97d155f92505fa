import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import { saturationPressure, vapourPressure } from '../../../src/calculators/moisture/psychrometrics.ts';
import {
  requiredTemperatureFactor,
  surfaceHumidity,
  temperatureFactor,
  temperatureFactorFromU,
} from '../../../src/calculators/moisture/surface-mould.ts';

describe('temperatureFactor', () => {
  it('is 1 at room temperature, 0 at outdoor temperature, half between', () => {
    expect(temperatureFactor(20, 20, -10)).toBe(1);
    expect(temperatureFactor(-10, 20, -10)).toBe(0);
    expect(temperatureFactor(5, 20, -10)).toBe(0.5);
  });
  it('refuses a room that is not warmer than outdoors', () => {
    expect(() => temperatureFactor(20, 20, 20)).toThrow(Refusal);
    expect(() => temperatureFactor(20, 20, 25)).toThrow(/above the outdoor/);
  });
});

describe('temperatureFactorFromU', () => {
  // By hand: U 0.4 with Rsi 0.25: 1 - 0.1 = 0.9
  it('matches a hand calculation', () => {
    expect(temperatureFactorFromU(0.4, 0.25)).toBeCloseTo(0.9, 12);
  });
  it('refuses a transmittance above 1/Rsi', () => {
    expect(() => temperatureFactorFromU(4.1, 0.25)).toThrow(Refusal);
  });
});

describe('requiredTemperatureFactor', () => {
  const month = (outside_temp_c: number, rh = 0.5) => ({
    inside_temp_c: 20,
    inside_pa: vapourPressure(20, rh),
    outside_temp_c,
  });
  it('takes the coldest month when the room humidity is steady', () => {
    const need = requiredTemperatureFactor([month(-5), month(-12), month(4)], 0.8);
    expect(need.critical_index).toBe(1);
    expect(need.required).toBe(need.by_month[1]);
  });
  it('takes a mild but humid month when that asks for more', () => {
    const need = requiredTemperatureFactor([month(-5, 0.3), month(5, 0.65)], 0.8);
    expect(need.critical_index).toBe(1);
  });
  it('leaves out months without heating, and knows no need when none is heated', () => {
    expect(requiredTemperatureFactor([month(25), month(-5)], 0.8).by_month[0]).toBeNull();
    expect(requiredTemperatureFactor([month(25)], 0.8)).toEqual({
      required: null,
      critical_index: null,
      by_month: [null],
    });
  });
  it('is just the factor at which the surface humidity is critical', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 10, noNaN: true }),
        fc.double({ min: 0.3, max: 0.7, noNaN: true }),
        (te, rh) => {
          const { required } = requiredTemperatureFactor([month(te, rh)], 0.8);
          fc.pre(required !== null && required >= 0 && required <= 1);
          expect(surfaceHumidity(20, te, rh, required ?? 0)).toBeCloseTo(0.8, 9);
        },
      ),
    );
  });
  it('refuses a critical humidity outside 0.5 to 1', () => {
    expect(() => requiredTemperatureFactor([month(0)], 80)).toThrow(Refusal);
  });
});

describe('surfaceHumidity', () => {
  it('is the room humidity on a surface at room temperature', () => {
    expect(surfaceHumidity(20, -5, 0.5, 1)).toBeCloseTo(0.5, 12);
  });
  it('is the room pressure over outdoor saturation on a surface as cold as outdoors', () => {
    expect(surfaceHumidity(20, 5, 0.3, 0)).toBeCloseTo((0.3 * 2336.95) / saturationPressure(5), 4);
  });
});
