import { describe, expect, it } from 'vitest';
import type { Condition, Facts } from '../../src/rulebook/rule-schema.ts';
import { missingFacts, stateOf, truthOf } from '../../src/rulebook/three-valued.ts';

const FACTS: Facts = {
  'a.t': true,
  'a.f': false,
  'a.u': null,
  'a.three': 3,
  'a.word': 'none',
  'a.blank': null,
};
const T: Condition = { fact: 'a.t', operator: 'equal', value: true };
const F: Condition = { fact: 'a.f', operator: 'equal', value: true };
const U: Condition = { fact: 'a.u', operator: 'equal', value: true };

// Kleene's strong tables for "and", "or" and "not" (S. C. Kleene, Introduction to Metamathematics, 1952,
// section 64; from memory).
const TABLE = [
  [T, T, true, true],
  [T, F, false, true],
  [T, U, null, true],
  [F, T, false, true],
  [F, F, false, false],
  [F, U, false, null],
  [U, T, null, true],
  [U, F, false, null],
  [U, U, null, null],
] as const;

describe('three-valued logic (tables of Kleene, from memory)', () => {
  it('joins two members by all and any', () => {
    for (const [left, right, all, any] of TABLE) {
      expect(truthOf({ all: [left, right] }, FACTS)).toBe(all);
      expect(truthOf({ any: [left, right] }, FACTS)).toBe(any);
    }
  });

  it('negates', () => {
    expect([T, F, U].map((c) => truthOf({ not: c }, FACTS))).toEqual([false, true, null]);
    expect(truthOf({ not: { not: U } }, FACTS)).toBeNull();
  });

  it('keeps what one member settles whatever its depth', () => {
    expect(truthOf({ all: [{ any: [U, U] }, { not: T }] }, FACTS)).toBe(false);
    expect(truthOf({ any: [{ all: [U, T] }, { not: F }] }, FACTS)).toBe(true);
  });
});

describe('a comparison', () => {
  const truth = (fact: string, operator: Extract<Condition, { fact: string }>['operator'], value: unknown) =>
    truthOf({ fact, operator, value } as Condition, FACTS);

  it('is unknown with an unknown fact on either side, under every operator', () => {
    for (const operator of [
      'equal',
      'notEqual',
      'lessThan',
      'lessThanInclusive',
      'greaterThan',
      'greaterThanInclusive',
    ] as const) {
      expect(truth('a.blank', operator, 3)).toBeNull();
      expect(truth('a.three', operator, { fact: 'a.blank' })).toBeNull();
    }
    expect(truth('a.u', 'in', ['none'])).toBeNull();
    expect(truth('a.u', 'notIn', ['none'])).toBeNull();
  });

  it.each([
    ['equal', 3, true],
    ['equal', 4, false],
    ['notEqual', 3, false],
    ['lessThan', 3, false],
    ['lessThan', 3.01, true],
    ['lessThanInclusive', 3, true],
    ['greaterThan', 3, false],
    ['greaterThan', 2.99, true],
    ['greaterThanInclusive', 3, true],
    ['in', [1, 3], true],
    ['notIn', [1, 3], false],
    ['in', [1, 2], false],
    ['notIn', [1, 2], true],
  ] as const)('3 %s %j is %s', (operator, value, expected) => {
    expect(truth('a.three', operator, value)).toBe(expected);
  });

  it('throws when a fact is missing altogether', () => {
    expect(() => truth('a.gone', 'notEqual', 3)).toThrow('fact a.gone is missing');
    expect(() => truth('a.three', 'lessThan', { fact: 'a.gone' })).toThrow('fact a.gone is missing');
  });
});

describe('the two halves of a rule', () => {
  it.each([
    [true, true, 'fires'],
    [true, false, 'pass'],
    [true, null, 'open'],
    [false, true, 'silent'],
    [false, false, 'silent'],
    [false, null, 'silent'],
    [null, true, 'open'],
    [null, false, 'pass'],
    [null, null, 'open'],
  ] as const)('applies %s and conditions %s: %s', (applies, fires, state) => {
    expect(stateOf(applies, fires)).toBe(state);
  });

  it('name only the unknown facts that stand between a rule and its verdict', () => {
    const other: Condition = { fact: 'a.blank', operator: 'greaterThan', value: 1 };
    // The unknown fact in a settled branch doesn't matter.
    expect(missingFacts({ conditions: { all: [U, { any: [T, other] }] } }, FACTS)).toEqual(['a.u']);
    expect(missingFacts({ conditions: { all: [U, other] } }, FACTS)).toEqual(['a.u', 'a.blank']);
    expect(missingFacts({ conditions: { all: [F, U] } }, FACTS)).toEqual([]);
    expect(missingFacts({ applies_when: { all: [U] }, conditions: { all: [T] } }, FACTS)).toEqual(['a.u']);
    expect(missingFacts({ applies_when: { all: [U] }, conditions: { all: [F] } }, FACTS)).toEqual([]);
  });
});
