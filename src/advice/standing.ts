import { partitionOf, type WallSet, wallAt } from '../assembly/wall-set.ts';
import type { VerdictTable } from '../rulebook/verdicts.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { wallTitle } from './titles.ts';

/** Fires where the sheathing lies too far below the winter dew point for a wall to compete with warmer ones. */
export const COLD_SHEATHING = 'vapour.cold-sheathing';

/**
 * Who competes with whom: a wall competes only where none of a lower standing is admitted. 0: all that the job is about.
 * 1: its sheathing is far too cold, so that no score makes up for it. 2: the synthetic finish that the job is meant to do
 * without.
 */
export type Standing = 0 | 1 | 2;

/** When a wall of a standing competes at all. */
export const RANKED_ONLY_WHERE: Readonly<Record<Standing, string>> = {
  0: 'It competes with every wall that passes.',
  1: 'Whatever its score, it is ranked only where no wall passes whose sheathing is warmer in winter.',
  2: 'Whatever its score, the synthetic finish is ranked only where nothing else passes.',
};

/** The standing of every wall of a set, in its order. */
export function standings(set: WallSet, verdicts: VerdictTable): Uint8Array {
  const isCold = verdicts.firing(COLD_SHEATHING);
  const { at, first } = partitionOf(set, ['cladding']);
  const isSynthetic = Uint8Array.from(first, (place) =>
    Number(wallAt(set, place).cladding.is_insulated_finish),
  );
  const standing = new Uint8Array(set.candidates.length);
  for (let i = 0; i < standing.length; i++) {
    standing[i] = isSynthetic[at[i] ?? 0] === 1 ? 2 : isCold(i) ? 1 : 0;
  }
  return standing;
}

/** Why the first choice stands before a wall that scores higher; null where none does. */
export function whyBeforeColder(first: JudgedWall, { admitted }: Pick<Judged, 'admitted'>): string | null {
  const colder = admitted.find((wall) => wall.standing === 1 && wall.score > first.score);
  if (!colder || first.standing !== 0) return null;
  return `${wallTitle(colder.candidate)} would score higher, ${colder.score.toFixed(2)} against ${first.score.toFixed(2)}, and meets the code, but its sheathing lies so far below the indoor dew point in winter that no score makes up for it.`;
}
