import { fastenerData, nextMarketLength_in } from '../../calculators/fastening/evaluate-fastening.ts';
import type {
  FastenerData,
  FastenerId,
  FasteningTables,
} from '../../calculators/fastening/fastening-tables.ts';
import type { ScheduleStep } from './schedule-schema.ts';

export type StackLayer = ScheduleStep['stack'][number];

/** Lengths are sums of sixteenths; this absorbs binary noise. */
const ROUNDING = 1e-9;

export type StockLength = Pick<
  ScheduleStep,
  'stack' | 'stack_in' | 'embedment_in' | 'min_length_in' | 'length_in' | 'length'
>;

/**
 * Everything that a fastener goes through, plus its embedment, rounded up to a length that is sold.
 *
 * @param market_lengths_in  in any order
 * @returns `length_in` null and `length` "none-on-the-market" where none is long enough
 */
export function stockLength(
  stack: readonly StackLayer[],
  embedment_in: number,
  market_lengths_in: readonly number[],
): StockLength {
  const through = stack.filter((layer) => layer.thickness_in > 0);
  const stack_in = through.reduce((sum, layer) => sum + layer.thickness_in, 0);
  const min_length_in = stack_in + embedment_in;
  const length_in =
    [...market_lengths_in].sort((a, b) => a - b).find((length) => length >= min_length_in - ROUNDING) ?? null;
  return {
    stack: [...through],
    stack_in,
    embedment_in,
    min_length_in,
    length_in,
    length: length_in === null ? 'none-on-the-market' : 'reaches',
  };
}

/** For glue, ties and whatever an engineer chooses. */
export const NO_LENGTH: StockLength = {
  stack: [],
  stack_in: 0,
  embedment_in: null,
  min_length_in: null,
  length_in: null,
  length: 'has-none',
};

/** The first of these fasteners that is sold long enough; the last when none is. */
export function firstThatReaches(
  ids: readonly FastenerId[],
  min_length_in: (fastener: FastenerData) => number,
  tables: FasteningTables,
): FastenerData {
  const fasteners = ids.map((id) => fastenerData(id, tables));
  const found =
    fasteners.find((fastener) => nextMarketLength_in(min_length_in(fastener), fastener) !== null) ??
    fasteners.at(-1);
  if (!found) throw new Error('no fastener is listed to choose from');
  return found;
}
