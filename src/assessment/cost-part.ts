import type { Candidate } from '../assembly/candidates.ts';
import type { Barrier, Buck, Cladding, Insulation, Price, Retarder } from '../assembly/catalogue-schema.ts';
import { partitionOf, type WallSet, type WallSlot, wallAt } from '../assembly/wall-set.ts';
import type { AnswerContext } from './answer-context.ts';
import type { BuckPart } from './buck-part.ts';
import type { FastenerCounts } from './fastener-counts.ts';
import { byLength, eachEnd, minutesEach } from './fastening-labour.ts';
import { rememberWhileThere } from './remember.ts';

/** Costs of many walls, $/ft², in the order of the walls. */
export type CostColumns = Readonly<Record<keyof Price, Float64Array>>;

/** What is paid for: an entry of the catalogue, or a part of the cost that belongs to none. */
export type CostItem = Insulation | Cladding | Barrier | Buck | Retarder | CostPart;

/** What the installed cost is told by. */
export const COST_PARTS = [
  'cladding',
  'insulation',
  'water-resistive-barrier',
  'window-bucks',
  'opening-flashing',
  'fasteners-through-the-boards',
  'driving-them',
  'interior-vapour-retarder',
] as const;
export type CostPart = (typeof COST_PARTS)[number];

export type CostShare = {
  readonly part: CostPart;
  readonly item: CostItem;
  readonly price: Price;
  readonly times: number;
};

/**
 * Installed cost of everything outside the sheathing (and of an added interior retarder), $/ft² of wall.
 * Sums of ranges: the ends are as unlikely as all prices being low, or high, at once.
 *
 * What is driven through the insulation is counted once, here: the boards' price is for laying and taping them, the
 * cladding's for hanging it with its own nails, tacks and ties, the buck's with its screws.
 */
export function installedCost(
  wall: Candidate,
  fasteners: FastenerCost,
  supports: BuckPart['supports'],
  context: AnswerContext,
): Price {
  const groups = shareGroups(wall, fasteners, supports, context);
  return eachEnd((end) => groups.reduce((sum, shares) => sum + sumOf(shares, end), 0));
}

/** What the installed cost is made up of: each price with how often it is paid on a square foot of wall. */
export function costShares(
  wall: Candidate,
  fasteners: FastenerCost,
  supports: BuckPart['supports'],
  context: AnswerContext,
): CostShare[] {
  return shareGroups(wall, fasteners, supports, context).flat();
}

/** What of the installed cost is paid for the boards or the cladding, $/ft². */
export function shareOfFace(wall: Candidate, item: Cladding | Insulation): Price {
  const shares = faceShares(wall).filter((share) => share.item === item);
  return eachEnd((end) => sumOf(shares, end));
}

/** {@link installedCost} of all walls of a set: each group of shares once, then the same sums. */
export function installedCosts(
  walls: WallSet,
  fastenersOf: (face: Candidate['face']) => FastenerCost,
  buckOf: (wall: Candidate) => BuckPart,
  context: AnswerContext,
): CostColumns {
  const groups = [
    faceSums(walls),
    sumsOfClasses(walls, ['buck'], (wall) => supportShares(buckOf(wall).supports, context)),
    sumsOfClasses(walls, ['site'], () => flashingShares(context)),
    sumsOfClasses(walls, ['face'], ({ face }) => drivenShares(fastenersOf(face))),
    insideSums(walls),
  ];
  const count = walls.candidates.length;
  const columns = {
    low: new Float64Array(count),
    likely: new Float64Array(count),
    high: new Float64Array(count),
  };
  for (const { classOf, low, likely, high } of groups) {
    for (let i = 0; i < count; i++) {
      const at = classOf[i] ?? 0;
      columns.low[i] = (columns.low[i] ?? 0) + (low[at] ?? Number.NaN);
      columns.likely[i] = (columns.likely[i] ?? 0) + (likely[at] ?? Number.NaN);
      columns.high[i] = (columns.high[i] ?? 0) + (high[at] ?? Number.NaN);
    }
  }
  return columns;
}

/** The costs of one wall. */
export function priceAt({ low, likely, high }: CostColumns, place: number): Price {
  return {
    low: low[place] ?? Number.NaN,
    likely: likely[place] ?? Number.NaN,
    high: high[place] ?? Number.NaN,
  };
}

/** What a group of shares comes to, for every class of walls that pay the same. */
type ClassSums = CostColumns & { readonly classOf: Uint32Array };

