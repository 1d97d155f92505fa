import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import {
  muFromPermeability,
  ngFromPerm,
  permFromLayers,
  permFromNg,
  permFromPermeability,
  permFromSd,
  sdFromPerm,
} from '../../../src/calculators/moisture/permeance.ts';
import {
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  rSiFromUs,
  rUsFromSi,
} from '../../../src/calculators/moisture/units.ts';

const perm = fc.double({ min: 1e-3, max: 1e4, noNaN: true });

describe('round trips', () => {
  const close = (a: number, b: number) => {
    expect(Math.abs(a / b - 1)).toBeLessThan(1e-12);
  };
  it('perm to sd and back', () => {
    fc.assert(fc.property(perm, (p) => close(permFromSd(sdFromPerm(p)), p)));
  });
  it('perm to ng and back', () => {
    fc.assert(fc.property(perm, (p) => close(permFromNg(ngFromPerm(p)), p)));
  });
  it('R and temperature to SI and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (v) => {
        close(rUsFromSi(rSiFromUs(v)), v);
        expect(fahrenheitFromCelsius(celsiusFromFahrenheit(v))).toBeCloseTo(v, 10);
      }),
    );
  });
});

describe('permFromLayers', () => {
  // By hand: 1/(1/2 + 1/2) = 1; 1/(1/1 + 1/0.5) = 1/3
  it('adds resistances', () => {
    expect(permFromLayers([2, 2])).toBe(1);
    expect(permFromLayers([1, 0.5])).toBeCloseTo(1 / 3, 12);
    expect(permFromLayers([7])).toBeCloseTo(7, 12);
  });
  it('is closed by one perfect barrier', () => {
    expect(permFromLayers([5, 0, 10])).toBe(0);
  });
  it('is never above its tightest layer and does not depend on the order', () => {
    fc.assert(
      fc.property(fc.array(perm, { minLength: 1, maxLength: 8 }), (perms) => {
        const series = permFromLayers(perms);
        expect(series).toBeLessThanOrEqual(Math.min(...perms) * (1 + 1e-12));
        expect(permFromLayers([...perms].reverse())).toBeCloseTo(series, 9);
      }),
    );
  });
  it('equals the permeance of the added sd', () => {
    fc.assert(
      fc.property(fc.array(perm, { minLength: 1, maxLength: 8 }), (perms) => {
        const sd = perms.reduce((sum, p) => sum + sdFromPerm(p), 0);
        expect(Math.abs(permFromLayers(perms) / permFromSd(sd) - 1)).toBeLessThan(1e-10);
      }),
    );
  });
  it('refuses no layer and a negative permeance, by name', () => {
    expect(() => permFromLayers([])).toThrow(Refusal);
    expect(() => permFromLayers([1, -2])).toThrow(/perms\[1\]/);
  });
});

describe('single layers', () => {
  it('halve their permeance at twice the thickness', () => {
    expect(permFromPermeability(1.1, 1)).toBe(1.1);
    expect(permFromPermeability(1.1, 2)).toBe(0.55);
  });
  it('refuse a thickness of nought and a perfect barrier as sd', () => {
    expect(() => permFromPermeability(1.1, 0)).toThrow(Refusal);
    expect(() => sdFromPerm(0)).toThrow(Refusal);
    expect(() => permFromSd(0)).toThrow(Refusal);
    expect(() => muFromPermeability(0)).toThrow(Refusal);
    expect(() => ngFromPerm(-1)).toThrow(Refusal);
    expect(() => permFromNg(-1)).toThrow(Refusal);
  });
});
