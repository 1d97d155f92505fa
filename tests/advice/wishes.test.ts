import { describe, expect, it, vi } from 'vitest';
import type { Judged } from '../../src/advice/judge-walls.ts';
import { fastenerWords } from '../../src/advice/schedule-words.ts';
import {
  against,
  answer,
  board,
  briefOf,
  job,
  judge,
  KNOWLEDGE,
  SMALL,
  TINY,
  withCatalogue,
} from './pipeline.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const ids = ({ admitted }: Judged) => new Set(admitted.map(({ candidate }) => candidate.id));
const missing = (before: Judged, after: Judged) => [...ids(before)].filter((id) => !ids(after).has(id));

describe('a wish for true cement stucco', () => {
  it('excludes every other finish, by its rule, and no stucco', async () => {
    const { walls } = await judge(briefOf({ finish: 'cement-stucco' }));
    for (const wall of walls)
      expect(against(wall).includes('buildability.finish-wanted')).toBe(
        ![
          'plaster-on-mat-integral-lath',
          'plaster-on-mat-separate-lath',
          'plaster-on-furred-lath',
          'one-coat-plaster-on-lath',
        ].includes(wall.candidate.cladding.id),
      );
  });

  it('when only the look is asked for, excludes what does not look like it', async () => {
    const { walls } = await judge(briefOf({ finish: 'stucco-look' }));
    for (const wall of walls)
      expect(against(wall).includes('buildability.look-wanted')).toBe(
        ['fibre-cement-lap', 'wood-siding', 'adhered-veneer'].includes(wall.candidate.cladding.id),
      );
  });
});

describe('a job where only the synthetic finish passes', async () => {
  const only = (...names: string[]) =>
    withCatalogue({ claddings: KNOWLEDGE.catalogue.claddings.filter(({ id }) => names.includes(id)) }, SMALL);
  // Siding does not give the look asked for, so the synthetic finish is alone.
  const advice = await answer(job({ finish: 'stucco-look' }), only('insulated-finish', 'wood-siding'));
  const [first] = advice.ranked;

  it('is told so before anything speaks for it, with what it is against the wish', () => {
    expect(first?.cladding).toBe('synthetic insulated finish with drainage');
    expect(first?.reasons[0]?.text).toContain('listed only because no other cladding passes here');
    expect(first?.reasons[0]?.text).toContain('Of the stucco wished for it has the look and nothing else');
  });

  it('is not told so of a wall that was chosen among others', async () => {
    const other = await answer(job({ finish: 'any' }), only('insulated-finish', 'wood-siding'));
    expect(other.ranked[0]?.cladding).toContain('siding');
    expect(JSON.stringify(other.ranked)).not.toContain('listed only because');
  });

  it('hears that it is glued, what the report must show for wind, and nothing of fasteners it has not got', () => {
    expect(first?.fastening).toMatchObject({ fastener: 'none: glued', support: 'adhered' });
    const wind = advice.wind.zones.find(({ name }) => name === 'corner')?.allowable.outward_psf ?? 0;
    expect(first?.fastening.why).toContain(`${Math.abs(wind).toFixed(1)} psf of outward wind at the corners`);
    const glue = first?.fastening_schedule.steps.find(
      ({ does, fixes }) => does === 'carries' && !/buck/.test(fixes),
    );
    if (!glue) throw new Error('no line for the glue');
    expect(fastenerWords(glue)).toBe('glue, as the evaluation report says');
    const said = [...(first?.reasons ?? []), ...(first?.thermal.notes.map((text) => ({ text })) ?? [])];
    expect(said.map(({ text }) => text).join(' ')).not.toMatch(/long fasteners|Each fastener is taken/);
  });
});

