import type { Cladding, Insulation, Price } from '../assembly/catalogue-schema.ts';
import { partitionOf, wallAt } from '../assembly/wall-set.ts';
import { type CostItem, costShares, fastenerCost } from '../assessment/cost-part.ts';
import { addedThickness } from '../assessment/wall-layers.ts';
import type { CodeEdition } from '../brief/brief.ts';
import type { Facts } from '../rulebook/rule-schema.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import { byScore, type Judged, type JudgedWall, type Knowledge } from './judge-walls.ts';
import { CRITERIA, costScore, weightsOf } from './scoring.ts';

/** How far a price or the budget is moved: to half and to twice what it is now. */
export const PRICE_RANGE = { low: 0.5, high: 2 } as const;

/** What is moved, all else staying as it is. */
export type Moved =
  /** A price, in times of what it is now, within `PRICE_RANGE`. */
  | { readonly kind: 'price'; readonly item: Cladding | Insulation }
  /** $/ft² */
  | { readonly kind: 'budget' }
  /** The room outside the sheathing, in. */
  | { readonly kind: 'room' };

/** Facts that a move changes. Rules that forbid by them are judged again. */
const MOVED_FACTS: readonly string[] = [
  'cost.low_usd_per_ft2',
  'cost.likely_usd_per_ft2',
  'cost.high_usd_per_ft2',
  'project.budget_usd_per_ft2',
  'project.max_added_thickness_in',
  'project.has_thickness_limit',
];
const THICKNESS = 'thickness.added_in';

type Entrant = {
  readonly wall: JudgedWall;
  /** The score without what cost adds to it. */
  readonly withoutCost: number;
  readonly cost: Price;
  /** What of the cost goes to the price that is moved. */
  readonly share: Price;
  readonly thickness_in: number;
};

const NOTHING: Price = { low: 0, likely: 0, high: 0 };

/**
 * Who would win if a price, the budget or the room outside were another. Only what cost adds to the scores, and the
 * rules that read these facts, can change then; nothing else is worked out again.
 */
export class Contest {
  readonly #judged: Judged;
  readonly #entrants: readonly Entrant[];
  /** The rules that a move can make speak or fall silent. */
  readonly #rules: Rulebook;
  /** What these rules read. */
  readonly #reads: readonly string[];
  /** Whether these rules look at nothing but money and thickness, so that cheaper and thinner never hurts. */
  readonly #isPlain: boolean;
  readonly #costWeight: number;

  constructor(judged: Judged, { rulebook }: Knowledge) {
    const { brief } = judged.context;
    const weights = weightsOf(brief.priorities);
    this.#judged = judged;
    this.#rules = movedRules(rulebook, brief.code_edition);
    this.#reads = [...new Set(this.#rules.rules.flatMap(({ reads }) => reads))];
    this.#isPlain = this.#rules.rules.every(({ reads }) =>
      reads.every((id) => id === THICKNESS || MOVED_FACTS.includes(id)),
    );
    this.#costWeight = weights.cost / CRITERIA.reduce((sum, criterion) => sum + weights[criterion], 0);
    const places = placesToCompete(
      judged,
      this.#rules.rules.map(({ rule }) => rule.id),
    );
    const able = this.#isPlain ? bestOfFaces(places, judged, this.#costWeight) : places;
    this.#entrants = able.map((place) => this.#entrantOf(judged.wallAt(place)));
  }

  /** For one kind of move: the winner at each value of it, null where no wall passes. */
  winners(moved: Moved): (value: number) => Promise<JudgedWall | null> {
    const entrants =
      moved.kind === 'price' ? this.#entrants.map((one) => this.#withShare(one, moved.item)) : this.#entrants;
    const able = this.#isPlain ? withoutHopeless(entrants) : entrants;
    return (value) => this.#winner(able, moved, value);
  }

  #entrantOf(wall: JudgedWall): Entrant {
    const { candidate } = wall;
    return {
      wall,
      withoutCost: wall.score - this.#costWeight * wall.scores.cost,
      cost: wall.parts.cost,
      share: NOTHING,
      thickness_in: addedThickness(candidate.face, candidate.barrier),
    };
  }

  #withShare(entrant: Entrant, item: Cladding | Insulation): Entrant {
    const { cladding, build } = entrant.wall.candidate;
    if (cladding !== item && build.insulation !== item) return entrant;
    return { ...entrant, share: shareOf(entrant.wall, item, this.#judged) };
  }

  async #winner(entrants: readonly Entrant[], moved: Moved, value: number): Promise<JudgedWall | null> {
    const { brief } = this.#judged.context;
    const times = moved.kind === 'price' ? value : 1;
    const budget = moved.kind === 'budget' ? value : brief.budget_usd_per_ft2;
    const scored = entrants.map((entrant): Scored => {
      const cost = atTimes(entrant, times);
      return {
        entrant,
        cost,
        score: entrant.withoutCost + this.#costWeight * costScore(cost.likely, budget),
      };
    });
    for (const asked of bestFirst(scored)) {
      const sheets = asked.map(
        ({ entrant, cost }): Facts => ({
          ...entrant.wall.verdicts.factsOf(this.#reads),
          'cost.low_usd_per_ft2': cost.low,
          'cost.likely_usd_per_ft2': cost.likely,
          'cost.high_usd_per_ft2': cost.high,
          ...(moved.kind === 'budget' ? { 'project.budget_usd_per_ft2': value } : {}),
          ...(moved.kind === 'room'
            ? { 'project.max_added_thickness_in': value, 'project.has_thickness_limit': true }
            : {}),
        }),
      );
      const verdicts = await this.#rules.evaluateAll(sheets, brief.code_edition);
      const best = asked.find((_, i) => !verdicts[i]?.isForbidden);
      if (best) return best.entrant.wall;
    }
    return null;
  }
}

