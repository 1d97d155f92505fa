import fc from 'fast-check';
import { ruleLeaves } from '../../src/rulebook/condition-tree.ts';
import type { FactEntry } from '../../src/rulebook/fact-dictionary.ts';
import type { Facts, FactValue } from '../../src/rulebook/rule-schema.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';

/** Walls that hit the rules' own limits exactly, miss them narrowly or by far, or don't know. */
export function factSheets(book: Rulebook): fc.Arbitrary<Facts> {
  const limits = new Map<string, number[]>();
  const texts = new Map<string, string[]>();
  for (const leaf of book.rules.flatMap(({ rule }) => ruleLeaves(rule))) {
    for (const constant of Array.isArray(leaf.value) ? leaf.value : [leaf.value]) {
      if (typeof constant === 'number') limits.set(leaf.fact, [...(limits.get(leaf.fact) ?? []), constant]);
      if (typeof constant === 'string') texts.set(leaf.fact, [...(texts.get(leaf.fact) ?? []), constant]);
    }
  }
  const anyValueOf = (entry: FactEntry): fc.Arbitrary<FactValue> => {
    if (entry.type === 'yes-no') return fc.boolean();
    if (entry.type === 'text')
      return fc.constantFrom(...(entry.values ?? [...(texts.get(entry.id) ?? []), 'another']));
    const around = (limits.get(entry.id) ?? [1]).flatMap((limit) => [
      limit - 100,
      limit - 1e-6,
      limit,
      limit + 0.5,
    ]);
    return fc.constantFrom(...around);
  };
  return fc.record(
    Object.fromEntries(
      book.facts.ids.map((id) => [
        id,
        fc.option<FactValue>(anyValueOf(book.facts.get(id)), { nil: null, freq: 6 }),
      ]),
    ),
  );
}
