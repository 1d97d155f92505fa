import { otherFact, ruleLeaves } from './condition-tree.ts';
import {
  type ClassOf,
  coarserNumberClasses,
  coarserValueClasses,
  numberClasses,
  valueClasses,
} from './fact-classes.ts';
import { type FactEntry, type FactIndex, misfitOf } from './fact-dictionary.ts';
import type { FactSheets } from './fact-sheets.ts';
import { type FactSlot, factColumn, partCount } from './fact-slot.ts';
import type { FactValue, Leaf, Rule } from './rule-schema.ts';

/** One rule's use of a column. */
export type ColumnUse = {
  readonly column: number;
  /** From the column's classes to the rule's own, coarser ones. */
  readonly coarser: readonly number[];
  /** One more than the largest of the rule's own classes. */
  readonly size: number;
};

/** A column over the parts of fact sheets: classes of one fact, or the values of two facts that rules compare. */
export type ColumnClasses =
  | {
      readonly kind: 'one';
      readonly slot: number;
      readonly source: FactSlot;
      readonly classes: Uint16Array;
    }
  | { readonly kind: 'pair'; readonly left: Side; readonly right: Side };

type Side = {
  readonly slot: number;
  readonly source: FactSlot;
  readonly values: Float64Array | readonly FactValue[];
};

/** Slots that a column's facts stand in. */
export function slotsOf(column: ColumnClasses): readonly number[] {
  return column.kind === 'one' ? [column.slot] : [column.left.slot, column.right.slot];
}

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
   * The classes of one column, for every part of the slot that its fact stands in.
   *
   * @param before  classes of the same column over sheets of the same shape: given back where nothing changed, so
   *   that whoever built upon them can tell
   * @throws Error when a part lacks the fact, or holds a value of another type or outside the fact's list
   */
  classify(column: number, sheets: FactSheets, before?: ColumnClasses): ColumnClasses {
    const fact = this.#facts[column];
    if (fact) {
      const slot = sheets.slotOf(fact.entry.id);
      const source = sheets.slots[slot] ?? [];
      const earlier = before?.kind === 'one' && before.slot === slot ? before : undefined;
      if (earlier?.source === source) return earlier;
      const values = factColumn(source, fact.entry.id);
      const classes = new Uint16Array(partCount(source));
      for (let i = 0; i < classes.length; i++) classes[i] = fact.classOf(values[i]);
      if (earlier && sameClasses(earlier.classes, classes)) return earlier;
      return { kind: 'one', slot, source, classes };
    }
    const pair = this.#pairs[column - this.#facts.length];
    if (!pair) throw new Error(`there is no column ${column}`);
    const earlier = before?.kind === 'pair' ? before : undefined;
    const left = fittingColumn(pair.left, sheets, earlier?.left);
    const right = fittingColumn(pair.right, sheets, earlier?.right);
    if (earlier && earlier.left === left && earlier.right === right) return earlier;
    return { kind: 'pair', left, right };
  }
}

/** One side of a pair; the one before where the values are the same. */
function fittingColumn(entry: FactEntry, sheets: FactSheets, before: Side | undefined): Side {
  const slot = sheets.slotOf(entry.id);
  const source = sheets.slots[slot] ?? [];
  const earlier = before?.slot === slot ? before : undefined;
  if (earlier?.source === source) return earlier;
  const column = factColumn(source, entry.id);
  const values = fittingValues(column, partCount(source), entry);
  return earlier && sameValues(earlier.values, values) ? earlier : { slot, source, values };
}

// One loop for each kind of list: a loop that meets several kinds runs many times slower.

function sameClasses(a: Uint16Array, b: Uint16Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameItems(a: readonly FactValue[], b: readonly FactValue[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameValues(a: Side['values'], b: Side['values']): boolean {
  if (a instanceof Float64Array) return b instanceof Float64Array && sameNumbers(a, b);
  return !(b instanceof Float64Array) && sameItems(a, b);
}

function fittingValues(
  column: ArrayLike<FactValue | undefined>,
  count: number,
  entry: FactEntry,
): Side['values'] {
  // Twenty thousand costs need no list of their own.
  if (count > 0 && column instanceof Float64Array && column.length === count && allFinite(column)) {
    fitting(column[0], entry);
    return column;
  }
  const values: FactValue[] = [];
  for (let i = 0; i < count; i++) values.push(fitting(column[i], entry));
  return values;
}

function allFinite(column: Float64Array): boolean {
  for (let i = 0; i < column.length; i++) if (!Number.isFinite(column[i])) return false;
  return true;
}

function fitting(value: FactValue | undefined, entry: FactEntry): FactValue {
  if (value === undefined) throw new Error(`fact ${entry.id} is missing; give null when it is not known`);
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
