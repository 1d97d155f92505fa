import { type BuiltBuck, builtBuck } from '../assembly/built-buck.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import { projection_in } from '../assembly/flange-projection.ts';
import { inches } from '../base/inches.ts';
import type { BuckStrength, BuckVerdict } from '../calculators/buck/buck-types.ts';
import { judgeBuckInFull } from '../calculators/buck/judge-buck.ts';
import type { AnswerContext } from './answer-context.ts';
import type { Support } from './support.ts';
import type { JobWindow } from './windows-part.ts';

/** One window on one buck. */
export type OpeningJudgement = {
  readonly window: JobWindow;
  readonly verdict: BuckVerdict;
  readonly why: string;
  readonly strength: BuckStrength | null;
  /** The highest of all its checks, 1 is the limit; null where none can be worked out. */
  readonly utilisation: number | null;
};

/** Holds one buck against one window. */
export function judgeOpening(support: Support, window: JobWindow, context: AnswerContext): OpeningJudgement {
  const { buck, build, sheathing, place } = support;
  const { framing } = context.brief;
  const { piece } = builtBuck(support, framing.depth_in);
  // The catalogue's own limit counts from the same plane as the projection.
  const judgement = judgeBuckInFull(
    {
      support: buck.support,
      member: buck.member && piece && { ...buck.member, ...asMember(buck, piece) },
      screw: buck.screw,
      screw_spacing_in: buck.screw?.spacing_in ?? null,
      max_projection_in: buck.max_projection_in,
    },
    { ...window, weight_lb: window.judged_weight_lb },
    {
      projection_in: projection_in(buck, build, sheathing, place),
      outward_wind_psf: context.outward_wind_psf,
      framing_gravity: framing.material === 'wood' ? framing.species_gravity : null,
      framing_depth_in: framing.depth_in,
      gap_in: sheathing.thickness_in,
    },
    context.tables.openings,
  );
  const { strength } = judgement;
  const isOpen = judgement.verdict === 'fits' && piece?.is_built_up === true;
  const verdict = isOpen ? 'engineer' : judgement.verdict;
  const why = isOpen ? builtUp(piece.depth_in) : judgement.why;
  const uses = Object.values(strength?.utilisation ?? {}).filter((use) => use !== null);
  return { window, verdict, why, strength, utilisation: uses.length > 0 ? Math.max(...uses) : null };
}

type Piece = NonNullable<BuiltBuck['piece']>;

/** A piece as the calculator takes it: what lies flat is thin across the wall and wide along it. */
function asMember(buck: Buck, { depth_in, thickness_in }: Piece): { thickness_in: number; depth_in: number } {
  return buck.pieces?.stock === 'lumber-flat'
    ? { thickness_in: depth_in, depth_in: thickness_in }
    : { thickness_in, depth_in };
}

/** The checks count each piece as whole; nobody sells one so deep. */
function builtUp(depth_in: number): string {
  return `The checks hold for pieces in one, and none are sold ${inches(depth_in)} in. deep: an engineer says how they are built up, or take plywood or laminated veneer lumber.`;
}

const SEVERITY: Readonly<Record<BuckVerdict, number>> = { fits: 0, engineer: 1, 'does-not-fit': 2 };

/** The judgement that fares worst; null when there is none. */
export function worstOf(judgements: readonly OpeningJudgement[]): OpeningJudgement | null {
  return judgements.reduce<OpeningJudgement | null>(
    (worst, one) => (isWorse(one, worst) ? one : worst),
    null,
  );
}

function isWorse(one: OpeningJudgement, than: OpeningJudgement | null): boolean {
  if (!than) return true;
  const bySeverity = SEVERITY[one.verdict] - SEVERITY[than.verdict];
  return bySeverity !== 0 ? bySeverity > 0 : (one.utilisation ?? 0) > (than.utilisation ?? 0);
}
