import { type CostItem, costShares, fastenerCost } from '../assessment/cost-part.ts';
import type { RankedAssembly } from './advice-schema.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { round } from './rounded.ts';
import { CRITERIA, costScore, weightsOf } from './scoring.ts';

/** Scores nearer than this are equal: what is left of rounding. */
const EQUAL = 1e-9;

export type Tie = {
  readonly is_tie: boolean;
  /** How far the wall's score lies behind the first choice's. */
  readonly behind: number;
  /** How far unsure prices could move that. */
  readonly price_swing: number;
};

/**
 * Whether a wall ties with the first choice: it lies no further behind than the prices that only one of the two pays
 * could move. What both pay alike cancels; each other price is taken at the end of its range that speaks against the
 * first choice, and the prices are combined as independent ones are, by the root of the sum of their squares (all of
 * them at their worst ends at once is as unlikely as all of them right).
 */
export function tieWithFirst(wall: JudgedWall, first: JudgedWall, judged: Judged): Tie {
  const { brief } = judged.context;
  const weights = weightsOf(brief.priorities);
  const sum = CRITERIA.reduce((s, criterion) => s + weights[criterion], 0);
  const swing_usd = priceSwing(first, wall, judged);
  const costOf = (one: JudgedWall) => one.parts.cost.likely;
  const scored = (usd: number) => costScore(Math.max(0, usd), brief.budget_usd_per_ft2);
  const lost = scored(costOf(first)) - scored(costOf(first) + swing_usd);
  const won = scored(costOf(wall) - swing_usd) - scored(costOf(wall));
  const price_swing = (weights.cost / sum) * Math.max(lost, won);
  const behind = first.score - wall.score;
  return { is_tie: behind <= price_swing + EQUAL, behind, price_swing };
}

/** How much dearer the first wall could become against the other one, $/ft², beyond what is likely. */
export function priceSwing(first: JudgedWall, other: JudgedWall, judged: Judged): number {
  const moves = new Map<CostItem, { low: number; high: number }>();
  for (const [wall, sign] of [
    [first, 1],
    [other, -1],
  ] as const) {
    const { fasteners, buck } = wall.parts;
    const driven = fastenerCost(fasteners, judged.context);
    for (const { item, price, times } of costShares(wall.candidate, driven, buck.supports, judged.context)) {
      const move = moves.get(item) ?? { low: 0, high: 0 };
      move.low += sign * (price.low - price.likely) * times;
      move.high += sign * (price.high - price.likely) * times;
      moves.set(item, move);
    }
  }
  const squares = [...moves.values()].map(({ low, high }) => Math.max(low, high, 0) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0));
}

/** The tie as a ranked wall tells it; the first choice ties with nothing. */
export function tieKeys(
  wall: JudgedWall,
  first: JudgedWall | null,
  judged: Judged,
): Pick<RankedAssembly, 'tie_with_first' | 'tie'> {
  if (!first) return { tie_with_first: false, tie: null };
  const { is_tie, behind, price_swing } = tieWithFirst(wall, first, judged);
  const gap = `${behind.toFixed(3)} behind the first choice`;
  const swing = `prices that only one of the two pays, within their ranges, could move that by ${price_swing.toFixed(3)}`;
  return {
    tie_with_first: is_tie,
    tie: {
      score_behind: round(behind, 4),
      price_swing: round(price_swing, 4),
      words: is_tie
        ? `As good as the first choice: it scores ${gap}, and ${swing}. Get quotes for both.`
        : `It scores ${gap}; ${swing}.`,
    },
  };
}
