import { cp, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkShipped } from '../../src/rulebook/check-shipped.ts';
import { type CheckedFile, CheckedFiles } from '../../src/rulebook/checked-files.ts';
import { loadCodeTables } from '../../src/rulebook/load-code-tables.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { refusalOf } from './invented-rules.ts';

const HOUSE_PACK = fileURLToPath(new URL('../../scenarios/house-packs/', import.meta.url));
const PACK = 'rain/drainage.rules.json';
const TABLE = 'energy/walls.table.json';

type Checks = Record<string, CheckedFile>;

let built: string;

/** What a build kept, read back as the program reads it. */
const ofTheBuild = () => new CheckedFiles(JSON.parse(built) as Checks);

beforeAll(async () => {
  built = JSON.stringify(await checkShipped(findRulesDir()));
});

/** Everything that a rulebook was loaded with, in the order in which it holds it. */
function contents({ rules, packs, facts, limits, house }: Rulebook): unknown {
  return { rules, packs, facts: facts.entries, limits: limits.all, house };
}

/** The same to the last key, and the keys in the same order. */
function expectSame(one: unknown, other: unknown): void {
  expect(one).toStrictEqual(other);
  expect(JSON.stringify(one)).toBe(JSON.stringify(other));
}

describe('rules and tables that the build checked', () => {
  it('are what the full check makes of the files', async () => {
    const dir = findRulesDir();
    expectSame(
      contents(await loadRulebook(dir, { checked: ofTheBuild() })),
      contents(await loadRulebook(dir)),
    );
    expectSame(await loadCodeTables(dir, ofTheBuild()), await loadCodeTables(dir));
  });

  it('are tightened by a firm in the same way', async () => {
    const dir = findRulesDir();
    const extraPacks = [join(HOUSE_PACK, 'harrow-lane.rules.json')];
    const full = await loadRulebook(dir, { extraPacks });
    expect(full.house.limits.length).toBeGreaterThan(0);
    expectSame(contents(await loadRulebook(dir, { extraPacks, checked: ofTheBuild() })), contents(full));
  });

  it('are taken over for the very same bytes only', async () => {
    const known = JSON.parse(built.replaceAll('behind the cladding', 'IN THE BUILD')) as Checks;
    const checks = { [PACK]: known[PACK] ?? expect.fail() };
    const has = async (dir: string) =>
      JSON.stringify(contents(await loadRulebook(dir, { checked: new CheckedFiles(checks) }))).includes(
        'IN THE BUILD',
      );
    expect(await has(findRulesDir())).toBe(true);
    expect(await has(await shippedBut(PACK, (text) => `${text} `))).toBe(false);
    expect(await has(await shippedBut('facts.json', (text) => `${text} `))).toBe(false);
    expect(await has(await shippedBut('limits.json', (text) => `${text} `))).toBe(false);
  });

  it.each([
    ['a rule', PACK, '"verdict"', '"verdikt"'],
    ['a fact that rules read', 'facts.json', '"drainage.gap_in"', '"drainage.gap2_in"'],
    ['a limit that rules read', 'limits.json', '"drainage-gap"', '"drainage-gap-2"'],
    ['a table', TABLE, '"schema"', '"scheme"'],
  ])('are refused with the same words when somebody spoils %s', async (_, file, text, spoilt) => {
    const dir = await shippedBut(file, (content) => content.replace(text, spoilt));
    const load = async (checked?: () => CheckedFiles) => {
      await loadRulebook(dir, checked ? { checked: checked() } : {});
      await loadCodeTables(dir, checked?.());
    };
    const message = await refusalOf(load());
    expect(message).toContain(' is not accepted. ');
    expect(await refusalOf(load(ofTheBuild))).toBe(message);
  });
});

/** A copy of the shipped rules with one file changed. */
async function shippedBut(file: string, change: (text: string) => string): Promise<string> {
  const dir = await mkdtemp(join(tmpdir(), 'shipped-'));
  await cp(findRulesDir(), dir, { recursive: true });
  const before = await readFile(join(dir, file), 'utf8');
  const after = change(before);
  expect(after).not.toBe(before);
  await writeFile(join(dir, file), after);
  return dir;
}
