import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { CRITERIA, type Scores, totalScore, weightsOf } from '../../src/advice/scoring.ts';
import { notInThePrice } from '../../src/record/bids.ts';
import { answer, briefOf, job, judge, KNOWLEDGE, SMALL, TINY, withCatalogue } from './pipeline.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const every = (value: number) => Object.fromEntries(CRITERIA.map((c) => [c, value])) as Scores;
const EQUAL = { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 1 };

describe('the score of a wall', () => {
  it('is the weighted mean of its parts', () => {
    const scores = { ...every(0), cost: 1, energy: 0.5 };
    const weights = { ...every(0), cost: 3, energy: 1 };
    expect(totalScore(scores, weights)).toBeCloseTo((3 * 1 + 1 * 0.5) / 4, 12);
    expect(totalScore(every(0.4), weights)).toBeCloseTo(0.4, 12);
  });

  it('counts all parts alike when every weight is zero', () => {
    expect(totalScore({ ...every(0), cost: 1 }, every(0))).toBeCloseTo(1 / CRITERIA.length, 12);
  });

  it('takes the user’s weights as given', () => {
    expect(weightsOf({ ...EQUAL, carbon: 7 })).toMatchObject({ cost: 1, carbon: 7 });
  });

  it('and each of its parts lies between 0 and 1, for every wall', async () => {
    for (const change of [{}, { project: 'retrofit', budget_usd_per_ft2: 'unknown' }, { windows: [] }]) {
      const { walls } = await judge(briefOf(change), SMALL);
      for (const { scores, score } of walls) {
        const outside = [...Object.values(scores), score].filter((s) => !(s >= 0 && s <= 1));
        expect(outside).toEqual([]);
      }
    }
  });

  // Weighing one part more can only lead to a wall that does at least as well in it.
  it.each(Object.keys(EQUAL) as (keyof typeof EQUAL)[])(
    'never leads to a worse %s when that matters more',
    async (priority) => {
      let before = 0;
      for (const weight of [0, 1, 3, 10]) {
        const { admitted } = await judge(briefOf({ priorities: { ...EQUAL, [priority]: weight } }), TINY);
        const now = admitted[0]?.scores[priority] ?? Number.NaN;
        expect(now).toBeGreaterThanOrEqual(before - 1e-12);
        before = now;
      }
    },
  );
});

describe('a budget that grows', () => {
  it('never makes the best wall score less', async () => {
    let before = 0;
    for (const budget of [14, 17, 20, 26, 35, 60]) {
      const [first] = (await judge(briefOf({ budget_usd_per_ft2: budget }), TINY)).admitted;
      expect(first?.score).toBeGreaterThanOrEqual(before - 1e-12);
      before = first?.score ?? 0;
    }
    expect(before).toBeGreaterThan(0);
  });
});

describe('any weight that grows, of walls of any scores', () => {
  const parts = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 9, maxLength: 9 });
  const toScores = (list: readonly number[]) =>
    Object.fromEntries(CRITERIA.map((c, i) => [c, (list[i] ?? 0) / 20])) as Scores;

  it('never leads to a wall that is worse in it', () => {
    fc.assert(
      fc.property(
        fc.array(parts, { minLength: 2, maxLength: 12 }),
        parts,
        fc.constantFrom(...CRITERIA),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (lists, weighing, criterion, more) => {
          const weights = toScores(weighing);
          const walls = lists.map(toScores);
          // Of equal totals the better one in that criterion, whichever way the weight is moved.
          const winner = (w: Scores) =>
            [...walls].sort((a, b) => {
              const ahead = totalScore(b, w) - totalScore(a, w);
              return Math.abs(ahead) > 1e-9 ? ahead : b[criterion] - a[criterion];
            })[0];
          const before = winner({ ...weights, [criterion]: weights[criterion] + 1e-6 });
          const after = winner({ ...weights, [criterion]: weights[criterion] + more });
          expect(after?.[criterion]).toBeGreaterThanOrEqual((before?.[criterion] ?? 0) - 1e-6);
        },
      ),
    );
  });
});

describe('what is not known', () => {
  it('about the lining costs score against the same wall with paint inside', async () => {
    const knowledge = withCatalogue(
      { retarders: KNOWLEDGE.catalogue.retarders.filter((r) => r.id === 'latex-paint') },
      TINY,
    );
    const retrofit = (lining: string) => briefOf({ project: 'retrofit', interior_vapour_retarder: lining });
    const unknown = (await judge(retrofit('unknown'), knowledge)).walls;
    const painted = (await judge(retrofit('class-iii'), knowledge)).walls;
    expect(unknown.length).toBe(painted.length);
    for (const [i, wall] of unknown.entries()) {
      const known = painted[i]?.scores.moisture_safety ?? Number.NaN;
      expect(wall.scores.moisture_safety).toBeLessThan(known + 0.1);
    }
    const sum = (walls: typeof unknown) => walls.reduce((s, w) => s + w.scores.moisture_safety, 0);
    expect(sum(unknown)).toBeLessThan(sum(painted));
  });
});

