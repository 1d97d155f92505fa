import { Refusal } from '../base/refusal.ts';
import type { Brief } from '../brief/brief.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { has, isNamed, type NamedAssembly } from './named-assembly.ts';
import type { Trial, Try } from './smallest-change.ts';
import type { Option } from './why-not-steps.ts';

/** The brief with some options taken. */
export function changedBrief(brief: Brief, options: readonly Option[]): Brief {
  return Object.assign({}, brief, ...options.map(({ change }) => change ?? {}));
}

/** What walls that are all out come to, before anything is tried. */
export function trialOf(walls: readonly JudgedWall[]): Trial {
  return {
    admitted: null,
    walls: walls.length,
    forbids: walls.reduce((sum, wall) => sum + wall.forbids, 0),
  };
}

/** Judges only what was named: the cladding over the boards, with every barrier, lining and buck that goes with them. */
export function tryAgain(named: NamedAssembly, judged: Judged, knowledge: Knowledge): Try {
  const { catalogue } = knowledge;
  const { brief, site } = judged.context;
  const claddings = catalogue.claddings.filter(({ id }) => has(named, 'cladding', id));
  // One catalogue for each list of boards: what is worked out from it is kept for the next trial.
  const before = new Map<string, { known: Knowledge; judged: Judged | undefined }>();
  return async (options) => {
    const builds = options.find((option) => option.builds)?.builds ?? named.builds;
    const key = builds.map(({ insulation, boards_in }) => `${insulation.id}-${boards_in.join('+')}`).join();
    const own: NamedAssembly = { ...named, builds };
    const kept = before.get(key) ?? {
      known: { ...knowledge, catalogue: { ...catalogue, claddings, builds } },
      judged: undefined,
    };
    before.set(key, kept);
    try {
      const again = await judgeWalls(changedBrief(brief, options), site, kept.known, kept.judged);
      kept.judged ??= again;
      const walls = again.walls.filter((wall) => isNamed(wall, own));
      return { ...trialOf(walls), admitted: again.admitted.find((wall) => isNamed(wall, own)) ?? null };
    } catch (error) {
      // A filling that no table has, say: that change can't be judged, others can.
      if (error instanceof Refusal) return null;
      throw error;
    }
  };
}
