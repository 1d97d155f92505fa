import { addedThickness } from '../assessment/wall-layers.ts';
import { resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { resolveSite } from '../site/resolve-site.ts';
import { chooseAlternatives } from './choose-alternatives.ts';
import { type Judged, judgeWalls, type Knowledge } from './judge-walls.ts';
import { trySensitivity } from './sensitivity.ts';
import { wallTitle } from './titles.ts';

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
  return impressionOf(await judgedSoFar(scenario, knowledge));
}

/**
 * Fields still open, as paths of a scenario, whose other readings would change the first choice. A field without
 * another reading to try counts as one that would.
 *
 * @param isWanted  fields worth trying: each takes a judgement or two
 *
 * @throws Refusal for an unknown place or values outside a method's range
 */
export async function fieldsThatMatter(
  scenario: Scenario,
  knowledge: Knowledge,
  isWanted: (field: string) => boolean,
): Promise<string[]> {
  const assumptions = resolveBrief(scenario).assumptions.filter(({ field }) => isWanted(field));
  const { changes } = await trySensitivity(await judgedSoFar(scenario, knowledge), assumptions, knowledge);
  return assumptions.filter((_, i) => changes[i]).map(({ field }) => field);
}

async function judgedSoFar(scenario: Scenario, knowledge: Knowledge): Promise<Judged> {
  const { brief } = resolveBrief(scenario);
  return judgeWalls(brief, await resolveSite(brief.place, brief.code_edition), knowledge);
}

function impressionOf({ walls, admitted, assess }: Judged): Impression {
  const [first] = chooseAlternatives(admitted, 1);
  if (!first) return { drawn: walls.length, admitted: admitted.length, first: null };
  const { candidate } = first;
  const { thermal, cost, fastening } = assess.partsOf(candidate);
  return {
    drawn: walls.length,
    admitted: admitted.length,
    first: {
      title: wallTitle(candidate),
      likely_usd_per_ft2: cost.likely,
      u_factor: thermal.u_factor,
      added_thickness_in: addedThickness(candidate.face, candidate.barrier),
      weight_psf: fastening.cladding_psf + fastening.insulation_psf,
    },
  };
}
