import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { installedCavityR, plausibleCavityR } from '../../../src/calculators/thermal/cavity-insulation.ts';
import { framingFraction, woodFramingR } from '../../../src/calculators/thermal/framing-fraction.ts';
import { thermalTable } from './read-table.ts';

describe('framingFraction', () => {
  // ASHRAE 90.1 at 16 in.: 21 % studs and plates and 4 % headers (trade article); California: 22 % at 24 in.
  it.each([
    [16, 'standard', 0.25],
    [24, 'standard', 0.22],
    [16, 'intermediate', 0.22],
  ] as const)('at %d in., %s framing: %f', (spacing, style, fraction) => {
    expect(framingFraction(thermalTable, 'wood', spacing, style).framing_fraction).toBe(fraction);
  });
  it('from memory: at 24 in., advanced framing: 0.17', () => {
    expect(framingFraction(thermalTable, 'wood', 24, 'advanced').framing_fraction).toBe(0.17);
  });
  it('takes the closer-spaced row between tabulated spacings and says so', () => {
    const between = framingFraction(thermalTable, 'wood', 19.2);
    expect(between.framing_fraction).toBe(0.25);
    expect(between.notes.join()).toMatch(/19\.2 in\..*16 in\./);
    expect(framingFraction(thermalTable, 'wood', 16).notes).toEqual([]);
  });
  it('refuses spacings closer than tabulated, and steel', () => {
    expect(() => framingFraction(thermalTable, 'wood', 12)).toThrow(/spacing_in: 12 .*from 16 in\./);
    expect(() => framingFraction(thermalTable, 'wood', 16, 'advanced')).toThrow(/from 24 in\./);
    expect(() => framingFraction(thermalTable, 'steel', 16)).toThrow(/material: "steel"/);
  });
  it('adds up from its parts in every row', () => {
    for (const row of thermalTable.framing_fractions) {
      expect(row.studs_and_plates + row.headers).toBeCloseTo(row.framing_fraction, 12);
    }
  });
});

describe('woodFramingR', () => {
  // for 3.5 in. and for 5.5 in., the energy-code convention quoted in two trade sources.
  it('is R-1.25 per inch', () => {
    expect(woodFramingR(thermalTable, 3.5)).toBe(4.375);
    expect(woodFramingR(thermalTable, 5.5)).toBe(6.875);
  });
});

describe('cavity insulation', () => {
  it('refuses what no insulation reaches, naming the limit', () => {
    expect(plausibleCavityR(thermalTable, 26.25, 3.5)).toBe(26.25);
    expect(() => plausibleCavityR(thermalTable, 30, 3.5)).toThrow(
      /cavity\.insulation_r: 30 in a cavity 3\.5 in\. deep \(R-8\.6 per inch\) .*R-7\.5 per inch of depth, here R-26\.2/,
    );
    expect(() => plausibleCavityR(thermalTable, -1, 3.5)).toThrow(/cavity\.insulation_r: -1/);
    expect(() => plausibleCavityR(thermalTable, 13, 0)).toThrow(/cavity\.depth_in: 0/);
  });
  // From memory; "about R-18" also in a construction text.
  it('uses the pressed value of a label and says so; other labels that fit count in full', () => {
    const pressed = installedCavityR(thermalTable, 19, 5.5);
    expect(pressed.r).toBe(18);
    expect(pressed.notes.join()).toMatch(/R-19 batt pressed into 5\.5 in\. has about R-18/);
    expect(installedCavityR(thermalTable, 19, 7.25)).toEqual({ r: 19, notes: [] });
    expect(installedCavityR(thermalTable, 20, 5.5)).toEqual({ r: 20, notes: [] });
    expect(installedCavityR(thermalTable, 17.5, 5.5)).toEqual({ r: 17.5, notes: [] });
  });
  it.each([
    [19, 3.5, 6.25],
    [19, 4.5, 6.25],
    [20, 3.5, 5.5],
    [23, 5, 5.5],
  ])('says that a batt R-%d does not fit %f in., being %f in. thick', (label, depth_in, thickness_in) => {
    const { r, notes } = installedCavityR(thermalTable, label, depth_in);
    expect(r).toBe(label);
    expect(notes.join()).toContain(`An R-${label} batt pressed into ${depth_in} in. has less than its label`);
    expect(notes.join()).toContain(`it is ${thickness_in} in. thick (from memory)`);
  });
  it('never counts more than the label', () => {
    const labels = fc.constantFrom(0, 11, 13, 15, 19, 20, 21, 23, 30);
    fc.assert(
      fc.property(labels, fc.constantFrom(5.5, 6, 7.25, 9.25), (label, depth) => {
        expect(installedCavityR(thermalTable, label, depth).r).toBeLessThanOrEqual(label);
      }),
    );
  });
});
