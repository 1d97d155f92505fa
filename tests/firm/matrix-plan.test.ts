import { describe, expect, it } from 'vitest';
import { readFraming } from '../../src/firm/framing-text.ts';
import { cellsOf, planMatrix } from '../../src/firm/matrix-plan.ts';

const FIRM = {
  schema: 'cladwright-firm/1',
  name: 'Invented builders',
  base: { project: 'new', cavity_insulation_r: 23, finish: 'any', budget_usd_per_ft2: 30, sheathing: 'osb' },
  places: ['2A', { state: 'CO', county: 'Boulder' }],
  framings: [
    { name: '2x6', material: 'wood', depth_in: 5.5, spacing_in: 16, cavity_insulation_r: 21 },
    { material: 'steel', depth_in: 6, spacing_in: 16 },
  ],
};
const SCENARIO = {
  schema: 'cladwright-scenario/1',
  name: 'Base',
  place: { climate_zone: '5B' },
  framing: { material: 'wood', depth_in: 5.5, spacing_in: 16 },
  cavity_insulation_r: 21,
};

const plan = (change: object, axes = {}) => planMatrix({ ...FIRM, ...change }, 'firm.json', axes);

describe('planMatrix', () => {
  it('lays a firm’s file out as one scenario for each cell, with the base in all of them', () => {
    const cells = cellsOf(plan({ budgets_usd_per_ft2: [24, null] }));
    expect(cells).toHaveLength(2 * 2 * 2);
    expect(cells[0]).toEqual({
      place: '2A',
      framing: '2x6',
      finish: null,
      budget_usd_per_ft2: 24,
      scenario: {
        schema: 'cladwright-scenario/1',
        project: 'new',
        sheathing: 'osb',
        finish: 'any',
        budget_usd_per_ft2: 24,
        place: { climate_zone: '2A' },
        framing: { material: 'wood', depth_in: 5.5, spacing_in: 16 },
        cavity_insulation_r: 21,
      },
    });
    expect(cells.map(({ place }) => place)).toContain('Boulder, CO');
  });

  it('does not put the base’s filling between other studs, and takes "none" for no budget at all', () => {
    const cells = cellsOf(plan({ budgets_usd_per_ft2: [null] }));
    const steel = cells.find(({ framing }) => framing === 'steel 6 at 16');
    expect(steel?.scenario).not.toHaveProperty('cavity_insulation_r');
    expect(steel?.scenario).not.toHaveProperty('budget_usd_per_ft2');
    expect(steel?.budget_usd_per_ft2).toBeNull();
  });

  it('starts from a scenario too: its own place, studs and filling where nothing else is named', () => {
    const [only, ...others] = cellsOf(planMatrix(SCENARIO, 'base.json'));
    expect(others).toEqual([]);
    const { name: _, ...rest } = SCENARIO;
    expect(only?.scenario).toEqual(rest);
  });

  it('lets the command line go before the file', () => {
    const cells = cellsOf(
      plan(
        { finishes: ['any'] },
        {
          places: [{ climate_zone: '8' }],
          framings: [readFraming('wood-3.5-24-r13', '--framings')],
          finishes: ['cement-stucco'],
          budgets: [40],
          edition: '2018',
        },
      ),
    );
    expect(cells).toMatchObject([
      {
        place: '8',
        framing: 'wood 3.5 at 24, R-13',
        finish: 'cement-stucco',
        budget_usd_per_ft2: 40,
        scenario: { code_edition: '2018', cavity_insulation_r: 13 },
      },
    ]);
  });
});

describe('the steel of a matrix', () => {
  const steel = { material: 'steel', depth_in: 6, spacing_in: 16 } as const;
  const framingsOf = (base: object, framings: readonly object[]) =>
    cellsOf(plan({ base, framings, places: ['5B'] })).map(({ framing, scenario }) => [
      framing,
      scenario.framing,
    ]);

  it('is as thick as the framing says, and says so in its name', () => {
    expect(framingsOf({}, [{ ...steel, steel_thickness_mil: 43 }])).toEqual([
      ['steel 6 at 16, 43 mil', { ...steel, steel_thickness_mil: 43 }],
    ]);
  });

  it('is the base’s where the base has steel studs and the framing doesn’t say, for steel alone', () => {
    const wood = { material: 'wood', depth_in: 5.5, spacing_in: 16 };
    const base = { framing: { material: 'steel', steel_thickness_mil: 54 } };
    expect(framingsOf(base, [steel, { ...steel, steel_thickness_mil: 33 }, wood])).toEqual([
      ['steel 6 at 16', { ...steel, steel_thickness_mil: 54 }],
      ['steel 6 at 16, 33 mil', { ...steel, steel_thickness_mil: 33 }],
      ['wood 5.5 at 16', wood],
    ]);
    expect(framingsOf({ framing: 'unknown' }, [steel])).toEqual([['steel 6 at 16', steel]]);
  });
});

