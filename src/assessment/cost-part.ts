import type { Candidate } from '../assembly/candidates.ts';
import type { Price } from '../assembly/catalogue-schema.ts';
import { partitionOf, type WallSet, type WallSlot, wallAt } from '../assembly/wall-set.ts';
import type { BriefWindow } from '../brief/brief.ts';
import type { AnswerContext } from './answer-context.ts';
import type { FastenerCounts } from './fastener-counts.ts';
import { byLength, eachEnd, minutesEach } from './fastening-labour.ts';

/** Costs of many walls, $/ft², in the order of the walls. */
export type CostColumns = Readonly<Record<keyof Price, Float64Array>>;

/**
 * Installed cost of everything outside the sheathing (and of an added interior retarder), $/ft² of wall.
 * Sums of ranges: the ends are as unlikely as all prices being low, or high, at once.
 *
 * What is driven through the insulation is counted once, here: the boards' price is for laying and taping them, the
 * cladding's for hanging it with its own nails, tacks and ties, the buck's with its screws.
 */
export function installedCost(wall: Candidate, fasteners: FastenerCost, context: AnswerContext): Price {
  return eachEnd((end) => {
    const share = shares(end, context);
    return (
      share.face(wall) +
      share.buck(wall) +
      share.flashing +
      fasteners.material_usd_per_ft2[end] +
      fasteners.labour_usd_per_ft2[end] +
      share.inside(wall)
    );
  });
}

/** {@link installedCost} of all walls of a set: each share once, then the same sums. */
export function installedCosts(
  walls: WallSet,
  fastenersOf: (face: Candidate['face']) => FastenerCost,
  context: AnswerContext,
): CostColumns {
  const column = (end: keyof Price): Float64Array => {
    const share = shares(end, context);
    const faces = ofClasses(walls, ['face', 'barrier'], share.face);
    const bucks = ofClasses(walls, ['buck'], share.buck);
    const screws = ofClasses(walls, ['face'], ({ face }) => fastenersOf(face).material_usd_per_ft2[end]);
    const driving = ofClasses(walls, ['face'], ({ face }) => fastenersOf(face).labour_usd_per_ft2[end]);
    const insides = ofClasses(walls, ['inside'], share.inside);
    const costs = new Float64Array(walls.candidates.length);
    for (let i = 0; i < costs.length; i++) {
      costs[i] =
        at(faces, i) + at(bucks, i) + share.flashing + at(screws, i) + at(driving, i) + at(insides, i);
    }
    return costs;
  };
  return { low: column('low'), likely: column('likely'), high: column('high') };
}

/** The costs of one wall. */
export function priceAt({ low, likely, high }: CostColumns, place: number): Price {
  return {
    low: low[place] ?? Number.NaN,
    likely: likely[place] ?? Number.NaN,
    high: high[place] ?? Number.NaN,
  };
}

type ByClass = { readonly classOf: Uint32Array; readonly values: Float64Array };

function ofClasses(walls: WallSet, slots: readonly WallSlot[], costOf: (wall: Candidate) => number): ByClass {
  const { at: classOf, first } = partitionOf(walls, slots);
  const values = new Float64Array(first.length);
  for (let i = 0; i < values.length; i++) values[i] = costOf(wallAt(walls, first[i] ?? 0));
  return { classOf, values };
}

function at({ classOf, values }: ByClass, i: number): number {
  return values[classOf[i] ?? 0] ?? Number.NaN;
}

/** What each part of a wall adds to one end of the range. */
function shares(end: keyof Price, { brief, catalogue }: AnswerContext) {
  const { prices } = catalogue;
  const openings = openingCount(brief.windows) / brief.wall_area_ft2;
  return {
    face: ({ build, barrier, cladding }: Candidate) => {
      const { first_inch, each_more_inch, each_more_layer } = build.insulation.cost;
      return (
        first_inch[end] +
        each_more_inch[end] * Math.max(0, build.thickness_in - 1) +
        each_more_layer[end] * (build.boards_in.length - 1) +
        barrier.cost.usd_per_ft2[end] +
        cladding.cost.usd_per_ft2[end]
      );
    },
    buck: ({ buck }: Candidate) => buck.cost_each.usd[end] * openings,
    flashing: prices.opening_flashing_usd_each[end] * openings,
    inside: ({ inside: { retarder, is_existing } }: Candidate) =>
      retarder && !is_existing ? retarder.cost.usd_per_ft2[end] : 0,
  };
}

function openingCount(windows: readonly BriefWindow[]): number {
  return windows.reduce((sum, window) => sum + window.count, 0);
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