function sumsOfClasses(
  walls: WallSet,
  slots: readonly WallSlot[],
  sharesOf: (wall: Candidate) => readonly CostShare[],
): ClassSums {
  const { at: classOf, first, count } = partitionOf(walls, slots);
  const sums = {
    low: new Float64Array(count),
    likely: new Float64Array(count),
    high: new Float64Array(count),
  };
  for (let i = 0; i < count; i++) {
    const shares = sharesOf(wallAt(walls, first[i] ?? 0));
    sums.low[i] = sumOf(shares, 'low');
    sums.likely[i] = sumOf(shares, 'likely');
    sums.high[i] = sumOf(shares, 'high');
  }
  return { classOf, ...sums };
}

/** Boards, barrier, cladding and lining cost what the catalogue says, whatever the job is: kept with the set. */
const faceSums = rememberWhileThere((walls: WallSet) =>
  sumsOfClasses(walls, ['face', 'barrier'], faceShares),
);
const insideSums = rememberWhileThere((walls: WallSet) => sumsOfClasses(walls, ['inside'], insideShares));

function sumOf(shares: readonly CostShare[], end: keyof Price): number {
  let sum = 0;
  for (const { price, times } of shares) sum += price[end] * times;
  return sum;
}

/** In the order in which `installedCosts` adds them up. */
function shareGroups(
  wall: Candidate,
  fasteners: FastenerCost,
  supports: BuckPart['supports'],
  context: AnswerContext,
): readonly (readonly CostShare[])[] {
  return [
    faceShares(wall),
    supportShares(supports, context),
    flashingShares(context),
    drivenShares(fasteners),
    insideShares(wall),
  ];
}

function faceShares({ build, barrier, cladding }: Candidate): readonly CostShare[] {
  const { insulation } = build;
  const { first_inch, each_more_inch, each_more_layer } = insulation.cost;
  return [
    { part: 'insulation', item: insulation, price: first_inch, times: 1 },
    {
      part: 'insulation',
      item: insulation,
      price: each_more_inch,
      times: Math.max(0, build.thickness_in - 1),
    },
    { part: 'insulation', item: insulation, price: each_more_layer, times: build.boards_in.length - 1 },
    { part: 'water-resistive-barrier', item: barrier, price: barrier.cost.usd_per_ft2, times: 1 },
    { part: 'cladding', item: cladding, price: cladding.cost.usd_per_ft2, times: 1 },
  ];
}

function supportShares(supports: BuckPart['supports'], { brief }: AnswerContext): readonly CostShare[] {
  return supports.map(({ buck, count }) => ({
    part: 'window-bucks',
    item: buck,
    price: buck.cost_each.usd,
    times: count / brief.wall_area_ft2,
  }));
}

function flashingShares({ brief, catalogue }: AnswerContext): readonly CostShare[] {
  const openings = brief.windows.reduce((sum, window) => sum + window.count, 0);
  return [
    {
      part: 'opening-flashing',
      item: 'opening-flashing',
      price: catalogue.prices.opening_flashing_usd_each,
      times: openings / brief.wall_area_ft2,
    },
  ];
}

function drivenShares(fasteners: FastenerCost): readonly CostShare[] {
  return [
    {
      part: 'fasteners-through-the-boards',
      item: 'fasteners-through-the-boards',
      price: fasteners.material_usd_per_ft2,
      times: 1,
    },
    { part: 'driving-them', item: 'driving-them', price: fasteners.labour_usd_per_ft2, times: 1 },
  ];
}

function insideShares({ inside: { retarder, is_existing } }: Candidate): readonly CostShare[] {
  if (!retarder || is_existing) return [];
  return [{ part: 'interior-vapour-retarder', item: retarder, price: retarder.cost.usd_per_ft2, times: 1 }];
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
  const priceEach = { short: each.up_to_4_in, middle: each.up_to_6_in, long: each.longer };
  const material_usd_per_ft2 = { low: 0, likely: 0, high: 0 };
  const minutes_per_ft2 = { low: 0, likely: 0, high: 0 };
  for (const { work, length_in, per_100_ft2 } of groups) {
    addPerFt2(material_usd_per_ft2, byLength(length_in, priceEach), per_100_ft2);
    addPerFt2(minutes_per_ft2, minutesEach(work, length_in), per_100_ft2);
  }
  return {
    material_usd_per_ft2,
    labour_usd_per_ft2: eachEnd((end) => (minutes_per_ft2[end] / 60) * labour_usd_per_hour[end]),
    minutes_per_ft2,
  };
}

function addPerFt2(sum: { -readonly [End in keyof Price]: number }, each: Price, per_100_ft2: number): void {
  sum.low += (each.low * per_100_ft2) / 100;
  sum.likely += (each.likely * per_100_ft2) / 100;
  sum.high += (each.high * per_100_ft2) / 100;
}
