import { parseInput } from '../base/parse-input.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { didYouMean } from './nearest-name.ts';
import { type FactDictionary, type FactValue, factDictionarySchema } from './rule-schema.ts';

export type FactEntry = FactDictionary['facts'][number];

/** A dot in every id also keeps ids apart from anything that objects inherit. */
const FACT_ID = /^[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)+$/;

/** Every fact that a rule may read, by id. */
export class FactIndex {
  readonly #byId: ReadonlyMap<string, FactEntry>;

  constructor(entries: readonly FactEntry[]) {
    this.#byId = new Map(entries.map((entry) => [entry.id, entry]));
  }

  get size(): number {
    return this.#byId.size;
  }

  get entries(): FactEntry[] {
    return [...this.#byId.values()];
  }

  get ids(): string[] {
    return [...this.#byId.keys()];
  }

  find(id: string): FactEntry | undefined {
    return this.#byId.get(id);
  }

  /** @throws Error for an id that isn't in the dictionary: rules were checked at load, so that is a fault of ours */
  get(id: string): FactEntry {
    const entry = this.#byId.get(id);
    if (!entry) throw new Error(`fact ${id} is not in the dictionary`);
    return entry;
  }

  /** What to tell somebody who named a fact that isn't there. */
  unknownFact(id: string): string {
    return `Name a fact of the dictionary.${didYouMean(id, this.#byId.keys())}`;
  }
}

/**
 * Checks a fact dictionary.
 *
 * @param data  the parsed file
 * @param name  how messages call the file
 * @throws Refusal for a bad shape, a doubled id, or a unit or value list on a fact type that has none
 */
export function parseFactDictionary(data: unknown, name: string): FactIndex {
  const { facts } = parseInput(factDictionarySchema, data, name);
  const issues: Issue[] = [];
  const seen = new Set<string>();
  facts.forEach((fact, i) => {
    const refuse = (key: keyof FactEntry, accepted: string) =>
      issues.push({ field: `${name}: facts[${i}].${key}`, value: showValue(fact[key]), accepted });
    if (!FACT_ID.test(fact.id)) refuse('id', 'Give an id like "site.exposure".');
    if (seen.has(fact.id)) refuse('id', 'Give every fact an id of its own.');
    seen.add(fact.id);
    if (fact.unit !== undefined && fact.type !== 'number') refuse('unit', 'Only a number has a unit.');
    if (fact.values !== undefined && fact.type !== 'text') refuse('values', 'Only a text has a value list.');
    if (fact.values?.length === 0) refuse('values', 'List at least one value, or leave the list out.');
  });
  if (issues.length > 0) throw new Refusal(issues);
  return new FactIndex(facts);
}

/** What is wrong with a value given for a fact, or nothing. Null (not known) always fits. */
export function misfitOf(entry: FactEntry, value: FactValue): string | undefined {
  if (value === null) return undefined;
  switch (entry.type) {
    case 'number':
      return typeof value === 'number' && Number.isFinite(value) ? undefined : 'Give a finite number.';
    case 'yes-no':
      return typeof value === 'boolean' ? undefined : 'Give true or false.';
    case 'text': {
      if (typeof value !== 'string') return 'Give a text.';
      if (!entry.values || entry.values.includes(value)) return undefined;
      return `Give one of ${entry.values.join(', ')}.${didYouMean(value, entry.values)}`;
    }
  }
}
