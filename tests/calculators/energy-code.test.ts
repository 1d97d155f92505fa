import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import {
  type EnergyQuery,
  energyCompliance,
  energyInputSchema,
  energyRequirement,
  energyTableSchema,
  nearestCompliantThickness,
  optionsInWords,
} from '../../src/calculators/energy-code.ts';
import { energyTable } from './thermal/read-table.ts';

const query = (
  edition: string,
  climate_zone: EnergyQuery['climate_zone'],
  wall: EnergyQuery['wall'] = 'wood-frame',
) => ({
  edition,
  climate_zone,
  wall,
});
const zone5 = query('2021', '5B');

describe('energyRequirement', () => {
  it('gives maximum, options, source and notes', () => {
    const answer = energyRequirement(energyTable, zone5);
    expect(answer.max_u_factor).toBe(0.045);
    expect(answer.options).toContainEqual({ cavity_r: 20, ci_r: 5 });
    expect(answer.source[0]).toBe('IECC 2021 residential (IRC 2021 Chapter 11), Table R402.1.2 (N1102.1.2)');
    expect(answer.source.filter((line) => line.includes('memory'))).toEqual([]);
    expect(answer.notes.join('\n')).toMatch(/building department/);
  });

  it('says which figures are from memory, and only those', () => {
    const now = energyRequirement(energyTable, zone5);
    expect(now.notes.join('\n')).not.toMatch(/[Ff]rom memory/);
    expect(now.provenance.max_u_factor).toBe('two-sources');
    const steel = energyRequirement(energyTable, query('2021', '5B', 'steel-frame'));
    expect(steel.notes.join('\n')).toMatch(/From memory: the maximum U-factor of 0.045/);
    const seen = energyRequirement(energyTable, query('2018', '5B'));
    expect(seen.notes.join('\n')).not.toMatch(/[Ff]rom memory/);
    expect(seen.provenance).toEqual({ max_u_factor: 'verified', options: ['two-sources', 'two-sources'] });
    const recalled = energyRequirement(energyTable, query('2024', '7'));
    expect(recalled.notes.join('\n')).toMatch(/From memory: all R-value options/);
    expect(recalled.source).toContain('All from memory, no document seen');
  });

  it.each(['4A', '4C', '5B'] as const)('tells of the conflict over zone %s in 2024', (zone) => {
    expect(energyRequirement(energyTable, query('2024', zone)).notes.join('\n')).toMatch(/in conflict/);
  });
  it('tells of no conflict where there is none', () => {
    expect(energyRequirement(energyTable, query('2024', '6A')).notes.join('\n')).not.toMatch(/in conflict/);
    expect(energyRequirement(energyTable, zone5).notes.join('\n')).not.toMatch(/in conflict/);
  });

  it('gives steel frames the U-factor of wood and the equivalents of those wood options that have one', () => {
    const answer = energyRequirement(energyTable, query('2021', '5B', 'steel-frame'));
    expect(answer.max_u_factor).toBe(0.045);
    expect(answer.options).toEqual([
      { cavity_r: 13, ci_r: 12.7 },
      { cavity_r: 15, ci_r: 12.3 },
      { cavity_r: 19, ci_r: 11.6 },
      { cavity_r: 21, ci_r: 11.3 },
      { cavity_r: 25, ci_r: 10.9 },
    ]);
    expect(answer.notes.join('\n')).toMatch(/16 in\. on center/);
  });

  it('holds steel equivalents to be no surer than memory in editions whose table was not seen', () => {
    const seen = energyRequirement(energyTable, query('2018', '5B', 'steel-frame'));
    expect(new Set(seen.provenance.options)).toEqual(new Set(['verified']));
    expect(seen.provenance.max_u_factor).toBe('memory');
    const later = energyRequirement(energyTable, query('2021', '5B', 'steel-frame'));
    expect(new Set(later.provenance.options)).toEqual(new Set(['memory']));
    expect(later.notes.join('\n')).toMatch(/equivalents were seen for 2018/);
  });

  it('reads the disputed steel row on the safe side and says so', () => {
    const answer = energyRequirement(energyTable, query('2018', '1A', 'steel-frame'));
    expect(answer.options).toContainEqual({ cavity_r: 19, ci_r: 3.1 });
    expect(answer.notes.join('\n')).toMatch(/printed inconsistently/);
    expect(answer.notes.join('\n')).toMatch(/From memory: the option R-19 \+ R-3.1 continuous/);
  });

  it('asks less continuous insulation of steel studs at 24 in.', () => {
    const wide = energyRequirement(energyTable, {
      ...query('2018', '5A', 'steel-frame'),
      stud_spacing_in: 24,
    });
    expect(wide.options).toContainEqual({ cavity_r: 13, ci_r: 7.7 });
  });

  it('gives both options of a mass wall with their U-factors', () => {
    const answer = energyRequirement(energyTable, query('2018', '4A', 'mass'));
    expect(answer.options).toEqual([
      { cavity_r: 0, ci_r: 8 },
      { cavity_r: 13, ci_r: 0 },
    ]);
    expect(answer.max_u_factor).toBe(0.098);
    expect(answer.max_u_factor_interior_insulation).toBe(0.087);
  });

  it('has no zone 0 in 2018', () => {
    expect(() => energyRequirement(energyTable, query('2018', '0A'))).toThrow(
      /climate_zone: "0A" is not accepted\. IECC 2018 .*zones 1 to 8/,
    );
  });
  it('refuses an edition that it does not carry and names those it does', () => {
    expect(() => energyRequirement(energyTable, query('2015', '5B'))).toThrow(
      /edition: "2015" is not accepted\. Give one of "2018", "2021", "2024", "90\.1-2019"/,
    );
  });

  it('has a row for every zone of every residential edition', () => {
    for (const edition of ['2018', '2021', '2024']) {
      for (const zone of ['1A', '2A', '3A', '4A', '4B', '4C', '5C', '6B', '7', '8'] as const) {
        for (const wall of ['wood-frame', 'steel-frame', 'mass'] as const) {
          expect(energyRequirement(energyTable, query(edition, zone, wall)).options.length).toBeGreaterThan(
            0,
          );
        }
      }
    }
  });
});

