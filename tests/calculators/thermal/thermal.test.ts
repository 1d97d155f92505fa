import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../../src/base/parse-input.ts';
import { Refusal } from '../../../src/base/refusal.ts';
import { computeThermal } from '../../../src/calculators/thermal/thermal.ts';
import { thermalInputSchema } from '../../../src/calculators/thermal/thermal-input.ts';
import { cavityProfile, studProfile } from '../../../src/calculators/thermal/thermal-paths.ts';
import { thermalTableSchema } from '../../../src/calculators/thermal/thermal-table.ts';
import { thermalTable } from './read-table.ts';

const layers = {
  film_inside_r: 0.68,
  film_outside_r: 0.17,
  inside_layers: [{ label: 'gypsum board', r: 0.45 }],
  outside_layers: [
    { label: 'OSB', r: 0.62 },
    { label: 'board', r: 12 },
  ],
};
const wood = {
  ...layers,
  method: 'parallel-path',
  cavity: {
    framing: 'wood',
    depth_in: 5.5,
    spacing_in: 16,
    framing_fraction: 0.25,
    framing_r: 6.88,
    insulation_r: 20,
  },
};
const documented = {
  ...wood,
  fasteners: { through: 'board', per_ft2: 0.75, chi_btu_h_f: 0.003 },
  inside_temp_f: 70,
  outside_temp_f: 10,
};
const steel = {
  ...layers,
  method: 'steel-correction-factor',
  cavity: { framing: 'steel', depth_in: 6, spacing_in: 16, insulation_r: 19 },
};

const calc = (input: unknown) => computeThermal(parseInput(thermalInputSchema, input), thermalTable);

describe('computeThermal by parallel paths', () => {
  // By hand: 0.75/33.92 + 0.25/20.80 = 0.034130; fasteners 0.75 · 0.003 = 0.00225.
  it('matches a hand calculation, fasteners apart', () => {
    const answer = calc(documented);
    expect(answer.clear_wall_u_factor).toBeCloseTo(0.0341301, 6);
    expect(answer.delta_u_fasteners).toBeCloseTo(0.00225, 12);
    expect(answer.u_factor).toBeCloseTo(0.0363801, 6);
    expect(answer.r_effective).toBeCloseTo(1 / 0.0363801, 3);
    expect(answer.notes.join('\n')).toMatch(/u_factor and r_effective include the fasteners/);
    expect(answer.source.length).toBeGreaterThan(0);
  });
  // By hand, 60 °F over: 70 - 60 · (0.68, 1.13, 21.13, 21.75, 33.75) / 33.92.
  it('gives the planes of the cavity path from inside to outside', () => {
    const { interfaces } = calc(documented);
    expect(interfaces?.map((plane) => plane.after)).toEqual([
      'inside film',
      'gypsum board',
      'cavity insulation',
      'OSB',
      'board',
    ]);
    const byHand = [68.797, 68.001, 32.624, 31.527, 10.301];
    for (const [i, plane] of (interfaces ?? []).entries()) {
      expect(Math.abs(plane.temp_f - (byHand[i] ?? Number.NaN))).toBeLessThan(0.001);
    }
  });
  it('has no fasteners and no profile where none are asked for', () => {
    const answer = calc(wood);
    expect(answer.delta_u_fasteners).toBe(0);
    expect(answer.u_factor).toBe(answer.clear_wall_u_factor);
    expect(answer.interfaces).toBeUndefined();
  });
  it('says so when only one temperature is given', () => {
    const answer = calc({ ...wood, inside_temp_f: 70 });
    expect(answer.interfaces).toBeUndefined();
    expect(answer.notes.join('\n')).toMatch(/needs both/);
  });
  it('takes an empty cavity at its word and says what it is worth', () => {
    const answer = calc({ ...wood, cavity: { ...wood.cavity, insulation_r: 0 } });
    expect(answer.notes.join('\n')).toMatch(/R-0\.91/);
    expect(answer.u_factor).toBeCloseTo(0.75 / 13.92 + 0.25 / 20.8, 10);
  });
});

