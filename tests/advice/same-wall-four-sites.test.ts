import { describe, expect, it, vi } from 'vitest';
import { answer, job, SMALL } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const SITES = {
  cold: { state: 'MN', county: 'Stearns' },
  marine: { state: 'WA', county: 'Thurston' },
  'hot-humid': { state: 'GA', county: 'Chatham' },
  dry: { state: 'NM', county: 'Socorro' },
} as const;
const NAMES = Object.keys(SITES) as (keyof typeof SITES)[];

describe('the same stucco wall in four climates', async () => {
  const answers = Object.fromEntries(
    await Promise.all(
      NAMES.map(async (name) => [
        name,
        await answer(job({ place: SITES[name], finish: 'cement-stucco', cavity_insulation_r: 20 }), SMALL),
      ]),
    ),
  ) as Record<keyof typeof SITES, Awaited<ReturnType<typeof answer>>>;
  const first = (name: keyof typeof SITES) => {
    const wall = answers[name].ranked[0];
    if (!wall) throw new Error(`nothing passes at the ${name} site`);
    return wall;
  };

  it('is answered everywhere, each with its month-by-month water', () => {
    for (const name of NAMES) {
      const months = first(name).condensate_by_month;
      expect(months, name).toHaveLength(12);
      expect(first(name).verdicts.find(({ rule }) => rule === 'vapour.condensate-stays')?.verdict, name).toBe(
        'pass',
      );
    }
  });

  it('is not the same wall everywhere', () => {
    const walls = NAMES.map(
      (name) =>
        `${first(name).insulation.id} ${first(name).insulation.thickness_in} ${first(name).interior_vapour_retarder}`,
    );
    expect(new Set(walls).size).toBeGreaterThan(1);
  });

  it('carries more insulation outside in the cold than where it is hot', () => {
    expect(first('cold').insulation.r).toBeGreaterThan(first('hot-humid').insulation.r);
  });

  it('keeps vapour retarders out of the hot-humid wall', () => {
    for (const wall of answers['hot-humid'].ranked) {
      expect(wall.interior_vapour_retarder).not.toMatch(/Class I\b|Class II\b/);
    }
    const excluded = answers['hot-humid'].excluded.flatMap(({ because }) => because.map(({ rule }) => rule));
    expect(excluded).toContain('vapour.class-i-not-permitted');
    expect(excluded).toContain('vapour.class-ii-not-permitted');
  });

  it('asks for a drainage space behind the plaster in moist and marine air', () => {
    // IRC 2021 R703.7.3.2: 3/16 in. or 90 % drainage efficiency, zones with letters A and C.
    for (const name of ['marine', 'hot-humid', 'cold'] as const) {
      expect(answers[name].site.moisture_regime).not.toBe('B');
      const rule = first(name).verdicts.find(({ rule: id }) => id === 'rain.drained-gap');
      expect(rule?.verdict, name).toBe('prefer');
    }
    expect(answers.dry.site.moisture_regime).toBe('B');
  });

  it('has its coldest sheathing where the winter is coldest', () => {
    const winter = (name: keyof typeof SITES) => answers[name].site.winter_mean_temp_f ?? Number.NaN;
    expect(winter('cold')).toBeLessThan(winter('dry'));
    expect(winter('dry')).toBeLessThan(winter('hot-humid'));
    for (const name of NAMES) {
      const cavity = first(name).temperature_profile.winter?.cavity ?? [];
      expect(cavity.length, name).toBeGreaterThan(4);
    }
  });
});

describe('a retrofit with polyethylene behind the lining', async () => {
  const old = { project: 'retrofit', rough_opening_can_change: false, finish: 'cement-stucco' };
  const cold = { ...old, place: SITES.cold, interior_vapour_retarder: 'class-i' };
  const sheeted = await answer(job(cold), SMALL);

  it('keeps it as it stands and warns of the wall that can’t dry inward, or names the rule against it', () => {
    const said = [
      ...sheeted.ranked.flatMap(({ verdicts }) => verdicts),
      ...sheeted.excluded.flatMap(({ because }) =>
        because.map((b) => ({ ...b, verdict: 'forbid' as const })),
      ),
    ].filter(({ verdict }) => verdict === 'caution' || verdict === 'forbid');
    expect(said.map(({ rule }) => rule).join(' ')).toMatch(
      /vapour\.(polyethylene-and-tight-board|class-i-both-sides|tight-on-both-sides|existing-retarder)/,
    );
    for (const wall of sheeted.ranked) {
      expect(wall.interior_vapour_retarder).toContain('as it stands: polyethylene');
    }
  });

  it('never ranks a vapour barrier outside as well', () => {
    for (const { verdicts } of sheeted.ranked) {
      expect(verdicts.find(({ rule }) => rule === 'vapour.class-i-both-sides')?.verdict).not.toBe('forbid');
    }
  });
});
