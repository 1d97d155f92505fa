import { fits } from '../assembly/candidates.ts';
import { capital } from '../base/first-letter.ts';
import { inches } from '../base/inches.ts';
import type { Brief } from '../brief/brief.ts';
import { fieldWords } from '../brief/field-words.ts';
import { resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { resolveSite } from '../site/resolve-site.ts';
import { contenders, firstChoice } from './choose-alternatives.ts';
import { reasonsAgainst } from './excluded.ts';
import { isSameFold } from './folds.ts';
import { houseDefaults } from './house-effect.ts';
import { byCloseness, type Judged, type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { has, isNamed, type NamedAssembly, namedAssembly } from './named-assembly.ts';
import { withOwnPrices } from './own-prices.ts';
import { beats } from './pareto.ts';
import { isTwin } from './readings.ts';
import { weightWords } from './robustness.ts';
import { round } from './rounded.ts';
import { CRITERIA, weightsOf } from './scoring.ts';
import { type Found, smallestChanges } from './smallest-change.ts';
import { rankedOnlyWhere } from './standing-words.ts';
import { wallTitle } from './titles.ts';
import { tryAgain } from './try-again.ts';
import { weightMoves } from './weight-moves.ts';
import type { WhyNot } from './why-not-schema.ts';
import { type Option, stepsFrom } from './why-not-steps.ts';

/**
 * Why an assembly that somebody names is not the first choice: the rules that exclude it and the smallest change that
 * would admit it, or, where it is admitted, what beats it and by which scores. All of it by judging again, nothing by text.
 *
 * @param asked  words ("three-coat stucco over 4 in. polyiso") or an id of a wall
 * @throws Refusal for words that name nothing, with the nearest that do; and for what `advise` refuses
 */
export async function whyNot(
  scenario: Scenario,
  asked: string,
  known: Knowledge,
  toolVersion: string,
): Promise<WhyNot> {
  const { brief, assumptions } = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const knowledge = withOwnPrices(known, brief);
  const named = namedAssembly(asked, knowledge.catalogue);
  const site = await resolveSite(brief.place, brief.code_edition);
  const judged = await judgeWalls(brief, site, knowledge);
  const walls = judged.walls.filter((wall) => isNamed(wall, named));
  const admitted = judged.admitted.filter((wall) => isNamed(wall, named));
  const head = {
    schema: 'cladwright-why-not/1' as const,
    tool_version: toolVersion,
    name: brief.name,
    asked,
    understood: named.words,
    notes: [...named.notes],
    considered: { candidates: walls.length, admitted: admitted.length },
  };
  const [best] = admitted;
  if (best)
    return {
      ...head,
      ...whyNotFirst(best, judged),
      others_excluded: othersExcluded(walls, admitted, judged),
    };
  const closest = [...walls].sort(byCloseness)[0] ?? null;
  const steps = stepsFrom(brief, assumptions, named, knowledge.catalogue.builds);
  const now = {
    admitted: null,
    walls: walls.length,
    forbids: walls.reduce((sum, { forbids }) => sum + forbids, 0),
  };
  const { found, trials } = await smallestChanges(steps, now, tryAgain(named, judged, knowledge));
  return {
    ...head,
    verdict: closest ? 'excluded' : 'not-made',
    wall: closest && toldWall(closest),
    because: closest ? reasonsAgainst(closest, judged) : whyNotMade(named, brief, knowledge),
    others_excluded: [],
    beaten_by: null,
    would_win: [],
    smallest_changes: found.map(toldChange),
    tried: `${trials} changes of the answers and of the wall were judged, one, two and three at a time: ${steps.map(({ field }) => stepWords(field)).join(', ')}.`,
  };
}

/** Of the claddings that the name fits, those of which nothing passes: each with its closest wall. */
function othersExcluded(
  walls: readonly JudgedWall[],
  admitted: readonly JudgedWall[],
  judged: Judged,
): WhyNot['others_excluded'] {
  const pass = new Set(admitted.map(({ candidate }) => candidate.cladding.id));
  const closest = new Map<string, JudgedWall>();
  for (const wall of [...walls].sort(byCloseness)) {
    const { id } = wall.candidate.cladding;
    if (!pass.has(id) && !closest.has(id)) closest.set(id, wall);
  }
  return [...closest.values()].map((wall) => ({
    title: wallTitle(wall.candidate),
    because: reasonsAgainst(wall, judged),
  }));
}

function whyNotFirst(
  wall: JudgedWall,
  judged: Judged,
): Pick<WhyNot, 'verdict' | 'wall' | 'because' | 'beaten_by' | 'would_win' | 'smallest_changes' | 'tried'> {
  const first = firstChoice(judged);
  const told = {
    wall: toldWall(wall),
    because: [],
    smallest_changes: [],
    tried: 'It breaks no rule: nothing had to be tried.',
  };
  if (!first || first === wall) return { ...told, verdict: 'first-choice', beaten_by: null, would_win: [] };
  const weights = weightsOf(judged.context.brief.priorities);
  const sum = CRITERIA.reduce((total, criterion) => total + weights[criterion], 0);
  const ofCriteria = CRITERIA.map((criterion) => ({
    criterion: criterion as string,
    here: round(wall.scores[criterion], 3),
    there: round(first.scores[criterion], 3),
    adds: round(((first.scores[criterion] - wall.scores[criterion]) * weights[criterion]) / sum, 4),
  }));
  const ofFirm = {
    criterion: 'house_preferences',
    here: round(wall.wish, 3),
    there: round(first.wish, 3),
    adds: round(first.wish - wall.wish, 4),
  };
  const parts = [...ofCriteria, ofFirm]
    .filter(({ adds }) => adds !== 0)
    .sort((a, b) => Math.abs(b.adds) - Math.abs(a.adds));
  return {
    ...told,
    verdict: 'admitted',
    beaten_by: {
      ...toldWall(first),
      behind: round(first.score - wall.score, 4),
      in_everything: beats(first, wall),
      parts,
    },
    would_win:
      wall.standing > first.standing
        ? [rankedOnlyWhere(wall.standing, first.standing)]
        : wouldWin(wall, first, judged),
  };
}

/**
 * How far a single weight must move before the wall is first. Against another kind of wall its near-duplicates count as
 * itself; against one of them it stands for its own boards.
 */
function wouldWin(wall: JudgedWall, first: JudgedWall, judged: Judged): string[] {
  const weights = weightsOf(judged.context.brief.priorities);
  const isOwn = isSameFold(wall, first) ? isTwin : isSameFold;
  const weighed = [...new Set([...contenders(judged.admitted), wall])].map((one) => ({
    id: one.candidate.id,
    scores: one.scores,
    wish: one.wish,
    own: isOwn(one, wall),
  }));
  return weightMoves(
    weighed.filter(({ own }) => !own),
    weighed.filter(({ own }) => own),
    weights,
  ).map(
    ({ criterion, now, until, direction }) =>
      `${isOwn === isTwin ? 'This wall' : 'A wall of this kind'} would be first ${weightWords(criterion, now, until, direction)}.`,
  );
}

/** Why nothing of what was named is put together at all. */
function whyNotMade(named: NamedAssembly, brief: Brief, { catalogue }: Knowledge): WhyNot['because'] {
  const texts: string[] = [];
  for (const cladding of catalogue.claddings.filter(({ id }) => has(named, 'cladding', id))) {
    const { works_with: works } = cladding;
    const name = capital(cladding.label);
    if (!works.framing.includes(brief.framing.material)) {
      texts.push(`${name} is not made for ${brief.framing.material} studs.`);
      continue;
    }
    const kinds = named.builds.filter(({ insulation }) => works.insulations.includes(insulation.id));
    if (kinds.length === 0) {
      texts.push(`${name} is not made for that insulation: ${works.why}.`);
    } else if (!kinds.some((build) => fits(cladding, build))) {
      texts.push(
        `${name} goes over at most ${inches(works.max_insulation_in)} in. in at most ${works.max_layers} ${works.max_layers === 1 ? 'layer' : 'layers'}: ${works.why}.`,
      );
    } else {
      texts.push(
        `${name} does not come with that barrier, lining or buck here: the attachment, the job or how far the window stands out asks for another.`,
      );
    }
  }
  return texts.map((text) => ({ text }));
}

function toldWall({ candidate, score }: JudgedWall): NonNullable<WhyNot['wall']> {
  return { id: candidate.id, title: wallTitle(candidate), score: round(score, 4) };
}

function toldChange({ changes, wall }: Found): WhyNot['smallest_changes'][number] {
  const words = changes.map(({ option }: { option: Option }) => option.words);
  return {
    changes: changes.map(({ step, option }) => ({ field: step.field, from: step.from, to: option.to })),
    sentence: `It would be admitted if ${words.join(', and if ')}.`,
    then: toldWall(wall),
  };
}

function stepWords(field: string): string {
  return field === 'wall' ? 'other thicknesses and layers' : fieldWords(field);
}
