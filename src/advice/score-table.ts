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

/** The scores of all walls of an answer. A term that walls share is worked out once, and kept where nothing changed. */
export type ScoreTable = {
  /** By criterion, factor and term, as in `SCORE_FACTORS`. */
  readonly columns: Readonly<Record<Criterion, readonly (readonly TermColumn[])[]>>;
  /** Each wall's weighted total: what `totalScore` gives, to the last bit. */
  readonly totals: Held<Float64Array>;
};

/** Terms and totals in which nothing changed since an earlier answer are the same objects as then. */
export function scoreTable(walls: WallSet, assess: Assessor, context: AnswerContext): ScoreTable {
  const shelf = shelfOf(context.catalogue);
  const terms: Held<TermColumn>[] = [];
  const columnOf = (term: ScoreTerm): TermColumn => {
    const held = shelf.hold(
      `score term ${terms.length}`,
      [
        walls,
        ...term.parts.map((part) => assess.works[WORK_OF_PART[part]]),
        ...term.brief.map((key) => context.brief[key]),
      ],
      () => termColumn(term, walls, assess, context),
    );
    terms.push(held);
    return held.work;
  };
  const columnsOf = (criterion: Criterion) => SCORE_FACTORS[criterion].map((terms) => terms.map(columnOf));
  const columns = byCriterion(columnsOf);
  const weights = weightsOf(context.brief.priorities);
  const totals = shelf.hold(
    'scores',
    [walls, ...terms, ...CRITERIA.map((criterion) => weights[criterion])],
    () => totalsOf(columns, weights, walls.candidates.length),
  );
  return { columns, totals };
}

/** Each wall's scores added up without weights, over the number of criteria. */
export function plainTotals({ columns }: ScoreTable, count: number): Float64Array {
  return totalsOf(columns, ALIKE, count);
}

const ALIKE = byCriterion(() => 1);

function byCriterion<T>(of: (criterion: Criterion) => T): Record<Criterion, T> {
  return Object.fromEntries(CRITERIA.map((criterion) => [criterion, of(criterion)])) as Record<Criterion, T>;
}

/** The scores of the wall at a place. */
export function scoresAt(table: ScoreTable, place: number): Scores {
  const scores = { ...ALIKE };
  for (const criterion of CRITERIA) scores[criterion] = scoreAt(table, criterion, place);
  return scores;
}

/** One score of the wall at a place: the product of its factors, each the sum of its terms. */
export function scoreAt({ columns }: ScoreTable, criterion: Criterion, place: number): number {
  let product = 1;
  for (const terms of columns[criterion]) {
    let sum = 0;
    for (const { partition, values } of terms) sum += values[partition.at[place] ?? 0] ?? Number.NaN;
    product *= sum;
  }
  return product;
}

function termColumn(term: ScoreTerm, walls: WallSet, assess: Assessor, context: AnswerContext): TermColumn {
  const slots = [...term.wall, ...term.parts.flatMap((part) => SLOTS_OF_PART[part])];
  const partition = partitionOf(walls, slots);
  const values = new Float64Array(partition.count);
  for (let i = 0; i < values.length; i++) {
    const place = partition.first[i] ?? 0;
    values[i] = term.of(wallAt(walls, place), assess.partsAt(walls, place), context);
  }
  return { partition, values };
}

/** The same sums in the same order as `totalScore`, so that a wall has one score however it is asked for. */
function totalsOf(columns: ScoreTable['columns'], weights: Scores, count: number): Float64Array {
  const given = CRITERIA.reduce((sum, criterion) => sum + weights[criterion], 0);
  const totals = new Float64Array(count);
  const [product, sum] = [new Float64Array(count), new Float64Array(count)];
  for (const criterion of CRITERIA) {
    for (const [f, terms] of columns[criterion].entries()) {
      const into = f === 0 ? product : sum;
      into.fill(0);
      for (const term of terms) add(into, term);
      if (f > 0) for (let i = 0; i < count; i++) product[i] = (product[i] ?? 0) * (sum[i] ?? 0);
    }
    const weight = given > 0 ? weights[criterion] : 1;
    for (let i = 0; i < count; i++) totals[i] = (totals[i] ?? 0) + (product[i] ?? 0) * weight;
  }
  const all = given > 0 ? given : CRITERIA.length;
  for (let i = 0; i < count; i++) totals[i] = (totals[i] ?? 0) / all;
  return totals;
}

function add(into: Float64Array, { partition: { at }, values }: TermColumn): void {
  for (let i = 0; i < into.length; i++) into[i] = (into[i] ?? 0) + (values[at[i] ?? 0] ?? Number.NaN);
}
