import { houseDefaults } from '../advice/house-effect.ts';
import type { Knowledge } from '../advice/judge-walls.ts';
import { withOwnPrices } from '../advice/own-prices.ts';
import { answerContext } from '../assessment/answer-context.ts';
import { assessor } from '../assessment/assess.ts';
import { type Issue, Refusal } from '../base/refusal.ts';
import type { Brief } from '../brief/brief.ts';
import { type OpenAssumption, resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { resolveSite } from '../site/resolve-site.ts';
import type { Site } from '../site/site.ts';

/** A scenario made ready to be judged. */
export type ResolvedWall = {
  /** What it is to be judged with. */
  readonly knowledge: Knowledge;
  readonly brief: Brief;
  readonly site: Site;
  readonly assumptions: readonly OpenAssumption[];
};

/**
 * Brief and site of every scenario, each tried against the calculators' ranges, so that a wall that can't be worked on
 * is found before the long part of the work begins.
 *
 * @param nameOf  how messages call a scenario
 * @throws Refusal with the issues of every scenario that can't be worked on
 */
export async function resolveWalls<T extends { readonly scenario: Scenario }>(
  items: readonly T[],
  nameOf: (item: T) => string,
  knowledge: Knowledge,
): Promise<ResolvedWall[]> {
  const resolved: ResolvedWall[] = [];
  const issues = new Map<string, Issue>();
  for (const item of items) {
    try {
      resolved.push(await resolveWall(item.scenario, knowledge));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      for (const issue of error.issues) {
        const named = { ...issue, field: `${nameOf(item)}: ${issue.field}` };
        issues.set(`${named.field} ${issue.value} ${issue.accepted}`, named);
      }
    }
  }
  if (issues.size > 0) throw new Refusal([...issues.values()]);
  return resolved;
}

async function resolveWall(scenario: Scenario, known: Knowledge): Promise<ResolvedWall> {
  const { brief, assumptions } = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const knowledge = withOwnPrices(known, brief);
  const site = await resolveSite(brief.place, brief.code_edition);
  const context = answerContext(brief, site, knowledge.tables, knowledge.catalogue);
  assessor(context);
  return { knowledge, brief, site, assumptions };
}
