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
  const efficient: Wall[] = [];
  // The one that beat the last wall mostly beats the next one too: it is asked first.
  const askFirst: Wall[] = [];
  for (const wall of bestFirst) {
    const at = askFirst.findIndex((other) => beats(other, wall));
    if (at < 0) {
      efficient.push(wall);
      askFirst.push(wall);
    } else if (at > 0) {
      const [dominator] = askFirst.splice(at, 1);
      if (dominator) askFirst.unshift(dominator);
    }
  }
  return efficient;
}
