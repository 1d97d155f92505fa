import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { CheckedFiles } from './checked-files.ts';
import { FactIndex, parseFactDictionary } from './fact-dictionary.ts';
import { LimitIndex, parseLimits } from './limits.ts';
import { type Ground, type LoadedPack, loadPack } from './load-pack.ts';
import { type DataFile, dataFileOf, readBounded, readDataFile } from './read-data-file.ts';
import { Rulebook } from './rulebook.ts';
import { applyHouse } from './tighten.ts';

const FACTS_FILE = 'facts.json';
const LIMITS_FILE = 'limits.json';
const PACK_END = '.rules.json';

/** A firm's own pack as it stood when it was read. */
export type ReadPack = { readonly file: string; readonly bytes: Uint8Array };

export type LoadOptions = {
  /**
   * A firm's own packs, by path or as read before. They may add rules and make limits stricter, never replace a rule or
   * loosen one.
   */
  readonly extraPacks?: readonly (string | ReadPack)[];
  /** Shipped files that need no other check; those of the build unless told otherwise. */
  readonly checked?: CheckedFiles;
};

/**
 * Reads and checks the fact dictionary and every `*.rules.json` below a folder, plus house packs.
 * All or nothing: with one error in one file, no rule is in force.
 *
 * @param dir  the rules folder, for example from `findRulesDir()`
 * @throws Refusal with every error found, each with file, rule id and path
 */
export async function loadRulebook(dir: string, options: LoadOptions = {}): Promise<Rulebook> {
  const checked = options.checked ?? new CheckedFiles();
  const ground = await readGround(dir, checked);
  const { dictionaries } = ground;
  const files = await packFiles(dir);
  if (files.length === 0) {
    throw new Refusal({
      field: 'rules folder',
      value: showValue(dir),
      accepted: `Give a folder with at least one ${PACK_END} file.`,
    });
  }
  const shipped = await loadAll(
    files.map((file) => ({ file, read: () => readDataFile(join(dir, file), file) })),
    ground,
    checked,
  );
  const extra = (options.extraPacks ?? []).map((pack) =>
    typeof pack === 'string'
      ? { file: pack, read: () => readDataFile(pack, pack) }
      : { file: pack.file, read: async () => dataFileOf(pack.bytes, pack.file) },
  );
  const house = await loadAll(extra, ground, null);
  const packs = [...shipped, ...house];
  const issues = doubledNames(packs);
  if (issues.length > 0) throw new Refusal(issues);
  const applied = applyHouse(packs, dictionaries);
  return new Rulebook(
    dictionaries,
    packs.map((pack) => pack.info),
    applied.rules,
    applied.house,
  );
}

/**
 * Packs as they stand now, so that several threads judge by the same ones whatever becomes of the files.
 *
 * @throws Refusal for every file that can't be read or is over 1 MB
 */
export async function readPacks(paths: readonly string[]): Promise<ReadPack[]> {
  const packs: ReadPack[] = [];
  const issues: Issue[] = [];
  for (const file of paths) {
    try {
      // A copy of its own: what is read into a pool would be handed on with all of the pool.
      packs.push({ file, bytes: new Uint8Array(await readBounded(file, file)) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      issues.push(...error.issues);
    }
  }
  if (issues.length > 0) throw new Refusal(issues);
  return packs;
}

/** Facts and limits; a folder of rules that name no limit needs no file of them. */
async function readGround(dir: string, checked: CheckedFiles): Promise<Ground> {
  const facts = await readDataFile(join(dir, FACTS_FILE), FACTS_FILE);
  const entries = checked.valueOf(
    FACTS_FILE,
    facts.sha256,
    () => parseFactDictionary(facts.data(), FACTS_FILE).entries,
  );
  const index = new FactIndex(entries);
  const path = join(dir, LIMITS_FILE);
  if (!existsSync(path)) {
    return { dictionaries: { facts: index, limits: new LimitIndex([]) }, digest: facts.sha256 };
  }
  const limits = await readDataFile(path, LIMITS_FILE);
  const named = checked.valueOf(
    LIMITS_FILE,
    limits.sha256,
    () => parseLimits(limits.data(), LIMITS_FILE).all,
  );
  return {
    dictionaries: { facts: index, limits: new LimitIndex(named) },
    digest: `${facts.sha256} ${limits.sha256}`,
  };
}

/** Paths relative to the folder with forward slashes, sorted by code unit, so that the order is the same everywhere. */
async function packFiles(dir: string): Promise<string[]> {
  const all = await readdir(dir, { recursive: true });
  return all
    .filter((file) => file.endsWith(PACK_END))
    .map((file) => file.split(sep).join('/'))
    .sort();
}

async function loadAll(
  files: readonly { readonly file: string; readonly read: () => Promise<DataFile> }[],
  ground: Ground,
  checked: CheckedFiles | null,
): Promise<LoadedPack[]> {
  const packs: LoadedPack[] = [];
  const issues: Issue[] = [];
  for (const { file, read } of files) {
    try {
      packs.push(loadPack(await read(), file, ground, checked));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      issues.push(...error.issues);
    }
  }
  if (issues.length > 0) throw new Refusal(issues);
  return packs;
}

function doubledNames(packs: readonly LoadedPack[]): Issue[] {
  const issues: Issue[] = [];
  const packOf = new Map<string, string>();
  const ruleOf = new Map<string, { readonly file: string; readonly house: boolean }>();
  for (const { info, rules } of packs) {
    const other = packOf.get(info.name);
    if (other !== undefined) {
      issues.push({
        field: `${info.file}: pack`,
        value: showValue(info.name),
        accepted: `${other} has this pack name already; give every pack a name of its own.`,
      });
    }
    packOf.set(info.name, info.file);
    for (const { rule } of rules.map(({ loaded }) => loaded)) {
      const first = ruleOf.get(rule.id);
      if (first) issues.push(doubledRule(rule.id, info, first));
      else ruleOf.set(rule.id, info);
    }
  }
  return issues;
}

function doubledRule(
  id: string,
  second: { readonly file: string; readonly house: boolean },
  first: { readonly file: string; readonly house: boolean },
): Issue {
  const loosens = second.house && !first.house;
  return {
    field: `${second.file}, rule ${showValue(id)}: id`,
    value: showValue(id),
    accepted: loosens
      ? `This rule stands in ${first.file}, and a house rule may be stricter, never looser: leave that rule alone and add one under an id of its own.`
      : `${first.file} has a rule with this id already; give every rule an id of its own.`,
  };
}
