import { CRITERIA, type Criterion, type Scores } from './scoring.ts';

/** A wall as the weights see it. */
export type Weighed = {
  readonly id: string;
  readonly scores: Scores;
  /** What a firm's own preferences add to the weighted mean; 0 when left out. */
  readonly wish?: number;
};

export type WeightMove<Wall> = {
  readonly criterion: Criterion;
  readonly direction: 'more' | 'less';
  readonly now: number;
  /** The weight at which another wall draws level; beyond it, it wins. */
  readonly until: number;
  readonly winner: Wall;
};

/** How far a weight is moved: to nothing, and to ten times what it is now (to ten where it is nothing). */
export const WEIGHT_RANGE = 10;

/** Weights and scores nearer than this are the same: a rival that is level now would else seem to lead by rounding. */
const SAME = 1e-9;

/**
 * How far each weight must move, the others as they are, before a rival wins. Exact: all scores have the same
 * denominator, so that what counts is Σ weight · (score + wish), a straight line in each single weight. A rival leads wherever
 * its line lies above those of all walls of the leader's kind.
 *
 * @param leaders  the first choice and its near-duplicates, any of which may carry the lead
 * @param rivals   every other wall that competes
 * @returns at most one move each way for each criterion; none where no rival wins within the range
 */
export function weightMoves<Wall extends Weighed>(
  leaders: readonly Wall[],
  rivals: readonly Wall[],
  weights: Scores,
): WeightMove<Wall>[] {
  return CRITERIA.flatMap((criterion) => {
    const now = weights[criterion];
    const far = now > 0 ? now * WEIGHT_RANGE : WEIGHT_RANGE;
    const level = (wall: Wall) =>
      CRITERIA.reduce(
        (sum, c) => sum + (c === criterion ? 0 : weights[c] * (wall.scores[c] + (wall.wish ?? 0))),
        0,
      );
    const slopeOf = (wall: Wall) => wall.scores[criterion] + (wall.wish ?? 0);
    const lines = leaders.map((wall) => ({ slope: slopeOf(wall), level: level(wall) }));
    let more: { at: number; winner: Wall } | null = null;
    let less: { at: number; winner: Wall } | null = null;
    for (const wall of rivals) {
      const slope = slopeOf(wall);
      const lead = leadOf({ slope, level: level(wall) }, lines);
      if (!lead) continue;
      // Only where the rival is ahead beyond the point, not where it touches it.
      const up = Math.max(lead.from, now);
      if (up < Math.min(lead.to, far) - SAME && (!more || isSooner(up, wall, more, criterion, 1)))
        more = { at: up, winner: wall };
      const down = Math.min(lead.to, now);
      if (
        down > Math.max(lead.from, 0) + SAME &&
        (!less || isSooner(-down, wall, { ...less, at: -less.at }, criterion, -1))
      )
        less = { at: down, winner: wall };
    }
    return [
      ...(more ? [{ criterion, direction: 'more' as const, now, until: more.at, winner: more.winner }] : []),
      ...(less ? [{ criterion, direction: 'less' as const, now, until: less.at, winner: less.winner }] : []),
    ];
  });
}

/** Nearer first; level at the same point: the one that is further ahead beyond it, then by id. */
function isSooner<Wall extends Weighed>(
  at: number,
  wall: Wall,
  best: { at: number; winner: Wall },
  criterion: Criterion,
  sign: 1 | -1,
): boolean {
  if (Math.abs(at - best.at) > 1e-12) return at < best.at;
  const ahead = sign * (wall.scores[criterion] - best.winner.scores[criterion]);
  return ahead !== 0 ? ahead > 0 : wall.id < best.winner.id;
}

type Line = { readonly slope: number; readonly level: number };

/** The weights at which a line lies above all others; null where it never does. */
function leadOf(rival: Line, others: readonly Line[]): { from: number; to: number } | null {
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const other of others) {
    const slope = rival.slope - other.slope;
    const level = rival.level - other.level;
    if (slope > SAME) from = Math.max(from, -level / slope);
    else if (slope < -SAME) to = Math.min(to, -level / slope);
    else if (level <= SAME) return null;
    if (from >= to) return null;
  }
  return { from, to };
}
