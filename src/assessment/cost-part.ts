import type { Candidate } from '../assembly/candidates.ts';
import type { Barrier, Buck, Cladding, Insulation, Price, Retarder } from '../assembly/catalogue-schema.ts';
import type { AnswerContext } from './answer-context.ts';
import type { BuckPart } from './buck-part.ts';
import type { FastenerCounts } from './fastener-counts.ts';
import { byLength, eachEnd, minutesEach } from './fastening-labour.ts';

/** What is paid for: an entry of the catalogue, or what belongs to none. */
export type CostItem =
  | Insulation
  | Cladding
  | Barrier
  | Buck
  | Retarder
  | 'opening flashing'
  | 'fasteners'
  | 'driving';

export type CostShare = { readonly item: CostItem; readonly price: Price; readonly times: number };

/**
 * Installed cost of everything outside the sheathing (and of an added interior retarder), $/ft² of wall.
 * Sums of ranges: the ends are as unlikely as all prices being low, or high, at once.
 *
 * What is driven through the insulation is counted once, here: the boards' price is for laying and taping them, the
 * cladding's for hanging it with its own nails, tacks and ties, the buck's with its screws.
 */
export function installedCost(
  candidate: Candidate,
  fasteners: FastenerCost,
  supports: BuckPart['supports'],
  context: AnswerContext,
): Price {
  const shares = costShares(candidate, fasteners, supports, context);
  return eachEnd((end) => shares.reduce((sum, share) => sum + share.price[end] * share.times, 0));
}

/** What the installed cost is made up of: each price with how often it is paid on a square foot of wall. */
export function costShares(
  candidate: Candidate,
  fasteners: FastenerCost,
  supports: BuckPart['supports'],
  context: AnswerContext,
): CostShare[] {
  const { prices } = context.catalogue;
  const { cladding, barrier, inside, build } = candidate;
  const { insulation } = build;
  const { cost } = insulation;
  const area = context.brief.wall_area_ft2;
  const openings = context.brief.windows.reduce((sum, window) => sum + window.count, 0);
  const shares: CostShare[] = [
    { item: insulation, price: cost.first_inch, times: 1 },
    { item: insulation, price: cost.each_more_inch, times: Math.max(0, build.thickness_in - 1) },
    { item: insulation, price: cost.each_more_layer, times: build.boards_in.length - 1 },
    { item: barrier, price: barrier.cost.usd_per_ft2, times: 1 },
    { item: cladding, price: cladding.cost.usd_per_ft2, times: 1 },
    ...supports.map(({ buck, count }) => ({
      item: buck,
      price: buck.cost_each.usd,
      times: count / area,
    })),
    { item: 'opening flashing', price: prices.opening_flashing_usd_each, times: openings / area },
    { item: 'fasteners', price: fasteners.material_usd_per_ft2, times: 1 },
    { item: 'driving', price: fasteners.labour_usd_per_ft2, times: 1 },
  ];
  if (inside.retarder && !inside.is_existing)
    shares.push({ item: inside.retarder, price: inside.retarder.cost.usd_per_ft2, times: 1 });
  return shares;
}

export type FastenerCost = {
  readonly material_usd_per_ft2: Price;
  readonly labour_usd_per_ft2: Price;
  /** One person's, for the fasteners through the insulation. */
  readonly minutes_per_ft2: Price;
};

/** Price and driving of everything that goes through the insulation. */
export function fastenerCost({ groups }: FastenerCounts, { catalogue }: AnswerContext): FastenerCost {
  const { fastener_material_usd_each: each, labour_usd_per_hour } = catalogue.prices;
  const perFt2 = (of: (length_in: number) => Price) =>
    eachEnd((end) => groups.reduce((sum, g) => sum + (of(g.length_in)[end] * g.per_100_ft2) / 100, 0));
  const minutes_per_ft2 = perFt2((length_in) => minutesEach('screw', length_in));
  return {
    material_usd_per_ft2: perFt2((length_in) =>
      byLength(length_in, { short: each.up_to_4_in, middle: each.up_to_6_in, long: each.longer }),
    ),
    labour_usd_per_ft2: eachEnd((end) => (minutes_per_ft2[end] / 60) * labour_usd_per_hour[end]),
    minutes_per_ft2,
  };
}
