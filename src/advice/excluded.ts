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

/** What was found to admit a near miss, in words. */
export type AdmittedIf = ReadonlyMap<JudgedWall, string>;

/**
 * What excluded the obvious alternatives: for every cladding and every insulation of which no wall was admitted, the
 * wall that came closest and the rules against it. When nothing passed at all: what comes closest.
 *
 * @param admittedIf  what was found to admit the closest walls, where that was looked for
 */
export function excludedWalls(judged: Judged, admittedIf: AdmittedIf = new Map()): Excluded[] {
  if (judged.admitted.length === 0) return nearMisses(judged, admittedIf);
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

/**
 * Where nothing passes: the closest walls of different claddings, closest first; the synthetic finish, which the job is
 * meant to do without, after all others.
 */
export function closestWalls(judged: Judged): JudgedWall[] {
  const isSynthetic = ({ candidate }: JudgedWall) => Number(candidate.cladding.is_insulated_finish);
  return judged
    .closestOfExcluded('cladding', ({ cladding }) => cladding.id)
    .sort((a, b) => isSynthetic(a) - isSynthetic(b))
    .slice(0, NEAR_MISSES);
}

function nearMisses(judged: Judged, admittedIf: AdmittedIf): Excluded[] {
  return closestWalls(judged).map((wall) => ({
    title: wallTitle(wall.candidate),
    id: wall.candidate.id,
    because: wall.verdicts.outcomesWith('forbid').map((outcome, i) => {
      // What was tried on this wall holds for all its reasons together: said once, with the first.
      const tested = i === 0 ? admittedIf.get(wall) : undefined;
      const otherwise =
        otherwiseBuilt(wall, outcome, judged) ??
        (outcome.concern === 'energy' ? testedThickness(wall, judged) : null);
      const general = [outcome.remedy, ...(otherwise ? [otherwise] : [])].join(' ');
      return reasonOf(outcome, tested ? `${tested} In general: ${general}` : general);
    }),
  }));
}

/** The rules that forbid a wall, each with what would admit it. */
export function reasonsAgainst(wall: JudgedWall, judged: Judged): Excluded['because'] {
  return wall.verdicts.outcomesWith('forbid').map((outcome) => {
    const thickness = outcome.concern === 'energy' ? testedThickness(wall, judged) : null;
    return reasonOf(outcome, thickness ? `${outcome.remedy} ${thickness}` : outcome.remedy);
  });
}

function reasonOf(outcome: RuleOutcome, remedy: string): Excluded['because'][number] {
  return {
    rule: outcome.rule.id,
    citation: outcome.citation,
    text: outcome.text,
    remedy,
    ...houseMark(outcome),
  };
}

/** The thickness that meets the energy code, and the limit that it breaks in turn, if it does. */
function testedThickness(wall: JudgedWall, judged: Judged): string | null {
  const { cladding } = wall.candidate;
  const remedy = energyRemedy(wall.candidate, wall.parts, judged.context);
  if (!remedy?.build) return remedy?.words ?? null;
  const { words, build } = remedy;
  const thicker = judged.closestWhere((other) => other.cladding === cladding && other.build === build);
  if (!thicker || thicker.forbids === 0) return words;
  return `${words} But at that thickness the wall breaks another limit: ${firstBroken(thicker)}`;
}

/** Where nothing passes: what the same cladding breaks instead where it is built so as to keep a limit. */
function otherwiseBuilt(wall: JudgedWall, { rule }: RuleOutcome, judged: Judged): string | null {
  const { cladding, build } = wall.candidate;
  const breaks = judged.verdicts.firing(rule.id);
  const other = judged.closestWhere((candidate, place) => candidate.cladding === cladding && !breaks(place));
  if (!other) return null;
  const how =
    other.candidate.build === build
      ? 'With another barrier, lining or window buck'
      : `Over ${buildTitle(other.candidate.build)}`;
  return `${how} the same cladding keeps this limit and breaks another: ${firstBroken(other)}`;
}

/** The first sentence of the first rule against a wall, and how many more there are. */
function firstBroken({ verdicts }: JudgedWall): string {
  const [first, ...more] = verdicts.outcomesWith('forbid');
  const text = first?.text ?? '';
  // A full stop before a small letter belongs to "in.".
  const sentence = /^.*?[.](?=\s+[A-Z]|$)/.exec(text)?.[0] ?? text;
  return more.length === 0 ? sentence : `${sentence} And ${more.length} more.`;
}
