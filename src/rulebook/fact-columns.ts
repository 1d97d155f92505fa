import { otherFact, ruleLeaves } from './condition-tree.ts';
import {
  type ClassOf,
  coarserNumberClasses,
  coarserValueClasses,
  numberClasses,
  pairClass,
  valueClasses,
} from './fact-classes.ts';
import { type FactEntry, type FactIndex, misfitOf } from './fact-dictionary.ts';
import type { FactSheets } from './fact-sheets.ts';
import type { Facts, FactValue, Leaf, Rule } from './rule-schema.ts';
import { known } from './three-valued.ts';

/** One rule's use of a column. */
export type ColumnUse = {
  readonly column: number;
  /** From the column's classes to the rule's own, coarser ones. */
  readonly coarser: readonly number[];
  /** One more than the largest of the rule's own classes. */
  readonly size: number;
};

type FactColumn = { readonly entry: FactEntry; readonly classOf: ClassOf };
type PairColumn = { readonly left: FactEntry; readonly right: FactEntry };

/** Sorts fact sheets into the classes that the rules of a rulebook can tell apart. */
export class FactColumns {
  readonly #facts: FactColumn[] = [];
  readonly #pairs: PairColumn[] = [];
  readonly #limits = new Map<string, number[]>();
  readonly #values = new Map<string, (string | boolean)[]>();
  readonly #columnOf = new Map<string, number>();

  constructor(rules: readonly Rule[], index: FactIndex) {
    const leaves = rules.flatMap(ruleLeaves);
    const constants = constantsByFact(leaves);
    for (const [id, values] of constants) {
      const entry = index.get(id);
      this.#columnOf.set(id, this.#facts.length);
      if (entry.type === 'number') {
        const limits = [...values].filter((v) => typeof v === 'number').sort((a, b) => a - b);
        this.#limits.set(id, limits);
        this.#facts.push({ entry, classOf: numberClasses(id, limits) });
      } else {
        const listed = entry.type === 'yes-no' ? [true, false] : (entry.values ?? [...values]);
        const known = listed.filter((v) => typeof v !== 'number');
        this.#values.set(id, known);
        this.#facts.push({ entry, classOf: valueClasses(entry, known) });
      }
    }
    for (const leaf of leaves) {
      const right = otherFact(leaf);
      if (right === undefined || this.#columnOf.has(pairKey(leaf.fact, right))) continue;
      this.#columnOf.set(pairKey(leaf.fact, right), this.#facts.length + this.#pairs.length);
      this.#pairs.push({ left: index.get(leaf.fact), right: index.get(right) });
    }
  }

  get count(): number {
    return this.#facts.length + this.#pairs.length;
  }

  /** The columns that decide a rule. */
  usesOf(rule: Rule): ColumnUse[] {
    const leaves = ruleLeaves(rule);
    const uses: ColumnUse[] = [];
    const add = (key: string, coarser: readonly number[]) => {
      const column = this.#columnOf.get(key);
      if (column === undefined) throw new Error(`${rule.id}: no column for ${key}`);
      uses.push({ column, coarser, size: Math.max(...coarser) + 1 });
    };
    // Facts that are only compared with other facts still tell "known" from "not known" through their pair.
    for (const [id, own] of constantsByFact(leaves)) {
      const limits = this.#limits.get(id);
      if (limits)
        add(id, coarserNumberClasses(limits, new Set([...own].filter((v) => typeof v === 'number'))));
      else {
        const values = this.#values.get(id) ?? [];
        add(id, coarserValueClasses(values, new Set([...own].filter((v) => typeof v !== 'number'))));
      }
    }
    const pairs = new Set<string>();
    for (const leaf of leaves) {
      const right = otherFact(leaf);
      if (right !== undefined) pairs.add(pairKey(leaf.fact, right));
    }
    for (const key of pairs) add(key, [0, 1, 2, 3]);
    return uses;
  }

  /**
   * The class of every sheet in one column.
   *
   * @throws Error when a sheet lacks the fact, or holds a value of another type or outside the fact's list
   */
  classify(column: number, sheets: FactSheets): Uint16Array {
    const codes = new Uint16Array(sheets.count);
    const fact = this.#facts[column];
    if (fact) {
      const { id } = fact.entry;
      const { parts, at } = sheets.slotOf(id);
      const classes = Uint16Array.from(parts, (part) => fact.classOf(part[id]));
      for (let i = 0; i < codes.length; i++) codes[i] = classes[at[i] ?? 0] ?? 0;
      return codes;
    }
    const pair = this.#pairs[column - this.#facts.length];
    if (!pair) throw new Error(`there is no column ${column}`);
    const left = sheets.slotOf(pair.left.id);
    const right = sheets.slotOf(pair.right.id);
    const lefts = left.parts.map((part) => fitting(part, pair.left));
    const rights = right.parts.map((part) => fitting(part, pair.right));
    for (let i = 0; i < codes.length; i++) {
      codes[i] = pairClass(lefts[left.at[i] ?? 0] ?? null, rights[right.at[i] ?? 0] ?? null);
    }
    return codes;
  }
}

function fitting(sheet: Facts, entry: FactEntry): FactValue {
  const value = known(sheet, entry.id);
  const misfit = misfitOf(entry, value);
  if (misfit) throw new Error(`fact ${entry.id} can't be ${String(value)}: ${misfit}`);
  return value;
}

function pairKey(left: string, right: string): string {
  return `${left} | ${right}`;
}

/** The constants that each fact is compared with; facts compared with other facts only are left out. */
function constantsByFact(leaves: readonly Leaf[]): Map<string, Set<string | number | boolean>> {
  const constants = new Map<string, Set<string | number | boolean>>();
  for (const { fact, value } of leaves) {
    if (typeof value === 'object' && !Array.isArray(value)) continue;
    const set = constants.get(fact) ?? new Set();
    for (const constant of Array.isArray(value) ? value : [value]) set.add(constant);
    constants.set(fact, set);
  }
  return constants;
}
