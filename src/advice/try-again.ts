import { Refusal } from '../base/refusal.ts';
import type { Brief } from '../brief/brief.ts';
import { type Judged, judgeWalls, type Knowledge } from './judge-walls.ts';
import { has, isNamed, type NamedAssembly } from './named-assembly.ts';
import type { Trial, Try } from './smallest-change.ts';
import type { Option } from './why-not-steps.ts';

/** The brief with some options taken. */
export function changedBrief(brief: Brief, options: readonly Option[]): Brief {
  return Object.assign({}, brief, ...options.map(({ change }) => change ?? {}));
}

/** What the named walls came to. */
function trialOf(judged: Judged, named: NamedAssembly): Trial {
  const { set, verdicts } = judged;
  const passing: number[] = [];
  let [walls, forbids] = [0, 0];
  for (const [place, candidate] of set.candidates.entries()) {
    if (!isNamed({ candidate }, named)) continue;
    const against = verdicts.forbids[place] ?? 0;
    walls += 1;
    forbids += against;
    if (against === 0) passing.push(place);
  }
  return {
    admitted: judged.bestAdmitted((candidate) => isNamed({ candidate }, named)),
    walls,
    forbids,
    passing: () => passing.map((place) => judged.wallAt(place)),
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
      return trialOf(again, own);
    } catch (error) {
      // A filling that no table has, say: that change can't be judged, others can.
      if (error instanceof Refusal) return null;
      throw error;
    }
  };
}
