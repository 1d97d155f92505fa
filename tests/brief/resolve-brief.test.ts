import { describe, expect, it } from 'vitest';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { COMPLETE, scenario } from './given.ts';

const BARE = { schema: 'cladwright-scenario/1', place: { climate_zone: '5A' } } as const;
const fieldsOf = (given: object) => resolveBrief(scenario(given)).assumptions.map(({ field }) => field);

/** Every top-level field that may be left out, with what is then listed (wood, retrofit). */
const LISTED: Readonly<Record<string, readonly string[]>> = {
  project: ['project'],
  code_edition: ['code_edition'],
  framing: ['framing.material', 'framing.depth_in', 'framing.spacing_in', 'framing.species_gravity'],
  sheathing: ['sheathing'],
  cavity_insulation_r: ['cavity_insulation_r'],
  interior_vapour_retarder: ['interior_vapour_retarder'],
  windows: ['windows'],
  rough_opening_can_change: ['rough_opening_can_change'],
  // Chosen wall by wall; every answer says where the flange sits and why.
  flange_plane: [],
  finish: ['finish'],
  budget_usd_per_ft2: ['budget_usd_per_ft2'],
  crew_skill: ['crew_skill'],
  wall_area_ft2: ['wall_area_ft2'],
  basic_wind_speed_mph: ['basic_wind_speed_mph'],
  exposure: ['exposure'],
  mean_roof_height_ft: ['mean_roof_height_ft'],
  // The corner zone then says beside its width what was taken.
  building_least_width_ft: [],
  fire_separation_ft: ['fire_separation_ft'],
  wildfire_area: ['wildfire_area'],
  termite_area: ['termite_area'],
  max_added_thickness_in: ['max_added_thickness_in'],
  // The conventions of the tables stand then; every answer states them with its heat figures.
  thermal_assumptions: [],
  // Nor are the shipped prices, which the answer cautions about in any case.
  price_book: [],
  priorities: ['priorities'],
};

describe('a firm’s own crew', () => {
  const defaults = {
    crew_skill: { value: 'stucco-experienced' as const, firm: 'Larch Row Framers', pack: 'larch-row' },
  };
  const open = { schema: 'cladwright-scenario/1' as const, place: { climate_zone: '5A' as const } };

  it('is taken where nothing was said, and the others are tried', () => {
    const { brief, assumptions } = resolveBrief(open, defaults);
    expect(brief.crew_skill).toBe('stucco-experienced');
    const assumed = assumptions.find(({ field }) => field === 'crew_skill');
    expect(assumed).toMatchObject({ value: 'stucco-experienced', house: 'larch-row' });
    expect(assumed?.alternatives.map(({ change }) => change.crew_skill)).toEqual(['general', 'first-time']);
    // Also in the other readings of the whole scenario.
    const project = assumptions.find(({ field }) => field === 'project');
    expect(project?.alternatives[0]?.change.crew_skill).toBe('stucco-experienced');
  });

  it('gives way to what was said', () => {
    const { brief, assumptions } = resolveBrief({ ...open, crew_skill: 'first-time' }, defaults);
    expect(brief.crew_skill).toBe('first-time');
    expect(assumptions.some(({ field }) => field === 'crew_skill')).toBe(false);
  });
});

describe('a scenario that leaves nothing open', () => {
  it('makes no assumption, and every given value passes through', () => {
    const { brief, assumptions } = resolveBrief(scenario(COMPLETE));
    expect(assumptions).toEqual([]);
    const { schema: _, ...given } = COMPLETE;
    expect(brief).toEqual({ ...given, open_share_is_known: true });
  });

  it('covers every field that may be left open, so that the checks below do', () => {
    expect(Object.keys(LISTED).sort()).toEqual(
      Object.keys(COMPLETE)
        .filter((key) => !['schema', 'name', 'place'].includes(key))
        .sort(),
    );
  });
});

describe.each(Object.entries(LISTED))('%s', (field, listed) => {
  // A missing project would be taken as new, where nothing needs to be assumed of the old lining.
  const { [field as keyof typeof COMPLETE]: _, ...without } = COMPLETE;

  it('left out becomes its assumption and no other', () => {
    expect(fieldsOf(without)).toEqual(listed);
  });
  it('"unknown" comes to the same as left out', () => {
    expect(resolveBrief(scenario({ ...without, [field]: 'unknown' }))).toEqual(
      resolveBrief(scenario(without)),
    );
  });
});

