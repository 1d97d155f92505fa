import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { COMPLETE, scenario } from './given.ts';

function refusal(change: object): readonly { field: string; value: string; accepted: string }[] {
  try {
    scenario({ ...COMPLETE, ...change });
  } catch (error) {
    if (error instanceof Refusal) return error.issues;
    throw error;
  }
  throw new Error(`not refused: ${JSON.stringify(change)}`);
}

const window = (change: object) => ({ windows: [{ ...COMPLETE.windows[0], ...change }] });
const framing = (change: object) => ({ framing: { ...COMPLETE.framing, ...change } });
const MONTHS = [20, 24, 35, 48, 60, 69, 74, 72, 63, 51, 37, 25];

describe('a scenario is refused, naming field, value and what would be accepted, for', () => {
  it.each([
    ['a negative budget', { budget_usd_per_ft2: -5 }, 'budget_usd_per_ft2', '-5', /1 to 1000/],
    ['a number in quotes', { wall_area_ft2: '1800' }, 'wall_area_ft2', '"1800"', /square feet/],
    ['an empty answer', { fire_separation_ft: null }, 'fire_separation_ft', 'null', /lot line/],
    ['a window of no height', window({ height_in: 0 }), 'windows[0].height_in', '0', /6 to 180/],
    ['a window 30 ft wide', window({ width_in: 360 }), 'windows[0].width_in', '360', /6 to 240/],
    ['half a window', window({ count: 1.5 }), 'windows[0].count', '1.5', /whole number/],
    ['quadruple glazing', window({ glazing: 'quadruple' }), 'windows[0].glazing', '"quadruple"', /"triple"/],
    ['studs at 12 in.', framing({ spacing_in: 12 }), 'framing.spacing_in', '12', /16 to 24/],
    ['studs at 32 in.', framing({ spacing_in: 32 }), 'framing.spacing_in', '32', /16 to 24/],
    [
      'studs of 68 mil',
      framing({ steel_thickness_mil: 68 }),
      'framing.steel_thickness_mil',
      '68',
      /33, 43, 54/,
    ],
    ['a plan 2 ft wide', { building_least_width_ft: 2 }, 'building_least_width_ft', '2', /4 to 1000/],
    ['a stud of no depth', framing({ depth_in: 0 }), 'framing.depth_in', '0', /1.5 to 12/],
    ['a wind speed below the map', { basic_wind_speed_mph: 40 }, 'basic_wind_speed_mph', '40', /85 to 220/],
    ['a tower', { mean_roof_height_ft: 200 }, 'mean_roof_height_ft', '200', /8 to 60/],
    ['an edition as a number', { code_edition: 2021 }, 'code_edition', '2021', /"2021"/],
    ['a finish by another name', { finish: 'stucco' }, 'finish', '"stucco"', /"cement-stucco"/],
    ['yes for true', { wildfire_area: 'yes' }, 'wildfire_area', '"yes"', /true, false/],
    [
      'a state by name',
      { place: { state: 'Colorado', county: 'Boulder' } },
      'place.state',
      '"Colorado"',
      /"CO"/,
    ],
    ['a zone that the code has not', { place: { climate_zone: '9A' } }, 'place.climate_zone', '"9A"', /5A/],
    [
      'eleven months',
      { place: { monthly_mean_temp_f: MONTHS.slice(1), monthly_precip_in: MONTHS.map(() => 2) } },
      'place.monthly_mean_temp_f',
      '[24,35,48,60,69,74,72,63,51,37,25]',
      /twelve/i,
    ],
    [
      'rain that goes up',
      { place: { monthly_mean_temp_f: MONTHS, monthly_precip_in: [-1, ...MONTHS.slice(1).map(() => 2)] } },
      'place.monthly_precip_in[0]',
      '-1',
      /0 to 60/,
    ],
    ['an unknown key', { colour: 'white' }, 'colour', '"white"', /not known/],
    ['an unknown key in a window', window({ wieght_lb: 90 }), 'windows[0].wieght_lb', '90', /not known/],
    [
      'a weight above 10',
      { priorities: { ...COMPLETE.priorities, cost: 11 } },
      'priorities.cost',
      '11',
      /0 to 10/,
    ],
    [
      'another schema',
      { schema: 'cladwright-scenario/2' },
      'schema',
      '"cladwright-scenario/2"',
      /scenario\/1/,
    ],
  ])('%s', (_, change, field, value, accepted) => {
    const issues = refusal(change);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ field, value });
    expect(issues[0]?.accepted).toMatch(accepted);
  });

  it('two ways to say the place at once', () => {
    expect(() =>
      scenario({ ...COMPLETE, place: { climate_zone: '5A', state: 'CO', county: 'Boulder' } }),
    ).toThrow(Refusal);
  });
  it('no place at all', () => {
    const { place: _, ...placeless } = COMPLETE;
    expect(() => scenario(placeless)).toThrow(/place: \(nothing\) is not accepted/);
  });
  it('several faults, all told at once', () => {
    expect(refusal({ budget_usd_per_ft2: 0, exposure: 'E', colour: 1 })).toHaveLength(3);
  });
});

