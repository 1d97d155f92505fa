import type { Candidate } from '../assembly/candidates.ts';
import type { Catalogue } from '../assembly/catalogue.ts';
import {
  partitionOf,
  WALL_SLOTS,
  type WallSet,
  type WallSlot,
  wallAt,
  wallSet,
} from '../assembly/wall-set.ts';
import { type AnswerContext, answerContext } from '../assessment/answer-context.ts';
import { type Assessor, assessor } from '../assessment/assess.ts';
import type { CodeTables } from '../assessment/code-tables.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { factSlots } from '../assessment/fact-slots.ts';
import { claddingsOnDeeperFurring } from '../assessment/on-furring.ts';
import type { Brief } from '../brief/brief.ts';
import { FactSheets } from '../rulebook/fact-sheets.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import type { Verdicts, VerdictTable } from '../rulebook/verdicts.ts';
import type { Site } from '../site/site.ts';
import { houseWishes, wishBonuses } from './house-wishes.ts';
import { type MissedLimits, missedLimits } from './missed-limits.ts';
import { plainTotalAt, type ScoreTable, scoresAt, scoreTable } from './score-table.ts';
import type { Scores } from './scoring.ts';
import { type Standing, standings } from './standing.ts';
import {
  type ForbiddenLining,
  haveSameLinings,
  isLiningOpen,
  type OfLining,
  ofLinings,
} from './unknown-lining.ts';

/** What an answer is made with: rules, code tables, catalogue. The same for every question. */
export type Knowledge = {
  readonly rulebook: Rulebook;
  readonly tables: CodeTables;
  readonly catalogue: Catalogue;
  /** Called each time all walls have been judged; what it throws ends the work. */
  readonly onJudged?: (walls: number) => void;
};

/** One wall with what the rules and the scoring say of it, each worked out or put together when it is asked for. */
export class JudgedWall {
  readonly candidate: Candidate;
  readonly #answer: Judged;
  readonly #index: number;
  #verdicts: Verdicts | undefined;
  #scores: Scores | undefined;

  constructor(candidate: Candidate, answer: Judged, index: number) {
    this.candidate = candidate;
    this.#answer = answer;
    this.#index = index;
  }

  get verdicts(): Verdicts {
    this.#verdicts ??= this.#answer.verdicts.of(this.#index);
    return this.#verdicts;
  }

  /** How many rules forbid the wall. */
  get forbids(): number {
    return this.#answer.verdicts.forbids[this.#index] ?? 0;
  }

  /** How many limits it breaks. */
  get limitsMissed(): number {
    return this.#answer.missed.count[this.#index] ?? 0;
  }

  /** By what share it misses the limits that it breaks, added up. */
  get missedBy(): number {
    return this.#answer.missed.share[this.#index] ?? 0;
  }

