import { membersOf } from './condition-tree.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { Condition, Facts } from './rule-schema.ts';
import type { RuleState } from './three-valued.ts';

/** Something wrong with a rule that loads. */
export type RuleProblem = {
  readonly file: string;
  readonly rule: string;
  readonly message: string;
};

/** An example that makes its rule fire. */
export type FiredExample = { readonly loaded: LoadedRule; readonly name: string; readonly facts: Facts };

/** Rules of one edition that say the same under the same conditions, whatever the order of their members. */
export function findDuplicates(rules: readonly LoadedRule[]): RuleProblem[] {
  const problems: RuleProblem[] = [];
  const seen = new Map<string, LoadedRule[]>();
  for (const loaded of rules) {
    const { rule, file } = loaded;
    const form = JSON.stringify([
      rule.verdict,
      rule.applies_when ? orderless(rule.applies_when) : null,
      orderless(rule.conditions),
    ]);
    const same = seen.get(form) ?? [];
    const first = same.find((other) => shareEdition(other, loaded));
    if (first) {
      problems.push({
        file,
        rule: rule.id,
        message: `duplicate: the same conditions and verdict as ${first.rule.id} in ${first.file}.`,
      });
    }
    seen.set(form, [...same, loaded]);
  }
  return problems;
}

/** Two rules of one edition that forbid and prefer on the facts of one example; each pair is told once. */
export async function findContradictions(
  rules: readonly LoadedRule[],
  fired: readonly FiredExample[],
  run: (loaded: LoadedRule, facts: Facts) => Promise<RuleState>,
): Promise<RuleProblem[]> {
  const problems: RuleProblem[] = [];
  const told = new Set<string>();
  for (const { loaded, name, facts } of fired) {
    const opposite = OPPOSITES[loaded.rule.verdict];
    if (!opposite) continue;
    for (const other of rules) {
      const pair = [loaded.rule.id, other.rule.id].sort().join(' ');
      // A firm may forbid what the shipped rules prefer: that is only stricter. It may not prefer what they forbid.
      const [ban, wish] = opposite === 'forbid' ? [other, loaded] : [loaded, other];
      if ((ban.house || ban.tightened?.raised) && !wish.house) continue;
      if (other.rule.verdict !== opposite || told.has(pair) || !shareEdition(loaded, other)) continue;
      if (!other.reads.every((id) => Object.hasOwn(facts, id))) continue;
      if ((await run(other, facts)) !== 'fires') continue;
      told.add(pair);
      problems.push({
        file: loaded.file,
        rule: loaded.rule.id,
        message: `contradiction: on the facts of example "${name}" this rule says ${loaded.rule.verdict}, and ${other.rule.id} says ${opposite}.`,
      });
    }
  }
  return problems;
}

const OPPOSITES: Readonly<Record<string, string>> = { forbid: 'prefer', prefer: 'forbid' };

function shareEdition(a: LoadedRule, b: LoadedRule): boolean {
  return a.rule.editions.some((edition) => b.rule.editions.includes(edition));
}

/** A text that is equal for trees which differ in the order of members or list values only. */
function orderless(condition: Condition): string {
  if ('fact' in condition) {
    const { fact, operator, value } = condition;
    const plain = Array.isArray(value) ? value.map((item) => JSON.stringify(item)).sort() : value;
    return JSON.stringify([fact, operator, plain]);
  }
  const members = membersOf(condition).map(orderless).sort();
  const [only] = members;
  // A group of one is that one.
  if (!('not' in condition) && members.length === 1 && only !== undefined) return only;
  return JSON.stringify(['all' in condition ? 'all' : 'any' in condition ? 'any' : 'not', members]);
}
