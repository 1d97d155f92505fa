import type { Advice } from './advice-schema.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { rankedWall } from './ranked-wall.ts';

/** As the answer tells it, and the wall as it was judged. */
export type Fallback = { readonly told: NonNullable<Advice['fallback']>; readonly wall: JudgedWall };

/**
 * When only true cement stucco would do and none passes: the best wall that at least looks like it, and what is given
 * up. Null when stucco passes, when the user didn't insist, or when nothing that looks like stucco passes either.
 */
export async function stuccoLookFallback(judged: Judged, knowledge: Knowledge): Promise<Fallback | null> {
  const { brief, site } = judged.context;
  if (judged.admitted.length > 0 || brief.finish !== 'cement-stucco') return null;
  const relaxed = await judgeWalls({ ...brief, finish: 'stucco-look' }, site, knowledge, judged);
  const looks = relaxed.admitted.find(
    (wall) =>
      wall.candidate.cladding.finish_kind === 'stucco-look' && !wall.candidate.cladding.is_insulated_finish,
  );
  if (!looks) return null;
  return {
    wall: looks,
    told: {
      why: 'True cement stucco does not pass here. If the look of stucco is enough, this wall does.',
      assembly: rankedWall(looks, 1, relaxed, null),
    },
  };
}