describe('computeThermal by the other methods', () => {
  it('orders the methods as their assumptions do', () => {
    const u = (method: string) => calc({ ...wood, method }).u_factor;
    expect(u('parallel-path')).toBeLessThan(u('iso-6946'));
    expect(u('iso-6946')).toBeLessThan(u('isothermal-planes'));
  });
  it('iso-6946 reports both limits, its films and no correction', () => {
    const answer = calc({ ...wood, method: 'iso-6946' });
    expect(answer.delta_u_air_gaps).toBe(0);
    expect(answer.notes.join('\n')).toMatch(/Upper limit R-\d+\.\d\d, lower limit R-\d+\.\d\d/);
    expect(answer.notes.join('\n')).toMatch(/R-0\.738 inside and R-0\.227 outside/);
    const films = { film_inside_r: 0.738, film_outside_r: 0.227 };
    expect(calc({ ...wood, ...films, method: 'iso-6946' }).notes.join('\n')).not.toMatch(/films/);
  });
  // By hand: level 1 gives 0.01 W/(m²·K) · (R1/RT)², R1 the layer of highest resistance (cavity, R-20).
  it('iso-6946 adds air gaps of the layer named, or of the one of highest resistance', () => {
    const plain = calc({ ...wood, method: 'iso-6946' });
    const gaps = calc({ ...wood, method: 'iso-6946', air_gap_level: 1 });
    const expected = (0.01 * (20 * plain.u_factor) ** 2) / 5.678263;
    expect(gaps.delta_u_air_gaps).toBeCloseTo(expected, 8);
    expect(gaps.u_factor - plain.u_factor).toBeCloseTo(expected, 8);
    expect(gaps.clear_wall_u_factor).toBe(plain.clear_wall_u_factor);
    expect(gaps.notes.join('\n')).toMatch(/level 1 taken for "cavity insulation", the layer of highest/);
    const board = calc({ ...wood, method: 'iso-6946', air_gap_level: 1, air_gap_layer: 'board' });
    expect(board.delta_u_air_gaps).toBeCloseTo((0.01 * (12 * plain.u_factor) ** 2) / 5.678263, 8);
  });
  // By hand: other layers 13.92, studs and R-19 together R-7.1 (ASHRAE 90.1): 1/21.02.
  it('steel takes the tabulated effective resistance and needs no framing fraction', () => {
    const answer = calc(steel);
    expect(answer.u_factor).toBeCloseTo(1 / 21.02, 10);
    expect(answer.notes.join('\n')).toMatch(/count together as R-7\.1\./);
    const same = calc({ ...steel, cavity: { ...steel.cavity, framing_fraction: 0.25, framing_r: 0.01 } });
    expect(same.u_factor).toBe(answer.u_factor);
  });
  it('says when a steel figure is from memory', () => {
    const answer = calc({
      ...steel,
      cavity: { framing: 'steel', depth_in: 3.5, spacing_in: 24, insulation_r: 11 },
    });
    expect(answer.notes.join('\n')).toMatch(/R-6\.6 \(from memory\)/);
  });
});

describe('any wood-framed wall', () => {
  const input = fc.record({
    insulation_r: fc.double({ min: 1, max: 40, noNaN: true }),
    framing_fraction: fc.double({ min: 0, max: 1, noNaN: true }),
    board_r: fc.double({ min: 0, max: 40, noNaN: true }),
    inside_temp_f: fc.double({ min: 50, max: 90, noNaN: true }),
    outside_temp_f: fc.double({ min: -60, max: 120, noNaN: true }),
    method: fc.constantFrom('parallel-path', 'isothermal-planes'),
  });
  const build = ({
    insulation_r,
    framing_fraction,
    board_r,
    ...rest
  }: {
    insulation_r: number;
    framing_fraction: number;
    board_r: number;
  }) => ({
    ...wood,
    ...rest,
    cavity: { ...wood.cavity, insulation_r, framing_fraction },
    outside_layers: [
      { label: 'OSB', r: 0.62 },
      { label: 'board', r: board_r },
    ],
  });
  it('has a lower U-factor with more of any layer', () => {
    fc.assert(
      fc.property(input, fc.double({ min: 0.1, max: 1, noNaN: true }), (a, extra) => {
        const before = calc(build(a)).u_factor;
        expect(calc(build({ ...a, board_r: a.board_r + extra })).u_factor).toBeLessThan(before);
        expect(calc(build({ ...a, insulation_r: a.insulation_r + extra })).u_factor).toBeLessThanOrEqual(
          before,
        );
      }),
    );
  });
  it('has planes between the two air temperatures, in order', () => {
    fc.assert(
      fc.property(input, (a) => {
        const { interfaces } = calc(build(a));
        const sign = Math.sign(a.outside_temp_f - a.inside_temp_f);
        const path = [a.inside_temp_f, ...(interfaces ?? []).map((plane) => plane.temp_f), a.outside_temp_f];
        for (let i = 1; i < path.length; i += 1) {
          expect(sign * ((path[i] ?? 0) - (path[i - 1] ?? 0))).toBeGreaterThanOrEqual(-1e-9);
        }
      }),
    );
  });
});

describe('profiles of both paths', () => {
  it('end outdoors; behind the stud the sheathing of a cold-climate wall is warmer', () => {
    const input = parseInput(thermalInputSchema, wood);
    const cavity = cavityProfile(input, 70, 10);
    const stud = studProfile(input, 70, 10);
    expect(cavity.at(-1)).toEqual({ after: 'outside film', temp_f: 10 });
    expect(stud.at(-1)).toEqual({ after: 'outside film', temp_f: 10 });
    expect(stud[2]?.after).toBe('stud');
    // By hand: 70 - 60 · (1.13 + 6.88) / 20.8 = 46.894 against 32.624 behind the insulation.
    expect(stud[2]?.temp_f).toBeCloseTo(46.894, 3);
    expect(cavity[2]?.temp_f).toBeCloseTo(32.624, 3);
  });
  it('refuses a path through a steel stud', () => {
    expect(() => studProfile(parseInput(thermalInputSchema, steel), 70, 10)).toThrow(/two-dimensional/);
  });
});