describe('a first-time crew that wants cement stucco', async () => {
  const advice = await answer(
    job({ finish: 'cement-stucco', crew_skill: 'first-time', budget_usd_per_ft2: 100 }),
  );

  it('gets no wall', () => {
    expect(advice.ranked).toEqual([]);
    expect(advice.considered.admitted).toBe(0);
  });
  it('gets the best wall that looks like stucco, and is told what it gives up', () => {
    expect(advice.fallback?.assembly.cladding).toMatch(/stucco-texture/i);
    expect(advice.fallback?.assembly.gives_up.length).toBeGreaterThan(0);
    expect(advice.fallback?.why).toMatch(/cement stucco/i);
  });
  it('is warned of silica dust for that wall, not only for the one that came closest', () => {
    const own = advice.fallback?.assembly.cautions ?? [];
    const rules = [...advice.cautions, ...own].map(({ rule }) => rule);
    expect(rules).toContain('safety.fibre-cement-dust');
    // Each is said once.
    expect(rules).toHaveLength(new Set(rules).size);
  });
  it('hears of that wall’s weight, not of another’s', () => {
    const added = advice.cautions.find(({ text }) => text.includes('psf are added'))?.text;
    expect(added).toContain(`${advice.fallback?.assembly.weight_psf.toFixed(1)} psf are added`);
  });
  it('is told what came closest and what would admit it', () => {
    expect(advice.excluded.length).toBeGreaterThan(0);
    const plaster = advice.excluded.flatMap(({ because }) =>
      because.filter(({ rule }) => rule === 'buildability.first-time-plaster'),
    );
    expect(plaster.length).toBeGreaterThan(0);
    for (const { remedy } of plaster) expect(remedy).toMatch(/plasterer|panel|crew/i);
    // The closest of all are held back by as few rules as any.
    expect(Math.min(...advice.excluded.map(({ because }) => because.length))).toBe(1);
  });
  it('still hears the general cautions', () => {
    expect(advice.cautions.map(({ kind }) => kind)).toContain('professional');
  });
});

describe('a budget', () => {
  it('forbids a wall exactly when even its low end is above it', async () => {
    for (const budget of [14, 18, 24]) {
      const { walls } = await judge(briefOf({ budget_usd_per_ft2: budget }));
      let over = 0;
      for (const wall of walls) {
        const isOver = Number(wall.verdicts.facts['cost.low_usd_per_ft2']) > budget;
        if (isOver) over += 1;
        expect(against(wall).includes('budget.over-at-the-low-end')).toBe(isOver);
      }
      expect(over).toBeGreaterThan(0);
    }
  });

  it('of exactly the low end does not forbid', async () => {
    const [wall] = (await judge(briefOf())).admitted;
    const low = Number(wall?.verdicts.facts['cost.low_usd_per_ft2']);
    const same = (await judge(briefOf({ budget_usd_per_ft2: low }))).walls.find(
      ({ candidate }) => candidate.id === wall?.candidate.id,
    );
    expect(same && against(same)).toEqual([]);
  });

  it('that grows never takes away a wall, nor does none at all', async () => {
    const budgets = [12, 16, 20, 30, 'unknown'];
    const judged = await Promise.all(budgets.map((budget) => judge(briefOf({ budget_usd_per_ft2: budget }))));
    for (const [i, more] of judged.slice(1).entries()) {
      const less = judged[i];
      expect(less && missing(less, more)).toEqual([]);
    }
    expect(new Set(judged.map(({ admitted }) => admitted.length)).size).toBeGreaterThan(2);
  });
});

describe('a limit of thickness', () => {
  it('that grows never takes away a wall', async () => {
    const judged = [];
    for (const limit of [1, 2.5, 3.5, 5, 20, 'unknown'])
      judged.push(await judge(briefOf({ max_added_thickness_in: limit })));
    for (const [i, more] of judged.slice(1).entries()) {
      const less = judged[i];
      expect(less && missing(less, more)).toEqual([]);
    }
    expect(judged[0]?.admitted).toEqual([]);
    expect(judged.at(-1)?.admitted.length).toBeGreaterThan(100);
  });

  it('admits a wall of exactly that thickness, and none thicker', async () => {
    const [wall] = (await judge(briefOf())).admitted;
    const limit = Number(wall?.verdicts.facts['thickness.added_in']);
    const { walls } = await judge(briefOf({ max_added_thickness_in: limit }));
    for (const one of walls) {
      const isThicker = Number(one.verdicts.facts['thickness.added_in']) > limit;
      expect(against(one).includes('buildability.thickness-limit')).toBe(isThicker);
    }
    expect(walls.find(({ candidate }) => candidate.id === wall?.candidate.id)?.forbids).toBe(0);
  });
});

