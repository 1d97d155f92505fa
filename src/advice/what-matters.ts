import type { Catalogue } from '../assembly/catalogue.ts';
import { Refusal } from '../base/refusal.ts';
import { resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { resolveSite } from '../site/resolve-site.ts';
import type { Site } from '../site/site.ts';
import { firstChoice } from './choose-alternatives.ts';
import { houseDefaults } from './house-effect.ts';
import { type Judged, judgeWalls, type Knowledge } from './judge-walls.ts';
import { openReadings } from './open-readings.ts';
import { withOwnPrices } from './own-prices.ts';
import { isTwin, readingOf } from './readings.ts';
import { wallTitle } from './titles.ts';

/** An open field and what hangs on it. */
export type Matter = {
  /** Path in the scenario. */
  readonly field: string;
  /** Whether any reading changes the first choice: where not, it needn't be asked for the choice's sake. */
  readonly changesFirst: boolean;
  /**
   * What is lost at worst by building the first choice as things are assumed, where the field turns out otherwise: a
   * difference of scores, 1 where that wall no longer passes, 0 where nothing is lost.
   */
  readonly effect: number;
  /** The reading that costs most, and what would be first under it; null where nothing passes. */
  readonly worst: { readonly reading: string; readonly winner: string | null } | null;
};

/**
 * Which of the answers that are still open matter most to the first choice, most telling first: what to ask next, and
 * when to stop asking. Works on a thinned market (`thinned`), so it is an estimate for the order of questions and never
 * part of an answer; `advise` tries the whole market.
 *
 * @param fields  the open fields to look at; all of them when left out
 * @throws Refusal for a scenario that `advise` would refuse
 */
export async function whatMatters(
  scenario: Scenario,
  known: Knowledge,
  fields?: readonly string[],
): Promise<Matter[]> {
  const { brief } = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const knowledge = withOwnPrices(known, brief);
  const market: Knowledge = { ...knowledge, catalogue: thinned(knowledge.catalogue) };
  const now = await judged(scenario, market);
  const built = firstChoice(now);
  const matters: Matter[] = [];
  for (const { field, readings } of openReadings(scenario)) {
    if (fields && !fields.includes(field)) continue;
    let matter: Matter = { field, changesFirst: false, effect: 0, worst: null };
    for (const { words, scenario: other } of readings) {
      const after = await unlessRefused(() => judged(other, market, now));
      if (!after) continue;
      const { winner, stillPasses, loss } = readingOf({ field, value: null, why: '' }, words, built, after);
      const isSame = winner && built ? isTwin(winner, built) : winner === built;
      if (isSame) continue;
      const effect = stillPasses ? (loss ?? 0) : 1;
      const worst = { reading: words, winner: winner && wallTitle(winner.candidate) };
      matter =
        effect >= matter.effect
          ? { field, changesFirst: true, effect, worst }
          : { ...matter, changesFirst: true };
    }
    matters.push(matter);
  }
  return matters.sort(
    (a, b) =>
      b.effect - a.effect || Number(b.changesFirst) - Number(a.changesFirst) || (a.field < b.field ? -1 : 1),
  );
}

async function judged(scenario: Scenario, market: Knowledge, before?: Judged): Promise<Judged> {
  const { brief } = resolveBrief(scenario, houseDefaults(market.rulebook.house));
  const known = before?.context;
  const site: Site =
    known && known.brief.code_edition === brief.code_edition
      ? known.site
      : await resolveSite(brief.place, brief.code_edition);
  return judgeWalls(brief, site, market, before);
}

async function unlessRefused<T>(work: () => Promise<T>): Promise<T | null> {
  try {
    return await work();
  } catch (error) {
    // A filling that no table has, an edition without this zone: that reading can't be tried, the others can.
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/**
 * A market of a twentieth: of each family one insulation in single boards, one open barrier for each way of hanging a
 * cladding, and in new work the choice between a Class III and a Class II lining.
 */
export function thinned(catalogue: Catalogue): Catalogue {
  const insulations = firstOfEach(catalogue.insulations, ({ family }) => family);
  const open = catalogue.barriers.filter(({ permeance_perm }) => permeance_perm.value > TIGHT_PERM);
  const offered = firstOfEach(
    catalogue.retarders.filter((retarder) => retarder.is_offered_in_new_work),
    (retarder) => retarder.class,
  ).filter((retarder) => retarder.class === 'class-iii' || retarder.class === 'class-ii');
  return {
    ...catalogue,
    builds: catalogue.builds.filter(
      ({ insulation, boards_in }) => boards_in.length === 1 && insulations.includes(insulation),
    ),
    barriers: firstOfEach(open, ({ behind }) => behind.join()),
    retarders: catalogue.retarders.map((retarder) =>
      offered.includes(retarder) ? retarder : { ...retarder, is_offered_in_new_work: false },
    ),
  };
}

/** Class I: up to 0.1 perm. */
const TIGHT_PERM = 0.1;

/** The entry of each kind that stands first by id, so that the order of a catalogue doesn't matter. */
function firstOfEach<T extends { readonly id: string }>(
  list: readonly T[],
  kindOf: (entry: T) => string,
): T[] {
  const first = new Map<string, T>();
  for (const entry of [...list].sort((a, b) => (a.id < b.id ? -1 : 1)))
    if (!first.has(kindOf(entry))) first.set(kindOf(entry), entry);
  return [...first.values()];
}
