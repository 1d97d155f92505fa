import { lower } from '../base/first-letter.ts';
import { listed } from '../base/listed.ts';
import type { Brief } from '../brief/brief.ts';
import { fieldWords } from '../brief/field-words.ts';
import type { OpenAssumption } from '../brief/resolve-brief.ts';
import type { Advice } from './advice-schema.ts';
import { firstChoice } from './choose-alternatives.ts';
import { type AdmittedIf, closestWalls } from './excluded.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { type NamedAssembly, ofCladdings } from './named-assembly.ts';
import { nearMarket } from './near-market.ts';
import type { Reading } from './readings.ts';
import { type Extent, type Found, smallestChanges } from './smallest-change.ts';
import { wallTitle } from './titles.ts';
import { changedBrief, tryAgain } from './try-again.ts';
import { type Step, stepsFrom } from './why-not-steps.ts';

export type AdmittingChanges = {
  readonly sentences: Advice['would_change_the_answer'];
  /** For each of the closest walls, what admits that cladding over those boards. */
  readonly admittedIf: AdmittedIf;
};

/** For the answer as a whole: single changes; two or three at once only where the closest walls have none. */
const SINGLES: Extent = { trials: 0, found: 5, together: 1 };
const TOGETHER: Extent = { trials: 80, found: 5, together: 3 };
/** For one wall, of which a handful are tried: several changes at once for the closest ones only. */
const OF_CLOSEST: Extent = { trials: 30, found: 5, together: 3 };
const CLOSEST = 2;

/**
 * Where nothing passes: which of the user's own answers, given otherwise, admits a wall. Found by judging again, first
 * the walls that come closest (`nearMarket`), then, for what is told, all of them. Nothing where a wall passes.
 *
 * @param readings  other readings of what was assumed, tried already: they are told by themselves
 */
export async function admittingChanges(
  judged: Judged,
  assumptions: readonly OpenAssumption[],
  readings: readonly Reading[],
  knowledge: Knowledge,
): Promise<AdmittingChanges> {
  if (judged.best) return { sentences: [], admittedIf: new Map() };
  const steps = ownSteps(judged.context.brief, assumptions);
  const told = new Set(readings.filter(({ winner }) => winner).map(({ field }) => field));
  const open = steps.filter(({ field }) => !told.has(field));
  const market = tryAgain(nearMarket(judged), judged, knowledge);
  const now = await market([]);
  const singles = open.filter(({ field }) => canAdmitAlone(field, judged));
  let found = now ? (await smallestChanges(singles, now, market, SINGLES)).found : [];
  const ofWalls = await changesOfWalls(judged, steps, knowledge);
  if (found.length === 0 && told.size === 0) {
    const together = [...ofWalls.values()].flat().sort((a, b) => a.movement - b.movement);
    found =
      together.length > 0 || !now ? together : (await smallestChanges(steps, now, market, TOGETHER)).found;
  }
  const sentences: Advice['would_change_the_answer'] = [];
  for (const one of oneOfEachKind(found)) sentences.push(await sentenceOf(one, judged, knowledge));
  const isSingle = told.size > 0 || found.some(isAlone);
  return {
    sentences: isSingle ? sentences : [noSingleChange(steps, found.length === 0), ...sentences],
    admittedIf: new Map([...ofWalls].map(([wall, own]) => [wall, testedWords(own)])),
  };
}

/** Whether some wall breaks only rules that another answer to one question can silence. */
function canAdmitAlone(field: string, { verdicts }: Judged): boolean {
  const { forbids, rules } = verdicts;
  const own = READ_AS_GIVEN[field];
  const facts = own ?? Object.values(READ_AS_GIVEN).flat();
  const reading = rules.filter(({ reads }) => reads.some((id) => facts.includes(id)));
  const by = verdicts.forbidsBy(reading.map(({ rule }) => rule.id));
  return forbids.some((count, i) => by[i] === (own ? count : 0));
}

/** What somebody can answer otherwise. Which edition holds is not for the user to choose. */
function ownSteps(brief: Brief, assumptions: readonly OpenAssumption[]): Step[] {
  const any: NamedAssembly = { parts: new Map(), builds: [], isSized: false, words: '', notes: [] };
  return stepsFrom(brief, assumptions, any, []).filter(({ field }) => field !== 'code_edition');
}