describe('energyInputSchema', () => {
  it('takes the documented input', () => {
    expect(parseInput(energyInputSchema, zone5)).toEqual(zone5);
  });
  it.each([
    [{ ...zone5, climate_zone: '5D' }, /climate_zone: "5D" is not accepted\. Give a climate zone/],
    [{ ...zone5, wall: 'log' }, /wall: "log" is not accepted\. Give "wood-frame"/],
    [{ ...zone5, edition: 2021 }, /edition: 2021 is not accepted\. Give a code edition in quotes/],
    [{ ...zone5, colour: 'red' }, /colour: "red" is not accepted/],
    [{ edition: '2021', climate_zone: '5B' }, /wall: \(nothing\)/],
  ])('refuses %j', (input, message) => {
    expect(() => parseInput(energyInputSchema, input)).toThrow(message);
  });
});

describe('energyTableSchema', () => {
  it('refuses a table that names a source it does not list', () => {
    const broken = {
      ...energyTable,
      sources: energyTable.sources.filter((source) => source.id !== 'recall'),
    };
    expect(() => parseInput(energyTableSchema, broken)).toThrow(/"recall" is named but not listed/);
  });
  it('takes a new edition as data alone', () => {
    const [first] = energyTable.residential_editions;
    if (!first) throw new Error('no edition');
    const wider = parseInput(energyTableSchema, {
      ...energyTable,
      residential_editions: [
        ...energyTable.residential_editions,
        { ...first, edition: '2027', code: 'made up' },
      ],
    });
    expect(energyRequirement(wider, query('2027', '6A')).options).toContainEqual({ cavity_r: 20, ci_r: 5 });
  });
});

