import { bucksFor, reaches } from '../assembly/bucks-for.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import { projection_in } from '../assembly/flange-projection.ts';
import type { AnswerContext } from './answer-context.ts';
import { judgeOpening, type OpeningJudgement } from './judge-opening.ts';
import { roomInside } from './opening-geometry.ts';
import type { Support } from './support.ts';
import type { JobWindow } from './windows-part.ts';

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

/** Bucks of the catalogue that line the opening and reach as far out as this wall asks. */
export function bucksInside({ build, sheathing, place }: Support, { catalogue }: AnswerContext): Buck[] {
  return bucksFor(build, sheathing, catalogue.bucks, place).filter(
    (buck) => buck.support === 'bears-on-sill' && reaches(buck, projection_in(buck, build, sheathing, place)),
  );
}

/**
 * The support of a window that stands apart: where the opening may change, or has the room as it is, the bearing buck
 * that carries it and takes least room; else engineered brackets. A door keeps a wall's buck that bears on the sill,
 * with the sill by an engineer.
 */
export function ownSupport(
  window: JobWindow,
  support: Support,
  context: AnswerContext,
): { readonly buck: Buck; readonly judgement: OpeningJudgement } {
  const judged = (buck: Buck) => ({ buck, judgement: judgeOpening({ ...support, buck }, window, context) });
  if (support.buck.support === 'bears-on-sill') return judged(support.buck);
  const [best] = bucksInside(support, context)
    .filter((buck) => context.brief.rough_opening_can_change || roomInside(window, buck))
    .map(judged)
    .filter(({ judgement }) => judgement.verdict !== 'does-not-fit')
    .sort(
      (a, b) =>
        Number(b.judgement.verdict === 'fits') - Number(a.judgement.verdict === 'fits') ||
        a.buck.takes_room_in_opening_in - b.buck.takes_room_in_opening_in,
    );
  if (best) return best;
  const bracket = context.catalogue.bucks.find((buck) => buck.support === 'steel-bracket');
  // An engineer sizes brackets for any projection: the catalogue's least one is about whole walls of them.
  return judged(bracket ?? support.buck);
}
