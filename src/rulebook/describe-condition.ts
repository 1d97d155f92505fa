import { listed } from '../base/listed.ts';
import type { FactEntry, FactIndex } from './fact-dictionary.ts';
import { formatFact } from './format-fact.ts';
import type { Condition, Leaf } from './rule-schema.ts';

const WORDS: Readonly<Record<Leaf['operator'], string>> = {
  equal: 'is',
  notEqual: 'is not',
  in: 'is',
  notIn: 'is not',
  lessThan: 'is less than',
  lessThanInclusive: 'is at most',
  greaterThan: 'is more than',
  greaterThanInclusive: 'is at least',
};

/** A condition tree in words, one comparison a line, groups indented below their heading. */
export function describeCondition(condition: Condition, index: FactIndex, indent = '  '): string[] {
  if ('fact' in condition) return [`${indent}- ${describeLeaf(condition, index)}`];
  const inner = `${indent}  `;
  if ('not' in condition) {
    return [`${indent}- it is not so that`, ...describeCondition(condition.not, index, inner)];
  }
  const members = 'all' in condition ? condition.all : condition.any;
  const lines = members.flatMap((member) => describeCondition(member, index, inner));
  if (members.length === 1) return members.flatMap((member) => describeCondition(member, index, indent));
  return [`${indent}- ${'all' in condition ? 'all of these' : 'at least one of these'}:`, ...lines];
}

/** One comparison as a clause: "the stud spacing is at most 24 in." */
export function describeLeaf(leaf: Leaf, index: FactIndex): string {
  const entry = index.get(leaf.fact);
  const { value } = leaf;
  if (typeof value === 'boolean') {
    const claim = entry.meaning.replace(/^whether /, '');
    return value === (leaf.operator === 'equal') ? claim : `not: ${claim}`;
  }
  return `${entry.meaning} ${WORDS[leaf.operator]} ${describeValue(leaf, entry, index)}`;
}

function describeValue({ value }: Leaf, entry: FactEntry, index: FactIndex): string {
  if (Array.isArray(value))
    return listed(
      value.map((item) => formatFact(entry, item)),
      'or',
    );
  if (typeof value === 'object') {
    const other = index.get(value.fact).meaning;
    return entry.type === 'number' ? other : `the same as ${other}`;
  }
  return typeof value === 'number' ? exact(entry, value) : formatFact(entry, value);
}

/** A limit must show every digit it has: 0.0605 is not 0.061. */
function exact(entry: FactEntry, value: number): string {
  for (let extra = 0; extra < 6; extra++) {
    const text = formatFact(entry, value, extra);
    const digits = text.replace(/^[^\d.-]*/, '').replaceAll(',', '');
    if (Number.parseFloat(digits) === Math.abs(value)) return text;
  }
  return formatFact(entry, value, 6);
}
