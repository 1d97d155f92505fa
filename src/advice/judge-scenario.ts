import type { Brief } from '../brief/brief.ts';
import { resolveBrief } from '../brief/resolve-brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { resolveSite } from '../site/resolve-site.ts';
import { houseDefaults } from './house-effect.ts';
import { type Judged, judgeWalls, type Knowledge } from './judge-walls.ts';
import { withOwnPrices } from './own-prices.ts';

/** A scenario's walls as its answer judges them, without writing the answer. */
export type JudgedScenario = {
  readonly brief: Brief;
  readonly judged: Judged;
  /** With the prices of this answer. */
  readonly knowledge: Knowledge;
};

/** @throws Refusal for an unknown place or values outside a method's range */
export async function judgeScenario(scenario: Scenario, known: Knowledge): Promise<JudgedScenario> {
  const { brief } = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const knowledge = withOwnPrices(known, brief);
  const judged = await judgeWalls(brief, await resolveSite(brief.place, brief.code_edition), knowledge);
  return { brief, judged, knowledge };
}
