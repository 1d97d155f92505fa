import { CRITERIA, type Scores } from './scoring.ts';

/** Scores nearer than this are the same: what is left of rounding. */
const SAME = 1e-9;

/** Whether `a` is at least as good as `b` by every criterion and better by one: then nobody has a reason to build `b`. */
export function dominates(a: Scores, b: Scores): boolean {
  let isBetter = false;
  for (const criterion of CRITERIA) {
    const ahead = a[criterion] - b[criterion];
    if (ahead < -SAME) return false;
    if (ahead > SAME) isBetter = true;
  }
  return isBetter;
}

/** A wall as dominance sees it: its scores, and what a firm's own preferences add to the whole. */
export type Competitor = { readonly scores: Scores; readonly wish?: number };

/** Whether `a` dominates `b` and no preference of the firm speaks for `b` against it. */
export function beats(a: Competitor, b: Competitor): boolean {
  return (a.wish ?? 0) >= (b.wish ?? 0) - SAME && dominates(a.scores, b.scores);
}

/**
 * The walls that no other wall beats in everything; only these compete. Weights are never negative and equal scores stand in the
 * order of the plain sum of their parts (`byScore`), so a wall can only be dominated by one that stands before it.
 *
 * @param bestFirst  in the order of `byScore`
 * @returns in the same order
 */
export function efficientWalls<Wall extends Competitor>(bestFirst: readonly Wall[]): Wall[] {
  const rows = rowsOf(bestFirst);
  const efficient: Wall[] = [];
  // The one that beat the last wall mostly beats the next one too: it is asked first.
  const askFirst = new Uint32Array(bestFirst.length);
  for (let row = 0; row < bestFirst.length; row++) {
    let at = 0;
    while (at < efficient.length && !beatsRow(rows, askFirst[at] ?? 0, row)) at += 1;
    const wall = bestFirst[row];
    if (at < efficient.length) toFront(askFirst, at);
    else if (wall) {
      askFirst[efficient.length] = row;
      efficient.push(wall);
    }
  }
  return efficient;
}

function toFront(list: Uint32Array, at: number): void {
  const moved = list[at] ?? 0;
  for (let i = at; i > 0; i--) list[i] = list[i - 1] ?? 0;
  list[0] = moved;
}

/** The parts of a score and the wish, one row a wall. */
const WIDTH = CRITERIA.length + 1;

/** Thousands of walls are held against hundreds: numbers in a row are compared many times as fast as named parts. */
function rowsOf(walls: readonly Competitor[]): Float64Array {
  const rows = new Float64Array(walls.length * WIDTH);
  let next = 0;
  for (const { scores, wish } of walls) {
    for (const criterion of CRITERIA) rows[next++] = scores[criterion];
    rows[next++] = wish ?? 0;
  }
  return rows;
}

/** {@link beats} of two rows. */
function beatsRow(rows: Float64Array, a: number, b: number): boolean {
  const [from, against] = [a * WIDTH, b * WIDTH];
  let isBetter = false;
  for (let part = 0; part < WIDTH; part++) {
    const ahead = (rows[from + part] ?? 0) - (rows[against + part] ?? 0);
    if (ahead < -SAME) return false;
    // A wish lets a wall stay, and makes none better.
    if (ahead > SAME && part < CRITERIA.length) isBetter = true;
  }
  return isBetter;
}
