import { cp, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { CodeTables } from '../../src/assessment/code-tables.ts';
import { CODE_EDITIONS } from '../../src/base/code-editions.ts';
import { checkShipped } from '../../src/rulebook/check-shipped.ts';
import {
  factsLackingEditions,
  rulesLackingEditions,
  tablesLackingEditions,
} from '../../src/rulebook/edition-gaps.ts';
import { loadCodeTables } from '../../src/rulebook/load-code-tables.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { rawPack, rawRule, rulesFolder } from './invented-rules.ts';

const CONCERNS = ['energy', 'vapour', 'structure'] as const;

/** A pack of one rule for each concern, as `change` would have the rule. */
async function rulesOf(change: (concern: string) => object) {
  const packs = CONCERNS.map((concern) => [
    `${concern}/test.rules.json`,
    rawPack([rawRule({ id: `${concern}.too-heavy`, ...change(concern) })], { pack: concern, concern }),
  ]);
  return (await loadRulebook(await rulesFolder(Object.fromEntries(packs)))).rules;
}

const gapsOf = async (change: (concern: string) => object, editions?: readonly string[]) =>
  rulesLackingEditions(await rulesOf(change), editions).map(({ field, value }) => `${field}: ${value}`);

describe('an edition that the program offers', () => {
  it('is in order where energy, vapour and structure each forbid something in it', async () => {
    expect(await gapsOf(() => ({}))).toEqual([]);
  });

  it('is refused for every concern where no rule knows it', async () => {
    expect(await gapsOf(() => ({}), [...CODE_EDITIONS, '2999'])).toEqual([
      'energy/*.rules.json: edition "2999"',
      'vapour/*.rules.json: edition "2999"',
      'structure/*.rules.json: edition "2999"',
    ]);
  });

  it.each(CONCERNS)('is refused where %s alone leaves it out', async (silent) => {
    expect(
      await gapsOf((concern) => ({
        editions: CODE_EDITIONS.filter((edition) => concern !== silent || edition !== '2021'),
      })),
    ).toEqual([`${silent}/*.rules.json: edition "2021"`]);
  });

  it('is not spoken for by a rule that only cautions', async () => {
    const gaps = await gapsOf((concern) => (concern === 'vapour' ? { verdict: 'caution' } : {}), ['2024']);
    expect(gaps).toEqual(['vapour/*.rules.json: edition "2024"']);
  });

  it('is not spoken for by a ban of a firm', async () => {
    const rules = (await rulesOf(() => ({}))).map((loaded) => ({
      ...loaded,
      house: loaded.concern === 'energy',
    }));
    expect(rulesLackingEditions(rules, ['2021']).map(({ field }) => field)).toEqual(['energy/*.rules.json']);
  });

  it.each([
    ['forbid', 'No rule of this pack forbids anything in this edition'],
    ['caution', 'No rule of this pack speaks of this edition'],
  ])(
    'is refused where a pack of another concern has a rule to %s for other editions only',
    async (verdict, words) => {
      const [first] = await rulesOf(() => ({}));
      const other = first && {
        ...first,
        concern: 'fire' as const,
        file: 'fire/test.rules.json',
        rule: {
          ...first.rule,
          verdict: verdict as 'forbid',
          editions: CODE_EDITIONS.filter((edition) => edition !== '2024'),
        },
      };
      const gaps = rulesLackingEditions([...(await rulesOf(() => ({}))), other ?? expect.fail()]);
      expect(gaps.map(({ field, value }) => `${field}: ${value}`)).toEqual([
        'fire/test.rules.json: edition "2024"',
      ]);
      expect(gaps[0]?.accepted).toContain(words);
    },
  );

  it('says what would follow and where to put it right', async () => {
    const [gap] = rulesLackingEditions([], ['2021']);
    expect(gap?.accepted).toMatch(/would admit every wall.*"editions".*src\/base\/code-editions\.ts/);
  });
});

describe('the fact that names the edition', () => {
  it('takes every edition that is offered, and no other', async () => {
    const { facts } = await loadRulebook(findRulesDir());
    expect(factsLackingEditions(facts)).toEqual([]);
    expect(factsLackingEditions(facts, ['2024', '2999'])).toMatchObject([
      { field: 'facts.json: project.code_edition, values', value: 'edition "2999"' },
    ]);
  });
});

describe('the check of the build', () => {
  it('ends on an edition of which the shipped energy rules forbid nothing, and not as a file with an error', async () => {
    const dir = await mkdtemp(join(tmpdir(), 'rules-'));
    await cp(findRulesDir(), dir, { recursive: true });
    for (const file of ['wall-limits', 'insulation-choice']) {
      const path = join(dir, `energy/${file}.rules.json`);
      const pack = JSON.parse(await readFile(path, 'utf8'));
      for (const rule of pack.rules)
        if (rule.verdict === 'forbid') rule.editions = CODE_EDITIONS.filter((edition) => edition !== '2024');
      await writeFile(path, JSON.stringify(pack));
    }
    const ended = await checkShipped(dir).catch((error: unknown) => error);
    // The build goes on after a refusal, which the program would repeat; this it would not.
    expect(ended).toMatchObject({ name: 'Error' });
    expect(String(ended)).toContain('energy/*.rules.json: edition "2024" is not accepted.');
  });
});

describe('the code tables', () => {
  let tables: CodeTables;
  beforeAll(async () => {
    tables = await loadCodeTables(findRulesDir());
  });

  it('have rows of every edition that is offered', () => {
    expect(tablesLackingEditions(tables)).toEqual([]);
  });

  it('are each named with an edition of which they have nothing', () => {
    const fields = tablesLackingEditions(tables, ['2024', '2999']).map(({ field }) => field);
    for (const file of ['walls', 'retarders', 'cladding-over-foam']) {
      expect(fields.filter((field) => field.includes(`/${file}.table.json`)).length).toBeGreaterThan(0);
    }
    expect(tablesLackingEditions(tables, ['2999']).every(({ value }) => value.includes('2999'))).toBe(true);
  });
});
