import type { Face } from '../../assembly/candidates.ts';
import { minimumSteelReach_in } from '../../calculators/fastening/evaluate-fastening.ts';
import type { FastenerData } from '../../calculators/fastening/fastening-tables.ts';
import type { AnswerContext } from '../answer-context.ts';
import { thickestBarrier_in } from '../fastening-part.ts';
import { type FasteningPractice, fasteningPractice } from './fastening-practice.ts';
import { firstThatReaches, type StackLayer, type StockLength, stockLength } from './stock.ts';
import type { Spacing } from './zone-line.ts';

/** How one layer of boards is held until the cladding or furring holds it. */
export type BoardFastening = {
  readonly fastener: FastenerData;
  readonly stock: StockLength;
  readonly spacing: Spacing;
  readonly is_outer_layer: boolean;
  /** Every so-manieth stud. */
  readonly studs: number;
  /** What rules the spacing. */
  readonly rule: FasteningPractice['waste_percent'];
};

/**
 * @param layer  0 is the innermost
 * The fastener is the thinnest that is sold long enough; its embedment and rows are practice figures.
 */
export function boardFastening(
  { build, sheathing }: Pick<Face, 'build' | 'sheathing'>,
  layer: number,
  context: AnswerContext,
): BoardFastening {
  const { boards } = fasteningPractice();
  const { material, spacing_in: studs_in } = context.brief.framing;
  const tables = context.tables.fastening;
  const isOuter = layer === build.boards_in.length - 1;
  const stack: StackLayer[] = [
    ...build.boards_in
      .slice(0, layer + 1)
      .map((board_in) => ({ label: build.insulation.label, thickness_in: board_in }))
      .reverse(),
    { label: 'barrier (the thickest on the list)', thickness_in: thickestBarrier_in(context) },
    { label: sheathing.label, thickness_in: sheathing.thickness_in },
  ];
  const stack_in = stack.reduce((sum, one) => sum + one.thickness_in, 0);
  const embedment_in = (fastener: FastenerData) =>
    material === 'wood'
      ? boards.embedment_wood_in.value
      : minimumSteelReach_in(context.fastening_framing, fastener, tables);
  const fastener = firstThatReaches(
    boards.fasteners[material],
    (one) => stack_in + embedment_in(one),
    tables,
  );
  const studs = isOuter ? 1 : boards.inner_layer_studs.value;
  return {
    fastener,
    stock: stockLength(stack, embedment_in(fastener), fastener.market_lengths_in),
    spacing: { along_in: boards.row_spacing_in.value, across_in: studs * studs_in },
    is_outer_layer: isOuter,
    studs,
    rule: isOuter ? boards.row_spacing_in : boards.inner_layer_studs,
  };
}
