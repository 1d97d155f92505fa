import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { R_US_PER_SI } from '../../../src/calculators/moisture/units.ts';
import {
  celsiusToFahrenheit,
  conductivityFromRPerInch,
  densityToSi,
  densityToUs,
  fahrenheitToCelsius,
  linearTransmittanceToSi,
  linearTransmittanceToUs,
  M2KW_PER_US_R,
  pointTransmittanceToSi,
  pointTransmittanceToUs,
  resistanceToSi,
  resistanceToUs,
  rPerInch,
  transmittanceToSi,
  transmittanceToUs,
} from '../../../src/calculators/thermal/si-units.ts';

const positive = fc.double({ min: 1e-4, max: 1e4, noNaN: true });

describe('SI and US units of heat', () => {
  // NIST SP 811, appendix B.8: 1 Btu·in/(h·ft²·°F) = 0.1442279 W/(m·K), so R-1 per inch is that conductivity;
  // 1 lb/ft³ = 16.01846 kg/m³.
  it('has the factors of NIST SP 811 for conductivity and density', () => {
    expect(conductivityFromRPerInch(1)).toBeCloseTo(0.1442279, 7);
    expect(rPerInch(0.1442279)).toBeCloseTo(1, 6);
    expect(densityToSi(1)).toBeCloseTo(16.01846, 5);
    expect(celsiusToFahrenheit(100)).toBe(212);
    expect(celsiusToFahrenheit(-40)).toBe(-40);
  });

  // R-5 per inch is 0.0288 W/(m·K), R-1.25 (softwood) 0.115: pairs printed side by side in ASHRAE Fundamentals ch. 26.
  it('gives the pairs of a handbook that prints both', () => {
    expect(conductivityFromRPerInch(5)).toBeCloseTo(0.0288, 4);
    expect(conductivityFromRPerInch(1.25)).toBeCloseTo(0.115, 3);
  });

  it.each([
    ['resistance', resistanceToSi, resistanceToUs],
    ['transmittance', transmittanceToSi, transmittanceToUs],
    ['point transmittance', pointTransmittanceToSi, pointTransmittanceToUs],
    ['linear transmittance', linearTransmittanceToSi, linearTransmittanceToUs],
    ['conductivity', conductivityFromRPerInch, rPerInch],
    ['density', densityToSi, densityToUs],
  ])('round-trips a %s, both ways', (_, toSi, toUs) => {
    fc.assert(
      fc.property(positive, (value) => {
        expect(Math.abs(toUs(toSi(value)) / value - 1)).toBeLessThan(1e-12);
        expect(Math.abs(toSi(toUs(value)) / value - 1)).toBeLessThan(1e-12);
        expect(toSi(value)).toBeGreaterThan(0);
      }),
    );
  });

  it('round-trips a temperature and keeps the order of two', () => {
    const temp = fc.double({ min: -100, max: 200, noNaN: true });
    fc.assert(
      fc.property(temp, temp, (a, b) => {
        expect(celsiusToFahrenheit(fahrenheitToCelsius(a))).toBeCloseTo(a, 10);
        expect(fahrenheitToCelsius(celsiusToFahrenheit(b))).toBeCloseTo(b, 10);
        fc.pre(Math.abs(a - b) > 1e-9);
        expect(fahrenheitToCelsius(a) < fahrenheitToCelsius(b)).toBe(a < b);
      }),
    );
  });

  it('turns the same wall into the same U whichever unit its layers are given in', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 50, noNaN: true }), { minLength: 1, maxLength: 8 }),
        (layers) => {
          const us = layers.reduce((sum, r) => sum + r, 0);
          const si = layers.reduce((sum, r) => sum + resistanceToSi(r), 0);
          expect(Math.abs(transmittanceToUs(1 / si) * us - 1)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it('has one factor for resistance, in the thermal and in the moisture calculators', () => {
    expect(Math.abs(R_US_PER_SI * M2KW_PER_US_R - 1)).toBeLessThan(1e-6);
  });
});
