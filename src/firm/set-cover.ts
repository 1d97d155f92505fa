import { type BitSet, countBoth, has, isEmpty, membersOf, setOf, without } from './bit-set.ts';
import { at, reduce, upTo } from './cover-reductions.ts';

/** Rows (cells) to be covered, and for each column (assembly) the rows that it covers. */
export type CoverProblem = {
  readonly rows: number;
  readonly columns: readonly (readonly number[])[];
};

export type Cover = {
  /** Indexes of the columns chosen, rising. */
  readonly chosen: readonly number[];
  /** Rows that no column covers, rising. */
  readonly uncoverable: readonly number[];
  /** No cover of the rest has fewer columns than this. */
  readonly lower_bound: number;
  /** Whether `chosen` is as small as a cover can be. */
  readonly is_proved: boolean;
  /** Nodes of the search tree that were looked at. */
  readonly nodes: number;
};

/** A second or two at worst on a few hundred rows and columns. */
export const COVER_NODES = 30_000;

/**
 * The smallest set of columns that together cover every row that can be covered: reductions (dominated columns,
 * rows that come along with another, rows with a single column), then branch and bound. No randomness and no clock:
 * the same problem always gives the same cover.
 *
 * @param most_nodes  the search stops there; the answer then says how far from the smallest it can be at most
 *
 * Source: Beasley, "An algorithm for set covering problem", EJOR 31 (1987), for the reductions; both bounds are dual
 * solutions of the linear relaxation (weak duality).
 */
export function smallestCover(problem: CoverProblem, most_nodes: number = COVER_NODES): Cover {
  const { rows, columns } = problem;
  const sets = columns.map((members) => setOf(rows, members));
  const coverable = setOf(rows, columns.flat());
  const uncoverable = membersOf(without(setOf(rows, upTo(rows)), coverable));
  const reduced = reduce(coverable, sets);
  const search = new Search(sets, reduced.columns, rows, most_nodes);
  const found = search.run(reduced.open);
  const chosen = [...reduced.essential, ...found.chosen].sort((a, b) => a - b);
  const lower_bound = reduced.essential.length + found.lower_bound;
  return {
    chosen,
    uncoverable,
    lower_bound,
    is_proved: lower_bound === chosen.length,
    nodes: search.nodes,
  };
}

/** Depth first: the open row with the fewest columns is covered by each of them in turn. */
class Search {
  readonly #sets: readonly BitSet[];
  readonly #columns: readonly number[];
  readonly #columnsOfRow: readonly (readonly number[])[];
  readonly #mostNodes: number;
  readonly #taken: number[] = [];
  readonly #banned = new Set<number>();
  #best: readonly number[] = [];
  nodes = 0;

  constructor(sets: readonly BitSet[], columns: readonly number[], rows: number, mostNodes: number) {
    this.#sets = sets;
    this.#columns = columns;
    this.#columnsOfRow = upTo(rows).map((row) => columns.filter((j) => has(at(sets, j), row)));
    this.#mostNodes = mostNodes;
  }

  run(open: BitSet): { readonly chosen: readonly number[]; readonly lower_bound: number } {
    this.#best = greedyCover(open, this.#columns, this.#sets);
    const bound = this.#visit(open);
    return { chosen: this.#best, lower_bound: Math.min(bound, this.#best.length) };
  }

  /** @returns a size that no cover below this node undercuts, other than the best that is now known */
  #visit(open: BitSet): number {
    const depth = this.#taken.length;
    if (isEmpty(open)) {
      if (depth < this.#best.length) this.#best = [...this.#taken];
      return depth;
    }
    this.nodes++;
    const bound = depth + this.#bound(open);
    if (bound >= this.#best.length || this.nodes > this.#mostNodes) return bound;
    const tried: number[] = [];
    let lowest = Number.POSITIVE_INFINITY;
    for (const j of this.#branches(open)) {
      this.#taken.push(j);
      lowest = Math.min(lowest, this.#visit(without(open, at(this.#sets, j))));
      this.#taken.pop();
      // Covers with this column have been seen to: its siblings do without it.
      this.#banned.add(j);
      tried.push(j);
    }
    for (const j of tried) this.#banned.delete(j);
    return Math.max(bound, lowest);
  }

  #freeColumns(row: number): readonly number[] {
    return (this.#columnsOfRow[row] ?? []).filter((j) => !this.#banned.has(j));
  }

  #branches(open: BitSet): number[] {
    let fewest: readonly number[] | undefined;
    for (const row of membersOf(open)) {
      const free = this.#freeColumns(row);
      if (!fewest || free.length < fewest.length) fewest = free;
    }
    const gain = new Map((fewest ?? []).map((j) => [j, countBoth(at(this.#sets, j), open)]));
    return [...gain.keys()].sort((a, b) => (gain.get(b) ?? 0) - (gain.get(a) ?? 0) || a - b);
  }

  /**
   * Columns still needed at least: the better of two. Rows that share no column each need one of their own; and a row
   * takes no less than its share of the largest column that covers it.
   */
  #bound(open: BitSet): number {
    const rows = membersOf(open);
    const gain = new Map<number, number>();
    for (const j of this.#columns) {
      if (!this.#banned.has(j)) gain.set(j, countBoth(at(this.#sets, j), open));
    }
    const free = rows.map((row) => this.#freeColumns(row));
    let shares = 0;
    for (const columns of free) {
      if (columns.length === 0) return Number.POSITIVE_INFINITY;
      shares += 1 / Math.max(...columns.map((j) => gain.get(j) ?? 0));
    }
    const seen = new Set<number>();
    let apart = 0;
    for (const columns of free.sort((a, b) => a.length - b.length)) {
      if (columns.some((j) => seen.has(j))) continue;
      apart++;
      for (const j of columns) seen.add(j);
    }
    return Math.max(apart, Math.ceil(shares - 1e-9));
  }
}

/** Always the column that covers the most open rows, then without those that turned out to be needless. */
function greedyCover(open: BitSet, columns: readonly number[], sets: readonly BitSet[]): number[] {
  const chosen: number[] = [];
  for (let rest = open; !isEmpty(rest); ) {
    let best = -1;
    let most = 0;
    for (const j of columns) {
      const gain = countBoth(at(sets, j), rest);
      if (gain > most) [best, most] = [j, gain];
    }
    if (best < 0) throw new Error('a row that counts as coverable has no column');
    chosen.push(best);
    rest = without(rest, at(sets, best));
  }
  for (const j of [...chosen]) {
    const others = chosen.filter((other) => other !== j);
    const left = others.reduce((rest, other) => without(rest, at(sets, other)), open);
    if (isEmpty(left)) chosen.splice(chosen.indexOf(j), 1);
  }
  return chosen;
}