describe.each(['material', 'depth_in', 'spacing_in', 'species_gravity'] as const)('framing.%s', (key) => {
  const { [key]: _, ...framing } = COMPLETE.framing;
  it('left out or "unknown" becomes one assumption', () => {
    expect(fieldsOf({ ...COMPLETE, framing })).toEqual([`framing.${key}`]);
    expect(fieldsOf({ ...COMPLETE, framing: { ...framing, [key]: 'unknown' } })).toEqual([`framing.${key}`]);
  });
});

describe('the thickness of steel studs', () => {
  const steel = (change: object = {}) => ({
    ...COMPLETE,
    framing: { material: 'steel', depth_in: 6, spacing_in: 16, ...change },
  });

  it('not said is taken as the thinnest, as an assumption with the thicker ones to try', () => {
    for (const given of [steel(), steel({ steel_thickness_mil: 'unknown' })]) {
      const { brief, assumptions } = resolveBrief(scenario(given));
      expect(brief.framing.steel_thickness_mil).toBe(33);
      expect(assumptions.map(({ field, value }) => [field, value])).toEqual([
        ['framing.steel_thickness_mil', 33],
      ]);
      expect(assumptions[0]?.alternatives.map(({ change }) => change.framing?.steel_thickness_mil)).toEqual([
        43, 54,
      ]);
    }
  });

  it('said is kept, and wood has none', () => {
    const { brief, assumptions } = resolveBrief(scenario(steel({ steel_thickness_mil: 54 })));
    expect(brief.framing.steel_thickness_mil).toBe(54);
    expect(assumptions).toEqual([]);
    expect(resolveBrief(scenario(COMPLETE)).brief.framing).not.toHaveProperty('steel_thickness_mil');
  });

  it('is refused for wood, naming the field', () => {
    const wood = { ...COMPLETE, framing: { ...COMPLETE.framing, steel_thickness_mil: 43 } };
    expect(() => resolveBrief(scenario(wood))).toThrow(/framing\.steel_thickness_mil: 43 .*steel studs only/);
  });
});

/** Frame and glass serve to work a weight out; an opening that may change is framed to suit. */
const NOT_MISSED = ['frame', 'lite_in', 'rough_opening_width_in', 'rough_opening_height_in'];

describe.each(Object.keys(COMPLETE.windows[0]).filter((key) => !NOT_MISSED.includes(key)))(
  'a window without its %s',
  (key) => {
    const { [key as 'count']: _, ...window } = COMPLETE.windows[0];
    it('has that one thing assumed, named by its place in the list', () => {
      const listed = [`windows[1].${key}`];
      expect(fieldsOf({ ...COMPLETE, windows: [COMPLETE.windows[0], window] })).toEqual(listed);
      expect(
        fieldsOf({ ...COMPLETE, windows: [COMPLETE.windows[0], { ...window, [key]: 'unknown' }] }),
      ).toEqual(listed);
    });
  },
);

describe('rough openings', () => {
  const { rough_opening_width_in: _w, rough_opening_height_in: _h, ...bare } = COMPLETE.windows[0];
  it('that stay and were not measured are taken as made for their unit, and that is said of each side', () => {
    const kept = { ...COMPLETE, windows: [bare], rough_opening_can_change: false };
    expect(fieldsOf(kept)).toEqual([
      'windows[0].rough_opening_width_in',
      'windows[0].rough_opening_height_in',
    ]);
    expect(fieldsOf({ ...kept, windows: COMPLETE.windows })).toEqual([]);
  });
  it('that may change, or windows whose weight is known, ask for nothing more', () => {
    const { frame: _f, lite_in: _l, ...plain } = bare;
    expect(fieldsOf({ ...COMPLETE, windows: [plain] })).toEqual([]);
  });
  it('of a wall without windows are not assumed, and hold nothing back', () => {
    const { rough_opening_can_change: _, ...open } = COMPLETE;
    expect(fieldsOf({ ...open, project: 'retrofit', windows: [] })).toEqual([]);
    expect(fieldsOf({ ...open, project: 'retrofit' })).toContain('rough_opening_can_change');
    const { brief } = resolveBrief({ ...open, project: 'retrofit', windows: [] });
    expect(brief.rough_opening_can_change).toBe(true);
  });
});

describe.each(Object.keys(COMPLETE.priorities))('priorities without %s', (key) => {
  it('have that weight assumed and listed', () => {
    const { [key as 'cost']: _, ...priorities } = COMPLETE.priorities;
    expect(fieldsOf({ ...COMPLETE, priorities })).toEqual(['priorities']);
  });
});

