import type { CoverProblem } from '../../src/firm/set-cover.ts';

/** Every choice of columns looked at in turn: the fewest that cover all that can be covered, and the most rows that so many cover. */
export function bruteForce({ rows, columns }: CoverProblem): {
  readonly smallest: number;
  readonly mostRowsOf: readonly number[];
} {
  const coverable = new Set(columns.flat()).size;
  const mostRowsOf: number[] = Array.from({ length: columns.length + 1 }, () => 0);
  for (let choice = 0; choice < 1 << columns.length; choice++) {
    const chosen = columns.filter((_, j) => (choice & (1 << j)) !== 0);
    const covered = new Set(chosen.flat().filter((row) => row < rows)).size;
    mostRowsOf[chosen.length] = Math.max(mostRowsOf[chosen.length] ?? 0, covered);
  }
  return { smallest: mostRowsOf.indexOf(coverable), mostRowsOf };
}