describe('planMatrix refuses', () => {
  it.each([
    ['an unknown zone', { places: ['9Z'] }, /firm\.json: places\[0\]: "9Z".*climate zone/],
    ['no places', { places: [] }, /firm\.json: places: \[\].*at least one/],
    [
      'an unknown framing material',
      { framings: [{ ...FIRM.framings[1], material: 'straw' }] },
      /framings\[0\]\.material: "straw".*wood, steel/,
    ],
    [
      'studs out of range',
      { framings: [{ ...FIRM.framings[1], spacing_in: 12 }] },
      /framings\[0\]\.spacing_in: 12.*16 to 24/,
    ],
    ['an unknown finish', { finishes: ['marble'] }, /finishes\[0\]: "marble".*cement-stucco/],
    ['a budget of nothing', { budgets_usd_per_ft2: [0] }, /budgets_usd_per_ft2\[0\]: 0.*1 to 1000/],
    ['an unknown key', { colour: 'red' }, /colour: "red"/],
    ['a place in the base', { base: { place: { climate_zone: '5B' } } }, /base\.place/],
    ['the same place twice', { places: ['2A', '2A'] }, /places: "2A".*stands twice/],
    [
      'the same framing twice',
      { framings: [FIRM.framings[1], FIRM.framings[1]] },
      /framings: "steel 6 at 16".*stands twice/,
    ],
    ['the same budget twice', { budgets_usd_per_ft2: [20, 20] }, /budgets_usd_per_ft2: "20"/],
    ['another schema version', { schema: 'cladwright-firm/2' }, /schema: "cladwright-firm\/2"/],
  ])('%s', (_, change, message) => {
    expect(() => plan(change)).toThrow(message);
  });

  it('more cells than anybody would read', () => {
    const budgets = Array.from({ length: 101 }, (_, i) => i + 1);
    expect(() => plan({ budgets_usd_per_ft2: budgets })).toThrow(/404 cells.*at most 400/);
  });

  it('a document of another kind in one line, not key by key', () => {
    const house = { schema: 'cladwright-rules/1', pack: 'house', rules: [] };
    expect(() => planMatrix(house, 'house.json')).toThrow(
      /^house\.json: schema: "cladwright-rules\/1"[^\n]*$/,
    );
  });

  it.each([null, 'text', [], { schema: 'cladwright-record/1' }])('%j', (data) => {
    expect(() => planMatrix(data, 'firm.json')).toThrow(/firm\.json/);
  });
});

describe('readFraming', () => {
  it('reads material, depth, spacing and filling', () => {
    expect(readFraming('Steel-3.5-24', '--framings')).toEqual({
      material: 'steel',
      depth_in: 3.5,
      spacing_in: 24,
    });
    expect(readFraming('wood-5.5-16-r21.5', '--framings')).toMatchObject({ cavity_insulation_r: 21.5 });
    expect(readFraming('steel-6-16-54mil-r21', '--framings')).toMatchObject({
      depth_in: 6,
      steel_thickness_mil: 54,
      cavity_insulation_r: 21,
    });
    expect(() => readFraming('steel-6-16-50mil', '--framings')).toThrow(
      /steel_thickness_mil: 50.*33, 43, 54/,
    );
  });

  it.each(['wood', 'wood-5.5', 'wood-5.5-16-21', 'brick-4-16', 'wood--5.5-16', 'wood-5.5-16-r', ''])(
    'refuses %j',
    (text) => {
      expect(() => readFraming(text, '--framings')).toThrow(/--framings: .*wood-5\.5-16/);
    },
  );

  it('refuses studs out of range by name', () => {
    expect(() => readFraming('wood-25-16', '--framings')).toThrow(
      /--framings wood-25-16: depth_in: 25.*1\.5 to 12/,
    );
  });
});
