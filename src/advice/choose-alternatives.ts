import type { Cladding, Insulation } from '../assembly/catalogue-schema.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';

export const isSynthetic = ({ candidate }: JudgedWall) => candidate.cladding.is_insulated_finish;

/**
 * The first choice and genuinely different alternatives: never the same cladding with the same insulation, so a
 * neighbouring thickness, barrier or buck doesn't count. The second brings another cladding where one is admitted, the
 * third another family of insulation than the first two, best with another cladding than the first as well. The
 * synthetic finish is what the job is meant to do without: it is ranked only where nothing else is admitted.
 *
 * @param admitted  best first
 * @returns at most `top` walls, best first
 */
export function chooseAlternatives(admitted: readonly JudgedWall[], top: number): JudgedWall[] {
  const wanted = admitted.filter((wall) => !isSynthetic(wall));
  const pool = bestOfPairs(wanted.length > 0 ? wanted : admitted);
  const chosen: JudgedWall[] = [];
  const take = (isWanted: (wall: JudgedWall) => boolean): void => {
    const found = pool.find((wall) => !chosen.includes(wall) && isWanted(wall));
    if (found) chosen.push(found);
  };
  take(() => true);
  const used = (key: 'cladding' | 'insulation') =>
    new Set(
      chosen.map(({ candidate }) =>
        key === 'cladding' ? candidate.cladding.id : candidate.build.insulation.family,
      ),
    );
  if (top >= 2) {
    const claddings = used('cladding');
    take((wall) => !claddings.has(wall.candidate.cladding.id));
  }
  if (top >= 3) {
    const insulations = used('insulation');
    const isNew = ({ candidate }: JudgedWall) => !insulations.has(candidate.build.insulation.family);
    const first = chosen[0]?.candidate.cladding.id;
    const before = chosen.length;
    take((wall) => isNew(wall) && wall.candidate.cladding.id !== first);
    if (chosen.length === before) take(isNew);
  }
  while (chosen.length < Math.min(top, pool.length)) take(() => true);
  return chosen.sort((a, b) => pool.indexOf(a) - pool.indexOf(b));
}

/** The first wall of every cladding with every insulation. */
function bestOfPairs(walls: readonly JudgedWall[]): JudgedWall[] {
  const seen = new Map<Cladding, Set<Insulation>>();
  return walls.filter(({ candidate: { cladding, build } }) => {
    const insulations = seen.get(cladding) ?? new Set();
    if (insulations.has(build.insulation)) return false;
    seen.set(cladding, insulations.add(build.insulation));
    return true;
  });
}

/** The wall that `chooseAlternatives` puts first, without the order of all the others; null when none is admitted. */
export function firstChoice(judged: Judged): JudgedWall | null {
  return (
    judged.bestAdmitted((candidate) => !candidate.cladding.is_insulated_finish) ??
    judged.bestAdmitted(() => true)
  );
}
