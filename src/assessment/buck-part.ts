import type { Buck } from '../assembly/catalogue-schema.ts';
import { projection_in } from '../assembly/flange-projection.ts';
import type { BuckVerdict } from '../calculators/buck/buck-types.ts';
import { type LinearBridge, openingPerimeter, wholeWallU } from '../calculators/thermal/whole-wall.ts';
import type { AnswerContext } from './answer-context.ts';
import { type BuckCornerEstimate, buckCorner } from './buck-corner.ts';
import { judgeOpening, worstOf } from './judge-opening.ts';
import { roomInside } from './opening-geometry.ts';
import { ownSupport, type SetApart, sharedOut } from './own-support.ts';
import type { Support } from './support.ts';
import type { WindowsPart } from './windows-part.ts';

export type BuckPart = {
  /** From the framing (bearing) or the sheathing to the plane of the flange. */
  readonly projection_in: number;
  /** Of the windows that this buck is for, the one that fares worst; null when the wall has none. */
  readonly worst: {
    readonly window: string;
    /** What the check says of it. */
    readonly why: string;
    readonly verdict: BuckVerdict;
    /** The highest of all its checks; null where none can be worked out. */
    readonly utilisation: number | null;
    readonly screws_per_side: number | null;
    readonly min_screw_length_in: number | null;
  } | null;
  readonly why: string;
  /** Windows that get a support of their own and don't decide about the buck of the others. */
  readonly apart: readonly SetApart[];
  /** The buck takes room that at least one of its windows doesn't leave in the opening as it is. */
  readonly needs_larger_opening: boolean;
  /** Of the coldest inside corner, an estimate; null where none can be given or the wall has no window. */
  readonly corner_temp_factor: number | null;
  /** Why no corner is estimated; null where one is, or the wall has no window. */
  readonly corner_not_estimated: string | null;
  readonly required_temp_factor: number | null;
  /** The bridge that each kind of support makes round its windows. */
  readonly bridges: readonly SupportBridge[];
  /** What they add to the wall's U-factor, spread over it, Btu/(h·ft²·°F). */
  readonly delta_u: number;
  /** What carries the windows of the whole job, those set apart with their own, one entry a window kind. */
  readonly supports: readonly { readonly buck: Buck; readonly count: number }[];
};

export type SupportBridge = LinearBridge & { readonly is_bracket: boolean };

/** Holds one buck against the windows that it is for; the worst of them speaks. */
export function buckPart(
  support: Support,
  { windows, required_temp_factor }: WindowsPart,
  context: AnswerContext,
): BuckPart {
  const { buck, build, sheathing, place } = support;
  const { carried, apart } = sharedOut(support, windows, context);
  const worst = worstOf(carried.map((window) => judgeOpening(support, window, context)));
  const carriers = [
    ...carried.map((window) => ({ window, buck })),
    ...apart.map(({ window }) => ({ window, buck: ownSupport(window, support, context).buck })),
  ];
  const bridges = carriers.map(({ window, buck: one }) => ({
    label: one.label,
    psi_btu_h_ft_f: one.psi_btu_h_ft_f.value,
    length_ft: openingPerimeter([window]),
    is_bracket: one.support === 'steel-bracket',
  }));
  const common = {
    projection_in: projection_in(buck, build, sheathing, place),
    needs_larger_opening:
      buck.takes_room_in_opening_in > 0 &&
      (carried.length === 0 || carried.some((window) => !roomInside(window, buck))),
    apart,
    required_temp_factor,
    bridges,
    delta_u: wholeWallU(0, 0, bridges, context.brief.wall_area_ft2).delta_u_linear_bridges,
    supports: carriers.map(({ window, buck: one }) => ({ buck: one, count: window.count })),
  };
  if (!worst) {
    return {
      ...common,
      worst: null,
      why: 'No windows in this wall: no buck is needed.',
      corner_temp_factor: null,
      corner_not_estimated: null,
    };
  }
  const corner: BuckCornerEstimate = buckCorner(support, context);
  const named = windows.length > 1 ? `Worst window, ${worst.window.words}: ` : '';
  const others = apart.map(({ window }) => `${window.count} of ${window.words}`).join('; ');
  return {
    ...common,
    worst: {
      window: worst.window.words,
      why: worst.why,
      verdict: worst.verdict,
      utilisation: worst.utilisation,
      screws_per_side: worst.strength?.screws_per_side ?? null,
      min_screw_length_in: worst.strength?.min_screw_length_in ?? null,
    },
    why: `${named}${worst.why}${others ? ` Set apart, with a support of their own: ${others}.` : ''}`,
    corner_temp_factor: corner.factor,
    corner_not_estimated: corner.not_estimated,
  };
}
