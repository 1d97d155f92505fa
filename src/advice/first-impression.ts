import { addedThickness } from '../assessment/wall-layers.ts';
import { resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { firstChoice } from './choose-alternatives.ts';
import { houseDefaults } from './house-effect.ts';
import { judgeScenario } from './judge-scenario.ts';
import type { Judged, Knowledge } from './judge-walls.ts';
import { openReadings } from './open-readings.ts';
import { trySensitivity } from './sensitivity.ts';
import { wallTitle } from './titles.ts';
import { whatMatters } from './what-matters.ts';

/** What can be said of a wall while questions are still open: the first choice by today's answers, nothing written out. */
export type Impression = {
  readonly drawn: number;
  readonly admitted: number;
  readonly first: {
    readonly title: string;
    readonly likely_usd_per_ft2: number;
    readonly u_factor: number;
    readonly added_thickness_in: number;
    readonly weight_psf: number;
  } | null;
};

/**
 * Judges all walls once by what is known so far and the usual assumptions for the rest.
 *
 * @throws Refusal for an unknown place or values outside a method's range
 */
export async function firstImpression(scenario: Scenario, knowledge: Knowledge): Promise<Impression> {
  return impressionOf((await judgeScenario(scenario, knowledge)).judged);
}

/**
 * Fields still open, as paths of a scenario, of which some reading would change the first choice; most telling first.
 *
 * The order is an estimate (`whatMatters` looks at a thinned market). That nothing open matters is not left to an
 * estimate: before the list comes back empty, all walls have been judged for every other reading of what is assumed. A
 * field without another reading to try counts as one that matters.
 *
 * @param isWanted  fields worth trying: each takes a few judgements; what was answered with "unknown" is left out anyway
 * @throws Refusal for an unknown place or values outside a method's range
 */
export async function fieldsThatMatter(
  scenario: Scenario,
  knowledge: Knowledge,
  isWanted: (field: string) => boolean,
): Promise<string[]> {
  const isWorthTrying = (field: string) => isWanted(field) && !isGivenAsUnknown(scenario, field);
  const open = openReadings(scenario).map(({ field }) => field);
  const matters = await whatMatters(scenario, knowledge, open.filter(isWorthTrying));
  const telling = matters.filter(({ changesFirst }) => changesFirst).map(({ field }) => field);
  return telling.length > 0 ? telling : assumedThatMatter(scenario, knowledge, isWorthTrying);
}

/** Whoever said that they don't know gains nothing by being asked again. */
function isGivenAsUnknown(scenario: Scenario, field: string): boolean {
  const given: Readonly<Record<string, unknown>> = { ...scenario };
  const { framing } = scenario;
  const of: Readonly<Record<string, unknown>> = typeof framing === 'object' ? { ...framing } : {};
  const part = /^framing\.(.+)$/.exec(field)?.[1];
  return part === undefined ? given[field] === 'unknown' : framing === 'unknown' || of[part] === 'unknown';
}

async function assumedThatMatter(
  scenario: Scenario,
  known: Knowledge,
  isWanted: (field: string) => boolean,
): Promise<string[]> {
  const resolved = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const assumptions = resolved.assumptions.filter(({ field }) => isWanted(field));
  const { judged, knowledge } = await judgeScenario(scenario, known);
  const { changes } = await trySensitivity(judged, assumptions, knowledge);
  return assumptions.filter((_, i) => changes[i]).map(({ field }) => field);
}

function impressionOf(judged: Judged): Impression {
  const drawn = judged.set.candidates.length;
  const admitted = judged.verdicts.forbids.reduce((count, forbids) => count + (forbids === 0 ? 1 : 0), 0);
  const first = firstChoice(judged);
  if (!first) return { drawn, admitted, first: null };
  const { candidate } = first;
  const { thermal, cost, fastening } = judged.assess.partsOf(candidate);
  return {
    drawn,
    admitted,
    first: {
      title: wallTitle(candidate),
      likely_usd_per_ft2: cost.likely,
      u_factor: thermal.u_factor,
      added_thickness_in: addedThickness(candidate.face, candidate.barrier),
      weight_psf: fastening.cladding_psf + fastening.insulation_psf,
    },
  };
}
