import { valueAt } from '../base/parse-input.ts';
import { type Issue, showValue } from '../base/refusal.ts';
import { PLACEHOLDER } from './condition-tree.ts';
import { type FactEntry, type FactIndex, misfitOf } from './fact-dictionary.ts';
import { didYouMean } from './nearest-name.ts';
import { type Condition, type Leaf, OPERATORS, type Rule } from './rule-schema.ts';

/** How many groups (`all`, `any`, `not`) may stand inside one another. */
export const DEEPEST_GROUP = 6;

const GROUPS = ['all', 'any', 'not'] as const;
const LEAF_KEYS: ReadonlySet<string> = new Set(['fact', 'operator', 'value']);
const ORDER_OPERATORS: ReadonlySet<string> = new Set([
  'lessThan',
  'lessThanInclusive',
  'greaterThan',
  'greaterThanInclusive',
]);

/** Adds an issue at a path below a rule. */
export type Report = (path: readonly PropertyKey[], value: unknown, accepted: string) => void;

/**
 * Shape of a condition tree before the schema sees it: a union schema can't say which of its branches was meant.
 * Reports empty groups, unknown operators and keys, and nesting beyond {@link DEEPEST_GROUP}.
 */
export function checkConditionShape(
  condition: unknown,
  path: readonly PropertyKey[],
  report: Report,
  depth = 1,
): void {
  if (typeof condition !== 'object' || condition === null || Array.isArray(condition)) {
    report(
      path,
      condition,
      'Give a comparison with "fact", "operator" and "value", or a group "all", "any" or "not".',
    );
    return;
  }
  const group = GROUPS.find((key) => Object.hasOwn(condition, key));
  if (!group) {
    checkLeafShape(condition, path, report);
    return;
  }
  for (const key of Object.keys(condition)) {
    if (key !== group)
      report([...path, key], valueAt(condition, [key]), `Leave this out; it can't stand beside "${group}".`);
  }
  if (depth > DEEPEST_GROUP) {
    report([...path, group], 'a deeper group', `Nest at most ${DEEPEST_GROUP} groups.`);
    return;
  }
  const inner = valueAt(condition, [group]);
  if (group === 'not') {
    checkConditionShape(inner, [...path, group], report, depth + 1);
  } else if (!Array.isArray(inner) || inner.length === 0) {
    report([...path, group], inner, 'List at least one condition; an empty group would always hold.');
  } else {
    inner.forEach((member: unknown, i) => {
      checkConditionShape(member, [...path, group, i], report, depth + 1);
    });
  }
}

function checkLeafShape(leaf: object, path: readonly PropertyKey[], report: Report): void {
  for (const key of Object.keys(leaf)) {
    if (!LEAF_KEYS.has(key)) {
      const near = didYouMean(key, [...LEAF_KEYS, ...GROUPS]);
      report(
        [...path, key],
        valueAt(leaf, [key]),
        `A comparison has "fact", "operator" and "value" only.${near}`,
      );
    }
  }
  const operator = valueAt(leaf, ['operator']);
  if (!OPERATORS.some((known) => known === operator)) {
    const near = typeof operator === 'string' ? didYouMean(operator, OPERATORS) : '';
    report([...path, 'operator'], operator, `Choose one of ${OPERATORS.join(', ')}.${near}`);
  }
  if (typeof valueAt(leaf, ['fact']) !== 'string') {
    report([...path, 'fact'], valueAt(leaf, ['fact']), 'Name a fact, for example "site.exposure".');
  }
  if (valueAt(leaf, ['value']) === undefined) {
    report(
      [...path, 'value'],
      undefined,
      'Give a value to compare with, a list of values, or {"fact": "…"}.',
    );
  }
}

/** Whether a rule's comparisons fit the facts they read, and its texts show known facts only. */
export function checkRuleFacts(rule: Rule, index: FactIndex, report: Report): void {
  if (rule.applies_when) checkConditionFacts(rule.applies_when, ['applies_when'], index, report);
  checkConditionFacts(rule.conditions, ['conditions'], index, report);
  for (const key of ['title', 'reason', 'pass_reason', 'remedy'] as const) {
    const text = rule[key];
    if (text !== undefined) checkPlaceholders(text, key, index, report);
  }
}

