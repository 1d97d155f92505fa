import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, vi } from 'vitest';
import { ruleCoverage } from '../../src/advice/rule-coverage.ts';
import { parseInput } from '../../src/base/parse-input.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { COVERAGE_SCENARIOS } from './coverage-scenarios.ts';
import { KNOWLEDGE } from './pipeline.ts';

// The whole market for every scenario, on a machine that may be busy.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const FOLDER = fileURLToPath(new URL('../../scenarios/', import.meta.url));
const SAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => parseInput(scenarioSchema, JSON.parse(readFileSync(`${FOLDER}${name}`, 'utf8')), name));

describe('the shipped rules, over the samples and the invented jobs', async () => {
  const coverage = await ruleCoverage([...SAMPLES, ...COVERAGE_SCENARIOS], KNOWLEDGE);
  const reachOf = new Map(KNOWLEDGE.rulebook.rules.map(({ rule }) => [rule.id, rule.reach?.fires ?? 'some']));
  const ids = (wanted: (entry: (typeof coverage)[number]) => boolean) =>
    coverage.filter(wanted).map(({ rule }) => rule);

  it('are each counted once', () => {
    expect(coverage.map(({ rule }) => rule).sort()).toEqual([...reachOf.keys()].sort());
  });

  it('fire on some wall and hold back on another, but for those that say why they do not', () => {
    const odd = ids(
      ({ rule, fires_in, holds_back_in }) =>
        reachOf.get(rule) === 'some' && (fires_in === 0 || holds_back_in === 0),
    );
    expect(odd).toEqual([]);
  });

  it('that say they never fire, or always, are right', () => {
    expect(ids(({ rule, fires_in }) => reachOf.get(rule) === 'never' && fires_in > 0)).toEqual([]);
    expect(ids(({ rule, holds_back_in }) => reachOf.get(rule) === 'always' && holds_back_in > 0)).toEqual([]);
  });

  it('are mostly not guards: fewer than one in nine never decides anything', () => {
    const guards = [...reachOf.values()].filter((reach) => reach === 'never').length;
    expect(guards / reachOf.size).toBeLessThan(0.11);
  });
});
