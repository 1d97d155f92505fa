import { bucksFor, reaches } from '../assembly/bucks-for.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import { projection_in } from '../assembly/flange-projection.ts';
import type { AnswerContext } from './answer-context.ts';
import { judgeOpening, type OpeningJudgement } from './judge-opening.ts';
import { roomInside } from './opening-geometry.ts';
import type { Support } from './support.ts';
import type { JobWindow } from './windows-part.ts';

export type ApartReason = 'door' | 'large-fixed-triple' | 'heavy' | 'large';

/** A window with a support of its own, and why. */
export type SetApart = { readonly window: JobWindow; readonly reason: ApartReason };

/**
 * Why a window can't share the buck of the others; null when it can. Doors, whose sills are walked on, always stand
 * apart. Where the buck only hangs on the face of the wall a heavy unit does, whatever its glass, and a large fixed
 * triple-glazed one; and any large unit that a wood buck made for the others does not carry. So a unit is never judged
 * the more mildly for being heavier or having a third pane.
 */
function apartReason(support: Support, window: JobWindow, context: AnswerContext): ApartReason | null {
  if (window.operation === 'door') return 'door';
  const { support: kind } = support.buck;
  if (kind !== 'face-fastened' && kind !== 'bears-on-sill') return null;
  if (kind === 'face-fastened') {
    if (window.is_large_fixed_triple) return 'large-fixed-triple';
    if (window.is_heavy) return 'heavy';
  }
  const isOut = window.is_large && judgeOpening(support, window, context).verdict === 'does-not-fit';
  return isOut ? 'large' : null;
}

/** The windows of a job as a buck sees them: those it is for, and those set apart. All apart: then it is for all. */
export function sharedOut(
  support: Support,
  windows: readonly JobWindow[],
  context: AnswerContext,
): { readonly carried: readonly JobWindow[]; readonly apart: readonly SetApart[] } {
  const carried: JobWindow[] = [];
  const apart: SetApart[] = [];
  for (const window of windows) {
    const reason = apartReason(support, window, context);
    if (reason) apart.push({ window, reason });
    else carried.push(window);
  }
  return carried.length > 0 ? { carried, apart } : { carried: windows, apart: [] };
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
  if (window.operation === 'door' && support.buck.support === 'bears-on-sill') return judged(support.buck);
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