describe('windows that hang on screws in the face of the wall', () => {
  it('count for a fifth less in new work where they could stand on the sill', async () => {
    const structureOf = async (rough_opening_can_change: boolean) => {
      const { walls } = await judge(briefOf({ rough_opening_can_change }), SMALL);
      return new Map(
        walls.map(({ candidate, scores }) => [candidate.id, { candidate, score: scores.structure }]),
      );
    };
    const [can, cannot] = [await structureOf(true), await structureOf(false)];
    const less = [...can].map(([id, { candidate, score }]) => ({
      support: candidate.buck.support,
      by: (cannot.get(id)?.score ?? Number.NaN) - score,
    }));
    const onFace = less.filter(({ support }) => support === 'face-fastened').map(({ by }) => by);
    expect(Math.max(...onFace)).toBeCloseTo(0.35 * 0.2, 9);
    expect(Math.min(...onFace)).toBeGreaterThan(0);
    for (const { support, by } of less) if (support !== 'face-fastened') expect(by).toBe(0);
  });
});

describe('openings that have to be cut larger', () => {
  it('make a wall harder to build where it stands already, and its price leaves them out', async () => {
    const easeOf = async (project: string) => {
      const change = { project, interior_vapour_retarder: 'class-iii', rough_opening_can_change: true };
      const { walls } = await judge(briefOf(change), SMALL);
      return new Map(
        walls.map(({ candidate: { cladding, build, buck }, parts, scores }) => [
          [cladding.id, build.insulation.id, ...build.boards_in, buck.id].join(' '),
          { isCut: parts.buck.needs_larger_opening, ease: scores.ease },
        ]),
      );
    };
    const [standing, fresh] = [await easeOf('retrofit'), await easeOf('new')];
    const both = [...standing].flatMap(([id, one]) => {
      const other = fresh.get(id);
      return other ? [{ isCut: one.isCut, less: other.ease - one.ease }] : [];
    });
    expect(both.some(({ isCut }) => isCut) && both.some(({ isCut }) => !isCut)).toBe(true);
    for (const { isCut, less } of both) expect(less > 0).toBe(isCut);
    const advice = await answer(
      job({ project: 'retrofit', interior_vapour_retarder: 'class-iii' }),
      withCatalogue({ bucks: KNOWLEDGE.catalogue.bucks.filter(({ id }) => id === 'plywood-box') }, SMALL),
    );
    const [told] = advice.ranked;
    if (!told) throw new Error('nothing is ranked');
    expect(notInThePrice(advice, told).join()).toContain('cutting the rough openings larger');
  });
});

describe('a sheet inside, where damp heat presses inward', () => {
  const SHEET = { project: 'retrofit', cavity_insulation_r: 13, interior_vapour_retarder: 'class-i' };
  /** How much more or less dry a wall counts over mineral wool than over foil-faced foam, all else alike. */
  const gainOfOpen = async (climate_zone: string, change: object = {}) => {
    const { walls } = await judge(briefOf({ ...SHEET, place: { climate_zone }, ...change }), SMALL);
    const dry = (id: string, thickness_in: number) => {
      const wall = walls.find(
        ({ candidate: { build, cladding, barrier } }) =>
          build.insulation.id === id &&
          build.thickness_in === thickness_in &&
          cladding.id === 'fibre-cement-panels' &&
          barrier.id === 'sealed-permeable',
      );
      return wall?.scores.moisture_safety ?? Number.NaN;
    };
    return dry('mineral-wool', 3) - dry('eps', 2.5);
  };

  it('makes an open outside count for less than one that slows the drive, and elsewhere for more', async () => {
    expect(await gainOfOpen('2A')).toBeLessThan(0);
    expect(await gainOfOpen('2A')).toBeLessThan((await gainOfOpen('2B')) - 0.05);
    expect(await gainOfOpen('2A')).toBeLessThan(
      (await gainOfOpen('2A', { interior_vapour_retarder: 'class-iii' })) - 0.05,
    );
  });
});

describe('the energy of a wall that passes by an R-value alone', () => {
  it('still counts for less the more its U-factor lies above the limit', async () => {
    const steel = {
      framing: { material: 'steel', depth_in: 6, spacing_in: 16 },
      place: { climate_zone: '6A' },
      windows: [],
    };
    const { walls } = await judge(briefOf(steel), SMALL);
    const far = walls
      .filter(({ parts }) => (parts.energy.u_margin_percent ?? 0) < -30)
      .map(({ parts, scores }) => ({ over: -(parts.energy.u_margin_percent ?? 0), energy: scores.energy }))
      .sort((a, b) => a.over - b.over);
    const [least, most] = [far[0], far.at(-1)];
    expect((most?.over ?? 0) - (least?.over ?? 0)).toBeGreaterThan(5);
    expect(most?.energy).toBeLessThan(least?.energy ?? 0);
    for (const [i, { energy }] of far.entries()) expect(energy).toBeLessThanOrEqual(far[i - 1]?.energy ?? 1);
  });
});
