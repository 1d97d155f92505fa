import { answersOf } from '../brief/answers.ts';
import { resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { resolveSite } from '../site/resolve-site.ts';
import type { Site } from '../site/site.ts';
import { admittingChanges } from './admitting-changes.ts';
import type { Advice, Caution } from './advice-schema.ts';
import { cautionsOf, isGeneral } from './cautions.ts';
import { chooseAlternatives, contenders } from './choose-alternatives.ts';
import { syntheticComparison } from './comparison.ts';
import { closestWalls, excludedWalls } from './excluded.ts';
import { stuccoLookFallback } from './fallback.ts';
import { findOutFirst } from './find-out.ts';
import { houseDefaults, houseEffect, housePrices } from './house-effect.ts';
import { type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { withOwnPrices } from './own-prices.ts';
import { rankedWall } from './ranked-wall.ts';
import { readingMoves, robustness } from './robustness.ts';
import { weightsOf } from './scoring.ts';
import { trySensitivity } from './sensitivity.ts';
import { windTold } from './wall-loads.ts';

export type AdviseOptions = {
  /** How many assemblies to rank, 1 or more. */
  readonly top: number;
  readonly toolVersion: string;
};

/**
 * Answers one scenario: brief → site → candidates → calculators → rules → ranking → advice.
 *
 * @throws Refusal for an unknown place or values outside a method's range
 */
export async function advise(scenario: Scenario, known: Knowledge, options: AdviseOptions): Promise<Advice> {
  const { brief, assumptions } = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const knowledge = withOwnPrices(known, brief);
  const site = await resolveSite(brief.place, brief.code_edition);
  const judged = await judgeWalls(brief, site, knowledge);
  const chosen = chooseAlternatives(judged.admitted, options.top);
  const [first = null] = chosen;
  const sensitivity = await trySensitivity(judged, assumptions, knowledge);
  const fallback = await stuccoLookFallback(judged, knowledge);
  const admitting = await admittingChanges(judged, assumptions, sensitivity.readings, knowledge);
  const house = await houseEffect(judged, resolveBrief(scenario).brief, known);
  return {
    schema: 'cladwright-advice/1',
    tool_version: options.toolVersion,
    name: brief.name,
    code_edition: brief.code_edition,
    site: siteOf(site),
    wind: windTold(judged.context),
    answers: answersOf(scenario),
    assumptions: [
      ...climateAssumption(site),
      ...(await housePrices(judged, known)),
      ...assumptions.map(({ field, value, why, house }, i) => ({
        field,
        value,
        why,
        could_change_answer: sensitivity.changes[i] ?? true,
        ...(house === undefined ? {} : { house }),
      })),
    ],
    considered: {
      candidates: judged.walls.length,
      admitted: judged.admitted.length,
      competing: contenders(judged.admitted).length,
    },
    weights: { ...weightsOf(brief.priorities) },
    ranked: chosen.map((wall, i) => rankedWall(wall, i + 1, judged, i === 0 ? null : first)),
    comparison: syntheticComparison(judged, chosen),
    fallback: fallback?.told ?? null,
    excluded: excludedWalls(judged, admitting.admittedIf),
    would_change_the_answer: [
      ...(house?.change ? [house.change] : []),
      ...sensitivity.sentences,
      ...admitting.sentences,
    ],
    find_out_first: findOutFirst(sensitivity.readings),
    robustness: [...(await robustness(chosen, judged, knowledge)), ...readingMoves(sensitivity.readings)],
    cautions: generalCautions(chosen[0] ?? fallback?.wall ?? closestWalls(judged)[0]),
    rules: {
      packs: knowledge.rulebook.packs.map(({ name, version, sha256, house: isHouse }) => ({
        name,
        version,
        sha256,
        ...(isHouse ? { house: true } : {}),
      })),
    },
    ...(house ? { house: house.effect } : {}),
  };
}

/** Months that are not the place's own are an assumption like any other; none at all leaves rules undecided. */
function climateAssumption({ climate }: Site): Advice['assumptions'] {
  if (climate && !climate.is_assumption) return [];
  return [
    {
      field: 'place.climate',
      value: climate?.source ?? null,
      why: climate
        ? 'No weather station stands at the place: these months stand in for its own.'
        : 'No months of temperature and humidity are known for this place.',
      could_change_answer: true,
    },
  ];
}

function siteOf(site: Site): Advice['site'] {
  return {
    climate_zone: site.climate_zone,
    place: site.place,
    zone_source: site.zone_source,
    moisture_regime: site.moisture_regime,
    winter_mean_temp_f: site.climate?.winter_mean_temp_f ?? null,
    climate_source: site.climate?.source ?? null,
    annual_precip_in: site.climate?.annual_precip_in ?? null,
    notes: [...site.notes],
  };
}

/**
 * The safety pack speaks once for the whole answer: of the first choice, of what looks like it where nothing passes, or of
 * the wall that came closest. What it says of an alternative alone stands with that alternative.
 */
function generalCautions(shown: JudgedWall | undefined): Caution[] {
  return shown ? cautionsOf(shown.verdicts.outcomes()).filter(isGeneral) : [];
}