  /** What the calculators find for it, from what is worked out for all walls at once. */
  get parts(): CalculatedParts {
    const { assess, set } = this.#answer;
    return assess.partsAt(set, this.#index);
  }

  get scores(): Scores {
    this.#scores ??= scoresAt(this.#answer.scores, this.#index);
    return this.#scores;
  }

  /** All scores, weighted, and what the firm's own preferences add. */
  get score(): number {
    return this.#answer.totals[this.#index] ?? Number.NaN;
  }

  /** With whom it competes. */
  get standing(): Standing {
    return this.#answer.standingAt(this.#index);
  }

  /** What may be behind a lining that nobody looked behind, and forbids the wall if it is. */
  get forbiddenLinings(): ForbiddenLining[] {
    return this.#answer.linings.flatMap((lining) => lining.forbidding(this.#index) ?? []);
  }

  /** What the firm's own preferences add to the score. */
  get wish(): number {
    return this.#answer.wishes?.[this.#index] ?? 0;
  }

  /** Mean of the scores, unweighted. */
  get plainScore(): number {
    return plainTotalAt(this.#answer.scores, this.#index);
  }
}

/** All walls of an answer, judged. Objects for single walls are made when they are asked for. */
export class Judged {
  readonly context: AnswerContext;
  readonly assess: Assessor;
  readonly set: WallSet;
  readonly verdicts: VerdictTable;
  /** What the firm's own preferences add to each score; null where it has none. */
  readonly wishes: Float64Array | null;
  /** What each thing that may be behind a lining forbids; none where it is known. */
  readonly linings: readonly OfLining<Judged>[];
  #scores: ScoreTable | undefined;
  #totals: Float64Array | undefined;
  #standings: Uint32Array | undefined;
  #missed: MissedLimits | undefined;
  readonly #made: (JudgedWall | undefined)[];
  #walls: readonly JudgedWall[] | undefined;
  #admitted: readonly JudgedWall[] | undefined;

  /** @param wishes  ids of the firm's own preferences */
  constructor(
    judged: Pick<Judged, 'context' | 'assess' | 'set' | 'verdicts'>,
    wishes: readonly string[],
    linings: readonly OfLining<Judged>[] = [],
  ) {
    this.context = judged.context;
    this.assess = judged.assess;
    this.set = judged.set;
    this.verdicts = judged.verdicts;
    this.wishes = wishBonuses(judged.verdicts, wishes);
    this.linings = linings;
    this.#made = new Array(judged.set.candidates.length);
  }

  /** In the order in which they were drawn up. */
  get walls(): readonly JudgedWall[] {
    this.#walls ??= this.set.candidates.map((_, i) => this.wallAt(i));
    return this.#walls;
  }

  /** The wall at a place of the set. */
  wallAt(place: number): JudgedWall {
    const candidate = wallAt(this.set, place);
    this.#made[place] ??= new JudgedWall(candidate, this, place);
    return this.#made[place];
  }

  /** Walls that no rule forbids, best first: those of a lower standing before all others, however these score. */
  get admitted(): readonly JudgedWall[] {
    this.#admitted ??= this.#bestFirst(this.#admittedPlaces()).map((i) => this.wallAt(i));
    return this.#admitted;
  }

  /** The score of every wall, in the order of `walls`. */
  get totals(): Float64Array {
    this.#totals ??= withBonuses(this.scores, this.wishes);
    return this.#totals;
  }

  /** The parts of every score. */
  get scores(): ScoreTable {
    this.#scores ??= scoreTable(this.set, this.assess, this.context);
    return this.#scores;
  }

  /** The best admitted wall of the lowest standing, as an answer puts it first; null when none is admitted. */
  get best(): JudgedWall | null {
    return this.#bestOf(this.#admittedPlaces());
  }

  /** The best admitted wall of those wanted, as `admitted` would list it first; null when there is none. */
  bestAdmitted(isWanted: (candidate: Candidate) => boolean): JudgedWall | null {
    const wanted = this.#admittedPlaces().filter((i) => isWanted(wallAt(this.set, i)));
    return this.#bestOf(wanted);
  }

  #bestOf(places: readonly number[]): JudgedWall | null {
    let [best] = places;
    if (best === undefined) return null;
    for (const i of places) if (this.#byMerit(i, best) < 0) best = i;
    return this.wallAt(best);
  }

  standingAt(place: number): Standing {
    this.#standings ??= standings(this);
    return this.#standings[place] ?? 0;
  }

  /**
   * For every kind of wall of which none is admitted, the one that comes closest: fewest limits broken first, then what
   * misses them by the smaller share, then the better score, then the id.
   *
   * @param slot    what the kind can be told from
   * @param kindOf  names the kind of a wall
   * @returns the closest of all kinds first
   */
  closestOfExcluded(slot: WallSlot, kindOf: (candidate: Candidate) => string): JudgedWall[] {
    const { at, first } = partitionOf(this.set, [slot]);
    const { forbids } = this.verdicts;
    const kinds = Array.from(first, (place) => kindOf(wallAt(this.set, place)));
    const admitted = new Set<string>();
    for (let i = 0; i < forbids.length; i++) if (forbids[i] === 0) admitted.add(kinds[at[i] ?? 0] ?? '');
    const isOut = kinds.map((kind) => !admitted.has(kind));
    const closest = new Map<string, number>();
    for (let i = 0; i < forbids.length; i++) {
      if (!isOut[at[i] ?? 0]) continue;
      const kind = kinds[at[i] ?? 0] ?? '';
      const other = closest.get(kind);
      if (other === undefined || this.byClosenessAt(i, other) < 0) closest.set(kind, i);
    }
    return [...closest.values()].sort((a, b) => this.byClosenessAt(a, b)).map((i) => this.wallAt(i));
  }

  /** Of some walls the one that comes closest to passing, or the best where one passes; null when there is none. */
  closestWhere(isWanted: (candidate: Candidate, place: number) => boolean): JudgedWall | null {
    let best = -1;
    for (const [i, candidate] of this.set.candidates.entries())
      if (isWanted(candidate, i) && (best < 0 || this.byClosenessAt(i, best) < 0)) best = i;
    return best < 0 ? null : this.wallAt(best);
  }

  /** {@link byCloseness} of the walls at two places, without making objects of them. */
  byClosenessAt(a: number, b: number): number {
    const { count, share } = this.missed;
    return (
      (count[a] ?? 0) - (count[b] ?? 0) ||
      inPercent(share[a] ?? 0) - inPercent(share[b] ?? 0) ||
      this.byScoreAt(a, b)
    );
  }

  /** How many limits each wall breaks, and by how far. */
  get missed(): MissedLimits {
    this.#missed ??= missedLimits(this.verdicts);
    return this.#missed;
  }

  /** {@link byScore} of the walls at two places, without making objects of them. */
  byScoreAt(a: number, b: number): number {
    const { totals } = this;
    return (
      (totals[b] ?? 0) - (totals[a] ?? 0) ||
      plainTotalAt(this.scores, b) - plainTotalAt(this.scores, a) ||
      (wallAt(this.set, a).id < wallAt(this.set, b).id ? -1 : 1)
    );
  }

  /** By standing, then {@link byScoreAt}. */
  #byMerit(a: number, b: number): number {
    return this.standingAt(a) - this.standingAt(b) || this.byScoreAt(a, b);
  }

  #bestFirst(places: number[]): number[] {
    return places.sort((a, b) => this.#byMerit(a, b));
  }

  /** Places of the walls that no rule forbids. */
  #admittedPlaces(): number[] {
    const { forbids } = this.verdicts;
    const places: number[] = [];
    for (let i = 0; i < forbids.length; i++) if (forbids[i] === 0) places.push(i);
    return places;
  }
}

