import { z } from 'zod';
import { refuseOtherSchema } from '../base/other-schema.ts';
import { parseInput, pathText, valueAt } from '../base/parse-input.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { checkConditionShape, checkRuleFacts, collectInto, type Report } from './check-conditions.ts';
import type { CheckedFiles } from './checked-files.ts';
import { factsRead } from './condition-tree.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { type LimitIndex, type LimitUse, resolveLimits } from './limits.ts';
import type { LoadedRule, PackInfo } from './loaded-rule.ts';
import { checkProductNames, productRules } from './product-rules.ts';
import type { DataFile } from './read-data-file.ts';
import {
  type HousePack,
  housePackSchema,
  RULES_SCHEMA,
  type Rule,
  rulePackSchema,
  ruleSchema,
} from './rule-schema.ts';

/** The pack without its rules, which are checked one by one so that each error can name its rule. */
const envelopeSchema = rulePackSchema.extend({
  rules: z.array(z.unknown(), 'Give a list of rules.').min(1, 'Give at least one rule.'),
});

/** The groups that a rule's two trees may begin with. */
const TOP_GROUPS = [
  ['applies_when', ['all']],
  ['conditions', ['all', 'any']],
] as const;

/** A rule that can be written again when a limit moves. */
export type PackRule = {
  readonly loaded: LoadedRule;
  /** As it stands in the file. */
  readonly raw: () => unknown;
};

export type LoadedPack = {
  readonly info: PackInfo;
  readonly rules: readonly PackRule[];
  /** What a house pack says beside its rules; null for a shipped pack. */
  readonly house: HousePack | null;
};

export type Dictionaries = { readonly facts: FactIndex; readonly limits: LimitIndex };

/** What packs are checked against, and the digest of the files that it stands in. */
export type Ground = { readonly dictionaries: Dictionaries; readonly digest: string };

type ShippedPack = { readonly info: PackInfo; readonly rules: readonly LoadedRule[] };

/**
 * Reads one pack of rules.
 *
 * @param path     where the file stands
 * @param file     how messages call it
 * @param ground   facts and limits that its rules may name
 * @param checked  shipped packs that need no other check; null for a firm's own pack
 * @throws Refusal with every error found, each with file, rule id and path
 */
export function loadPack(
  data: DataFile,
  file: string,
  { dictionaries, digest }: Ground,
  checked: CheckedFiles | null,
): LoadedPack {
  if (checked === null) return checkPack(data, file, true, dictionaries);
  const { info, rules } = checked.valueOf(file, `${data.sha256} ${digest}`, (): ShippedPack => {
    const pack = checkPack(data, file, false, dictionaries);
    return { info: pack.info, rules: pack.rules.map(({ loaded }) => loaded) };
  });
  const raw = (i: number) => valueAt(data.data(), ['rules', i]);
  return { info, rules: rules.map((loaded, i) => ({ loaded, raw: () => raw(i) })), house: null };
}

function checkPack(
  { data, sha256 }: DataFile,
  file: string,
  house: boolean,
  dictionaries: Dictionaries,
): LoadedPack {
  const content = data();
  if (house) refuseOtherSchema(content, [RULES_SCHEMA], `Give house rules, "${RULES_SCHEMA}".`, file);
  const own = house ? parseInput(housePackSchema, content, file) : null;
  if (own) refuseEmptyPack(own, file);
  const pack = own ?? parseInput(envelopeSchema, content, file);
  const issues: Issue[] = [];
  const from = { concern: pack.concern, pack: pack.pack, file, house };
  const rules = pack.rules.flatMap((raw, i): PackRule[] => {
    const checked = checkRule(raw, ruleName(file, raw, i), { ...dictionaries, house }, issues);
    if (!checked) return [];
    const { rule, limits } = checked;
    return [{ raw: () => raw, loaded: { ...from, rule, limits, reads: factsRead(rule), tightened: null } }];
  });
  if (own) rules.push(...rulesOfWishes(own, file, dictionaries.facts, issues));
  if (issues.length > 0) throw new Refusal(issues);
  const { pack: name, version, concern } = pack;
  return {
    info: { name, version, sha256, concern, file, house, rules: rules.length },
    rules,
    house: own,
  };
}

function refuseEmptyPack(pack: HousePack, file: string): void {
  const { rules, tighten, products, defaults, prices } = pack;
  if (rules.length + tighten.length + products.length > 0 || defaults || prices) return;
  throw new Refusal({
    field: file,
    value: 'an empty pack',
    accepted: 'Give at least one of "rules", "tighten", "products", "defaults" and "prices".',
  });
}

/** The firm's wishes about products, as rules. */
function rulesOfWishes(pack: HousePack, file: string, facts: FactIndex, issues: Issue[]): PackRule[] {
  const report = collectInto(issues, (path) => pathText(path, file));
  const name = { name: pack.pack, version: pack.version, firm: pack.firm ?? null };
  const before = issues.length;
  const written = productRules(pack.products, name, report);
  if (issues.length > before) return [];
  return written.map((rule, i) => {
    checkRuleFacts(rule, facts, (path, value, accepted) => report(['products', i, ...path], value, accepted));
    return {
      raw: () => rule,
      loaded: {
        rule,
        concern: pack.concern,
        pack: pack.pack,
        file,
        house: true,
        reads: factsRead(rule),
        limits: [],
        tightened: null,
      },
    };
  });
}

function ruleName(file: string, raw: unknown, position: number): string {
  const id = valueAt(raw, ['id']);
  return typeof id === 'string' ? `${file}, rule ${showValue(id)}` : `${file}, rule number ${position + 1}`;
}

type Checked = { readonly rule: Rule; readonly limits: readonly LimitUse[] };

/** Limits and shape of the conditions first, then the schema, then the facts: each step relies on the one before. */
function checkRule(
  raw: unknown,
  name: string,
  { facts, limits, house }: Dictionaries & { readonly house: boolean },
  issues: Issue[],
): Checked | undefined {
  const before = issues.length;
  const report = collectInto(issues, (path) => pathText(path, name));
  const resolved = resolveLimits(raw, limits, facts, report);
  checkTopGroups(resolved.raw, report);
  if (issues.length > before) return undefined;
  let rule: Rule;
  try {
    rule = parseInput(ruleSchema, resolved.raw, name);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    issues.push(...error.issues);
    return undefined;
  }
  checkRuleFacts(rule, facts, report);
  checkProductNames(rule, report);
  if (rule.citation.provenance === 'house' && !house) {
    report(['citation', 'provenance'], 'house', 'Only a firm’s own pack has the firm for a source.');
  }
  return issues.length > before ? undefined : { rule, limits: resolved.limits };
}

function checkTopGroups(raw: unknown, report: Report): void {
  for (const [key, groups] of TOP_GROUPS) {
    const tree = valueAt(raw, [key]);
    if (tree === undefined && key === 'applies_when') continue;
    if (groups.some((group) => valueAt(tree, [group]) !== undefined)) {
      checkConditionShape(tree, [key], report);
    } else {
      const words = groups.map((group) => `"${group}"`).join(' or ');
      report([key], tree, `Begin with a group ${words} that lists the conditions.`);
    }
  }
}

/** A rule that was checked before, written again with other limits. */
export function withLimits({ raw, loaded }: PackRule, { facts, limits }: Dictionaries): Rule {
  const resolved = resolveLimits(raw(), limits, facts, (path, value) => {
    throw new Error(`${loaded.rule.id}: ${pathText(path)} ${String(value)} was accepted before`);
  });
  return parseInput(ruleSchema, resolved.raw, loaded.rule.id);
}
