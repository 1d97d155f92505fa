import { Engine } from 'json-rules-engine';
import { describe, expect, it } from 'vitest';
import { RuleEngine, refusePath } from '../../src/rulebook/rule-engine.ts';
import type { Facts } from '../../src/rulebook/rule-schema.ts';
import { rule } from './invented-rules.ts';

const stateOf = async (engine: RuleEngine, facts: Facts) => (await engine.run(facts))[0];

describe('the engine, hedged in', () => {
  it('answers for every rule when runs overlap, where the bare engine drops some', async () => {
    const rules = Array.from({ length: 20 }, (_, i) => ({
      ...rule({ all: [{ fact: 'a.n', operator: 'greaterThan', value: i }] }),
      id: `test.r${i}`,
    }));
    // A run that starts while another ends finds the engine marked as finished.
    const staggered = async <T>(run: (n: number) => Promise<T>): Promise<T[]> => {
      const runs: Promise<T>[] = [];
      for (let n = 0; n < 60; n++) {
        runs.push(run(n % 25));
        await Promise.resolve();
      }
      return Promise.all(runs);
    };

    const bare = new Engine();
    for (const { id, conditions } of rules) bare.addRule({ name: id, conditions, event: { type: 'holds' } });
    const answered = await staggered(async (n) => {
      const { results, failureResults } = await bare.run({ 'a.n': n });
      return results.length + failureResults.length;
    });
    expect(Math.min(...answered)).toBeLessThan(rules.length);

    const engine = new RuleEngine(rules);
    const runs = await staggered((n) => engine.run({ 'a.n': n }));
    runs.forEach((states, i) => {
      expect(states).toEqual(rules.map((_, limit) => (i % 25 > limit ? 'fires' : 'pass')));
    });
  });

  it('goes on after a run that failed', async () => {
    const engine = new RuleEngine([rule({ all: [{ fact: 'a.n', operator: 'equal', value: 1 }] })]);
    const failing = engine.run({});
    const next = engine.run({ 'a.n': 1 });
    await expect(failing).rejects.toThrow('fact a.n is missing');
    expect(await next).toEqual(['fires']);
  });

  it('does not let missing data pass under not(lessThan) and notEqual, as the bare engine would', async () => {
    const conditions = {
      all: [
        { not: { fact: 'a.n', operator: 'lessThan', value: 5 } },
        { fact: 'a.n', operator: 'notEqual', value: 5 },
      ],
    } as const;
    const bare = new Engine([], { allowUndefinedFacts: true });
    bare.addRule({ conditions: { all: [...conditions.all] }, event: { type: 'holds' } });
    expect((await bare.run({})).results).toHaveLength(1);

    const engine = new RuleEngine([rule({ all: [...conditions.all] })]);
    await expect(engine.run({})).rejects.toThrow('fact a.n is missing');
    expect(await stateOf(engine, { 'a.n': null })).toBe('open');
    expect(await stateOf(engine, { 'a.n': 6 })).toBe('fires');
  });

  it.each([
    [{ all: [{ not: { fact: 'a.n', operator: 'lessThan', value: 5 } }] }],
    [{ all: [{ fact: 'a.n', operator: 'notEqual', value: 5 }] }],
    [{ all: [{ fact: 'a.n', operator: 'notIn', value: [5] }] }],
    [{ all: [{ not: { fact: 'a.n', operator: 'equal', value: 5 } }] }],
    [{ all: [{ fact: 'a.m', operator: 'greaterThan', value: { fact: 'a.n' } }] }],
  ] as const)('leaves %j open while the fact is unknown', async (conditions) => {
    const engine = new RuleEngine([rule(structuredClone(conditions) as never)]);
    expect(await stateOf(engine, { 'a.n': null, 'a.m': 1 })).toBe('open');
  });

  it('decides without an unknown fact that does not matter', async () => {
    const engine = new RuleEngine([
      rule(
        {
          any: [
            { fact: 'a.n', operator: 'greaterThan', value: 5 },
            { fact: 'a.sure', operator: 'equal', value: true },
          ],
        },
        { all: [{ fact: 'a.here', operator: 'equal', value: true }] },
      ),
    ]);
    expect(await stateOf(engine, { 'a.n': null, 'a.sure': true, 'a.here': true })).toBe('fires');
    expect(await stateOf(engine, { 'a.n': null, 'a.sure': false, 'a.here': true })).toBe('open');
    expect(await stateOf(engine, { 'a.n': null, 'a.sure': false, 'a.here': false })).toBe('silent');
    expect(await stateOf(engine, { 'a.n': 1, 'a.sure': false, 'a.here': null })).toBe('pass');
    expect(await stateOf(engine, { 'a.n': 6, 'a.sure': false, 'a.here': null })).toBe('open');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])(
    'throws on %s, which would be neither above nor below a limit',
    async (n) => {
      const engine = new RuleEngine([rule({ all: [{ fact: 'a.n', operator: 'greaterThan', value: 5 }] })]);
      await expect(engine.run({ 'a.n': n })).rejects.toThrow('fact a.n is');
    },
  );

  it('refuses every path into a fact', () => {
    expect(() => refusePath({ x: 1 }, '$.x')).toThrow('paths into facts are not allowed');
  });
});
