import { readdir } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { type FactIndex, parseFactDictionary } from './fact-dictionary.ts';
import { type LoadedPack, loadPack } from './load-pack.ts';
import { readDataFile } from './read-data-file.ts';
import { Rulebook } from './rulebook.ts';

const FACTS_FILE = 'facts.json';
const PACK_END = '.rules.json';

export type LoadOptions = {
  /** Paths of a firm's own packs. They may add rules, never replace one. */
  readonly extraPacks?: readonly string[];
};

/**
 * Reads and checks the fact dictionary and every `*.rules.json` below a folder, plus house packs.
 * All or nothing: with one error in one file, no rule is in force.
 *
 * @param dir  the rules folder, for example from `findRulesDir()`
 * @throws Refusal with every error found, each with file, rule id and path
 */
export async function loadRulebook(dir: string, options: LoadOptions = {}): Promise<Rulebook> {
  const facts = await readDataFile(join(dir, FACTS_FILE), FACTS_FILE);
  const index = parseFactDictionary(facts.data, FACTS_FILE);
  const files = await packFiles(dir);
  if (files.length === 0) {
    throw new Refusal({
      field: 'rules folder',
      value: showValue(dir),
      accepted: `Give a folder with at least one ${PACK_END} file.`,
    });
  }
  const shipped = await loadAll(
    files.map((file) => ({ path: join(dir, file), file })),
    false,
    index,
  );
  const extra = (options.extraPacks ?? []).map((path) => ({ path, file: path }));
  const house = await loadAll(extra, true, index);
  const packs = [...shipped, ...house];
  const issues = doubledNames(packs);
  if (issues.length > 0) throw new Refusal(issues);
  return new Rulebook(
    index,
    packs.map((pack) => pack.info),
    packs.flatMap((pack) => pack.rules),
  );
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
  files: readonly { readonly path: string; readonly file: string }[],
  house: boolean,
  index: FactIndex,
): Promise<LoadedPack[]> {
  const packs: LoadedPack[] = [];
  const issues: Issue[] = [];
  for (const { path, file } of files) {
    try {
      packs.push(await loadPack(path, file, house, index));
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
    for (const { rule } of rules) {
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
