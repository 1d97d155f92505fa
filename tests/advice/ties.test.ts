import { describe, expect, it, vi } from 'vitest';
import { chooseAlternatives } from '../../src/advice/choose-alternatives.ts';
import { tieWithFirst } from '../../src/advice/ties.ts';
import { answer, board, briefOf, job, judge, KNOWLEDGE, SMALL, withCatalogue } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const eps = board('eps', 2.5);

/** Two claddings that differ in nothing but their price. */
function twins(dearer: { low: number; likely: number; high: number }) {
  const panels = KNOWLEDGE.catalogue.claddings.find(({ id }) => id === 'fibre-cement-panels');
  if (!panels) throw new Error('no panels');
  const priced = (id: string, usd_per_ft2: typeof dearer) => ({
    ...panels,
    id,
    label: id,
    cost: { ...panels.cost, usd_per_ft2 },
  });
  const claddings = [priced('cheap', { low: 9, likely: 10, high: 12 }), priced('dear', dearer)];
  return withCatalogue({ claddings, builds: [eps] });
}

describe('a tie with the first choice', () => {
  // Between half the budget and the budget ($12 to $24, where all of these cost) a dollar is worth 0.5 / (0.5 * 24) of the
  // cost score, which weighs 1 of 1 + 1.5 + 1 + 1 + 0.5 + 1.5 + 0.75 + 0.4 + 0.25. The cheap cladding may become $2 dearer
  // than likely, the dear one x cheaper: together sqrt(2² + x²) dollars.
  it.each([
    ['is one where the prices may well meet', { low: 10, likely: 12.8, high: 14 }, 2.8, 2.8, true],
    ['is none where only both worst ends at once would do', { low: 11, likely: 15, high: 16 }, 5, 4, false],
    ['is none where the prices can never meet', { low: 14.9, likely: 15, high: 16 }, 5, 0.1, false],
  ])('%s', async (_, dear, gap_usd, cheaper_usd, expected) => {
    const judged = await judge(briefOf({ budget_usd_per_ft2: 24 }), twins(dear));
    const [first] = judged.admitted;
    const other = judged.admitted.find(
      ({ candidate }) => candidate.id === first?.candidate.id.replace('cheap', 'dear'),
    );
    if (!first || !other) throw new Error('no twins');
    for (const { candidate } of [first, other]) {
      const { likely } = judged.assess.partsOf(candidate).cost;
      expect(likely).toBeGreaterThan(12 + 3);
      expect(likely).toBeLessThan(24);
    }
    const each_usd = 1 / 7.9 / 24;
    const { is_tie, behind, price_swing } = tieWithFirst(other, first, judged);
    expect(behind).toBeCloseTo(gap_usd * each_usd, 9);
    expect(price_swing).toBeCloseTo(Math.sqrt(2 ** 2 + cheaper_usd ** 2) * each_usd, 9);
    expect(is_tie).toBe(expected);
  });

  it('is what every wall has with itself, and price ranges that both pay alike do not make', async () => {
    const judged = await judge(briefOf(), SMALL);
    const [first] = judged.admitted;
    if (!first) throw new Error('nothing admitted');
    expect(tieWithFirst(first, first, judged)).toEqual({ is_tie: true, behind: 0, price_swing: 0 });
  });

  it('is none where cost weighs nothing and the scores differ', async () => {
    const judged = await judge(
      briefOf({ priorities: { cost: 0, moisture_safety: 1, energy: 1, ease: 1, carbon: 1 } }),
      SMALL,
    );
    const [first, ...others] = chooseAlternatives(judged.admitted, 4);
    if (!first) throw new Error('nothing admitted');
    for (const other of others) {
      expect(other.score).toBeLessThan(first.score);
      expect(tieWithFirst(other, first, judged)).toMatchObject({ is_tie: false, price_swing: 0 });
    }
  });

  it('stands at every alternative, in words that give both figures, and never at the first choice', async () => {
    const { ranked } = await answer(job());
    const [first, ...others] = ranked;
    expect(first).toMatchObject({ tie_with_first: false, tie: null });
    for (const { tie, tie_with_first, score } of others) {
      expect(tie?.score_behind).toBeCloseTo((first?.score ?? 0) - score, 3);
      expect(tie_with_first).toBe((tie?.score_behind ?? 1) <= (tie?.price_swing ?? 0));
      expect(tie?.words).toContain(tie?.score_behind.toFixed(3));
    }
  });
});
