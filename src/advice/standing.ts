import { partitionOf, type WallSet, wallAt } from '../assembly/wall-set.ts';
import type { Works } from '../assessment/assess.ts';
import type { VerdictTable } from '../rulebook/verdicts.ts';
import { COLD_STEP_F, DEGREES, GROUND_NAMES, GROUNDS, type GroundName } from './grounds.ts';
import type { OfLining } from './unknown-lining.ts';

/**
 * Who competes with whom: a wall competes only where none of a lower standing is admitted. One bit for each ground that
 * holds (one for each degree, where it holds by degrees), the weightiest in the highest place, so that two walls are told
 * apart by the weightiest ground that only one of them has, or has more of. 0: none holds.
 */
export type Standing = number;

/** The ground that each bit stands for, from the lowest. */
const BITS: readonly GroundName[] = GROUND_NAMES.flatMap((name) =>
  new Array<GroundName>(DEGREES[name] ?? 1).fill(name),
);

/** The standing of a wall on which these grounds hold, in the first degree. */
export function standingBy(...names: readonly GroundName[]): Standing {
  return names.reduce((sum, name) => sum | degrees(name, 1), 0);
}

/** The bits of so many degrees of a ground; no more than it has. */
function degrees(name: GroundName, count: number): Standing {
  const filled = 2 ** Math.min(count, DEGREES[name] ?? 1) - 1;
  return filled << BITS.indexOf(name);
}

/** The standing of every wall of a set, in its order. */
export function standings({
  set,
  verdicts,
  assess: { works },
  linings,
}: {
  readonly set: WallSet;
  readonly verdicts: VerdictTable;
  readonly assess: { readonly works: Works };
  readonly linings: readonly Pick<OfLining<unknown>, 'forbids'>[];
}): Uint32Array {
  const standing = new Uint32Array(set.candidates.length);
  const add = (place: number, bits: Standing) => {
    standing[place] = (standing[place] ?? 0) | bits;
  };
  for (const name of GROUND_NAMES) {
    for (const rule of Object.keys(GROUNDS[name].rules)) {
      if (!verdicts.firesAnywhere(rule)) continue;
      const fires = verdicts.firing(rule);
      const bitsOf = name === 'cold-sheathing' ? coldness(set, works) : () => degrees(name, 1);
      for (let i = 0; i < standing.length; i++) if (fires(i)) add(i, bitsOf(i));
    }
  }
  for (const { forbids } of linings) {
    for (let i = 0; i < standing.length; i++)
      if (forbids(i)) add(i, oneMore(standing[i] ?? 0, 'lining-not-known'));
  }
  const last = standingBy('synthetic-finish');
  const { at, first } = partitionOf(set, ['cladding']);
  const isSynthetic = Array.from(first, (place) => wallAt(set, place).cladding.is_insulated_finish);
  for (let i = 0; i < standing.length; i++) if (isSynthetic[at[i] ?? 0]) add(i, last);
  return standing;
}

/** One more degree of a ground than a standing has. */
function oneMore(standing: Standing, name: GroundName): Standing {
  const all = degrees(name, DEGREES[name] ?? 1);
  return (((standing & all) << 1) | standingBy(name)) & all;
}

/** How cold the sheathing of each wall is, where it counts as too cold. */
function coldness(set: WallSet, works: Works): (place: number) => Standing {
  const { at, first } = partitionOf(set, ['face']);
  const bits = Array.from(first, (place) => {
    const below_f = -(works.dewPoint.work(wallAt(set, place).face).dew_point_margin_f ?? 0);
    return degrees('cold-sheathing', Math.max(1, Math.floor(below_f / COLD_STEP_F)));
  });
  return (place) => bits[at[place] ?? -1] ?? 0;
}

/** The weightiest ground of a standing above 0. */
export function weightiest(standing: Standing): GroundName {
  const name = BITS[31 - Math.clz32(standing)];
  if (!name) throw new Error(`no ground makes a standing of ${standing}`);
  return name;
}