function checkPlaceholders(text: string, key: keyof Rule, index: FactIndex, report: Report): void {
  for (const [whole, id = ''] of text.matchAll(PLACEHOLDER)) {
    if (key === 'title')
      report([key], whole, 'A title is the same for every wall; put figures into the reason.');
    else if (!index.find(id)) report([key], whole, index.unknownFact(id));
  }
  if (/[{}]/.test(text.replace(PLACEHOLDER, ''))) {
    report([key], text, 'Close every "{" with "}"; braces only stand around the name of a fact.');
  }
}

function checkConditionFacts(
  condition: Condition,
  path: readonly PropertyKey[],
  index: FactIndex,
  report: Report,
): void {
  if ('fact' in condition) checkLeafFacts(condition, path, index, report);
  else if ('not' in condition) checkConditionFacts(condition.not, [...path, 'not'], index, report);
  else {
    const group = 'all' in condition ? 'all' : 'any';
    const members = 'all' in condition ? condition.all : condition.any;
    members.forEach((member, i) => {
      checkConditionFacts(member, [...path, group, i], index, report);
    });
  }
}

function checkLeafFacts(leaf: Leaf, path: readonly PropertyKey[], index: FactIndex, report: Report): void {
  const { fact, operator, value } = leaf;
  const entry = index.find(fact);
  if (!entry) {
    report([...path, 'fact'], fact, index.unknownFact(fact));
    return;
  }
  const isList = operator === 'in' || operator === 'notIn';
  if (ORDER_OPERATORS.has(operator) && entry.type !== 'number') {
    report(
      [...path, 'operator'],
      operator,
      `${fact} is a ${entry.type} fact; use equal${entry.type === 'text' ? ', notEqual, in or notIn' : ' or notEqual'}.`,
    );
    return;
  }
  if (isList && entry.type === 'yes-no') {
    report([...path, 'operator'], operator, `${fact} is a yes-no fact; use equal or notEqual.`);
    return;
  }
  if (isList !== Array.isArray(value)) {
    report(
      [...path, 'value'],
      value,
      isList
        ? `"${operator}" needs a list of values.`
        : `"${operator}" needs one value; use "in" for a list.`,
    );
    return;
  }
  if (Array.isArray(value)) {
    value.forEach((item, i) => {
      const misfit = misfitOf(entry, item);
      if (misfit) report([...path, 'value', i], item, `${fact} is a ${entry.type} fact. ${misfit}`);
    });
  } else if (typeof value === 'object') checkOtherFact(entry, value.fact, path, index, report);
  else {
    const misfit = misfitOf(entry, value);
    if (misfit) report([...path, 'value'], value, `${fact} is a ${entry.type} fact. ${misfit}`);
  }
}

function checkOtherFact(
  entry: FactEntry,
  otherId: string,
  path: readonly PropertyKey[],
  index: FactIndex,
  report: Report,
): void {
  const other = index.find(otherId);
  const at = [...path, 'value', 'fact'];
  if (!other) report(at, otherId, index.unknownFact(otherId));
  else if (other.id === entry.id) report(at, otherId, 'Compare the fact with another one, not with itself.');
  else if (other.type !== entry.type) {
    report(
      at,
      otherId,
      `${entry.id} is a ${entry.type} fact, this is a ${other.type} fact; compare facts of one type.`,
    );
  } else if ((other.unit ?? '') !== (entry.unit ?? '')) {
    report(
      at,
      otherId,
      `${entry.id} is in "${entry.unit ?? ''}", this is in "${other.unit ?? ''}"; compare facts of one unit.`,
    );
  }
}

/** Makes a {@link Report} that collects issues under a file's and a rule's name. */
export function collectInto(issues: Issue[], fieldOf: (path: readonly PropertyKey[]) => string): Report {
  return (path, value, accepted) => issues.push({ field: fieldOf(path), value: showValue(value), accepted });
}
