import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CODE_EDITIONS } from '../../src/base/code-editions.ts';
import { checkRules } from '../../src/rulebook/check-rules.ts';
import { ruleLeaves } from '../../src/rulebook/condition-tree.ts';
import { checkLimits } from '../../src/rulebook/limit-direction.ts';
import { LimitIndex, limitText, parseLimits } from '../../src/rulebook/limits.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import type { Facts, FactValue } from '../../src/rulebook/rule-schema.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { houseFile, rawHouse, shippedWith } from './house-packs.ts';
import { rawPack, rawRule, refusalOf, rulesFolder } from './invented-rules.ts';

const LIMITS = {
  schema: 'cladwright-limits/1',
  limits: [
    { id: 'heaviest', meaning: 'the weight of the cladding', value: 10, unit: 'psf', stricter: 'lower' },
  ],
};
const weighs = (operator: string, value: unknown) => ({ fact: 'wall.weight_psf', operator, value });

async function bookOf(rules: readonly unknown[], limits: object = LIMITS) {
  return loadRulebook(await rulesFolder({ 'limits.json': limits, 'a.rules.json': rawPack(rules) }));
}

describe('a named limit', () => {
  it('stands in comparisons and in texts', async () => {
    const book = await bookOf([
      rawRule({
        conditions: { all: [weighs('greaterThan', { limit: 'heaviest' })] },
        remedy: 'Stay under {limit.heaviest}, or ask.',
      }),
    ]);
    const [loaded] = book.rules;
    expect(loaded?.rule.conditions).toEqual({ all: [weighs('greaterThan', 10)] });
    expect(loaded?.rule.remedy).toBe('Stay under 10.0 psf, or ask.');
    expect(loaded?.limits).toEqual([{ limit: 'heaviest', operator: 'greaterThan', isNegated: false }]);
  });

  it.each([
    [{ unit: 'in.' }, 0.1875, '3/16 in.'],
    [{ unit: 'in.' }, 4, '4 in.'],
    [{ unit: 'ft²' }, 144, '144 ft²'],
    [{}, 1.23, '1.23'],
    [{ unit: '%' }, 3, '3%'],
  ])('is written out: %j %f', (limit, value, text) => {
    expect(limitText(limit, value)).toBe(text);
  });

  it.each([
    [{ limits: [] }, /limits/],
    [{ limits: [...LIMITS.limits, ...LIMITS.limits] }, /limits\[1\]\.id: "heaviest"/],
    [{ limits: [{ ...LIMITS.limits[0], stricter: 'down' }] }, /limits\[0\]\.stricter/],
    [{ limits: [{ ...LIMITS.limits[0], value: '10' }] }, /limits\[0\]\.value/],
  ])('is refused in a bad table: %j', async (change, message) => {
    const work = async () => parseLimits({ ...LIMITS, ...change }, 'limits.json');
    expect(await refusalOf(work())).toMatch(message);
  });
});

describe('checking the direction of limits', () => {
  const problems = async (...rules: readonly unknown[]) => {
    const book = await bookOf(rules);
    return checkLimits(book.rules, book.limits, 'limits.json').map(
      ({ rule, message }) => `${rule}: ${message}`,
    );
  };
  const limited = (id: string, verdict: string, tree: object) => rawRule({ id, verdict, conditions: tree });
  const over = { all: [weighs('greaterThan', { limit: 'heaviest' })] };
  const under = { all: [weighs('lessThanInclusive', { limit: 'heaviest' })] };

  it('a ban above it is right, a ban below it is not', async () => {
    expect(await problems(limited('a.ban', 'forbid', over))).toEqual([]);
    expect(await problems(limited('a.ban', 'forbid', under))).toEqual([
      expect.stringMatching(/^a\.ban: the limit "heaviest" is stricter when lower/),
    ]);
  });

  it('"not" turns it round, an operator without order is never right', async () => {
    expect(await problems(limited('a.ban', 'forbid', { all: [{ not: under }] }))).toEqual([]);
    expect(await problems(limited('a.ban', 'forbid', { all: [{ not: over }] }))).toHaveLength(1);
    expect(
      await problems(limited('a.ban', 'forbid', { all: [weighs('equal', { limit: 'heaviest' })] })),
    ).toHaveLength(1);
  });

  it('a caution may end where another caution or a ban takes over, and nowhere else', async () => {
    const band = limited('a.caution', 'caution', { all: [weighs('greaterThan', 5), ...under.all] });
    expect(await problems(band)).toHaveLength(1);
    expect(await problems(band, limited('a.ban', 'forbid', over))).toEqual([]);
    expect(await problems(band, limited('b.caution', 'caution', over))).toEqual([]);
    expect(await problems(band, limited('b.good', 'prefer', over))).toHaveLength(1);
    expect(
      await problems(
        limited('a.ban', 'forbid', { all: [weighs('greaterThan', 5), ...under.all] }),
        limited('b.caution', 'caution', over),
      ),
    ).toHaveLength(1);
  });

  it('a rule that reads a limit both ways does not take over from itself', async () => {
    expect(await problems(limited('a.band', 'caution', { all: [...over.all, ...under.all] }))).toHaveLength(
      1,
    );
  });

  it('a preference may go either way: it admits nothing', async () => {
    expect(await problems(limited('a.good', 'prefer', under))).toEqual([]);
  });

  it('a limit that no rule reads is told', async () => {
    expect(await problems(rawRule())).toEqual([
      'heaviest: no rule reads this limit: it would tighten nothing.',
    ]);
  });
});

