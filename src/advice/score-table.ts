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
  type ScoreFactor,
  type Scores,
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
  vapour: 'vapour',
  buck: 'buck',
  cost: 'cost',
};

type FactorColumn = { readonly partition: Partition; readonly values: Float64Array };

/** The scores of all walls of an answer. A factor that walls share is worked out once, and kept where nothing changed. */
export type ScoreTable = {
  /** By factor, in the order of `SCORE_FACTORS`. */
  readonly factors: readonly Held<FactorColumn>[];
  /** Each wall's weighted total: what `totalScore` gives, to the last bit. */
  readonly totals: Held<Float64Array>;
};

/** Factors and totals in which nothing changed since an earlier answer are the same objects as then. */
export function scoreTable(walls: WallSet, assess: Assessor, context: AnswerContext): ScoreTable {
  const shelf = shelfOf(context.catalogue);
  const factors = CRITERIA.flatMap((criterion) => SCORE_FACTORS[criterion]).map((factor, i) =>
    shelf.hold(
      `score factor ${i}`,
      [
        walls,
        ...factor.parts.map((part) => assess.works[WORK_OF_PART[part]]),
        ...factor.brief.map((key) => context.brief[key]),
      ],
      () => factorColumn(factor, walls, assess, context),
    ),
  );
  const weights = weightsOf(context.brief.priorities);
  const totals = shelf.hold(
    'scores',
    [walls, ...factors, ...CRITERIA.map((criterion) => weights[criterion])],
    () =>
      totalsOf(
        factors.map(({ work }) => work),
        weights,
        walls.candidates.length,
      ),
  );
  return { factors, totals };
}

/** Each wall's scores added up without weights, over the number of criteria. */
export function plainTotals({ factors }: ScoreTable, count: number): Float64Array {
  const alike = Object.fromEntries(CRITERIA.map((criterion) => [criterion, 1])) as Scores;
  return totalsOf(
    factors.map(({ work }) => work),
    alike,
    count,
  );
}

/** The scores of the wall at a place: each the product of its factors. */
export function scoresAt({ factors }: ScoreTable, place: number): Scores {
  let next = 0;
  const scoreOf = (criterion: Criterion): number => {
    let product = 1;
    for (let f = 0; f < SCORE_FACTORS[criterion].length; f++) {
      const column = factors[next++]?.work;
      product *= column?.values[column.partition.at[place] ?? 0] ?? Number.NaN;
    }
    return product;
  };
  return Object.fromEntries(CRITERIA.map((criterion) => [criterion, scoreOf(criterion)])) as Scores;
}

function factorColumn(
  factor: ScoreFactor,
  walls: WallSet,
  assess: Assessor,
  context: AnswerContext,
): FactorColumn {
  const slots = [...factor.wall, ...factor.parts.flatMap((part) => SLOTS_OF_PART[part])];
  const partition = partitionOf(walls, slots);
  const values = new Float64Array(partition.count);
  for (let i = 0; i < values.length; i++) {
    const place = partition.first[i] ?? 0;
    values[i] = factor.of(wallAt(walls, place), assess.partsAt(walls, place), context);
  }
  return { partition, values };
}

function totalsOf(columns: readonly FactorColumn[], weights: Scores, count: number): Float64Array {
  // The same sums in the same order as `totalScore`, so that a wall has one score however it is asked for.
  const given = CRITERIA.reduce((sum, criterion) => sum + weights[criterion], 0);
  const totals = new Float64Array(count);
  const product = new Float64Array(count);
  let next = 0;
  for (const criterion of CRITERIA) {
    product.fill(1);
    for (let f = 0; f < SCORE_FACTORS[criterion].length; f++) {
      const column = columns[next++];
      if (column) multiply(product, column);
    }
    const weight = given > 0 ? weights[criterion] : 1;
    for (let i = 0; i < count; i++) totals[i] = (totals[i] ?? 0) + (product[i] ?? 0) * weight;
  }
  const sum = given > 0 ? given : CRITERIA.length;
  for (let i = 0; i < count; i++) totals[i] = (totals[i] ?? 0) / sum;
  return totals;
}

function multiply(product: Float64Array, { partition, values }: FactorColumn): void {
  for (let i = 0; i < product.length; i++) {
    product[i] = (product[i] ?? 0) * (values[partition.at[i] ?? 0] ?? Number.NaN);
  }
}
