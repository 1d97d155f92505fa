import { coverageCurve } from './best-coverage.ts';
import { type BitSet, isWithin, setOf, without } from './bit-set.ts';
import { smallestCover } from './set-cover.ts';

/** For one cell: the score there of every assembly that counts as covering it. Empty where nothing passes. */
export type CellScores = ReadonlyMap<string, number>;

export type CoveringSet = {
  /** Ids, the one that serves most cells first. */
  readonly assemblies: readonly string[];
  /** For each cell the assembly of the set that scores best there; null where nothing passes. */
  readonly serves: readonly (string | null)[];
  readonly cells_covered: number;
  /** No set that covers as many cells has fewer assemblies. */
  readonly lower_bound: number;
  readonly is_proved: boolean;
  /** How far one assembly reaches, two, …, with those that reach so far. */
  readonly curve: readonly CurvePoint[];
};

export type CurvePoint = {
  readonly assemblies: readonly string[];
  readonly cells_covered: number;
  readonly most_possible: number;
  readonly is_proved: boolean;
};

/** Assemblies that cover the same cells stand together; the best of them speaks for all. */
type Group = {
  readonly id: string;
  readonly rows: readonly number[];
  readonly set: BitSet;
  readonly sum: number;
};

/**
 * The fewest assemblies that together cover every cell in which anything passes. Of sets equally small, one is sought
 * that scores better: an assembly is exchanged for another as long as that raises the sum of the cells' scores (a
 * local search; the number is exact, the choice among equals is not said to be the best).
 *
 * @param most_nodes  see `smallestCover`
 */
export function coveringSet(cells: readonly CellScores[], most_nodes?: number): CoveringSet {
  const groups = groupsOf(cells);
  const problem = { rows: cells.length, columns: groups.map(({ rows }) => rows) };
  const cover = smallestCover(problem, most_nodes);
  const chosen = exchanged(cover.chosen, groups, cells);
  const ids = chosen.flatMap((j) => groups[j]?.id ?? []);
  const serves = cells.map((scores) => bestOf(ids, scores));
  const count = new Map(ids.map((id) => [id, serves.filter((served) => served === id).length]));
  const covered = cells.length - cover.uncoverable.length;
  return {
    assemblies: [...ids].sort((a, b) => (count.get(b) ?? 0) - (count.get(a) ?? 0) || (a < b ? -1 : 1)),
    serves,
    cells_covered: covered,
    lower_bound: cover.lower_bound,
    is_proved: cover.is_proved,
    curve: [
      ...coverageCurve(problem, ids.length - 1, most_nodes).map((point) => ({
        assemblies: point.chosen.flatMap((j) => groups[j]?.id ?? []),
        cells_covered: point.rows_covered,
        most_possible: Math.min(point.upper_bound, covered),
        is_proved: point.is_proved,
      })),
      ...(ids.length > 0
        ? [{ assemblies: ids, cells_covered: covered, most_possible: covered, is_proved: true }]
        : []),
    ],
  };
}

function groupsOf(cells: readonly CellScores[]): Group[] {
  const rowsOf = new Map<string, number[]>();
  for (const [row, scores] of cells.entries()) {
    for (const id of scores.keys()) {
      const rows = rowsOf.get(id);
      if (rows) rows.push(row);
      else rowsOf.set(id, [row]);
    }
  }
  const groups = new Map<string, Group>();
  for (const [id, rows] of rowsOf) {
    const sum = rows.reduce((total, row) => total + (cells[row]?.get(id) ?? 0), 0);
    const key = rows.join();
    const other = groups.get(key);
    if (!other || sum > other.sum || (sum === other.sum && id < other.id)) {
      groups.set(key, { id, rows, set: other?.set ?? setOf(cells.length, rows), sum });
    }
  }
  // The order must not hang on the order in which cells and walls came.
  return [...groups.values()].sort((a, b) => b.sum - a.sum || (a.id < b.id ? -1 : 1));
}

/** The same number of assemblies, each exchanged for a better one that covers what only it covers. */
function exchanged(
  chosen: readonly number[],
  groups: readonly Group[],
  cells: readonly CellScores[],
): number[] {
  const now = [...chosen];
  const all = setOf(
    cells.length,
    groups.flatMap(({ rows }) => rows),
  );
  for (let improved = true; improved; ) {
    improved = false;
    for (const position of now.keys()) {
      const others = now.filter((_, i) => i !== position);
      const needed = others.reduce((rest, j) => without(rest, groups[j]?.set ?? rest), all);
      const base = bestScores(others, groups, cells);
      let best = now[position] ?? 0;
      let most = gainOver(base, groups[best], cells);
      for (const [j, group] of groups.entries()) {
        if (!isWithin(needed, group.set)) continue;
        const gain = gainOver(base, group, cells);
        if (gain > most + 1e-9) [best, most, improved] = [j, gain, true];
      }
      now[position] = best;
    }
  }
  return now;
}

function bestScores(
  chosen: readonly number[],
  groups: readonly Group[],
  cells: readonly CellScores[],
): number[] {
  return cells.map((scores) => Math.max(0, ...chosen.map((j) => scores.get(groups[j]?.id ?? '') ?? 0)));
}

/** By how much an assembly raises the sum of the cells' best scores. */
function gainOver(base: readonly number[], group: Group | undefined, cells: readonly CellScores[]): number {
  if (!group) return 0;
  return group.rows.reduce(
    (sum, row) => sum + Math.max(0, (cells[row]?.get(group.id) ?? 0) - (base[row] ?? 0)),
    0,
  );
}

function bestOf(ids: readonly string[], scores: CellScores): string | null {
  let best: string | null = null;
  for (const id of [...ids].sort()) {
    const score = scores.get(id);
    if (score !== undefined && (best === null || score > (scores.get(best) ?? 0))) best = id;
  }
  return best;
}
