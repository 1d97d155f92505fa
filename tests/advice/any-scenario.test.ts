import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { Advice } from '../../src/advice/advice-schema.ts';
import { Refusal } from '../../src/base/refusal.ts';
import * as given from '../../src/brief/scenario.ts';
import { answer, KNOWLEDGE, MINUTE, TINY } from './pipeline.ts';
import { scenarios } from './random-scenarios.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 120_000 });

/** Every string and number inside, with the way to it. */
function leaves(value: unknown, path: string): [string, unknown][] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`));
}

function checkAnswer(advice: Advice): void {
  const broken = leaves(advice, 'advice').filter(([, value]) =>
    typeof value === 'string'
      ? /undefined|NaN|Infinity|\[object|[{}]/.test(value)
      : value === undefined || (typeof value === 'number' && !Number.isFinite(value)),
  );
  expect(broken).toEqual([]);
  expect(advice.considered.candidates).toBeGreaterThan(0);
  expect(advice.ranked.length > 0).toBe(advice.considered.admitted > 0);
  if (advice.ranked.length === 0) expect(advice.excluded.length).toBeGreaterThan(0);
  // No exclusion without the rule, its source, what it says and what would admit the wall.
  for (const { because } of advice.excluded) {
    expect(because.length).toBeGreaterThan(0);
    for (const { rule, citation, text, remedy } of because) {
      expect(KNOWLEDGE.rulebook.find(rule)).toBeDefined();
      for (const words of [citation, text, remedy]) expect(words.length).toBeGreaterThan(4);
    }
  }
  for (const { reasons, folded, tie_with_first, rank } of advice.ranked) {
    expect(reasons.length).toBeGreaterThan(0);
    expect(folded?.count).toBeGreaterThan(0);
    if (rank === 1) expect(tie_with_first).toBe(false);
  }
  expect(advice.considered.competing).toBeLessThanOrEqual(advice.considered.admitted);
  for (const { verdicts } of advice.ranked)
    expect(verdicts.filter(({ verdict }) => verdict === 'forbid')).toEqual([]);
  const pairs = advice.ranked.map(({ cladding, insulation }) => `${cladding} over ${insulation.id}`);
  expect(new Set(pairs).size).toBe(pairs.length);
  const general = advice.cautions.map(({ rule }) => rule);
  for (const rule of ['safety.structural-design', 'safety.local-code', 'safety.falls'])
    expect(general).toContain(rule);
}

describe('any scenario', () => {
  const outcomes = async (knowledge: typeof TINY, numRuns: number) => {
    const seen = { answered: 0, passed: 0 };
    await fc.assert(
      fc.asyncProperty(scenarios, async (scenario) => {
        let advice: Advice;
        try {
          advice = await answer(scenario, knowledge, 2);
        } catch (error) {
          // A filling of steel studs that no table has, zone 0 in 2018, more window than wall.
          if (!(error instanceof Refusal)) throw error;
          for (const { field } of error.issues)
            expect(Object.keys(given.scenarioSchema.shape)).toContain(field.split(/[.[]/)[0]);
          return;
        }
        seen.answered += 1;
        if (advice.ranked.length > 0) seen.passed += 1;
        checkAnswer(advice);
      }),
      { numRuns, endOnFailure: true },
    );
    return seen;
  };

  it('is answered or refused by a field’s name; never a crash, never an empty answer without reasons', async () => {
    const { answered, passed } = await outcomes(TINY, 60);
    // The scenarios are worth something: most are answered, and a good part finds a wall.
    expect(answered).toBeGreaterThan(30);
    expect(passed).toBeGreaterThan(5);
  });

  it('out of five hundred, on a market of two boards', { timeout: 240_000 }, async () => {
    const { answered, passed } = await outcomes(MINUTE, 500);
    expect(answered).toBeGreaterThan(250);
    expect(passed).toBeGreaterThan(50);
  });
});

describe('the packs that judged', () => {
  it('are named in every answer with version and digest', async () => {
    const { rules } = await answer(
      given.scenarioSchema.parse({ schema: 'cladwright-scenario/1', place: { climate_zone: '4A' } }),
      TINY,
    );
    expect(rules.packs.length).toBe(KNOWLEDGE.rulebook.packs.length);
    for (const { version, sha256 } of rules.packs) {
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
      expect(sha256).toMatch(/^[0-9a-f]{64}$/);
    }
  });
});
