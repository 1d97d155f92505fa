import { projection_in } from '../assembly/flange-projection.ts';
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
export function judgeOpening(
  { buck, build, sheathing, place }: Support,
  window: JobWindow,
  context: AnswerContext,
): OpeningJudgement {
  const { framing } = context.brief;
  // The catalogue's own limit counts from the same plane as the projection.
  const { verdict, why, strength } = judgeBuckInFull(
    {
      support: buck.support,
      member: buck.member,
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
  const uses = Object.values(strength?.utilisation ?? {}).filter((use) => use !== null);
  return { window, verdict, why, strength, utilisation: uses.length > 0 ? Math.max(...uses) : null };
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
