import type { Cladding, Insulation, Price } from '../assembly/catalogue-schema.ts';
import { partitionOf, wallAt } from '../assembly/wall-set.ts';
import { shareOfFace } from '../assessment/cost-part.ts';
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
  /** Best without its cost first. */
  readonly #entrants: readonly Entrant[];
  #ableAtThesePrices: readonly Entrant[] | undefined;
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
    this.#entrants = able
      .map((place) => this.#entrantOf(judged.wallAt(place)))
      .sort((a, b) => b.withoutCost - a.withoutCost || byScore(a.wall, b.wall));
  }

  /** For one kind of move: the winner at each value of it, null where no wall passes. */
  winners(moved: Moved): (value: number) => Promise<JudgedWall | null> {
    const able = this.#able(moved);
    return (value) => this.#winner(able, moved, value);
  }

  /** The entrants without those that lose at every value of what is moved. */
  #able(moved: Moved): readonly Entrant[] {
    if (moved.kind === 'price') {
      const entrants = this.#entrants.map((one) => withShare(one, moved.item));
      return this.#isPlain ? withoutHopeless(entrants) : entrants;
    }
    if (!this.#isPlain) return this.#entrants;
    this.#ableAtThesePrices ??= withoutHopeless(this.#entrants);
    return this.#ableAtThesePrices;
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

  async #winner(entrants: readonly Entrant[], moved: Moved, value: number): Promise<JudgedWall | null> {
    const { brief } = this.#judged.context;
    const times = moved.kind === 'price' ? value : 1;
    const budget = moved.kind === 'budget' ? value : brief.budget_usd_per_ft2;
    const scores = new Float64Array(entrants.length);
    for (const [i, entrant] of entrants.entries()) {
      const likely = endAtTimes(entrant, 'likely', times);
      scores[i] = entrant.withoutCost + this.#costWeight * costScore(likely, budget);
    }
    for (const asked of bestFirst(entrants, scores)) {
      const sheets = asked.map((entrant): Facts => {
        const cost = atTimes(entrant, times);
        return {
          ...entrant.wall.verdicts.factsOf(this.#reads),
          'cost.low_usd_per_ft2': cost.low,
          'cost.likely_usd_per_ft2': cost.likely,
          'cost.high_usd_per_ft2': cost.high,
          ...(moved.kind === 'budget' ? { 'project.budget_usd_per_ft2': value } : {}),
          ...(moved.kind === 'room'
            ? { 'project.max_added_thickness_in': value, 'project.has_thickness_limit': true }
            : {}),
        };
      });
      const verdicts = await this.#rules.evaluateAll(sheets, brief.code_edition);
      const best = asked.find((_, i) => !verdicts[i]?.isForbidden);
      if (best) return best.wall;
    }
    return null;
  }
}

/** Best first, a few at a time and then more: the best wall is mostly admitted, and nobody asks for the order of the rest. */
function* bestFirst(entrants: readonly Entrant[], scores: Float64Array): Generator<readonly Entrant[]> {
  const [first] = entrants;
  if (!first) return;
  const order = (a: number, b: number) => {
    const [one, other] = [entrants[a] ?? first, entrants[b] ?? first];
    return (
      one.wall.standing - other.wall.standing ||
      (scores[b] ?? 0) - (scores[a] ?? 0) ||
      byScore(one.wall, other.wall)
    );
  };
  let best = 0;
  for (let i = 1; i < entrants.length; i++) if (order(i, best) < 0) best = i;
  yield [entrants[best] ?? first];
  const rest = Array.from(entrants.keys())
    .filter((i) => i !== best)
    .sort(order)
    .map((i) => entrants[i] ?? first);
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

function withShare(entrant: Entrant, item: Cladding | Insulation): Entrant {
  const { cladding, build } = entrant.wall.candidate;
  if (cladding !== item && build.insulation !== item) return entrant;
  return { ...entrant, share: shareOfFace(entrant.wall.candidate, item) };
}

function atTimes(entrant: Entrant, times: number): Price {
  if (times === 1) return entrant.cost;
  return {
    low: endAtTimes(entrant, 'low', times),
    likely: endAtTimes(entrant, 'likely', times),
    high: endAtTimes(entrant, 'high', times),
  };
}

function endAtTimes({ cost, share }: Entrant, end: keyof Price, times: number): number {
  return times === 1 ? cost[end] : cost[end] + (times - 1) * share[end];
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
 * counts are known beforehand; of one face a thinner wall never has the higher standing. `withoutHopeless` of each face, before objects are
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
  const { at, count } = partitionOf(set, ['face']);
  const ofFaces: number[][] = Array.from({ length: count }, () => []);
  for (const i of places) ofFaces[at[i] ?? 0]?.push(i);
  return ofFaces.flatMap((ofFace) => {
    const kept: number[] = [];
    ofFace.sort((a, b) => (withoutCost[b] ?? 0) - (withoutCost[a] ?? 0) || judged.byScoreAt(a, b));
    for (const i of ofFace) {
      const isHopeless = kept.some((other) =>
        columns.every((column) => (column[other] ?? 0) <= (column[i] ?? 0)),
      );
      if (!isHopeless) kept.push(i);
    }
    return kept;
  });
}

/** What must be no less for a wall to stay in sight of another one: costs at both ends of the range, and thickness. */
const WIDTH = 7;

/**
 * Leaves out the walls that another one beats in all that counts, at every value within the range.
 *
 * @param bestFirst  best without its cost first
 */
function withoutHopeless(bestFirst: readonly Entrant[]): Entrant[] {
  const kept: Entrant[] = [];
  const rows = new Float64Array(bestFirst.length * WIDTH);
  for (const entrant of bestFirst) {
    const own = kept.length * WIDTH;
    writeRow(entrant, rows, own);
    const isHopeless = kept.some(
      ({ wall }, i) => wall.standing <= entrant.wall.standing && isNowhereMore(rows, i * WIDTH, own),
    );
    if (!isHopeless) kept.push(entrant);
  }
  return kept;
}

function writeRow(entrant: Entrant, rows: Float64Array, at: number): void {
  const { low, high } = PRICE_RANGE;
  rows[at] = endAtTimes(entrant, 'likely', low);
  rows[at + 1] = endAtTimes(entrant, 'likely', high);
  rows[at + 2] = endAtTimes(entrant, 'low', low);
  rows[at + 3] = endAtTimes(entrant, 'low', high);
  rows[at + 4] = endAtTimes(entrant, 'high', low);
  rows[at + 5] = endAtTimes(entrant, 'high', high);
  rows[at + 6] = entrant.thickness_in;
}

function isNowhereMore(rows: Float64Array, a: number, b: number): boolean {
  for (let i = 0; i < WIDTH; i++) if ((rows[a + i] ?? 0) > (rows[b + i] ?? 0)) return false;
  return true;
}
