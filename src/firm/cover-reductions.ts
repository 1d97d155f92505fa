import {
  add,
  type BitSet,
  countOf,
  emptySet,
  has,
  isEmpty,
  isWithin,
  membersOf,
  without,
} from './bit-set.ts';

/** Columns whose rows lie within another's are left out; of equal ones the first stays. Indexes, most rows first. */
export function widestColumns(sets: readonly BitSet[], columns: readonly number[], open: BitSet): number[] {
  const cut = new Map(columns.map((j) => [j, intersection(at(sets, j), open)]));
  const size = new Map([...cut].map(([j, set]) => [j, countOf(set)]));
  const kept: number[] = [];
  const inOrder = [...columns].sort((a, b) => (size.get(b) ?? 0) - (size.get(a) ?? 0) || a - b);
  for (const j of inOrder) {
    const own = cut.get(j);
    if (!own || isEmpty(own)) continue;
    if (!kept.some((other) => isWithin(own, cut.get(other) ?? own))) kept.push(j);
  }
  return kept;
}

export type Reduced = {
  readonly open: BitSet;
  readonly columns: readonly number[];
  readonly essential: readonly number[];
};

/**
 * Leaves out what a smallest cover can do without: repeats the three reductions until none does anything any more.
 *
 * Source: Beasley, "An algorithm for set covering problem", EJOR 31 (1987).
 */
export function reduce(coverable: BitSet, sets: readonly BitSet[]): Reduced {
  let open = coverable;
  let columns: readonly number[] = upTo(sets.length);
  const essential: number[] = [];
  for (;;) {
    const before = countOf(open);
    columns = widestColumns(sets, columns, open);
    open = hardestRows(open, columns, sets);
    const only = membersOf(open).flatMap((row) => {
      const [first, second] = columns.filter((j) => has(at(sets, j), row));
      return first !== undefined && second === undefined ? [first] : [];
    });
    for (const j of new Set(only)) {
      essential.push(j);
      open = without(open, at(sets, j));
    }
    if (countOf(open) === before) return { open, columns, essential };
  }
}

/** Rows that are covered in any case when another row is (its columns are among theirs) are left out. */
function hardestRows(open: BitSet, columns: readonly number[], sets: readonly BitSet[]): BitSet {
  const coveredBy = membersOf(open).map((row) => {
    const own = emptySet(columns.length);
    for (const [i, j] of columns.entries()) if (has(at(sets, j), row)) add(own, i);
    return { row, own, size: countOf(own) };
  });
  coveredBy.sort((a, b) => a.size - b.size || a.row - b.row);
  const kept: typeof coveredBy = [];
  for (const entry of coveredBy) {
    if (!kept.some((other) => isWithin(other.own, entry.own))) kept.push(entry);
  }
  const hardest = open.map(() => 0);
  for (const { row } of kept) add(hardest, row);
  return hardest;
}

function intersection(a: BitSet, b: BitSet): BitSet {
  return a.map((word, i) => word & (b[i] ?? 0));
}

/** A column's set. */
export function at(sets: readonly BitSet[], j: number): BitSet {
  const set = sets[j];
  if (!set) throw new Error(`there is no column ${j}`);
  return set;
}

/** 0, 1, …, count - 1 */
export function upTo(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i);
}
