import type { Candidate } from '../assembly/candidates.ts';
import type { Price } from '../assembly/catalogue-schema.ts';
import type { AnswerContext } from './answer-context.ts';
import type { FasteningPart } from './fastening-part.ts';

type Share = { readonly price: Price; readonly times: number };

/**
 * Installed cost of everything outside the sheathing (and of an added interior retarder), $/ft² of wall.
 * Sums of ranges: the ends are as unlikely as all prices being low, or high, at once.
 */
export function installedCost(candidate: Candidate, fastening: FasteningPart, context: AnswerContext): Price {
  const { prices } = context.catalogue;
  const { cladding, barrier, inside, build, buck } = candidate;
  const { cost } = build.insulation;
  const area = context.brief.wall_area_ft2;
  const openings = context.brief.windows.reduce((sum, window) => sum + window.count, 0);
  const schedule = fastening.schedule;
  const shares: Share[] = [
    { price: cost.first_inch, times: 1 },
    { price: cost.each_more_inch, times: Math.max(0, build.thickness_in - 1) },
    { price: cost.each_more_layer, times: build.boards_in.length - 1 },
    { price: barrier.cost.usd_per_ft2, times: 1 },
    { price: cladding.cost.usd_per_ft2, times: 1 },
    { price: buck.cost_each.usd, times: openings / area },
    { price: prices.opening_flashing_usd_each, times: openings / area },
  ];
  if (inside.retarder && !inside.is_existing)
    shares.push({ price: inside.retarder.cost.usd_per_ft2, times: 1 });
  if (schedule) {
    const each = prices.fastener_usd_each;
    const length_in = schedule.length_in ?? schedule.min_length_in;
    const price = length_in <= 4 ? each.up_to_4_in : length_in <= 6 ? each.up_to_6_in : each.longer;
    shares.push({ price, times: schedule.count_per_100_ft2 / 100 });
  }
  return {
    low: total(shares, 'low'),
    likely: total(shares, 'likely'),
    high: total(shares, 'high'),
  };
}

function total(shares: readonly Share[], end: keyof Price): number {
  return shares.reduce((sum, share) => sum + share.price[end] * share.times, 0);
}
