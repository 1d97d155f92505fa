import { z } from 'zod';
import { parseInput, pathText, valueAt } from '../base/parse-input.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { checkConditionShape, checkRuleFacts, collectInto } from './check-conditions.ts';
import { factsRead } from './condition-tree.ts';
import type { FactIndex } from './fact-dictionary.ts';
import type { LoadedRule, PackInfo } from './loaded-rule.ts';
import { readDataFile } from './read-data-file.ts';
import { type Rule, rulePackSchema, ruleSchema } from './rule-schema.ts';

/** The pack without its rules, which are checked one by one so that each error can name its rule. */
const envelopeSchema = rulePackSchema.extend({
  rules: z.array(z.unknown(), 'Give a list of rules.').min(1, 'Give at least one rule.'),
});

/** The groups that a rule's two trees may begin with. */
const TOP_GROUPS = [
  ['applies_when', ['all']],
  ['conditions', ['all', 'any']],
] as const;

export type LoadedPack = { readonly info: PackInfo; readonly rules: readonly LoadedRule[] };

/**
 * Reads one pack of rules.
 *
 * @param path   where the file stands
 * @param file   how messages call it
 * @param house  whether it is a firm's own pack
 * @throws Refusal with every error found, each with file, rule id and path
 */
export async function loadPack(
  path: string,
  file: string,
  house: boolean,
  index: FactIndex,
): Promise<LoadedPack> {
  const { data, sha256 } = await readDataFile(path, file);
  const pack = parseInput(envelopeSchema, data, file);
  const issues: Issue[] = [];
  const rules = pack.rules.flatMap((raw, i): LoadedRule[] => {
    const rule = checkRule(raw, ruleName(file, raw, i), index, issues);
    if (!rule) return [];
    return [
      {
        rule,
        concern: pack.concern,
        pack: pack.pack,
        file,
        house,
        reads: factsRead(rule),
      },
    ];
  });
  if (issues.length > 0) throw new Refusal(issues);
  const { pack: name, version, concern } = pack;
  return { info: { name, version, sha256, concern, file, house, rules: rules.length }, rules };
}

function ruleName(file: string, raw: unknown, position: number): string {
  const id = valueAt(raw, ['id']);
  return typeof id === 'string' ? `${file}, rule ${showValue(id)}` : `${file}, rule number ${position + 1}`;
}

/** Shape of the conditions first, then the schema, then the facts: each step relies on the one before. */
function checkRule(raw: unknown, name: string, index: FactIndex, issues: Issue[]): Rule | undefined {
  const before = issues.length;
  const report = collectInto(issues, (path) => pathText(path, name));
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
  if (issues.length > before) return undefined;
  let rule: Rule;
  try {
    rule = parseInput(ruleSchema, raw, name);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    issues.push(...error.issues);
    return undefined;
  }
  checkRuleFacts(rule, index, report);
  return issues.length > before ? undefined : rule;
}
