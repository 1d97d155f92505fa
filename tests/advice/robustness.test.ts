import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chooseAlternatives, firstChoice } from '../../src/advice/choose-alternatives.ts';
import { firstChange } from '../../src/advice/first-change.ts';
import { foldOf } from '../../src/advice/folds.ts';
import type { Judged, Knowledge } from '../../src/advice/judge-walls.ts';
import { robustness } from '../../src/advice/robustness.ts';
import { CRITERIA, type Criterion, type Scores, totalScore } from '../../src/advice/scoring.ts';
import { WEIGHT_RANGE, weightMoves } from '../../src/advice/weight-moves.ts';
import type { Price } from '../../src/assembly/catalogue-schema.ts';
import { briefOf, judge, SMALL, TYPICAL, withCatalogue } from './pipeline.ts';

vi.setConfig({ testTimeout: 120_000 });

const every = (value: number) => Object.fromEntries(CRITERIA.map((c) => [c, value])) as Scores;

describe('moving one weight', () => {
  // By hand: A scores 3 - w on the other side of B's 1 + w, level at w = 1 … with cost weighed w and energy 1:
  // A = energy 0.8 + cost 0.2 w, B = energy 0.5 + cost 0.7 w; level where 0.3 = 0.5 w, at w = 0.6.
  it('finds the crossing of two lines', () => {
    const weights = { ...every(0), energy: 1, cost: 0.5 };
    const a = { id: 'a', scores: { ...every(0), energy: 0.8, cost: 0.2 } };
    const b = { id: 'b', scores: { ...every(0), energy: 0.5, cost: 0.7 } };
    const moves = weightMoves([a], [b], weights);
    const cost = moves.find(({ criterion }) => criterion === 'cost');
    expect(cost).toMatchObject({ direction: 'more', now: 0.5, winner: b });
    expect(cost?.until).toBeCloseTo(0.6, 12);
    // And of energy: 0.8 e + 0.1 = 0.5 e + 0.35, at e = 5/6.
    const energy = moves.find(({ criterion }) => criterion === 'energy');
    expect(energy).toMatchObject({ direction: 'less' });
    expect(energy?.until).toBeCloseTo(5 / 6, 12);
    expect(moves).toHaveLength(2);
  });

  // Level at energy 0.4, and behind for any more of it, whatever rounding makes of 0.1 and 0.3.
  it('does not take a rival that is level now and falls behind for one that leads', () => {
    const weights = { ...every(0), energy: 0.4, cost: 0.4, ease: 0.1 };
    const a = { id: 'a', scores: { ...every(0), energy: 0.7, cost: 0.1, ease: 0.3 } };
    const b = { id: 'b', scores: { ...every(0), energy: 0.1, cost: 0.7, ease: 0.3 } };
    const moves = weightMoves([a], [b], weights);
    expect(moves.map(({ criterion, direction }) => `${criterion} ${direction}`)).toEqual([
      'energy less',
      'cost more',
    ]);
    for (const { until } of moves) expect(until).toBeCloseTo(0.4, 12);
  });

  // A scores 0.5 whatever energy weighs, B e / (1 + e) of energy and 0.1 more by the firm's wish: level where
  // 0.5 = e / (1 + e) + 0.1, at e = 2/3.
  it('counts what a firm wishes with the weighted mean', () => {
    const weights = { ...every(0), energy: 0.2, cost: 1 };
    const a = { id: 'a', scores: { ...every(0), energy: 0.5, cost: 0.5 } };
    const b = { id: 'b', scores: { ...every(0), energy: 1 }, wish: 0.1 };
    const energy = weightMoves<typeof a>([a], [b], weights).find(({ criterion }) => criterion === 'energy');
    expect(energy).toMatchObject({ direction: 'more', winner: b });
    expect(energy?.until).toBeCloseTo(2 / 3, 12);
  });

  const scores: fc.Arbitrary<Scores> = fc
    .array(fc.integer({ min: 0, max: 20 }), { minLength: 9, maxLength: 9 })
    .map((parts) => Object.fromEntries(CRITERIA.map((c, i) => [c, (parts[i] ?? 0) / 20])) as Scores);
  const weights: fc.Arbitrary<Scores> = fc
    .array(fc.constantFrom(0, 0.4, 1, 2), { minLength: 9, maxLength: 9 })
    .map((parts) => Object.fromEntries(CRITERIA.map((c, i) => [c, parts[i] ?? 0])) as Scores)
    .filter((w) => Object.values(w).some((value) => value > 0));

  it('says exactly where the lead changes, against trying the weights one by one', () => {
    fc.assert(
      fc.property(fc.array(scores, { minLength: 2, maxLength: 8 }), weights, (list, w) => {
        const walls = list
          .map((one, i) => ({ id: `${i}`, scores: one }))
          .sort((a, b) => totalScore(b.scores, w) - totalScore(a.scores, w));
        const [leader, ...rest] = walls;
        if (!leader) return;
        const best = (criterion: Criterion, weight: number) => {
          const moved = { ...w, [criterion]: weight };
          const lead = totalScore(leader.scores, moved);
          return Math.max(...rest.map((one) => totalScore(one.scores, moved))) - lead;
        };
        const moves = weightMoves([leader], rest, w);
        for (const criterion of CRITERIA) {
          const now = w[criterion];
          const far = now > 0 ? now * WEIGHT_RANGE : WEIGHT_RANGE;
          const more = moves.find((m) => m.criterion === criterion && m.direction === 'more');
          const stop = more?.until ?? far;
          expect(stop).toBeGreaterThanOrEqual(now);
          for (const share of [0.1, 0.5, 0.9])
            expect(best(criterion, now + share * (stop - now))).toBeLessThan(1e-9);
          if (more && stop < far - 0.01) {
            const beyond = { ...w, [criterion]: stop + 0.001 };
            expect(totalScore(more.winner.scores, beyond)).toBeGreaterThan(
              totalScore(leader.scores, beyond) - 1e-12,
            );
          }
          const less = moves.find((m) => m.criterion === criterion && m.direction === 'less');
          for (const share of [0.1, 0.5, 0.9])
            expect(best(criterion, now - share * (now - (less?.until ?? 0)))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('the first change along a scale', () => {
  it('is found to within the step', async () => {
    const at = (limit: number) =>
      firstChange(
        [1, 2, 4, 8],
        async (x) => (x < limit ? 'a' : 'b'),
        (w) => w === 'a',
        0.001,
      );
    for (const limit of [1.3, 2, 3.999, 7]) {
      const change = await at(limit);
      expect(change?.winner).toBe('b');
      expect(change?.at).toBeGreaterThanOrEqual(limit);
      expect(change?.at).toBeLessThan(limit + 0.0011);
    }
    expect(await at(9)).toBeNull();
  });
});

/** Judges the job anew, the whole of it, and says which kind of wall is first. */
async function kindFirst(change: object, knowledge: Knowledge = SMALL): Promise<string | null> {
  const first = firstChoice(await judge(briefOf(change), knowledge));
  return first && foldOf(first);
}

describe('what is said to change the first choice does so when all is judged again', async () => {
  const base = { finish: 'any', budget_usd_per_ft2: 24, max_added_thickness_in: 6 };
  const judged: Judged = await judge(briefOf(base), SMALL);
  const ranked = chooseAlternatives(judged.admitted, 3);
  const moves = await robustness(ranked, judged, SMALL);
  const [first] = ranked;
  const now = first ? foldOf(first) : null;
  const kindOfId = (id: string | null) => {
    const wall = judged.walls.find(({ candidate }) => candidate.id === id);
    return wall ? foldOf(wall) : null;
  };

  it('begins with the first choice and tells of every weight, of prices, budget and room', () => {
    expect(now).not.toBeNull();
    expect(new Set(moves.map(({ kind }) => kind))).toEqual(new Set(['weight', 'price', 'budget', 'room']));
    for (const criterion of CRITERIA) expect(moves.map(({ what }) => what)).toContain(criterion);
    expect(moves.filter(({ until }) => until !== null).length).toBeGreaterThan(3);
  });

  it('of the weights that the user gives', async () => {
    let checked = 0;
    for (const { kind, what, now: weight, until, winner } of moves) {
      if (kind !== 'weight' || typeof until !== 'number' || typeof weight !== 'number') continue;
      if (!(what in TYPICAL.priorities) || until <= 0.02 * weight) continue;
      // Staying dry weighs half as much again as its priority says.
      const scale = what === 'moisture_safety' ? 1.5 : 1;
      const at = (times: number) => ({
        ...base,
        priorities: { ...TYPICAL.priorities, [what]: (until * times) / scale },
      });
      const [before, after] = until > weight ? [0.99, 1.01] : [1.01, 0.99];
      if ((until * 1.01) / scale > 10) continue;
      expect([what, await kindFirst(at(before))]).toEqual([what, now]);
      expect([what, await kindFirst(at(after))]).toEqual([what, kindOfId(winner)]);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(1);
  });

  it('of the budget and of the room', async () => {
    let checked = 0;
    for (const { kind, now: given, until, winner } of moves) {
      if ((kind !== 'budget' && kind !== 'room') || typeof until !== 'number' || typeof given !== 'number')
        continue;
      const field = kind === 'budget' ? 'budget_usd_per_ft2' : 'max_added_thickness_in';
      const [before, after] = until > given ? [0.985, 1.0005] : [1.015, 0.9995];
      expect([kind, await kindFirst({ ...base, [field]: until * before })]).toEqual([kind, now]);
      expect([kind, await kindFirst({ ...base, [field]: until * after })]).toEqual([kind, kindOfId(winner)]);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(0);
  });

  it('of prices, with a catalogue in which that price is another', async () => {
    const times = (price: Price, by: number): Price => ({
      low: price.low * by,
      likely: price.likely * by,
      high: price.high * by,
    });
    let checked = 0;
    for (const { kind, what, now: usd, until, winner } of moves) {
      if (kind !== 'price' || typeof until !== 'number' || typeof usd !== 'number') continue;
      const market = (by: number) =>
        withCatalogue(
          {
            claddings: SMALL.catalogue.claddings.map((c) =>
              c.label === what
                ? { ...c, cost: { ...c.cost, usd_per_ft2: times(c.cost.usd_per_ft2, by) } }
                : c,
            ),
            builds: SMALL.catalogue.builds.map((build) => {
              const { insulation } = build;
              if (insulation.label !== what) return build;
              const { first_inch, each_more_inch, each_more_layer } = insulation.cost;
              const cost = {
                ...insulation.cost,
                first_inch: times(first_inch, by),
                each_more_inch: times(each_more_inch, by),
                each_more_layer: times(each_more_layer, by),
              };
              return { ...build, insulation: { ...insulation, cost } };
            }),
          },
          SMALL,
        );
      const by = until / usd;
      const [before, after] = by > 1 ? [0.99, 1.005] : [1.01, 0.995];
      expect([what, await kindFirst(base, market(by * before))]).toEqual([what, now]);
      expect([what, await kindFirst(base, market(by * after))]).toEqual([what, kindOfId(winner)]);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(0);
  });

  it('and what is said to change nothing changes nothing at the ends of the range', async () => {
    const firm = moves.filter(({ kind, until }) => kind === 'weight' && until === null);
    expect(firm.length).toBeGreaterThan(0);
    for (const { what, now: weight } of firm) {
      if (!(what in TYPICAL.priorities) || what === 'moisture_safety' || typeof weight !== 'number') continue;
      for (const value of [0, Math.min(10, weight * WEIGHT_RANGE)])
        expect(await kindFirst({ ...base, priorities: { ...TYPICAL.priorities, [what]: value } })).toBe(now);
    }
  });
});
