import type { Face } from '../assembly/candidates.ts';
import { countPer100Ft2 } from '../calculators/fastening/choose-fastening.ts';
import type { AnswerContext } from './answer-context.ts';
import { overWholeWall } from './corner-zone.ts';
import type { FasteningPart } from './fastening-part.ts';
import { boardFastening } from './schedule/board-fastening.ts';

/** Fasteners of one kind that go into the insulation of a wall. */
export type FastenerGroup = {
  readonly does: 'carries' | 'holds-boards';
  /** Mean over field and corners. */
  readonly per_100_ft2: number;
  readonly length_in: number;
  /** A lag screw is drilled for. */
  readonly work: 'screw' | 'lag-screw';
  /** How much of the insulation's thickness it goes through: 1 for all of it, less for an inner layer's. */
  readonly depth_share: number;
};

/** All fasteners through the insulation: heat, price, labour and schedule count with these. */
export type FastenerCounts = {
  readonly groups: readonly FastenerGroup[];
  /** Through every board: what carries, and what holds the outermost boards. */
  readonly through_per_100_ft2: number;
  /** Through inner boards only, covered by the next. */
  readonly inner_per_100_ft2: number;
  /** What they bridge, as a number of fasteners that go through every board. */
  readonly bridging_per_100_ft2: number;
};

/** What holds the boards of a wall until the cladding or furring does. */
export function boardGroups(
  face: Pick<Face, 'build' | 'sheathing'>,
  context: AnswerContext,
): readonly FastenerGroup[] {
  const { boards_in, thickness_in } = face.build;
  let depth_in = 0;
  return boards_in.map((board_in, layer) => {
    const { stock, spacing, is_outer_layer } = boardFastening(face, layer, context);
    depth_in += board_in;
    return {
      does: 'holds-boards',
      per_100_ft2: countPer100Ft2(spacing.along_in, spacing.across_in),
      length_in: stock.length_in ?? stock.min_length_in ?? 0,
      work: 'screw',
      depth_share: is_outer_layer ? 1 : depth_in / thickness_in,
    };
  });
}

const NONE: FastenerCounts = {
  groups: [],
  through_per_100_ft2: 0,
  inner_per_100_ft2: 0,
  bridging_per_100_ft2: 0,
};

/**
 * Counts everything that is driven through the insulation of one wall; all zero where the boards are glued.
 *
 * An inner layer's fastener bridges in proportion to its depth: ISO 6946 annex F, recessed fastener, 0.8 d1/d0 (the
 * linear form, which counts more than the older editions').
 *
 * @param boards  from `boardGroups`, the same for every cladding
 */
export function fastenerCounts(
  { schedule, field_spacing_in }: FasteningPart,
  boards: readonly FastenerGroup[],
  { corner_zone }: Pick<AnswerContext, 'corner_zone'>,
): FastenerCounts {
  if (!schedule) return NONE;
  const rate = {
    field: countPer100Ft2(field_spacing_in, schedule.framing_spacing_in),
    corner: schedule.count_per_100_ft2,
  };
  const carrying: FastenerGroup = {
    does: 'carries',
    per_100_ft2: overWholeWall(rate, corner_zone),
    length_in: schedule.length_in ?? schedule.min_length_in,
    work: schedule.kind === 'lag-screw' ? 'lag-screw' : 'screw',
    depth_share: 1,
  };
  const groups = [carrying, ...boards];
  let [through, inner, bridging] = [0, 0, 0];
  for (const { per_100_ft2, depth_share } of groups) {
    if (depth_share === 1) through += per_100_ft2;
    else inner += per_100_ft2;
    bridging += per_100_ft2 * depth_share;
  }
  return {
    groups,
    through_per_100_ft2: through,
    inner_per_100_ft2: inner,
    bridging_per_100_ft2: bridging,
  };
}
