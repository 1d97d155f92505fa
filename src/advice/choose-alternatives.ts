import { foldOf } from './folds.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { efficientWalls } from './pareto.ts';

export const isSynthetic = ({ candidate }: JudgedWall) => candidate.cladding.is_insulated_finish;

/** Those of the lowest standing: the others compete only where none of these is admitted. */
export function competing(admitted: readonly JudgedWall[]): readonly JudgedWall[] {
  const lowest = Math.min(...new Set(admitted.map((wall) => wall.standing)));
  return admitted.filter((wall) => wall.standing === lowest);
}

const known = new WeakMap<readonly JudgedWall[], readonly JudgedWall[]>();

/**
 * The walls that compete for the ranks, best first: of those wanted, the ones that no other one dominates.
 *
 * @param admitted  best first; asked for again, the same list gives the same answer without new work
 */
export function contenders(admitted: readonly JudgedWall[]): readonly JudgedWall[] {
  const found = known.get(admitted) ?? efficientWalls(competing(admitted));
  known.set(admitted, found);
  return found;
}

/** The same first choice as the answer gives, without looking for alternatives to it: no wall dominates the best one. */
export function firstChoice(judged: Judged): JudgedWall | null {
  return judged.best;
}

/**
 * The first choice and genuinely different alternatives. Only walls that no other wall dominates compete, and
 * near-duplicates count once: never the same cladding over the same family of boards. The second brings another
 * cladding where one competes, the third another family of insulation than the first two, best with another cladding
 * than the first as well. An alternative that the first choice beats in everything would be no choice at all, so rather
 * fewer are shown than one of those.
 *
 * @param admitted  best first
 * @returns at most `top` walls, best first
 */
export function chooseAlternatives(admitted: readonly JudgedWall[], top: number): JudgedWall[] {
  const bestOfFold = new Map<string, JudgedWall>();
  for (const wall of contenders(admitted)) {
    if (!bestOfFold.has(foldOf(wall))) bestOfFold.set(foldOf(wall), wall);
  }
  const pool = [...bestOfFold.values()];
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
