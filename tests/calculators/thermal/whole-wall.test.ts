import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fahrenheitToCelsius,
  linearTransmittanceToUs,
  M2KW_PER_US_R,
  pointTransmittanceToUs,
  resistanceToSi,
  resistanceToUs,
  transmittanceToSi,
  transmittanceToUs,
} from '../../../src/calculators/thermal/si-units.ts';
import { fastenerDeltaU, openingPerimeter, wholeWallU } from '../../../src/calculators/thermal/whole-wall.ts';

describe('fastenerDeltaU', () => {
  // By hand: 0.75 · 0.003
  it('is number times point transmittance', () => {
    expect(fastenerDeltaU(0.75, 0.003)).toBeCloseTo(0.00225, 12);
    expect(fastenerDeltaU(0, 0.003)).toBe(0);
  });
  it('refuses negative values', () => {
    expect(() => fastenerDeltaU(-1, 0.003)).toThrow(/fasteners\.per_ft2: -1/);
    expect(() => fastenerDeltaU(1, -0.003)).toThrow(/fasteners\.chi_btu_h_f/);
  });
});

describe('wholeWallU', () => {
  const buck = { label: 'wood buck', psi_btu_h_ft_f: 0.03, length_ft: 100 };
  // By hand: 0.03 · 100 / 1500 = 0.002
  it('adds clear wall, fasteners and bucks and reports each', () => {
    const whole = wholeWallU(0.04, 0.001, [buck, { ...buck, label: 'shelf angle', length_ft: 50 }], 1500);
    expect(whole.clear_wall_u_factor).toBe(0.04);
    expect(whole.delta_u_fasteners).toBe(0.001);
    expect(whole.bridges.map((bridge) => bridge.label)).toEqual(['wood buck', 'shelf angle']);
    expect(whole.bridges[0]?.delta_u).toBeCloseTo(0.002, 12);
    expect(whole.bridges[1]?.delta_u).toBeCloseTo(0.001, 12);
    expect(whole.delta_u_linear_bridges).toBeCloseTo(0.003, 12);
    expect(whole.whole_wall_u_factor).toBeCloseTo(0.044, 12);
  });
  it('is the clear wall with its fasteners where there is no bridge', () => {
    expect(wholeWallU(0.04, 0.001, [], 1500).whole_wall_u_factor).toBeCloseTo(0.041, 12);
  });
  it('refuses a wall without area and negative bridges', () => {
    expect(() => wholeWallU(0.04, 0, [], 0)).toThrow(/area_ft2: 0/);
    expect(() => wholeWallU(0.04, 0, [{ ...buck, psi_btu_h_ft_f: -1 }], 1500)).toThrow(/wood buck\.psi/);
  });
  // Six 36 x 60 in. windows: 6 · 2 · 96 / 12 = 96 ft
  it('openingPerimeter sums all openings in feet', () => {
    expect(openingPerimeter([{ count: 6, width_in: 36, height_in: 60 }])).toBe(96);
  });
});

describe('SI and US units', () => {
  // NIST SP 811: 1 h·ft²·°F/Btu (IT) = 0.1761102 m²·K/W; 1 Btu/(h·ft²·°F) = 5.678263 W/(m²·K).
  it('has the factors of NIST SP 811', () => {
    expect(M2KW_PER_US_R).toBeCloseTo(0.1761102, 7);
    expect(transmittanceToSi(1)).toBeCloseTo(5.678263, 6);
    // 1 Btu/h = 0.2930711 W, so 1 W/K = 5/9 / 0.2930711 Btu/(h·°F); 1 W/(m·K) = 0.577789 Btu/(h·ft·°F).
    expect(pointTransmittanceToUs(1)).toBeCloseTo(5 / 9 / 0.2930711, 5);
    expect(linearTransmittanceToUs(1)).toBeCloseTo(0.577789, 5);
    expect(fahrenheitToCelsius(-40)).toBe(-40);
  });
  it('round-trips', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1000, noNaN: true }), (value) => {
        expect(Math.abs(resistanceToUs(resistanceToSi(value)) / value - 1)).toBeLessThan(1e-12);
        expect(Math.abs(transmittanceToUs(transmittanceToSi(value)) / value - 1)).toBeLessThan(1e-12);
        expect(Math.abs(1 / resistanceToSi(value) / transmittanceToSi(1 / value) - 1)).toBeLessThan(1e-12);
      }),
    );
  });
});