describe('a job where nothing fits', () => {
  it('is answered with what came closest and what would admit it', async () => {
    const advice = await answer(job({ budget_usd_per_ft2: 2 }));
    expect(advice.ranked).toEqual([]);
    expect(advice.excluded.length).toBeGreaterThan(0);
    for (const { because } of advice.excluded) {
      expect(because.map(({ rule }) => rule)).toContain('budget.over-at-the-low-end');
      for (const { remedy } of because) expect(remedy.length).toBeGreaterThan(4);
    }
  });
});

describe('openings that cannot change', () => {
  it('take every buck out that needs room in them', async () => {
    const { walls } = await judge(briefOf({ rough_opening_can_change: false }));
    for (const wall of walls)
      expect(against(wall).includes('openings.no-room-in-the-opening')).toBe(
        wall.candidate.buck.takes_room_in_opening_in > 0,
      );
  });
});

describe('cautions', () => {
  it('each say what they are about, which rule speaks and what to do', async () => {
    const advice = await answer(job({ project: 'retrofit' }));
    const all = [...advice.cautions, ...advice.ranked.flatMap((wall) => wall.cautions)];
    expect(all.length).toBeGreaterThan(5);
    for (const { kind, rule, remedy } of all) {
      expect(kind.length).toBeGreaterThan(2);
      expect(KNOWLEDGE.rulebook.rules.map((loaded) => loaded.rule.id)).toContain(rule);
      expect(remedy?.length).toBeGreaterThan(4);
    }
  });

  it('of the safety pack stand with the wall that they hold for, where it is not the first', async () => {
    const claddings = KNOWLEDGE.catalogue.claddings.filter((c) =>
      ['wood-siding', 'fibre-cement-panels'].includes(c.id),
    );
    const advice = await answer(job(), withCatalogue({ claddings, builds: [board('eps', 2.5)] }));
    expect(new Set(advice.ranked.map(({ cladding }) => cladding)).size).toBe(2);
    const ofDust = 'safety.fibre-cement-dust';
    const general = advice.cautions.map(({ rule }) => rule);
    for (const { rank, cladding, cautions } of advice.ranked) {
      const told = [...general, ...cautions.map(({ rule }) => rule)];
      if (cladding.includes('ibre-cement')) expect(told).toContain(ofDust);
      else expect(cautions.map(({ rule }) => rule)).not.toContain(ofDust);
      if (rank === 1 && !cladding.includes('ibre-cement')) expect(general).not.toContain(ofDust);
    }
    const rules = advice.cautions.map(({ rule }) => rule);
    expect(new Set(rules).size).toBe(rules.length);
  });

  it('of the weather speak of windows out only where there are any', async () => {
    for (const windows of [[], [{ count: 2 }]]) {
      const [wall] = (await judge(briefOf({ project: 'retrofit', windows }), TINY)).admitted;
      expect(wall?.verdicts.verdictOf('safety.open-wall-weather')).toBe(
        windows.length > 0 ? 'caution' : 'pass',
      );
      expect(wall?.verdicts.verdictOf('safety.bare-wall-weather')).toBe(
        windows.length > 0 ? 'pass' : 'caution',
      );
    }
  });

  it('of structure, falls and fire come with every wall over foam', async () => {
    const { admitted } = await judge(briefOf(), SMALL);
    for (const { verdicts, candidate } of admitted.slice(0, 200)) {
      for (const rule of ['safety.structural-design', 'safety.local-code', 'safety.falls'])
        expect(verdicts.verdictOf(rule)).toBe('caution');
      if (candidate.build.insulation.is_foam_plastic)
        expect(verdicts.verdictOf('safety.open-wall-fire')).toBe('caution');
    }
  });
});