describe('refusals name field, value and what would do', () => {
  const withCavity = (change: object) => ({ ...wood, cavity: { ...wood.cavity, ...change } });
  const { framing_fraction: _unused, ...noFraction } = wood.cavity;
  it.each([
    [
      'an unknown method',
      { ...wood, method: 'zone' },
      /method: "zone" is not accepted\. Give an object with a method: "parallel-path"/,
    ],
    ['no object at all', 7, /Give an object with a method/],
    ['a fraction above 1', withCavity({ framing_fraction: 1.2 }), /cavity\.framing_fraction: 1\.2 .*0 to 1/],
    ['a negative fraction', withCavity({ framing_fraction: -0.1 }), /cavity\.framing_fraction: -0\.1/],
    ['no fraction', { ...wood, cavity: noFraction }, /cavity\.framing_fraction: \(nothing\)/],
    ['a stud without resistance', withCavity({ framing_r: 0 }), /cavity\.framing_r: 0 .*above 0/],
    ['negative insulation', withCavity({ insulation_r: -3 }), /cavity\.insulation_r: -3/],
    [
      'insulation out of reach',
      withCavity({ insulation_r: 50 }),
      /cavity\.insulation_r: 50 in a cavity 5\.5 in\. deep/,
    ],
    ['no depth', withCavity({ depth_in: 0 }), /cavity\.depth_in: 0/],
    ['a negative layer', { ...wood, inside_layers: [{ label: 'x', r: -1 }] }, /inside_layers\[0\]\.r: -1/],
    ['a film of zero', { ...wood, film_inside_r: 0 }, /film_inside_r: 0 .*above 0/],
    ['text for a number', { ...wood, film_outside_r: '0.17' }, /film_outside_r: "0\.17"/],
    ['an unknown key', { ...wood, colour: 'red' }, /colour: "red"/],
    [
      'steel by parallel paths',
      withCavity({ framing: 'steel' }),
      /cavity\.framing: "steel" .*steel-correction-factor/,
    ],
    [
      'steel by ISO 6946',
      { ...withCavity({ framing: 'steel' }), method: 'iso-6946' },
      /cavity\.framing: "steel"/,
    ],
    [
      'wood by steel factors',
      { ...steel, cavity: { ...steel.cavity, framing: 'wood' } },
      /cavity\.framing: "wood"/,
    ],
    [
      'an untabulated steel depth',
      { ...steel, cavity: { ...steel.cavity, depth_in: 5.5 } },
      /cavity\.depth_in: 5\.5 .*3\.5, 6 or 8/,
    ],
    [
      'an untabulated steel insulation',
      { ...steel, cavity: { ...steel.cavity, insulation_r: 20 } },
      /cavity\.insulation_r: 20 .*R-19 or 21/,
    ],
    [
      'fasteners through nothing',
      { ...documented, fasteners: { ...documented.fasteners, through: 'foam' } },
      /fasteners\.through: "foam" .*"OSB", "board"/,
    ],
    [
      'negative fasteners',
      { ...documented, fasteners: { ...documented.fasteners, per_ft2: -1 } },
      /fasteners\.per_ft2: -1/,
    ],
    ['an air-gap level by another method', { ...wood, air_gap_level: 1 }, /air_gap_level: 1/],
    [
      'an air-gap level that is none',
      { ...wood, method: 'iso-6946', air_gap_level: 3 },
      /air_gap_level: 3 .*0, 1 or 2/,
    ],
    [
      'gaps in a layer that is not there',
      { ...wood, method: 'iso-6946', air_gap_level: 1, air_gap_layer: 'foam' },
      /air_gap_layer: "foam" .*"cavity insulation"/,
    ],
    [
      'ISO limits too far apart',
      { ...withCavity({ framing_r: 0.2 }), method: 'iso-6946', outside_layers: [] },
      /method: "iso-6946" with an upper limit/,
    ],
    [
      'isothermal planes through an empty cavity',
      { ...withCavity({ insulation_r: 0 }), method: 'isothermal-planes' },
      /cavity\.insulation_r: 0 .*about R-0\.91/,
    ],
  ])('%s', (_, input, message) => {
    expect(() => calc(input)).toThrow(Refusal);
    expect(() => calc(input)).toThrow(message);
  });
});

describe('the thermal table', () => {
  it('refuses curves out of order or without their rating point', () => {
    const withPoints = (temps: number[]) => ({
      ...thermalTable,
      temperature_curves: [
        {
          ...thermalTable.temperature_curves[0],
          points: temps.map((t) => ({ mean_temp_f: t, r_per_in: 5 })),
        },
      ],
    });
    expect(() => parseInput(thermalTableSchema, withPoints([25, 40]))).toThrow(/75 °F/);
    expect(() => parseInput(thermalTableSchema, withPoints([75, 40]))).toThrow(/coldest to the warmest/);
  });
});
