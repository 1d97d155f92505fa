import { Refusal } from '../base/refusal.ts';
import type { Brief } from '../brief/brief.ts';
import type { OpenAssumption } from '../brief/resolve-brief.ts';
import { resolveSite } from '../site/resolve-site.ts';
import type { Site } from '../site/site.ts';
import type { Advice } from './advice-schema.ts';
import { firstChoice } from './choose-alternatives.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { isTwin, type Reading, readingOf } from './readings.ts';
import { buildTitle } from './titles.ts';

export type Sensitivity = {
  /** For each assumption: whether another reading of it changes the first choice. */
  readonly changes: readonly boolean[];
  readonly sentences: Advice['would_change_the_answer'];
  /** What each reading that changes the first choice does to the wall that would have been built. */
  readonly readings: readonly Reading[];
};

/**
 * Tries the other readings of every assumption by judging all walls again, and says what the first choice would then
 * be. Nothing is guessed: an assumption without another reading to try, or with one that lies outside a method's range, is
 * said to be able to change the answer.
 */
export async function trySensitivity(
  judged: Judged,
  assumptions: readonly OpenAssumption[],
  knowledge: Knowledge,
): Promise<Sensitivity> {
  const before = firstChoice(judged);
  const changes: boolean[] = [];
  const sentences: Advice['would_change_the_answer'] = [];
  const readings: Reading[] = [];
  for (const assumption of assumptions) {
    let changed = assumption.alternatives.length === 0;
    for (const alternative of assumption.alternatives) {
      const other = await judgedUnless(alternative.change, judged, knowledge);
      if (!other) {
        changed = true;
        continue;
      }
      const after = firstChoice(other);
      if (isSameChoice(before, after)) continue;
      changed = true;
      sentences.push({ if: alternative.label, then: thenSentence(after) });
      readings.push(readingOf(assumption, alternative.label, before, other));
    }
    changes.push(changed);
  }
  return { changes, sentences, readings };
}

/** The walls judged for another reading; null where no method covers it (an edition without this zone, say). */
async function judgedUnless(
  change: Partial<Brief>,
  judged: Judged,
  knowledge: Knowledge,
): Promise<Judged | null> {
  const known = byLining(change, judged);
  if (known) return known;
  const brief = { ...judged.context.brief, ...change };
  try {
    return await judgeWalls(brief, await siteFor(brief, judged), knowledge, judged);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** What may be behind the lining was tried when the walls were judged. */
function byLining(change: Partial<Brief>, { linings }: Judged): Judged | null {
  const { interior_vapour_retarder: kind, ...others } = change;
  if (kind === undefined || Object.keys(others).length > 0) return null;
  return linings.find(({ retarder }) => retarder === kind)?.judged ?? null;
}

/** An edition may put the place into another zone. Where it doesn't, the site stays the same object, for its water. */
async function siteFor(brief: Brief, { context }: Judged): Promise<Site> {
  if (brief.code_edition === context.brief.code_edition) return context.site;
  const site = await resolveSite(brief.place, brief.code_edition);
  const ofPhysics = ({ climate_zone, climate }: Site) => JSON.stringify([climate_zone, climate]);
  return ofPhysics(site) === ofPhysics(context.site) ? context.site : site;
}

/** The same cladding over the same boards: another barrier or buck is a detail of the same choice. */
function isSameChoice(a: JudgedWall | null, b: JudgedWall | null): boolean {
  return a && b ? isTwin(a, b) : a === b;
}

function thenSentence(after: JudgedWall | null): string {
  if (!after) return 'nothing on the list passes any more';
  return `the first choice becomes ${after.candidate.cladding.label} over ${buildTitle(after.candidate.build)}`;
}
