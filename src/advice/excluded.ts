import { barrierLabel } from '../assembly/barrier-label.ts';
import type { Candidate } from '../assembly/candidates.ts';
import type { WallSlot } from '../assembly/wall-set.ts';
import { capital } from '../base/first-letter.ts';
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
  if (judged.admitted.length === 0) return nearMisses(judged);
  return [
    ...closestByKind(
      judged,
      'cladding',
      ({ cladding }) => cladding.id,
      ({ cladding }) => capital(cladding.label),
    ),
    ...closestByKind(
      judged,
      'build',
      ({ build }) => build.insulation.id,
      ({ build }) => `${capital(build.insulation.label)}, at any thickness`,
    ),
    ...closestByKind(
      judged,
      'inside',
      ({ inside }) => inside.retarder?.id ?? 'not known',
      ({ inside }) => `Interior: ${inside.retarder?.label ?? 'not known'}`,
    ),
    ...closestByKind(
      judged,
      'barrier',
      ({ barrier }) => barrier.id,
      ({ barrier, sheathing }) => `Barrier: ${barrierLabel(barrier, sheathing)}`,
    ),
    // Without windows no buck is missed.
    ...(judged.context.brief.windows.length === 0
      ? []
      : closestByKind(
          judged,
          'buck',
          ({ buck }) => buck.id,
          ({ buck }) => `Window buck: ${buck.label}`,
        )),
  ];
}

function closestByKind(
  judged: Judged,
  slot: WallSlot,
  kindOf: (candidate: Candidate) => string,
  titleOf: (candidate: Candidate) => string,
): Excluded[] {
  return judged.closestOfExcluded(slot, kindOf).map((wall) => ({
    title: `${titleOf(wall.candidate)} (closest: ${buildTitle(wall.candidate.build)})`,
    id: wall.candidate.id,
    because: reasonsAgainst(wall, judged),
  }));
}

/** Closest walls of different claddings. */
function nearMisses(judged: Judged): Excluded[] {
  const closest = judged.closestOfExcluded('cladding', ({ cladding }) => cladding.id);
  return closest.slice(0, NEAR_MISSES).map((wall) => ({
    title: wallTitle(wall.candidate),
    id: wall.candidate.id,
    because: reasonsAgainst(wall, judged),
  }));
}

/** The rules that forbid a wall, each with what would admit it. */
export function reasonsAgainst(wall: JudgedWall, { context }: Judged): Excluded['because'] {
  const { candidate } = wall;
  return wall.verdicts.outcomesWith('forbid').map((outcome: RuleOutcome) => {
    const thickness = outcome.concern === 'energy' ? energyRemedy(candidate, wall.parts, context) : null;
    return {
      rule: outcome.rule.id,
      citation: outcome.citation,
      text: outcome.text,
      remedy: thickness ? `${outcome.remedy} ${thickness}` : outcome.remedy,
      ...houseMark(outcome),
    };
  });
}
