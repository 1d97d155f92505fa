import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outdoorHumidity } from '../../src/site/outdoor-humidity.ts';

describe('outdoorHumidity', () => {
  // Ratio of the saturation pressures over water and over ice, Goff and Gratch as in the Smithsonian tables
  // (from memory: 1.10 at -10 °C, 1.21 to 1.22 at -20 °C, 1.34 at -30 °C).
  it.each([
    [-10, 1.1],
    [-20, 1.215],
    [-30, 1.34],
  ])('at %d °C is %d times the humidity over water (ratio from memory)', (temp_c, ratio) => {
    expect(Math.abs(outdoorHumidity(temp_c, 0.5).rh / 0.5 / ratio - 1)).toBeLessThan(0.01);
  });
  it('is left alone at and above freezing', () => {
    expect(outdoorHumidity(0, 0.83)).toEqual({ rh: 0.83, isCapped: false });
    expect(outdoorHumidity(25, 0.4)).toEqual({ rh: 0.4, isCapped: false });
  });
  it('is held at saturation, and says so', () => {
    expect(outdoorHumidity(-25, 0.89)).toEqual({ rh: 1, isCapped: true });
  });
  it('never leaves 0 to 1 and never falls below the humidity over water', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -45, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (t, rh) => {
          const result = outdoorHumidity(t, rh).rh;
          expect(result).toBeGreaterThanOrEqual(rh - 1e-12);
          expect(result).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});
