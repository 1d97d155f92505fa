import type { Cladding } from '../assembly/catalogue-schema.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { wallAt } from '../assembly/wall-set.ts';
import { RULE_STATES } from '../rulebook/three-valued.ts';
import type { Judged } from './judge-walls.ts';
import { type NamedAssembly, ofCladdings } from './named-assembly.ts';

/** Of so many groups of walls the closest one is taken. */
const BY_REASONS = 8;
const BY_FAMILY = 8;

/**
 * A part of the market in which a change of the answers is tried first: the claddings and boards of the walls that come
 * closest, one for each set of rules that walls break together, then one for each such set and family of insulation. So
 * the wall that misses the room alone by the least is among them, and the one that misses the budget alone.
 */
export function nearMarket(judged: Judged): NamedAssembly {
  const { set, verdicts } = judged;
  const fires = RULE_STATES.indexOf('fires');
  const against = verdicts.forbidding();
  const byReasons = new Map<string, number>();
  const byFamily = new Map<string, number>();
  for (let place = 0; place < set.candidates.length; place++) {
    let reasons = '';
    for (const { decided } of against)
      reasons += decided.states[decided.joint.at[place] ?? -1] === fires ? '1' : '0';
    closer(byReasons, reasons, place, judged);
    closer(byFamily, `${reasons} ${wallAt(set, place).build.insulation.family}`, place, judged);
  }
  const claddings = new Set<Cladding>();
  const builds = new Set<InsulationBuild>();
  for (const place of [...nearest(byReasons, BY_REASONS, judged), ...nearest(byFamily, BY_FAMILY, judged)]) {
    const { cladding, build } = wallAt(set, place);
    claddings.add(cladding);
    builds.add(build);
  }
  return ofCladdings(
    [...claddings],
    judged.context.catalogue.builds.filter((build) => builds.has(build)),
  );
}

function closer(groups: Map<string, number>, key: string, place: number, judged: Judged): void {
  const other = groups.get(key);
  if (other === undefined || byExactMiss(place, other, judged) < 0) groups.set(key, place);
}

function nearest(groups: ReadonlyMap<string, number>, most: number, judged: Judged): number[] {
  return [...groups.values()].sort((a, b) => byExactMiss(a, b, judged)).slice(0, most);
}

/** As `byClosenessAt`, but to the last bit of the miss: what the least change admits must be among them. */
function byExactMiss(a: number, b: number, judged: Judged): number {
  const { count, share } = judged.missed;
  return (count[a] ?? 0) - (count[b] ?? 0) || (share[a] ?? 0) - (share[b] ?? 0) || judged.byScoreAt(a, b);
}
