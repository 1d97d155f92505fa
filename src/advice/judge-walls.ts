import { type Candidate, drawsSameWalls, drawUpCandidates } from '../assembly/candidates.ts';
import type { Catalogue } from '../assembly/catalogue.ts';
import { type AnswerContext, answerContext } from '../assessment/answer-context.ts';
import { type Assessor, assessor } from '../assessment/assess.ts';
import type { CodeTables } from '../assessment/code-tables.ts';
import { type CondensateOf, condensates, holdsSameWater } from '../assessment/moisture-part.ts';
import type { Brief } from '../brief/brief.ts';
import { FactSheets } from '../rulebook/fact-sheets.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import type { Verdicts } from '../rulebook/verdicts.ts';
import type { Site } from '../site/site.ts';
import { houseWishes, wishBonus } from './house-wishes.ts';
import { plainSum, type Scores, scoreWall, totalScore, weightsOf } from './scoring.ts';

/** What an answer is made with: rules, code tables, catalogue. The same for every question. */
export type Knowledge = {
  readonly rulebook: Rulebook;
  readonly tables: CodeTables;
  readonly catalogue: Catalogue;
};

/** One wall with what the rules and the scoring say of it. */
export class JudgedWall {
  readonly candidate: Candidate;
  readonly verdicts: Verdicts;
  readonly forbids: number;
  readonly #answer: Answer;
  #scores: Scores | undefined;
  #score = Number.NaN;

  constructor(candidate: Candidate, verdicts: Verdicts, answer: Answer) {
    this.candidate = candidate;
    this.verdicts = verdicts;
    this.forbids = verdicts.forbidCount;
    this.#answer = answer;
  }

  /** Worked out when first asked for: most walls are out before it comes to that. */
  get scores(): Scores {
    const { assess, context } = this.#answer;
    this.#scores ??= scoreWall(this.candidate, assess.partsOf(this.candidate), context);
    return this.#scores;
  }

  /** What the firm's own preferences add to the score. */
  get wish(): number {
    return wishBonus(this.verdicts, this.#answer.wishes);
  }

  get score(): number {
    if (Number.isNaN(this.#score)) this.#score = totalScore(this.scores, this.#answer.weights) + this.wish;
    return this.#score;
  }
}

/** What the walls of one answer share. */
type Answer = {
  readonly context: AnswerContext;
  readonly assess: Assessor;
  readonly weights: Scores;
  /** Ids of the firm's own preferences. */
  readonly wishes: readonly string[];
};

export type Judged = {
  readonly context: AnswerContext;
  readonly assess: Assessor;
  readonly condensate: CondensateOf;
  readonly walls: readonly JudgedWall[];
  /** Walls that no rule forbids, best first. */
  readonly admitted: readonly JudgedWall[];
};

/**
 * The pipeline from brief and site to judged walls: draw up, calculate, judge, score.
 *
 * @param before  an answer at hand whose work may serve again (the brief differs in little)
 * @throws Refusal where the brief lies outside a calculator's range
 */
export async function judgeWalls(
  brief: Brief,
  site: Site,
  knowledge: Knowledge,
  before?: Judged,
): Promise<Judged> {
  // One judgement is a second of solid work at worst: between two of them an interrupt must get through.
  await new Promise((resolve) => setImmediate(resolve));
  const context = answerContext(brief, site, knowledge.tables, knowledge.catalogue);
  const condensate =
    before && holdsSameWater(before.context, context) ? before.condensate : condensates(context);
  const assess = assessor(context, condensate);
  const candidates =
    before && drawsSameWalls(before.context.brief, brief)
      ? before.walls.map((wall) => wall.candidate)
      : drawUpCandidates(brief, knowledge.catalogue);
  const sheets = new FactSheets(candidates.map(assess.factPartsOf));
  const verdicts = await knowledge.rulebook.evaluateAll(sheets, brief.code_edition);
  const answer: Answer = {
    context,
    assess,
    weights: weightsOf(brief.priorities),
    wishes: houseWishes(knowledge.rulebook),
  };
  const walls = candidates.map((candidate, i) => {
    const own = verdicts[i];
    if (!own) throw new Error('the rulebook returned fewer verdicts than walls');
    return new JudgedWall(candidate, own, answer);
  });
  const admitted = walls.filter((wall) => wall.forbids === 0).sort(byScore);
  return { context, assess, condensate, walls, admitted };
}

/**
 * Best first. Equal scores: the greater plain sum of the parts first, so that a wall never stands before one that is
 * better in something that carries no weight; then by id, so that the order of candidates doesn't matter.
 */
export function byScore(a: JudgedWall, b: JudgedWall): number {
  return (
    b.score - a.score || plainSum(b.scores) - plainSum(a.scores) || (a.candidate.id < b.candidate.id ? -1 : 1)
  );
}
