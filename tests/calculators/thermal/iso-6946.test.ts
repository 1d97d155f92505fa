import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combineLimits, iso6946Combined, iso6946Limits } from '../../../src/calculators/thermal/iso-6946.ts';
import {
  boardAirGapLevel,
  isoAirGapCorrection,
  isoFastenerCorrection,
} from '../../../src/calculators/thermal/iso-corrections.ts';
import { thermalTable } from './read-table.ts';

const iso = thermalTable.iso_6946;

describe('iso6946Combined', () => {
  // By hand: upper 1/(0.75/20 + 0.25/10) = 16, lower 4 + 11.294 = 15.294, mean 15.647.
  it('is the mean of both limits, with its error', () => {
    const c = iso6946Combined(iso, { series_r: 4, cavity_r: 16, framing_r: 6, framing_fraction: 0.25 });
    expect(c.r).toBeCloseTo(15.647059, 6);
    expect(c.max_relative_error).toBeCloseTo((16 - 15.294118) / (2 * 15.647059), 6);
  });
  it('refuses limits more than half apart, naming both', () => {
    const shorted = { series_r: 4, cavity_r: 20, framing_r: 0.5, framing_fraction: 0.25 };
    expect(() => iso6946Combined(iso, shorted)).toThrow(
      /upper limit of R-\d+\.\d+ and a lower limit of R-\d+\.\d+ \(ratio \d\.\d+\)/,
    );
  });
  it('takes limits exactly half apart', () => {
    expect(combineLimits(iso, { upper_r: 3, lower_r: 2 }).r).toBe(2.5);
    expect(() => combineLimits(iso, { upper_r: 3.01, lower_r: 2 })).toThrow(/1\.5/);
  });
  it('is the general form with one bridged layer', () => {
    const r = fc.double({ min: 0.5, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        r,
        r,
        r,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (series_r, cavity_r, framing_r, f) => {
          const limits = iso6946Limits([
            [{ fraction: 1, r: series_r }],
            [
              { fraction: 1 - f, r: cavity_r },
              { fraction: f, r: framing_r },
            ],
          ]);
          expect(limits.upper_r).toBeGreaterThanOrEqual(limits.lower_r - 1e-9);
          if (limits.upper_r > 1.5 * limits.lower_r) return;
          const wall = { series_r, cavity_r, framing_r, framing_fraction: f };
          expect(iso6946Combined(iso, wall).upper_r).toBeCloseTo(limits.upper_r, 9);
          expect(iso6946Combined(iso, wall).lower_r).toBeCloseTo(limits.lower_r, 9);
        },
      ),
    );
  });
});

describe('iso6946Limits', () => {
  it('refuses fractions that do not add up', () => {
    const layer = [
      { fraction: 0.8, r: 3 },
      { fraction: 0.1, r: 1 },
    ];
    expect(() => iso6946Limits([layer])).toThrow(/layers\[0\].*add up to 1/);
  });
  it('refuses a bridge without resistance', () => {
    const layer = [
      { fraction: 0.9, r: 3 },
      { fraction: 0.1, r: 0 },
    ];
    expect(() => iso6946Limits([layer])).toThrow(/layers\[0\]\.r/);
  });
});

describe('ISO corrections', () => {
  const steel = {
    conductivity_w_mk: 50,
    area_m2: 1.81e-5,
    per_m2: 4,
    insulation_m: 0.05,
    penetration_m: 0.05,
    layer_share: 1,
  };
  it('halve with a fastener that goes half way', () => {
    const full = isoFastenerCorrection(iso, steel);
    expect(isoFastenerCorrection(iso, { ...steel, penetration_m: 0.025 })).toBeCloseTo(full / 2, 12);
  });
  it('leave poor conductors out', () => {
    expect(isoFastenerCorrection(iso, { ...steel, conductivity_w_mk: 0.9 })).toBe(0);
    expect(isoFastenerCorrection(iso, { ...steel, conductivity_w_mk: 1 })).toBeGreaterThan(0);
  });
  it('refuse a fastener longer than the layer is thick', () => {
    expect(() => isoFastenerCorrection(iso, { ...steel, penetration_m: 0.06 })).toThrow(/penetration_m/);
  });
  it('go with the square of the share of the layer', () => {
    expect(isoAirGapCorrection(iso, 2, 0.5)).toBeCloseTo(0.01, 12);
    expect(() => isoAirGapCorrection(iso, 1, 1.2)).toThrow(/layer_share/);
  });
});

describe('boardAirGapLevel', () => {
  it.each([
    [1, 'aligned', 1],
    [1, 'offset', 1],
    [1, 'taped', 0],
    [2, 'aligned', 1],
    [2, 'offset', 0],
  ] as const)('from memory: %d layer(s) with %s joints is level %d', (layers, joints, level) => {
    expect(boardAirGapLevel(layers, joints)).toBe(level);
  });
});
