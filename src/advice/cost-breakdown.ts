import { z } from 'zod';
import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { COST_PARTS, type CostPart, costShares, fastenerCost } from '../assessment/cost-part.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { round } from './rounded.ts';

/** Installed, as a range. */
export const priceSchema = z.object({ low: z.number(), likely: z.number(), high: z.number() });

/** What each part of the installed cost is called where it is told. */
const PART_WORDS: Readonly<Record<CostPart, string>> = {
  cladding: 'cladding in place',
  insulation: 'boards laid and taped',
  'water-resistive-barrier': 'rain barrier',
  'window-bucks': 'window supports',
  'opening-flashing': 'flashing of openings',
  'fasteners-through-the-boards': 'long fasteners',
  'driving-them': 'driving the fasteners',
  'interior-vapour-retarder': 'retarder inside',
};

/** The installed cost part by part, the dearest first; parts that cost nothing here are left out. */
export const costPartsSchema = z.array(
  z.object({ part: z.enum(COST_PARTS), label: z.string(), usd_per_ft2: priceSchema }),
);
export type CostParts = z.output<typeof costPartsSchema>;

/**
 * What the installed cost of a wall is made up of, $/ft² of wall to the cent. The parts add up to the cost but for
 * rounding; the ends of the ranges are as unlikely as all prices being low, or high, at once.
 */
export function costParts(candidate: Candidate, parts: CalculatedParts, context: AnswerContext): CostParts {
  const driven = fastenerCost(parts.fasteners, context);
  const shares = costShares(candidate, driven, parts.buck.supports, context);
  return COST_PARTS.map((part) => {
    const own = shares.filter((share) => share.part === part);
    const sum = (end: 'low' | 'likely' | 'high') =>
      round(
        own.reduce((usd, { price, times }) => usd + price[end] * times, 0),
        2,
      );
    return {
      part,
      label: PART_WORDS[part],
      usd_per_ft2: { low: sum('low'), likely: sum('likely'), high: sum('high') },
    };
  })
    .filter(({ usd_per_ft2 }) => usd_per_ft2.high > 0)
    .sort((a, b) => b.usd_per_ft2.likely - a.usd_per_ft2.likely);
}
