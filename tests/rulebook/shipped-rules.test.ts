import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { CODE_EDITIONS } from '../../src/brief/scenario.ts';
import { checkRules } from '../../src/rulebook/check-rules.ts';
import { ruleLeaves } from '../../src/rulebook/condition-tree.ts';
import { explainRule } from '../../src/rulebook/explain-rule.ts';
import type { FactEntry } from '../../src/rulebook/fact-dictionary.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import { PlainEvaluator } from '../../src/rulebook/plain-evaluation.ts';
import type { Facts, FactValue } from '../../src/rulebook/rule-schema.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';

let rulebook: Rulebook;
beforeAll(async () => {
  rulebook = await loadRulebook(findRulesDir());
});

/** Walls that hit the rules' own limits exactly, miss them narrowly or by far, or don't know. */
function factSheets(book: Rulebook): fc.Arbitrary<Facts> {
  const limits = new Map<string, number[]>();
  const texts = new Map<string, string[]>();
  for (const leaf of book.rules.flatMap(({ rule }) => ruleLeaves(rule))) {
    for (const constant of Array.isArray(leaf.value) ? leaf.value : [leaf.value]) {
      if (typeof constant === 'number') limits.set(leaf.fact, [...(limits.get(leaf.fact) ?? []), constant]);
      if (typeof constant === 'string') texts.set(leaf.fact, [...(texts.get(leaf.fact) ?? []), constant]);
    }
  }
  const anyValueOf = (entry: FactEntry): fc.Arbitrary<FactValue> => {
    if (entry.type === 'yes-no') return fc.boolean();
    if (entry.type === 'text')
      return fc.constantFrom(...(entry.values ?? [...(texts.get(entry.id) ?? []), 'another']));
    const around = (limits.get(entry.id) ?? [1]).flatMap((limit) => [
      limit - 100,
      limit - 1e-6,
      limit,
      limit + 0.5,
    ]);
    return fc.constantFrom(...around);
  };
  return fc.record(
    Object.fromEntries(
      book.facts.ids.map((id) => [
        id,
        fc.option<FactValue>(anyValueOf(book.facts.get(id)), { nil: null, freq: 6 }),
      ]),
    ),
  );
}

describe('the shipped rules', () => {
  it('are sound: every example comes out as it says, nothing is unreachable, doubled or contradictory', async () => {
    const result = await checkRules(rulebook);
    expect(result.problems).toEqual([]);
    expect(result.rules).toBeGreaterThanOrEqual(40);
  });

  it('give the same outcomes remembered as by one engine run for every wall', async () => {
    const sheets = fc.sample(factSheets(rulebook), { numRuns: 40, seed: 7 });
    for (const edition of CODE_EDITIONS) {
      const plain = new PlainEvaluator(rulebook, edition);
      const fast = await rulebook.evaluateAll(sheets, edition);
      // Both ways agree on an edition without a single rule, too.
      expect(fast.flatMap((verdicts) => verdicts.outcomes()).length).toBeGreaterThan(sheets.length);
      for (const [i, sheet] of sheets.entries()) {
        expect(fast[i]?.outcomes()).toEqual(await plain.evaluate(sheet));
      }
    }
  });

  it('leave no placeholder in any text', async () => {
    for (const verdicts of await rulebook.evaluateAll(
      fc.sample(factSheets(rulebook), { numRuns: 40, seed: 8 }),
      '2021',
    )) {
      for (const outcome of verdicts.outcomes()) {
        expect(`${outcome.text} ${outcome.remedy}`).not.toMatch(/[{}]|undefined|NaN/);
      }
    }
  });

  it('can each be explained', () => {
    for (const { rule } of rulebook.rules) expect(explainRule(rulebook, rule.id)).toContain(rule.title);
  });

  // A generous bound: about a tenth of it was measured.
  it('judge 4,000 walls in well under three seconds, cold', async () => {
    const few = fc.sample(factSheets(rulebook), { numRuns: 400, seed: 9 });
    const sheets = Array.from({ length: 4000 }, (_, i) => few[i % few.length] ?? {});
    const fresh = await loadRulebook(findRulesDir());
    const start = performance.now();
    const verdicts = await fresh.evaluateAll(sheets, '2021');
    expect(performance.now() - start).toBeLessThan(3000);
    expect(verdicts).toHaveLength(4000);
  });
});