describe('a scenario', () => {
  it('needs a schema and a place, no more', () => {
    const least = { schema: 'cladwright-scenario/1', place: { state: 'co', county: 'Boulder' } };
    expect(scenario(least)).toEqual(least);
  });

  it('takes "unknown" for every field but schema, name and place', () => {
    const known = ['schema', 'name', 'place'];
    for (const field of Object.keys(scenarioSchema.shape)) {
      const result = scenarioSchema.safeParse({ ...COMPLETE, [field]: 'unknown' });
      expect([field, result.success]).toEqual([field, !['schema', 'place'].includes(field)]);
    }
    expect(Object.keys(scenarioSchema.shape)).toEqual(expect.arrayContaining(known));
  });

  it('takes the ends of every range', () => {
    expect(scenario({ ...COMPLETE, basic_wind_speed_mph: 220, fire_separation_ft: 0 })).toMatchObject({
      fire_separation_ft: 0,
    });
  });
});

describe('what would be accepted', () => {
  it.each([[[]], ['x'], [3], [true], [null], [{ odd: 1 }]])(
    'is said in our words for %j in any place',
    (wrong) => {
      const given = {
        ...COMPLETE,
        price_book: { prices: [{ item: 'cladding/x', low: 1, likely: 2, high: 3 }] },
      };
      const spots: ((value: unknown) => unknown)[] = [
        (value) => value,
        ...Object.keys(given).map((key) => (value: unknown) => ({ ...given, [key]: value })),
        (value) => ({ ...given, windows: [value] }),
        (value) => ({ ...given, price_book: { prices: [value] } }),
        (value) => ({ ...given, price_book: { carbon: [value] } }),
      ];
      for (const put of spots) {
        try {
          parseInput(scenarioSchema, put(wrong));
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          for (const { accepted } of error.issues) expect(accepted).not.toMatch(/invalid|received|expected/i);
        }
      }
    },
  );

  it('is one object where something else stands', () => {
    expect(() => parseInput(scenarioSchema, [])).toThrow(
      /^input: \[\] is not accepted\. Give a scenario: one object/,
    );
  });
});

describe('a place that is refused', () => {
  const accepted = (place: unknown) => refusal({ place }).map((issue) => [issue.field, issue.accepted]);

  it('says that a zone and a county do not stand together', () => {
    expect(accepted({ state: 'CO', county: 'Boulder', climate_zone: '5B' })).toEqual([
      ['place.climate_zone', expect.stringContaining('does not stand beside a county')],
    ]);
    expect(accepted({ county: 'Boulder', climate_zone: '5B' })).toEqual([
      ['place.county', expect.stringContaining('does not stand beside a climate zone')],
    ]);
    expect(accepted({ state: 'CO', county: 'Boulder', town: 'Lyons' })).toEqual([
      ['place.town', expect.stringContaining('not known here')],
    ]);
  });

  it('says that it is the one answer that has to be known', () => {
    expect(accepted('unknown')).toEqual([
      ['place', expect.stringMatching(/can’t be unknown; a climate zone is enough/)],
    ]);
  });

  it('has one full stop behind an abbreviation', () => {
    expect(accepted({ monthly_mean_temp_f: Array(12).fill(50), monthly_precip_in: [] })).toEqual([
      ['place.monthly_precip_in', expect.stringMatching(/[^.]\bin\.$/)],
    ]);
  });
});
