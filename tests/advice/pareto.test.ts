import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { competing } from '../../src/advice/choose-alternatives.ts';
import { byScore } from '../../src/advice/judge-walls.ts';
import { dominates, efficientWalls } from '../../src/advice/pareto.ts';
import { CRITERIA, plainSum, type Scores, totalScore } from '../../src/advice/scoring.ts';
import { briefOf, judge, SMALL } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

/** Few steps, so that equal parts and dominance turn up often. */
const scores: fc.Arbitrary<Scores> = fc
  .array(fc.integer({ min: 0, max: 3 }), { minLength: CRITERIA.length, maxLength: CRITERIA.length })
  .map((parts) => Object.fromEntries(CRITERIA.map((c, i) => [c, (parts[i] ?? 0) / 3])) as Scores);
const weights: fc.Arbitrary<Scores> = fc
  .array(fc.constantFrom(0, 0.5, 1, 3), { minLength: CRITERIA.length, maxLength: CRITERIA.length })
  .map((parts) => Object.fromEntries(CRITERIA.map((c, i) => [c, parts[i] ?? 0])) as Scores);

/** Said anew, criterion by criterion. */
const isNowhereWorse = (a: Scores, b: Scores) => CRITERIA.every((c) => a[c] >= b[c]);

describe('dominance', () => {
  it('is: nowhere worse and somewhere better', () => {
    fc.assert(
      fc.property(scores, scores, (a, b) => {
        expect(dominates(a, b)).toBe(isNowhereWorse(a, b) && !isNowhereWorse(b, a));
      }),
    );
  });

  it('is never mutual, never of itself, and carries over', () => {
    fc.assert(
      fc.property(scores, scores, scores, (a, b, c) => {
        expect(dominates(a, a)).toBe(false);
        if (dominates(a, b)) expect(dominates(b, a)).toBe(false);
        if (dominates(a, b) && dominates(b, c)) expect(dominates(a, c)).toBe(true);
      }),
    );
  });

  it('never loses to what it dominates, whatever the weights', () => {
    fc.assert(
      fc.property(scores, scores, weights, (a, b, w) => {
        if (dominates(a, b)) expect(totalScore(a, w)).toBeGreaterThanOrEqual(totalScore(b, w));
      }),
    );
  });
});

describe('a firm’s preference', () => {
  it('keeps a wall in the running that is worse in everything else, and does not save it against another that has it', () => {
    const good = { scores: Object.fromEntries(CRITERIA.map((c) => [c, 0.9])) as Scores, wish: 0 };
    const wished = { scores: Object.fromEntries(CRITERIA.map((c) => [c, 0.88])) as Scores, wish: 0.03 };
    const worse = { scores: Object.fromEntries(CRITERIA.map((c) => [c, 0.87])) as Scores, wish: 0.03 };
    expect(efficientWalls([wished, good, worse])).toEqual([wished, good]);
  });
});

describe('the walls that compete', () => {
  type Wall = { readonly scores: Scores; readonly total: number };
  const bestFirst = (list: readonly Scores[], w: Scores): Wall[] =>
    list
      .map((one) => ({ scores: one, total: totalScore(one, w) }))
      .sort((a, b) => b.total - a.total || plainSum(b.scores) - plainSum(a.scores));

  it('are exactly those that no other wall dominates, also where a criterion weighs nothing', () => {
    fc.assert(
      fc.property(fc.array(scores, { minLength: 1, maxLength: 30 }), weights, (list, w) => {
        const walls = bestFirst(list, w);
        const expected = walls.filter(
          (wall) =>
            !walls.some(
              (other) =>
                isNowhereWorse(other.scores, wall.scores) && !isNowhereWorse(wall.scores, other.scores),
            ),
        );
        expect(efficientWalls(walls)).toEqual(expected);
        expect(efficientWalls(walls)[0]).toBe(walls[0]);
      }),
    );
  });

  it('are led by the first choice when real walls are judged, also by cost alone', async () => {
    for (const priorities of [
      { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 0.5 },
      { cost: 10, moisture_safety: 0, energy: 0, ease: 0, carbon: 0 },
    ]) {
      const { admitted } = await judge(briefOf({ priorities }), SMALL);
      const efficient = efficientWalls(competing(admitted));
      expect(efficient[0]).toBe(admitted[0]);
      expect(efficient.length).toBeGreaterThan(3);
      expect(efficient.length).toBeLessThan(admitted.length / 2);
      expect(efficient).toEqual([...efficient].sort(byScore));
    }
  });
});
