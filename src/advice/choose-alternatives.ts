import type { JudgedWall } from './judge-walls.ts';

export const isSynthetic = ({ candidate }: JudgedWall) => candidate.cladding.is_insulated_finish;

const pairOf = ({ candidate }: JudgedWall) => `${candidate.cladding.id}/${candidate.build.insulation.id}`;

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
  const bestOfPair = new Map<string, JudgedWall>();
  for (const wall of wanted.length > 0 ? wanted : admitted) {
    if (!bestOfPair.has(pairOf(wall))) bestOfPair.set(pairOf(wall), wall);
  }
  const pool = [...bestOfPair.values()];
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
