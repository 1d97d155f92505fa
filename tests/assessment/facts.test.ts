import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { factDictionarySchema } from '../../src/rulebook/rule-schema.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { briefOf, judge, TINY } from '../advice/pipeline.ts';
import { scheduleOf } from './schedule-walls.ts';

const { facts: DICTIONARY } = factDictionarySchema.parse(
  JSON.parse(readFileSync(join(findRulesDir(), 'facts.json'), 'utf8')),
);

const JOBS = {
  'a new wood wall': {},
  'a steel wall': { framing: { material: 'steel', depth_in: 6, spacing_in: 16 }, cavity_insulation_r: 19 },
  'a standing wall whose lining nobody knows': { project: 'retrofit', interior_vapour_retarder: 'unknown' },
  'a wall in zone 0A, for which no months are known': { place: { climate_zone: '0A' } },
  'a wall without windows': { windows: [] },
  'a wall of which little is said': {
    framing: 'unknown',
    budget_usd_per_ft2: 'unknown',
    fire_separation_ft: 'unknown',
    wildfire_area: 'unknown',
    termite_area: 'unknown',
    max_added_thickness_in: 'unknown',
    windows: [{ count: 1 }],
  },
};

function isRight(value: unknown, entry: (typeof DICTIONARY)[number]): boolean {
  if (value === null) return entry.can_be_unknown === true;
  if (entry.type === 'number') return Number.isFinite(value);
  if (entry.type === 'yes-no') return typeof value === 'boolean';
  return typeof value === 'string' && (entry.values === undefined || entry.values.includes(value));
}

describe.each(Object.entries(JOBS))('%s', async (_, change) => {
  const { walls } = await judge(briefOf(change), TINY);
  // Every third wall: all claddings, boards, linings, barriers and bucks come up.
  const sheets = walls.filter((_wall, i) => i % 3 === 0).map((wall) => wall.verdicts.facts);

  it('gives every fact of the dictionary and no other', () => {
    const ids = DICTIONARY.map(({ id }) => id).sort();
    for (const sheet of [sheets[0], sheets.at(-1)]) expect(Object.keys(sheet ?? {}).sort()).toEqual(ids);
  });

  it('keeps every fact to its kind and its list of values, and leaves unknown only what may be', () => {
    const wrong = new Set<string>();
    for (const sheet of sheets)
      for (const entry of DICTIONARY)
        if (!isRight(sheet[entry.id], entry)) wrong.add(`${entry.id}: ${sheet[entry.id]}`);
    expect([...wrong]).toEqual([]);
  });
});

describe('what goes into the studs', () => {
  it('counts every line of the schedule that is driven through the insulation, and so does the caution', async () => {
    const { walls, context } = await judge(briefOf({ basic_wind_speed_mph: 150, exposure: 'C' }), TINY);
    for (const { candidate, verdicts } of walls.filter((_, i) => i % 40 === 0)) {
      const driven = scheduleOf(candidate, context)
        .steps.filter(({ labour }) => labour?.priced_with === 'fasteners')
        .reduce((sum, step) => sum + (step.count_per_100_ft2 ?? 0), 0);
      expect(verdicts.facts['fastening.into_studs_per_100_ft2']).toBeCloseTo(driven, 3);
      const said = verdicts.outcomes().find(({ rule }) => rule.id === 'safety.long-screws-and-services');
      if (driven > 0) expect(said?.text).toContain(`About ${driven.toFixed(0)} fasteners in 100 ft²`);
      else expect(said?.verdict).toBe('pass');
    }
  });
});

describe('what is not known', () => {
  it('of an old lining leaves the vapour verdict, the condensate and the way in unknown, and nothing passes silently', async () => {
    const { walls } = await judge(briefOf(JOBS['a standing wall whose lining nobody knows']), TINY);
    for (const { verdicts } of walls) {
      expect(verdicts.facts).toMatchObject({
        'retarder.class': null,
        'retarder.is_existing': true,
        'vapour.verdict': null,
        'moisture.condensate_peak_g_m2': null,
        'moisture.dries_within_year': null,
        'moisture.inward_permeance_perm': null,
      });
    }
    const [first] = walls;
    expect(first?.verdicts.verdictOf('vapour.condensate-stays')).toBe('undecided');
    // What the table asks for holds for any lining.
    expect(first?.verdicts.facts['vapour.min_ci_r_class_iii']).toBe(7.5);
  });

  it('of the climate leaves the winter check of the sheathing undecided', async () => {
    const { walls } = await judge(briefOf(JOBS['a wall in zone 0A, for which no months are known']));
    expect(walls[0]?.verdicts.facts).toMatchObject({
      'site.winter_mean_temp_f': null,
      'moisture.sheathing_temp_f': null,
      'moisture.dew_point_margin_f': null,
    });
    expect(walls[0]?.verdicts.verdictOf('vapour.sheathing-below-dew-point')).toBe('undecided');
  });

  it('is nothing about windows where there are none: no rule waits for their weight or their bucks', async () => {
    const { walls } = await judge(briefOf({ windows: [] }), TINY);
    const spoken = new Set(
      walls.flatMap(({ verdicts }) =>
        [...verdicts.outcomesWith('caution'), ...verdicts.outcomesWith('undecided')]
          .filter(({ facts }) => Object.keys(facts).some((id) => id.startsWith('windows.')))
          .map(({ rule }) => rule.id),
      ),
    );
    expect([...spoken]).toEqual([]);
  });
});