/**
 * The pipeline from brief and site to judged walls: draw up, calculate, judge, score.
 *
 * @param before  an answer with the same rulebook whose verdicts hold where the facts don't differ
 * @throws Refusal where the brief lies outside a calculator's range
 */
export async function judgeWalls(
  brief: Brief,
  site: Site,
  knowledge: Knowledge,
  before?: Judged,
): Promise<Judged> {
  const judged = await judgedAsGiven(brief, site, knowledge, before);
  const isAsBefore =
    before && isLiningOpen(brief) && before.linings.length > 0 && haveSameLinings(judged, before);
  const linings = isAsBefore
    ? before.linings
    : await ofLinings(brief, judged.set, (other) => judgedAsGiven(other, site, knowledge, judged));
  return linings.length === 0 ? judged : new Judged(judged, houseWishes(knowledge.rulebook), linings);
}

async function judgedAsGiven(
  brief: Brief,
  site: Site,
  knowledge: Knowledge,
  before?: Judged,
): Promise<Judged> {
  // A judgement is solid work: between two of them an interrupt must get through.
  await new Promise((resolve) => setImmediate(resolve));
  const { rulebook, tables, catalogue } = knowledge;
  const context = answerContext(brief, site, tables, catalogue);
  const assess = assessor(context);
  const set = wallSet(brief, catalogue, {
    deeper: claddingsOnDeeperFurring(context),
    units: assess.works.windows.work.windows,
  });
  const slots = factSlots(set, assess.works, context);
  const sheets = new FactSheets(
    set.shape,
    WALL_SLOTS.map((slot) => slots[slot].work),
  );
  const verdicts = await rulebook.judgeAll(sheets, brief.code_edition, before?.verdicts);
  knowledge.onJudged?.(set.candidates.length);
  return new Judged({ context, assess, set, verdicts }, houseWishes(rulebook));
}

/**
 * Best first. Equal scores: the one with the greater sum of unweighted parts first, so that a wall never stands before one
 * that is better in something that carries no weight; then by id, so that the order of candidates doesn't matter.
 */
export function byScore(a: JudgedWall, b: JudgedWall): number {
  return b.score - a.score || b.plainScore - a.plainScore || (a.candidate.id < b.candidate.id ? -1 : 1);
}

/** Fewest limits broken first, then what misses them by the smaller share, then the better score. */
export function byCloseness(a: JudgedWall, b: JudgedWall): number {
  return a.limitsMissed - b.limitsMissed || inPercent(a.missedBy) - inPercent(b.missedBy) || byScore(a, b);
}

/** What misses by the same whole percent is equally close. */
function inPercent(share: number): number {
  return Math.round(100 * share);
}

function withBonuses({ totals }: ScoreTable, bonuses: Float64Array | null): Float64Array {
  return bonuses ? totals.map((total, i) => total + (bonuses[i] ?? 0)) : totals;
}