async function sentenceOf(
  { changes }: Found,
  { context }: Judged,
  knowledge: Knowledge,
): Promise<Advice['would_change_the_answer'][number]> {
  const options = changes.map(({ option }) => option);
  const after = await judgeWalls(changedBrief(context.brief, options), context.site, knowledge);
  const first = firstChoice(after);
  if (!first) throw new Error('a change that admits a wall of a part of the market admits none of the whole');
  const { length } = after.admitted;
  return {
    if: ifWords(changes, ', and '),
    then: `${length === 1 ? 'one wall passes' : `${length.toLocaleString('en-US')} walls pass`}, and the first choice is ${lower(wallTitle(first.candidate))}`,
  };
}

function ifWords(changes: Found['changes'], between: string): string {
  return changes.map(({ step, option }) => `${option.words} (now ${step.from})`).join(between);
}

const isAlone = ({ changes }: Found) => changes.length === 1;

/** The smallest change of the same answers only: not the budget with a general crew, and again with a skilled one. */
function oneOfEachKind(found: readonly Found[]): Found[] {
  const byFields = new Map<string, Found>();
  for (const one of found) {
    const fields = one.changes.map(({ step }) => step.field).join();
    if (!byFields.has(fields)) byFields.set(fields, one);
  }
  return [...byFields.values()];
}

function noSingleChange(
  steps: readonly Step[],
  isNothing: boolean,
): Advice['would_change_the_answer'][number] {
  const fields = listed([...new Set(steps.map(({ field }) => fieldWords(field)))]);
  const combined = isNothing ? ', nor did any two or three at once that were tried' : '';
  return {
    if: 'a single one of your answers were another',
    then: `still no wall passes. Tried one at a time, on the walls that come closest: ${fields}. None of them admits a wall by itself${combined}`,
  };
}

/** Answers that rules read as they are given: no other answer changes what these rules hold a wall against. */
const READ_AS_GIVEN: Readonly<Record<string, readonly string[]>> = {
  finish: ['project.finish_wanted'],
  crew_skill: ['project.crew_skill', 'project.crew_rank'],
  rough_opening_can_change: ['project.rough_opening_can_change'],
  budget_usd_per_ft2: ['project.budget_usd_per_ft2'],
  max_added_thickness_in: ['project.max_added_thickness_in'],
};

/** The steps that could silence one of the rules against a wall. */
function stepsFor({ verdicts }: JudgedWall, steps: readonly Step[]): Step[] {
  const broken = verdicts.rulesWith('forbid');
  const readAny = (facts: readonly string[]) =>
    broken.filter(({ reads }) => reads.some((id) => facts.includes(id)));
  const isPhysical = readAny(Object.values(READ_AS_GIVEN).flat()).length < broken.length;
  return steps.filter(({ field }) => {
    const facts = READ_AS_GIVEN[field];
    return facts ? readAny(facts).length > 0 : isPhysical;
  });
}

/** The changes that admit each of the closest walls, tried on all ways to detail it. */
async function changesOfWalls(
  judged: Judged,
  steps: readonly Step[],
  knowledge: Knowledge,
): Promise<Map<JudgedWall, readonly Found[]>> {
  const changes = new Map<JudgedWall, readonly Found[]>();
  for (const [place, wall] of closestWalls(judged).entries()) {
    const extent = place < CLOSEST ? OF_CLOSEST : SINGLES;
    const { cladding, build } = wall.candidate;
    const trial = tryAgain(ofCladdings([cladding], [build]), judged, knowledge);
    const now = await trial([]);
    const { found } = now ? await smallestChanges(stepsFor(wall, steps), now, trial, extent) : { found: [] };
    changes.set(wall, found);
  }
  return changes;
}

function testedWords(found: readonly Found[]): string {
  const alone = found.filter(isAlone);
  if (alone.length > 0)
    return `Tested, one change at a time: it passes ${listed(
      alone.map(({ changes }) => `if ${ifWords(changes, '')}`),
      'or',
    )}.`;
  const none = 'Tested: no single change of your answers admits this wall';
  const [together] = found;
  return together ? `${none}; it passes if ${ifWords(together.changes, ' and if ')}, together.` : `${none}.`;
}
