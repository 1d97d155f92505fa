import { partitionOf, type WallSet, type WallSlot, wallAt } from '../assembly/wall-set.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import type { Assessor, Works } from '../assessment/assess.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { type Held, shelfOf } from '../assessment/shelf.ts';
import type { Partition } from '../base/partitions.ts';
import {
  CRITERIA,
  type Criterion,
  SCORE_FACTORS,
  type Scores,
  type ScoreTerm,
  weightsOf,
} from './scoring.ts';

/** Where a calculated part stands among the slots that walls share. */
const SLOTS_OF_PART: Readonly<Record<keyof CalculatedParts, readonly WallSlot[]>> = {
  thermal: ['face'],
  energy: ['face'],
  dewPoint: ['face'],
  fastening: ['face'],
  fasteners: ['face'],
  moisture: ['outer', 'inside', 'water'],
  water: ['water'],
  vapour: ['vapour'],
  buck: ['buck'],
  cost: ['wall'],
};

/** The calculator that a part comes from. Permeances rest on the wall alone. */
const WORK_OF_PART: Readonly<Record<keyof CalculatedParts, keyof Works>> = {
  thermal: 'thermal',
  energy: 'energy',
  dewPoint: 'dewPoint',
  fastening: 'fastening',
  fasteners: 'fasteners',
  moisture: 'condensate',
  water: 'condensate',
  vapour: 'vapour',
  buck: 'buck',
  cost: 'cost',
};

type TermColumn = { readonly partition: Partition; readonly values: Float64Array };

/** The scores of all walls of an answer. What walls share is worked out once, and kept where nothing changed. */
export type ScoreTable = {
  /** Each wall's score by each criterion. */
  readonly columns: Readonly<Record<Criterion, Float64Array>>;
  /** Each wall's weighted total: what `totalScore` gives, to the last bit. */
  readonly totals: Float64Array;
};

/** Columns of all walls are large and soon made: kept for the other readings of an answer, not for other jobs. */
const OF_ONE_ANSWER = 4;

/** Terms, scores and totals in which nothing changed since an earlier answer are the same objects as then. */
export function scoreTable(walls: WallSet, assess: Assessor, context: AnswerContext): ScoreTable {
  const shelf = shelfOf(context.catalogue);
  const count = walls.candidates.length;
  const holdTerm = (term: ScoreTerm, name: string): Held<TermColumn> =>
    shelf.hold(
      `score term ${name}`,
      [
        walls,
        ...term.parts.map((part) => assess.works[WORK_OF_PART[part]]),
        ...term.brief.map((key) => context.brief[key]),
        ...(term.site ?? []).map((key) => context.site[key]),
      ],
      () => termColumn(term, walls, assess, context),
    );
  const scores = CRITERIA.map((criterion) => {
    const factors = SCORE_FACTORS[criterion].map((terms, f) =>
      terms.map((term, t) => holdTerm(term, `${criterion} ${f} ${t}`)),
    );
    return shelf.hold(
      `score ${criterion}`,
      factors.flat(),
      () =>
        productOf(
          factors.map((terms) => terms.map(({ work }) => work)),
          count,
        ),
      OF_ONE_ANSWER,
    );
  });
  const columns = Object.fromEntries(CRITERIA.map((criterion, i) => [criterion, scores[i]?.work])) as Record<
    Criterion,
    Float64Array
  >;
  const weights = weightsOf(context.brief.priorities);
  const totals = shelf.hold(
    'scores',
    [...scores, ...CRITERIA.map((criterion) => weights[criterion])],
    () => totalsOf(columns, weights, count),
    OF_ONE_ANSWER,
  );
  return { columns, totals: totals.work };
}

/** The scores of the wall at a place added up without weights, over the number of criteria: asked for where totals are equal. */
export function plainTotalAt({ columns }: ScoreTable, place: number): number {
  let sum = 0;
  for (const criterion of CRITERIA) sum += columns[criterion][place] ?? Number.NaN;
  return sum / CRITERIA.length;
}

/** The scores of the wall at a place: written out, as thousands of walls are asked for theirs. */
export function scoresAt({ columns }: ScoreTable, place: number): Scores {
  return {
    energy: columns.energy[place] ?? Number.NaN,
    moisture_safety: columns.moisture_safety[place] ?? Number.NaN,
    structure: columns.structure[place] ?? Number.NaN,
    cost: columns.cost[place] ?? Number.NaN,
    ease: columns.ease[place] ?? Number.NaN,
    carbon: columns.carbon[place] ?? Number.NaN,
    finish: columns.finish[place] ?? Number.NaN,
    repair: columns.repair[place] ?? Number.NaN,
    thinness: columns.thinness[place] ?? Number.NaN,
  };
}

function termColumn(term: ScoreTerm, walls: WallSet, assess: Assessor, context: AnswerContext): TermColumn {
  const slots = [...term.wall, ...term.parts.flatMap((part) => SLOTS_OF_PART[part])];
  const partition = partitionOf(walls, slots);
  if (term.ofAll) return { partition, values: term.ofAll(walls, assess.works, context) };
  const values = new Float64Array(partition.count);
  for (let i = 0; i < values.length; i++) {
    const place = partition.first[i] ?? 0;
    values[i] = term.of(wallAt(walls, place), assess.partsAt(walls, place), context);
  }
  return { partition, values };
}

/** Each wall's product of factors, each the sum of its terms, in that order. */
function productOf(factors: readonly (readonly TermColumn[])[], count: number): Float64Array {
  const [product, ...others] = factors.map((terms) => sumOf(terms, count));
  if (!product) throw new Error('a score needs a factor');
  for (const sum of others) {
    for (let i = 0; i < count; i++) product[i] = (product[i] ?? 0) * (sum[i] ?? 0);
  }
  return product;
}

function sumOf(terms: readonly TermColumn[], count: number): Float64Array {
  const sum = new Float64Array(count);
  for (const { partition, values } of terms) {
    const { at } = partition;
    for (let i = 0; i < count; i++) sum[i] = (sum[i] ?? 0) + (values[at[i] ?? 0] ?? Number.NaN);
  }
  return sum;
}

/** The same sums in the same order as `totalScore`, so that a wall has one score however it is asked for. */
function totalsOf(columns: ScoreTable['columns'], weights: Scores, count: number): Float64Array {
  const given = CRITERIA.reduce((sum, criterion) => sum + weights[criterion], 0);
  const totals = new Float64Array(count);
  for (const criterion of CRITERIA) {
    const column = columns[criterion];
    const weight = given > 0 ? weights[criterion] : 1;
    for (let i = 0; i < count; i++) totals[i] = (totals[i] ?? 0) + (column[i] ?? 0) * weight;
  }
  const all = given > 0 ? given : CRITERIA.length;
  for (let i = 0; i < count; i++) totals[i] = (totals[i] ?? 0) / all;
  return totals;
}
