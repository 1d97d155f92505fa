import { type BitSet, countBoth, countOf, emptySet, setOf, union, without } from './bit-set.ts';
import { widestColumns } from './cover-reductions.ts';
import type { CoverProblem } from './set-cover.ts';

/** The most rows that so many columns can cover together. */
export type CoveragePoint = {
  readonly columns: number;
  readonly rows_covered: number;
  /** No choice of so many columns covers more rows than this. */
  readonly upper_bound: number;
  readonly is_proved: boolean;
  readonly chosen: readonly number[];
};

/** Some tenths of a second for each point on a few hundred rows and columns. */
export const COVERAGE_NODES = 20_000;

/**
 * How far one column reaches, two, three, … up to `most` columns, by branch and bound: columns are tried by what
 * they add, and a branch is left when even its largest columns together could not beat the best known.
 *
 * @param most_nodes  for each point; where the search stops there, `upper_bound` says what could still be missing
 */
export function coverageCurve(
  { rows, columns }: CoverProblem,
  most: number,
  most_nodes: number = COVERAGE_NODES,
): CoveragePoint[] {
  const sets = columns.map((members) => setOf(rows, members));
  const all = setOf(rows, columns.flat());
  const widest = widestColumns(
    sets,
    columns.map((_, j) => j),
    all,
  );
  const curve: CoveragePoint[] = [];
  let before: readonly number[] = [];
  for (let k = 1; k <= most; k++) {
    const search = new Search(sets, all, k, most_nodes);
    const point = search.run(widest, withOneMore(before, widest, sets, all));
    curve.push(point);
    before = point.chosen;
  }
  return curve;
}

/** A start for the next point, so that the curve can't fall: the last choice and what adds most to it. */
function withOneMore(
  before: readonly number[],
  columns: readonly number[],
  sets: readonly BitSet[],
  all: BitSet,
): number[] {
  const open = before.reduce((rest, j) => without(rest, sets[j] ?? rest), all);
  const gains = gainsOver(columns, sets, open);
  return gains[0] ? [...before, gains[0].column] : [...before];
}

type Gain = { readonly column: number; readonly gain: number };

/** Columns that add something to what is still open, most first. */
function gainsOver(columns: readonly number[], sets: readonly BitSet[], open: BitSet): Gain[] {
  return columns
    .map((column) => ({ column, gain: countBoth(sets[column] ?? open, open) }))
    .filter(({ gain }) => gain > 0)
    .sort((a, b) => b.gain - a.gain || a.column - b.column);
}

class Search {
  readonly #sets: readonly BitSet[];
  readonly #all: BitSet;
  readonly #most: number;
  readonly #mostNodes: number;
  readonly #taken: number[] = [];
  #best: readonly number[] = [];
  #bestCount = 0;
  #nodes = 0;

  constructor(sets: readonly BitSet[], all: BitSet, most: number, mostNodes: number) {
    this.#sets = sets;
    this.#all = all;
    this.#most = most;
    this.#mostNodes = mostNodes;
  }

  run(columns: readonly number[], start: readonly number[]): CoveragePoint {
    this.#best = start;
    this.#bestCount = countOf(
      start.reduce((sum, j) => union(sum, this.#sets[j] ?? sum), emptySet(32 * this.#all.length)),
    );
    const bound = this.#visit(this.#all, 0, columns);
    const upper_bound = Math.max(bound, this.#bestCount);
    return {
      columns: this.#most,
      rows_covered: this.#bestCount,
      upper_bound,
      is_proved: upper_bound === this.#bestCount,
      chosen: [...this.#best].sort((a, b) => a - b),
    };
  }

  /** @returns a number of rows that no choice below this node exceeds, other than the best that is now known */
  #visit(open: BitSet, covered: number, columns: readonly number[]): number {
    this.#nodes++;
    if (covered > this.#bestCount) {
      this.#bestCount = covered;
      this.#best = [...this.#taken];
    }
    const left = this.#most - this.#taken.length;
    if (left === 0) return covered;
    const gains = gainsOver(columns, this.#sets, open);
    let highest = covered;
    for (let i = 0; i < gains.length; i++) {
      const next = gains[i];
      if (!next) break;
      // What is added later never adds more than it would now.
      const reach = gains.slice(i, i + left).reduce((sum, { gain }) => sum + gain, covered);
      if (reach <= this.#bestCount) break;
      if (this.#nodes > this.#mostNodes) return Math.max(highest, Math.min(reach, covered + countOf(open)));
      this.#taken.push(next.column);
      const rest = gains.slice(i + 1).map(({ column }) => column);
      const below = this.#visit(without(open, this.#sets[next.column] ?? open), covered + next.gain, rest);
      highest = Math.max(highest, below);
      this.#taken.pop();
    }
    return highest;
  }
}
