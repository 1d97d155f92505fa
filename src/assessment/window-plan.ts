import { bucksFor, reaches } from '../assembly/bucks-for.ts';
import type { Candidate } from '../assembly/candidates.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import { projection_in } from '../assembly/flange-projection.ts';
import { screwsAlong } from '../calculators/buck/screw-layout.ts';
import { plausibleWeight } from '../calculators/window-weight.ts';
import type { AnswerContext } from './answer-context.ts';
import { type ApartReason, apartReason, sharedOut } from './buck-part.ts';
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
import { type JobWindow, windowsPart } from './windows-part.ts';

/** How one kind of window is carried out to the new face, and why so. */
export type PlannedOpening = {
  readonly window: JobWindow;
  /** What carries it: the wall's buck, or one of its own. */
  readonly buck: Buck;
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
  readonly fit: OpeningFit;
  readonly plane: FlangePlane;
  readonly room: OpeningRoomOutside;
  readonly flashing: FlashingSequence;
};

/**
 * Every kind of window of the job in one wall: what carries it, how it is fastened, what room it needs and in what
 * order it is flashed. Worked out for ranked walls only.
 */
export function windowPlan(candidate: Candidate, context: AnswerContext): PlannedOpening[] {
  const { windows } = windowsPart(context);
  const { carried } = sharedOut(candidate.buck, windows);
  const judged = new Map(
    carried.map((window) => [window, judge(candidate.buck, window, candidate, context)]),
  );
  const worst = worstOf([...judged.values()]);
  return windows.map((window) => {
    const shared = judged.get(window);
    const apart = shared ? null : apartReason(candidate.buck, window);
    const { buck, judgement } = shared
      ? { buck: candidate.buck, judgement: shared }
      : ownSupport(window, candidate, context);
    return {
      window,
      buck,
      apart,
      has_own_buck: buck !== candidate.buck,
      judgement,
      is_worst: judgement === worst,
      screws_in_sill: buck.screw && judgement.strength ? inSill(buck, window, context) : null,
      weight_question: weightQuestion(window, context),
      fit: openingFit(window, buck, inside(candidate, context), context.brief.rough_opening_can_change),
      plane: flangePlane(candidate),
      room: roomOutside(window, candidate),
      flashing: flashingSequence(openingTraits(candidate, buck, window, context.brief.project)),
    };
  });
}

function judge(
  buck: Buck,
  window: JobWindow,
  { build, sheathing }: Candidate,
  context: AnswerContext,
): OpeningJudgement {
  return judgeOpening(buck, build, sheathing, window, context);
}

/** Bucks of the catalogue that line the opening and reach as far out as this wall asks. */
function inside({ build, sheathing }: Candidate, { catalogue }: AnswerContext): Buck[] {
  return bucksFor(build, sheathing, catalogue.bucks).filter(
    (buck) => buck.support === 'bears-on-sill' && reaches(buck, projection_in(buck, build, sheathing)),
  );
}

/**
 * The support of a window that stands apart: where the opening may change, the bearing buck that carries it and takes
 * least room; else engineered brackets. A door keeps a wall's buck that bears on the sill, with the sill by an engineer.
 */
function ownSupport(
  window: JobWindow,
  candidate: Candidate,
  context: AnswerContext,
): { readonly buck: Buck; readonly judgement: OpeningJudgement } {
  const judged = (buck: Buck) => ({ buck, judgement: judge(buck, window, candidate, context) });
  if (candidate.buck.support === 'bears-on-sill') return judged(candidate.buck);
  if (context.brief.rough_opening_can_change) {
    const [best] = inside(candidate, context)
      .map(judged)
      .filter(({ judgement }) => judgement.verdict !== 'does-not-fit')
      .sort(
        (a, b) =>
          Number(b.judgement.verdict === 'fits') - Number(a.judgement.verdict === 'fits') ||
          a.buck.takes_room_in_opening_in - b.buck.takes_room_in_opening_in,
      );
    if (best) return best;
  }
  const bracket = context.catalogue.bucks.find((buck) => buck.support === 'steel-bracket');
  // An engineer sizes brackets for any projection: the catalogue's least one is about whole walls of them.
  return judged(bracket ?? candidate.buck);
}

function inSill({ screw }: Buck, { width_in }: JobWindow, { tables }: AnswerContext): number | null {
  const { statics, screws } = tables.openings.wood;
  if (!screw) return null;
  const spacing_in = Math.max(screw.spacing_in, screws.min_spacing_diameters * screw.diameter_in);
  return screwsAlong(width_in, spacing_in, statics.first_screw_from_corner_in);
}

function weightQuestion(window: JobWindow, { tables }: AnswerContext): string | null {
  if (window.weight_lb === null) return null;
  return plausibleWeight(window.weight_lb, window, tables.openings.windows).question;
}