type Scored = { readonly entrant: Entrant; readonly cost: Price; readonly score: number };

/** Best first, a few at a time and then more: the best wall is mostly admitted, and nobody asks for the order of the rest. */
function* bestFirst(scored: readonly Scored[]): Generator<readonly Scored[]> {
  const order = (a: Scored, b: Scored) =>
    a.entrant.wall.standing - b.entrant.wall.standing ||
    b.score - a.score ||
    byScore(a.entrant.wall, b.entrant.wall);
  const [one] = scored;
  if (!one) return;
  const best = scored.reduce((sofar, other) => (order(other, sofar) < 0 ? other : sofar), one);
  yield [best];
  const rest = scored.filter((other) => other !== best).sort(order);
  for (let at = 0, size = 8; at < rest.length; at += size, size *= 8) yield rest.slice(at, at + size);
}

/** The rules that a move can make speak or fall silent, with what they have decided so far. */
function movedRules(rulebook: Rulebook, edition: CodeEdition): Rulebook {
  const ofEditions = knownRules.get(rulebook) ?? new Map<CodeEdition, Rulebook>();
  knownRules.set(rulebook, ofEditions);
  const found =
    ofEditions.get(edition) ??
    rulebook.only(
      rulebook
        .rulesOf(edition)
        .filter(
          ({ rule, reads }) => rule.verdict === 'forbid' && reads.some((id) => MOVED_FACTS.includes(id)),
        ),
    );
  ofEditions.set(edition, found);
  return found;
}

const knownRules = new WeakMap<Rulebook, Map<CodeEdition, Rulebook>>();

/** What of a wall's installed cost is paid for one thing, $/ft². */
export function shareOf(wall: JudgedWall, item: CostItem, { context }: Judged): Price {
  const { fasteners, buck } = wall.parts;
  const shares = costShares(wall.candidate, fastenerCost(fasteners, context), buck.supports, context).filter(
    (share) => share.item === item,
  );
  const sum = (end: keyof Price) => shares.reduce((total, { price, times }) => total + price[end] * times, 0);
  return { low: sum('low'), likely: sum('likely'), high: sum('high') };
}

function atTimes({ cost, share }: Entrant, times: number): Price {
  if (times === 1) return cost;
  return {
    low: cost.low + (times - 1) * share.low,
    likely: cost.likely + (times - 1) * share.likely,
    high: cost.high + (times - 1) * share.high,
  };
}

/** Walls that some value of what is moved admits. */
function placesToCompete({ verdicts }: Judged, movedRules: readonly string[]): number[] {
  const { forbids } = verdicts;
  const byMoved = verdicts.forbidsBy(movedRules);
  const able: number[] = [];
  for (let i = 0; i < forbids.length; i++) if (forbids[i] === byMoved[i]) able.push(i);
  return able;
}

/**
 * The same cladding over the same boards pays the same prices for both: there those that another wall beats in all that
 * counts are known beforehand; walls of one face have one standing. `withoutHopeless` of each face, before objects are
 * made of the walls.
 */
function bestOfFaces(places: readonly number[], judged: Judged, costWeight: number): number[] {
  const { set, assess, totals, scores } = judged;
  const { low, likely, high } = assess.works.cost.work.ofAll(set);
  const thickness_in = new Float64Array(totals.length);
  const withoutCost = new Float64Array(totals.length);
  for (const i of places) {
    const { face, barrier } = wallAt(set, i);
    thickness_in[i] = addedThickness(face, barrier);
    withoutCost[i] = (totals[i] ?? 0) - costWeight * (scores.columns.cost[i] ?? 0);
  }
  const columns = [likely, low, high, thickness_in];
  const { at } = partitionOf(set, ['face']);
  const keptOfFaces = new Map<number, number[]>();
  const bestFirst = places.toSorted(
    (a, b) => (withoutCost[b] ?? 0) - (withoutCost[a] ?? 0) || judged.byScoreAt(a, b),
  );
  for (const i of bestFirst) {
    const kept = keptOfFaces.get(at[i] ?? 0) ?? [];
    keptOfFaces.set(at[i] ?? 0, kept);
    const isHopeless = kept.some((other) =>
      columns.every((column) => (column[other] ?? 0) <= (column[i] ?? 0)),
    );
    if (!isHopeless) kept.push(i);
  }
  return [...keptOfFaces.values()].flat();
}

/** Leaves out the walls that another one beats in all that counts, at every value within the range. */
function withoutHopeless(entrants: readonly Entrant[]): Entrant[] {
  const kept: { entrant: Entrant; costs: readonly number[] }[] = [];
  const bestFirst = [...entrants].sort((a, b) => b.withoutCost - a.withoutCost || byScore(a.wall, b.wall));
  for (const entrant of bestFirst) {
    const [cheap, dear] = [atTimes(entrant, PRICE_RANGE.low), atTimes(entrant, PRICE_RANGE.high)];
    const costs = [
      cheap.likely,
      dear.likely,
      cheap.low,
      dear.low,
      cheap.high,
      dear.high,
      entrant.thickness_in,
    ];
    const isHopeless = kept.some(
      (other) =>
        other.entrant.wall.standing <= entrant.wall.standing &&
        other.costs.every((cost, i) => cost <= (costs[i] ?? 0)),
    );
    if (!isHopeless) kept.push({ entrant, costs });
  }
  return kept.map(({ entrant }) => entrant);
}
