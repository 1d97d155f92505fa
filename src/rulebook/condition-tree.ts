import type { Condition, Leaf, Rule } from './rule-schema.ts';

/** Every comparison of a condition tree, left to right. */
export function leavesOf(condition: Condition): Leaf[] {
  if ('fact' in condition) return [condition];
  return membersOf(condition).flatMap(leavesOf);
}

/** The members of a group; a `not` has one, a comparison none. */
export function membersOf(condition: Condition): readonly Condition[] {
  if ('all' in condition) return condition.all;
  if ('any' in condition) return condition.any;
  if ('not' in condition) return [condition.not];
  return [];
}

/** The other fact that a comparison looks at, if it compares two facts. */
export function otherFact(leaf: Leaf): string | undefined {
  return typeof leaf.value === 'object' && !Array.isArray(leaf.value) ? leaf.value.fact : undefined;
}

/** Every comparison of a rule, those that decide whether it applies first. */
export function ruleLeaves(rule: Pick<Rule, 'applies_when' | 'conditions'>): Leaf[] {
  return [...(rule.applies_when ? leavesOf(rule.applies_when) : []), ...leavesOf(rule.conditions)];
}

/** Ids of the facts that decide a rule, each once, sorted. */
export function factsRead(rule: Pick<Rule, 'applies_when' | 'conditions'>): string[] {
  const ids = new Set<string>();
  for (const leaf of ruleLeaves(rule)) {
    ids.add(leaf.fact);
    const other = otherFact(leaf);
    if (other !== undefined) ids.add(other);
  }
  return [...ids].sort();
}

/** `{fact.id}` in a reason or remedy. */
export const PLACEHOLDER = /\{([^{}]*)\}/g;
