import { type BuiltBuck, builtBuck } from '../assembly/built-buck.ts';
import type { Candidate } from '../assembly/candidates.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import { loadOpeningDetails } from '../assembly/opening-details.ts';
import { screwsAlong } from '../calculators/buck/screw-layout.ts';
import { plausibleWeight } from '../calculators/window-weight.ts';
import type { AnswerContext } from './answer-context.ts';
import { type BuckCornerEstimate, buckCorner } from './buck-corner.ts';
import { type FlashingSequence, flashingSequence, openingTraits } from './flashing-sequence.ts';
import { judgeOpening, type OpeningJudgement, worstOf } from './judge-opening.ts';
import {
  type FlangePlane,
  flangePlane,
  type OpeningFit,
  type OpeningRoomOutside,
  openingFit,
  roomOutside,
} from './opening-geometry.ts';
import { type ApartReason, bucksInside, ownSupport, sharedOut } from './own-support.ts';
import { rememberPairWhileThere } from './remember.ts';
import { supportOf } from './support.ts';
import { type JobWindow, windowsPart } from './windows-part.ts';

/** How one kind of window is carried out to the new face, and why so. */
export type PlannedOpening = {
  readonly window: JobWindow;
  /** What carries it: the wall's buck, or one of its own. */
  readonly buck: Buck;
  readonly built: BuiltBuck;
  /** Why it doesn't share the buck of the others; null when it does. */
  readonly apart: ApartReason | null;
  /** Whether the catalogue has a buck of its own for it, other than the wall's. */
  readonly has_own_buck: boolean;
  readonly judgement: OpeningJudgement;
  /** The one that decides about the wall's buck. */
  readonly is_worst: boolean;
  /** In the sill and again in the head; null without a screwed wood buck. */
  readonly screws_in_sill: number | null;
  /** What to ask the user when the given weight can't be right for its glass. */
  readonly weight_question: string | null;
  /** What to ask when the opening as given can't be right for the unit. */
  readonly opening_question: string | null;
  readonly fit: OpeningFit;
  readonly plane: FlangePlane;
  readonly room: OpeningRoomOutside;
  /** Its own coldest inside corner. */
  readonly corner: BuckCornerEstimate;
  readonly flashing: FlashingSequence;
};

/**
 * Every kind of window of the job in one wall: what carries it, how it is fastened, what room it needs and in what
 * order it is flashed. Worked out for ranked walls only.
 */
export function windowPlan(candidate: Candidate, context: AnswerContext): readonly PlannedOpening[] {
  return plans(context, candidate);
}

/** Remembered: the order of work and the openings both ask for it. */
const plans = rememberPairWhileThere((context: AnswerContext, candidate: Candidate): PlannedOpening[] => {
  const { windows } = windowsPart(context);
  const support = supportOf(candidate);
  const { carried, apart: others } = sharedOut(support, windows, context);
  const judged = new Map(carried.map((window) => [window, judgeOpening(support, window, context)]));
  const worst = worstOf([...judged.values()]);
  return windows.map((window) => {
    const shared = judged.get(window);
    const apart = others.find((one) => one.window === window)?.reason ?? null;
    const { buck, judgement } = shared
      ? { buck: candidate.buck, judgement: shared }
      : ownSupport(window, support, context);
    const fit = openingFit(
      window,
      buck,
      bucksInside(support, context),
      context.brief.rough_opening_can_change,
    );
    return {
      window,
      buck,
      built: builtBuck({ ...support, buck }, context.brief.framing.depth_in),
      apart,
      has_own_buck: buck !== candidate.buck,
      judgement,
      is_worst: judgement === worst,
      screws_in_sill: buck.screw && judgement.strength ? inSill(buck, window, context) : null,
      weight_question: weightQuestion(window, context),
      opening_question: openingQuestion(fit, buck, context.brief.rough_opening_can_change),
      fit,
      plane: flangePlane(candidate),
      room: roomOutside(window, candidate),
      corner: buckCorner({ ...support, buck }, context),
      flashing: flashingSequence(openingTraits(candidate, buck, window, context.brief.project)),
    };
  });
});

function inSill({ screw }: Buck, { width_in }: JobWindow, { tables }: AnswerContext): number | null {
  const { statics, screws } = tables.openings.wood;
  if (!screw) return null;
  const spacing_in = Math.max(screw.spacing_in, screws.min_spacing_diameters * screw.diameter_in);
  return screwsAlong(width_in, spacing_in, statics.first_screw_from_corner_in);
}

function weightQuestion(window: JobWindow, { tables }: AnswerContext): string | null {
  if (window.weight_lb === null) return null;
  return plausibleWeight(window.weight_lb, { ...window, lite: window.lite_in }, tables.openings.windows)
    .question;
}

/** More than this on each side is no shim and seal space any more, in. */
const WIDE_GAP_IN = 1.5;

/** Asked only of an opening that was given and that nobody is going to cut larger. */
function openingQuestion(fit: OpeningFit, buck: Buck, canChange: boolean): string | null {
  const { opening_is_given, opening_in, clearance_left_in: left } = fit;
  if (!opening_is_given || (canChange && buck.takes_room_in_opening_in > 0)) return null;
  const { low = 0.25 } = loadOpeningDetails().clearance_in;
  const given = `${opening_in.width_in} x ${opening_in.height_in} in.`;
  const least = Math.min(left.width_in, left.height_in);
  if (least < low - SIXTEENTH_IN) {
    return `Is the rough opening ${given}? It would leave ${tenths(least)} in. for shims and seal on each side, and ${low} in. is the least that is usual: measure opening and unit again.`;
  }
  const most = Math.max(left.width_in, left.height_in);
  return most > WIDE_GAP_IN
    ? `Is the rough opening ${given}? It would leave ${tenths(most)} in. on each side of the unit, which has to be packed out: is this the opening of this unit?`
    : null;
}

/** Openings are measured to a sixteenth. */
const SIXTEENTH_IN = 1 / 16;

function tenths(value_in: number): string {
  return String(Number(value_in.toFixed(2)));
}
