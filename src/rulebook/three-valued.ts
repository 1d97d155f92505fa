import { membersOf, otherFact } from './condition-tree.ts';
import type { Condition, Facts, FactValue, Leaf, Rule } from './rule-schema.ts';

/** True, false, or null when it can't be told because a fact is unknown. */
export type Truth = boolean | null;

/**
 * Truth of a condition tree when facts may be unknown, by Kleene's strong three-valued logic: `all` is false
 * as soon as one member is, `any` is true as soon as one member is, and `not` of unknown is unknown. A result
 * other than null therefore holds whatever the unknown facts turn out to be.
 *
 * Source: S. C. Kleene, Introduction to Metamathematics (1952), section 64 (from memory).
 */
export function truthOf(condition: Condition, facts: Facts): Truth {
  if ('fact' in condition) return leafTruth(condition, facts);
  if ('not' in condition) {
    const inner = truthOf(condition.not, facts);
    return inner === null ? null : !inner;
  }
  // What one member alone settles: false for `all`, true for `any`.
  const settles = 'any' in condition;
  let result: Truth = !settles;
  for (const member of membersOf(condition)) {
    const truth = truthOf(member, facts);
    if (truth === settles) return settles;
    if (truth === null) result = null;
  }
  return result;
}

function leafTruth(leaf: Leaf, facts: Facts): Truth {
  const left = known(facts, leaf.fact);
  if (left === null) return null;
  const { value } = leaf;
  if (Array.isArray(value)) return value.includes(left) === (leaf.operator === 'in');
  const right = typeof value === 'object' ? known(facts, value.fact) : value;
  if (right === null) return null;
  switch (leaf.operator) {
    case 'equal':
      return left === right;
    case 'notEqual':
      return left !== right;
    case 'lessThan':
      return left < right;
    case 'lessThanInclusive':
      return left <= right;
    case 'greaterThan':
      return left > right;
    case 'greaterThanInclusive':
      return left >= right;
    case 'in':
    case 'notIn':
      throw new Error(`"${leaf.operator}" on ${leaf.fact} without a list slipped past the loader`);
  }
}

/** The value of a fact that must be there, if only as "not known". */
export function known(facts: Facts, id: string): FactValue {
  const value = facts[id];
  if (value === undefined) throw new Error(`fact ${id} is missing; give null when it is not known`);
  return value;
}

/**
 * What a rule comes to: it doesn't apply; it applies and is kept; it applies and its conditions hold;
 * or unknown facts leave it open.
 */
export const RULE_STATES = ['silent', 'pass', 'fires', 'open'] as const;
export type RuleState = (typeof RULE_STATES)[number];

/**
 * Joins the two halves of a rule. A rule that can't fire either way is kept, even when it isn't known
 * whether it applies at all.
 */
export function stateOf(applies: Truth, fires: Truth): RuleState {
  if (applies === false) return 'silent';
  if (fires === false) return 'pass';
  return applies && fires ? 'fires' : 'open';
}

/** Whether a rule applies, by the facts known. A rule without `applies_when` always does. */
export function appliesTruth(rule: Pick<Rule, 'applies_when'>, facts: Facts): Truth {
  return rule.applies_when ? truthOf(rule.applies_when, facts) : true;
}

/** Ids of the unknown facts that stand between a rule and its verdict, in reading order; empty when it is decided. */
export function missingFacts(rule: Pick<Rule, 'applies_when' | 'conditions'>, facts: Facts): string[] {
  const applies = appliesTruth(rule, facts);
  if (stateOf(applies, truthOf(rule.conditions, facts)) !== 'open') return [];
  const open = [...(rule.applies_when ? [rule.applies_when] : []), rule.conditions];
  return [...new Set(open.flatMap((condition) => unsettling(condition, facts)))];
}

function unsettling(condition: Condition, facts: Facts): string[] {
  if (truthOf(condition, facts) !== null) return [];
  if (!('fact' in condition)) return membersOf(condition).flatMap((member) => unsettling(member, facts));
  const other = otherFact(condition);
  const read = other === undefined ? [condition.fact] : [condition.fact, other];
  return read.filter((id) => known(facts, id) === null);
}
