import type { RuleOutcome } from '../rulebook/rule-schema.ts';
import type { Advice } from './advice-schema.ts';
import { houseMark } from './house-mark.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { buildTitle, wallTitle } from './titles.ts';
import { energyRemedy } from './wall-energy-words.ts';

type Excluded = Advice['excluded'][number];

/** How many near misses are shown when nothing passes. */
const NEAR_MISSES = 5;

/**
 * What excluded the obvious alternatives: for every cladding and every insulation of which no wall was admitted, the
 * wall that came closest and the rules against it. When nothing passed at all: what comes closest.
 */
export function excludedWalls(judged: Judged): Excluded[] {
  const rejected = judged.walls.filter((wall) => wall.forbids > 0).sort(byCloseness);
  if (judged.admitted.length === 0) return nearMisses(judged, rejected);
  return [
    ...closestByKind(
      judged,
      rejected,
      (w) => w.candidate.cladding.id,
      (w) => capital(w.candidate.cladding.label),
    ),
    ...closestByKind(
      judged,
      rejected,
      (w) => w.candidate.build.insulation.id,
      (w) => `${capital(w.candidate.build.insulation.label)}, at any thickness`,
    ),
    ...closestByKind(
      judged,
      rejected,
      insideOf,
      (w) => `Interior: ${w.candidate.inside.retarder?.label ?? 'not known'}`,
    ),
    ...closestByKind(
      judged,
      rejected,
      (w) => w.candidate.barrier.id,
      (w) => `Barrier: ${w.candidate.barrier.label}`,
    ),
    ...closestByKind(
      judged,
      rejected,
      (w) => w.candidate.buck.id,
      (w) => `Window buck: ${w.candidate.buck.label}`,
    ),
  ];
}

const insideOf = (wall: JudgedWall) => wall.candidate.inside.retarder?.id ?? 'not known';

function closestByKind(
  judged: Judged,
  rejected: readonly JudgedWall[],
  kindOf: (wall: JudgedWall) => string,
  titleOf: (wall: JudgedWall) => string,
): Excluded[] {
  const admittedKinds = new Set(judged.admitted.map(kindOf));
  const closest = new Map<string, JudgedWall>();
  for (const wall of rejected) {
    const kind = kindOf(wall);
    if (!admittedKinds.has(kind) && !closest.has(kind)) closest.set(kind, wall);
  }
  return [...closest.values()].map((wall) => ({
    title: `${titleOf(wall)} (closest: ${buildTitle(wall.candidate.build)})`,
    id: wall.candidate.id,
    because: reasonsAgainst(wall, judged),
  }));
}

/** Closest walls of different claddings. */
function nearMisses(judged: Judged, rejected: readonly JudgedWall[]): Excluded[] {
  const seen = new Set<string>();
  const chosen: JudgedWall[] = [];
  for (const wall of rejected) {
    if (seen.has(wall.candidate.cladding.id)) continue;
    seen.add(wall.candidate.cladding.id);
    chosen.push(wall);
    if (chosen.length === NEAR_MISSES) break;
  }
  return chosen.map((wall) => ({
    title: wallTitle(wall.candidate),
    id: wall.candidate.id,
    because: reasonsAgainst(wall, judged),
  }));
}

/** Fewest rules against it first, then the better score, then the id. */
export function byCloseness(a: JudgedWall, b: JudgedWall): number {
  return a.forbids - b.forbids || b.score - a.score || (a.candidate.id < b.candidate.id ? -1 : 1);
}

/** The rules that forbid a wall, each with what would admit it. */
export function reasonsAgainst(wall: JudgedWall, { assess, context }: Judged): Excluded['because'] {
  const { candidate } = wall;
  return wall.verdicts.outcomesWith('forbid').map((outcome: RuleOutcome) => {
    const thickness =
      outcome.concern === 'energy' ? energyRemedy(candidate, assess.partsOf(candidate), context) : null;
    return {
      rule: outcome.rule.id,
      citation: outcome.citation,
      text: outcome.text,
      remedy: thickness ? `${outcome.remedy} ${thickness}` : outcome.remedy,
      ...houseMark(outcome),
    };
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