describe('energyCompliance', () => {
  const judge = (u_factor: number | null, cavity_r: number | null, ci_r: number | null, of = zone5) =>
    energyCompliance(energyTable, of, { u_factor, cavity_r, ci_r });

  it('passes exactly at the limits of both routes', () => {
    expect(judge(0.045, 20, 5)).toMatchObject({
      complies_by_u: true,
      complies_by_r: true,
      complies: true,
      route: 'both',
      u_margin_percent: 0,
      option_met: { cavity_r: 20, ci_r: 5, spare_cavity_r: 0, spare_ci_r: 0 },
      option_nearest: null,
    });
  });
  it('fails just past the limits and says what lacks', () => {
    const verdict = judge(0.0452, 19, 5);
    expect(verdict).toMatchObject({
      complies_by_u: false,
      complies_by_r: false,
      complies: false,
      route: 'none',
    });
    expect(verdict.option_nearest).toEqual({ cavity_r: 13, ci_r: 10, missing_cavity_r: 0, missing_ci_r: 5 });
    expect(verdict.notes.join('\n')).toMatch(/Rounded to three decimals/);
  });
  it('does not add cavity and continuous insulation up', () => {
    expect(judge(null, 25, 0).complies_by_r).toBe(false);
    expect(judge(null, 0, 19.9).complies_by_r).toBe(false);
  });
  it('passes by one route alone and reports that route with its margin', () => {
    const byU = judge(0.036, 15, 9);
    expect(byU).toMatchObject({
      complies: true,
      route: 'u-factor',
      complies_by_r: false,
      provenance: 'two-sources',
    });
    expect(byU.u_margin_percent).toBeCloseTo(20, 10);
    const byR = judge(0.05, 13, 12);
    expect(byR).toMatchObject({ complies: true, route: 'r-value', provenance: 'two-sources' });
    expect(byR.option_met).toEqual({ cavity_r: 13, ci_r: 10, spare_cavity_r: 0, spare_ci_r: 2 });
  });
  it('never passes on what is not known', () => {
    expect(judge(null, null, null)).toMatchObject({
      complies: null,
      route: 'unknown',
      u_margin_percent: null,
    });
    expect(judge(null, 13, 5)).toMatchObject({ complies_by_u: null, complies_by_r: false, complies: null });
    expect(judge(0.06, null, 5)).toMatchObject({ complies_by_u: false, complies_by_r: null, complies: null });
  });
  it('passes on one route known to be met', () => {
    expect(judge(0.04, null, null)).toMatchObject({ complies: true, route: 'u-factor' });
  });
  it('words the options', () => {
    expect(judge(0.04, 20, 5).r_options).toBe(
      'R-30, R-20 + R-5 continuous, R-13 + R-10 continuous or R-20 continuous',
    );
    expect(optionsInWords([])).toBe('');
  });

  it('judges a mass wall by where most of its insulation lies', () => {
    const mass = query('2018', '4A', 'mass');
    expect(judge(0.095, 0, 8, mass)).toMatchObject({ complies_by_u: true, complies_by_r: true });
    expect(judge(0.095, 8, 0, mass)).toMatchObject({
      complies_by_u: false,
      complies_by_r: false,
      max_u_factor: 0.087,
    });
    expect(judge(0.095, 4, 4, mass)).toMatchObject({ complies_by_r: true, max_u_factor: 0.098 });
    expect(judge(0.095, null, null, mass)).toMatchObject({ max_u_factor: 0.087, complies_by_u: false });
  });

  it('holds a wall under ASHRAE 90.1 to its U-factor alone', () => {
    const commercial = query('90.1-2019', '5A', 'steel-frame');
    expect(judge(0.05, 13, 10, commercial)).toMatchObject({
      complies_by_u: true,
      complies_by_r: null,
      route: 'u-factor',
    });
    const high = judge(0.06, 13, 10, commercial);
    expect(high).toMatchObject({ complies: false, r_options: null });
    expect(high.notes.join('\n')).toMatch(/maximum U-factor alone/);
  });

  it('more insulation never loses compliance', () => {
    const r = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(r, r, r, r, (cavity, ci, moreCavity, moreCi) => {
        const before = judge(null, cavity, ci).complies_by_r;
        const after = judge(null, cavity + moreCavity, ci + moreCi).complies_by_r;
        expect(before !== true || after === true).toBe(true);
      }),
    );
  });
});

describe('nearestCompliantThickness', () => {
  const requirement = energyRequirement(energyTable, zone5);
  const choice = (thickness_in: number, u_factor: number | null) => ({
    thickness_in,
    u_factor,
    cavity_r: 15,
    ci_r: thickness_in * 4,
  });
  it('is the thinnest that meets either route, in whatever order they come', () => {
    const choices = [choice(3, 0.038), choice(1, 0.055), choice(2.5, 0.041), choice(2, 0.046)];
    expect(nearestCompliantThickness(requirement, choices)).toMatchObject({
      thickness_in: 2.5,
      route: 'both',
    });
  });
  it('is null where none does, and where it can not be judged', () => {
    expect(nearestCompliantThickness(requirement, [choice(1, 0.055)])).toBeNull();
    expect(nearestCompliantThickness(requirement, [choice(1, null)])).toBeNull();
    expect(nearestCompliantThickness(requirement, [])).toBeNull();
  });
});

describe('refusals', () => {
  it('are refusals, not faults', () => {
    expect(() => energyRequirement(energyTable, query('2018', '0B'))).toThrow(Refusal);
  });
});
