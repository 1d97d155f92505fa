import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { Judged } from '../../src/advice/judge-walls.ts';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { PlainEvaluator } from '../../src/rulebook/plain-evaluation.ts';
import type { RuleOutcome } from '../../src/rulebook/rule-schema.ts';
import { judge, KNOWLEDGE, MINUTE, SMALL } from './pipeline.ts';
import { scenarios } from './random-scenarios.ts';

// The plain engine judges some hundred walls a second.
vi.setConfig({ testTimeout: 240_000 });

const FOLDER = fileURLToPath(new URL('../../scenarios/', import.meta.url));

/** Walls spread over the whole list, so that every cladding and board has its turn. */
function spread<T>(list: readonly T[], count: number): T[] {
  const step = Math.max(1, Math.floor(list.length / count));
  return list.filter((_, i) => i % step === 0);
}

async function expectSameVerdicts({ walls, context }: Judged, count: number): Promise<void> {
  const plain = new PlainEvaluator(KNOWLEDGE.rulebook, context.brief.code_edition);
  for (const { verdicts, forbids } of spread(walls, count)) {
    const slow = await plain.evaluate(verdicts.facts);
    const told = (outcomes: readonly RuleOutcome[]) =>
      outcomes.map(({ rule, verdict, text }) => [rule.id, verdict, text]);
    expect(told(verdicts.outcomes())).toEqual(told(slow));
    expect(forbids).toBe(slow.filter(({ verdict }) => verdict === 'forbid').length);
  }
}

describe('the remembered verdicts are those of one plain engine run over all rules for every wall', () => {
  it.each(readdirSync(FOLDER).filter((name) => name.endsWith('.json')))('of the sample %s', async (name) => {
    const scenario = parseInput(scenarioSchema, JSON.parse(readFileSync(`${FOLDER}${name}`, 'utf8')), name);
    await expectSameVerdicts(await judge(resolveBrief(scenario).brief, SMALL), 40);
  });

  it('of random scenarios', async () => {
    let judged = 0;
    await fc.assert(
      fc.asyncProperty(scenarios, async (scenario) => {
        try {
          await expectSameVerdicts(await judge(resolveBrief(scenario).brief, MINUTE), 4);
          judged += 1;
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
        }
      }),
      { numRuns: 40, endOnFailure: true },
    );
    expect(judged).toBeGreaterThan(15);
  });
});