describe('what nobody can assume', () => {
  const { brief, assumptions } = resolveBrief(scenario({ ...BARE, project: 'retrofit' }));

  it.each([
    'budget_usd_per_ft2',
    'fire_separation_ft',
    'wildfire_area',
    'termite_area',
    'max_added_thickness_in',
    'interior_vapour_retarder',
  ] as const)('%s stays null, and is listed as null', (field) => {
    expect(brief[field]).toBeNull();
    expect(assumptions.find((a) => a.field === field)?.value).toBeNull();
  });

  it('a new wall brings its own interior retarder: nothing is assumed of it', () => {
    const fresh = resolveBrief(scenario({ ...BARE, project: 'new' }));
    expect(fresh.brief.interior_vapour_retarder).toBeNull();
    expect(fresh.assumptions.map((a) => a.field)).not.toContain('interior_vapour_retarder');
  });

  it('a window weight stays null: it is worked out from the glass, and said so', () => {
    const { weight_lb: _, ...window } = COMPLETE.windows[0];
    const resolved = resolveBrief(scenario({ ...COMPLETE, windows: [window] }));
    expect(resolved.brief.windows[0]?.weight_lb).toBeNull();
    expect(resolved.assumptions[0]?.value).toBeNull();
  });
});

describe('every assumption', () => {
  const kinds = [BARE, { ...BARE, project: 'retrofit' }, { ...BARE, framing: { material: 'steel' } }];
  it.each(kinds)('of %j says why, is listed once, and its other readings differ from it', (given) => {
    const { brief, assumptions } = resolveBrief(scenario(given));
    expect(new Set(assumptions.map((a) => a.field)).size).toBe(assumptions.length);
    for (const { why, alternatives } of assumptions) {
      expect(why.length).toBeGreaterThan(10);
      for (const { label, change } of alternatives) {
        expect(label.length).toBeGreaterThan(10);
        expect({ ...brief, ...change }).not.toEqual(brief);
      }
    }
  });

  it('of wind and height is the harsher case', () => {
    const { brief } = resolveBrief(scenario(BARE));
    expect(brief.exposure).not.toBe('B');
    expect(brief.mean_roof_height_ft).toBeGreaterThanOrEqual(30);
  });
});

describe('assumptions that hang on others', () => {
  const brief = (given: object) => resolveBrief(scenario({ ...BARE, ...given })).brief;

  // Common practice, no source: R-13 batts in 2x4, R-20 in 2x6.
  it('the cavity filling follows the stud depth', () => {
    expect(brief({ framing: { depth_in: 3.5 } }).cavity_insulation_r).toBe(13);
    expect(brief({ framing: { depth_in: 5.5 } }).cavity_insulation_r).toBe(20);
  });
  it('the bays of a standing wall may be empty, which is worth trying', () => {
    const readings = (given: object) =>
      resolveBrief(scenario({ ...BARE, ...given }))
        .assumptions.find(({ field }) => field === 'cavity_insulation_r')
        ?.alternatives.map(({ change }) => change.cavity_insulation_r);
    expect(readings({ project: 'retrofit' })).toEqual([11, 0]);
    expect(readings({ project: 'new' })).toEqual([]);
    expect(readings({ project: 'retrofit', framing: { material: 'steel' } })).toEqual([11]);
  });
  it('never assumes more insulation than a shallow cavity could hold', () => {
    for (const depth_in of [1.5, 2, 2.5, 3, 3.49]) {
      // per inch: an R-13 batt of 3-1/2 in.
      expect(brief({ framing: { depth_in } }).cavity_insulation_r).toBeLessThanOrEqual(3.72 * depth_in);
    }
  });
  it('a standing wall is taken as 2x4 with openings as they are, a new one as 2x6 that can be framed to suit', () => {
    expect(brief({ project: 'retrofit' })).toMatchObject({
      framing: { depth_in: 3.5 },
      rough_opening_can_change: false,
    });
    expect(brief({})).toMatchObject({ framing: { depth_in: 5.5 }, rough_opening_can_change: true });
  });
  it('"the wall is a retrofit" is tried with everything that would then be assumed', () => {
    const { brief: fresh, assumptions } = resolveBrief(scenario(BARE));
    const change = assumptions.find((a) => a.field === 'project')?.alternatives[0]?.change;
    expect({ ...fresh, ...change }).toEqual(brief({ project: 'retrofit' }));
  });
});
