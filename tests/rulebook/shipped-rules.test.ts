import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { CODE_EDITIONS } from '../../src/brief/scenario.ts';
import { checkRules } from '../../src/rulebook/check-rules.ts';
import { explainRule } from '../../src/rulebook/explain-rule.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import { PlainEvaluator } from '../../src/rulebook/plain-evaluation.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { factSheets } from './random-facts.ts';

let rulebook: Rulebook;
beforeAll(async () => {
  rulebook = await loadRulebook(findRulesDir());
});

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
});