describe('a band of caution that a firm narrows from above', () => {
  const LIMIT = { limit: 'heaviest' };
  const isNew = (value: boolean) => ({ all: [{ fact: 'wall.is_new', operator: 'equal', value }] });
  const examplesAt = (weight: number, is_new: boolean) => ({
    fires: [{ name: 'in it', facts: { 'wall.weight_psf': weight, 'wall.is_new': is_new } }],
    silent: [{ name: 'far below', facts: { 'wall.weight_psf': 1, 'wall.is_new': is_new } }],
  });
  const band = rawRule({
    id: 'weight.band',
    verdict: 'caution',
    reason: 'The cladding is on the heavy side.',
    applies_when: isNew(true),
    conditions: { all: [weighs('greaterThan', 5), weighs('lessThanInclusive', LIMIT)] },
    examples: examplesAt(8, true),
  });
  const ban = (ofNew: boolean, editions: readonly string[] = CODE_EDITIONS) =>
    rawRule({
      id: `weight.ban-${editions.join('-')}`,
      reason: 'The cladding is too heavy.',
      editions,
      applies_when: isNew(ofNew),
      conditions: { all: [weighs('greaterThan', LIMIT)] },
      examples: examplesAt(12, ofNew),
    });
  const problems = async (...bans: readonly object[]) => {
    const dir = await rulesFolder({ 'limits.json': LIMITS, 'a.rules.json': rawPack([band, ...bans]) });
    const pack = rawHouse({ tighten: [{ limit: 'heaviest', to: 6, reason: 'The firm says so.' }] });
    const { problems: found } = await checkRules(
      await loadRulebook(dir, { extraPacks: [await houseFile(pack)] }),
    );
    return found.map(({ rule, message }) => `${rule}: ${message}`);
  };
  const LOST = expect.stringMatching(/^weight\.band: example "in it" .* no rule as strong takes over/);

  it('is lost only where a ban speaks on the same facts, in every edition', async () => {
    expect(await problems(ban(true))).toEqual([]);
    expect(await problems(ban(true, ['2018']), ban(true, ['2021', '2024']))).toEqual([]);
    expect(await problems(ban(false))).toEqual([LOST]);
    expect(await problems(ban(true, ['2018', '2021']))).toEqual([LOST]);
  });
});

describe('the shipped limits', async () => {
  const shipped = await loadRulebook(findRulesDir());

  it('are each read by a rule, in the right direction', () => {
    expect(checkLimits(shipped.rules, shipped.limits, 'limits.json')).toEqual([]);
    expect(shipped.limits.all.length).toBeGreaterThanOrEqual(30);
  });

  // The whole point: whatever a firm makes stricter, no wall gets in that the shipped rules keep out.
  it('tightened at random never admit a wall that the shipped rules forbid', async () => {
    const constants = new Map<string, number[]>();
    for (const leaf of shipped.rules.flatMap(({ rule }) => ruleLeaves(rule)))
      if (typeof leaf.value === 'number')
        constants.set(leaf.fact, [...(constants.get(leaf.fact) ?? []), leaf.value]);
    const anyValueOf = (id: string): fc.Arbitrary<FactValue> => {
      const entry = shipped.facts.get(id);
      if (entry.type === 'yes-no') return fc.boolean();
      if (entry.type === 'text') return fc.constantFrom(...(entry.values ?? ['some-name']));
      const around = (constants.get(id) ?? [1]).flatMap((at) => [0.5 * at, at, 1.05 * at, 2 * at]);
      return fc.constantFrom(...around);
    };
    const sheets = fc.array(
      fc.record(
        Object.fromEntries(shipped.facts.ids.map((id) => [id, anyValueOf(id)])),
      ) as fc.Arbitrary<Facts>,
      { minLength: 15, maxLength: 15 },
    );
    const limitsOf = (id: string) => shipped.find(id)?.limits.map(({ limit }) => limit) ?? [];
    const factor = fc.double({ min: 1, max: 3, noNaN: true });
    const factors = fc.array(factor, {
      minLength: shipped.limits.all.length,
      maxLength: shipped.limits.all.length,
    });
    await fc.assert(
      fc.asyncProperty(sheets, factors, async (walls, by) => {
        const list = shipped.limits.all.map(({ id, value, stricter }, i) => ({
          limit: id,
          to: (stricter === 'lower') === value > 0 ? value / (by[i] ?? 1) : value * (by[i] ?? 1),
          reason: 'An invented firm wants it so.',
        }));
        const tightened = await shippedWith(rawHouse({ tighten: list }));
        for (const edition of ['2018', '2021', '2024'] as const) {
          const before = await shipped.evaluateAll(walls, edition);
          const after = await tightened.evaluateAll(walls, edition);
          for (const [i, one] of before.entries()) {
            const bans = one.rulesWith('forbid').map(({ rule }) => rule.id);
            const now = new Set(after[i]?.rulesWith('forbid').map(({ rule }) => rule.id));
            expect(bans.filter((id) => !now.has(id))).toEqual([]);
            // A caution is still said, or what it warned of is now forbidden, or another that reads the same limit is said.
            const said = new Set(after[i]?.rulesWith('caution').flatMap(({ rule }) => limitsOf(rule.id)));
            for (const { rule } of one.rulesWith('caution')) {
              const still = after[i]?.verdictOf(rule.id) === 'caution';
              expect(still || now.size > 0 || limitsOf(rule.id).some((id) => said.has(id))).toBe(true);
            }
          }
        }
      }),
      { numRuns: 6 },
    );
  });

  it('are given back untouched by an index with nothing moved', () => {
    expect(new LimitIndex(shipped.limits.all).with(new Map()).all).toEqual(shipped.limits.all);
  });
});
