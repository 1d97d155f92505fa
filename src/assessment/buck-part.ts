import type { Buck, SheathingEntry } from '../assembly/catalogue-schema.ts';
import { projection_in } from '../assembly/flange-projection.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import type { BuckVerdict } from '../calculators/buck/buck-types.ts';
import { wholeWallU } from '../calculators/thermal/whole-wall.ts';
import type { AnswerContext } from './answer-context.ts';
import { buckCornerFactor } from './buck-corner.ts';
import { judgeOpening, worstOf } from './judge-opening.ts';
import type { JobWindow, WindowsPart } from './windows-part.ts';

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
  readonly apart: readonly JobWindow[];
  /** Of the coldest inside corner, an estimate; null where none can be given or the wall has no window. */
  readonly corner_temp_factor: number | null;
  readonly required_temp_factor: number | null;
  /** What the bucks add to the wall's U-factor, spread over it, Btu/(h·ft²·°F). */
  readonly delta_u: number;
};

export type ApartReason = 'door' | 'large-fixed-triple';

/**
 * Why a window can't share the buck of the others; null when it can. Doors, whose sills are walked on, always stand
 * apart; a large fixed triple-glazed unit does where the buck only hangs on the face of the wall.
 */
export function apartReason(buck: Buck, window: JobWindow): ApartReason | null {
  if (window.operation === 'door') return 'door';
  return buck.support === 'face-fastened' && window.is_large_fixed_triple ? 'large-fixed-triple' : null;
}

/** The windows of a job as a buck sees them: those it is for, and those set apart. All apart: then it is for all. */
export function sharedOut(
  buck: Buck,
  windows: readonly JobWindow[],
): { readonly carried: readonly JobWindow[]; readonly apart: readonly JobWindow[] } {
  const carried = windows.filter((window) => apartReason(buck, window) === null);
  if (carried.length === 0) return { carried: windows, apart: [] };
  return { carried, apart: windows.filter((window) => apartReason(buck, window) !== null) };
}

/** Holds one buck against the windows that it is for; the worst of them speaks. */
export function buckPart(
  buck: Buck,
  build: InsulationBuild,
  sheathing: SheathingEntry,
  { windows, perimeter_ft, required_temp_factor }: WindowsPart,
  context: AnswerContext,
): BuckPart {
  const { carried, apart } = sharedOut(buck, windows);
  const worst = worstOf(carried.map((window) => judgeOpening(buck, build, sheathing, window, context)));
  const common = {
    projection_in: projection_in(buck, build, sheathing),
    apart,
    required_temp_factor,
    delta_u: bucksDeltaU(buck, perimeter_ft, context),
  };
  if (!worst) {
    return { ...common, worst: null, why: 'No windows in this wall.', corner_temp_factor: null };
  }
  const named = windows.length > 1 ? `Worst window, ${worst.window.words}: ` : '';
  const others = apart.map((window) => `${window.count} of ${window.words}`).join('; ');
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
    corner_temp_factor: buckCornerFactor(buck, build, sheathing, context),
  };
}

function bucksDeltaU(buck: Buck, perimeter_ft: number, { brief }: AnswerContext): number {
  const bridge = {
    label: buck.id,
    psi_btu_h_ft_f: buck.psi_btu_h_ft_f.value,
    length_ft: perimeter_ft,
  };
  return wholeWallU(0, 0, [bridge], brief.wall_area_ft2).delta_u_linear_bridges;
}
