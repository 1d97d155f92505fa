import type { CodeEdition } from '../brief/brief.ts';
import type { Scenario } from '../brief/scenario.ts';
import { judgeScenario } from './judge-scenario.ts';
import type { Knowledge } from './judge-walls.ts';

/** In how many scenarios one rule fires on some wall, and in how many it holds back on some wall. */
export type RuleCoverage = {
  readonly rule: string;
  readonly fires_in: number;
  /** Scenarios with a wall that it does not fire on: kept, undecided or silent. */
  readonly holds_back_in: number;
  /** Scenarios in which it fires on no wall at all. */
  readonly absent_from: number;
};

/**
 * What the rules of the scenarios' editions do in them. A scenario counts once for a rule, however many walls it has.
 *
 * @param edition  judge by this edition and not by the scenario's own
 * @throws Refusal for an unknown place or values outside a method's range
 */
export async function ruleCoverage(
  scenarios: readonly Scenario[],
  known: Knowledge,
  edition?: CodeEdition,
): Promise<RuleCoverage[]> {
  const seen = new Map(known.rulebook.rules.map(({ rule }) => [rule.id, { fires: 0, holds: 0, absent: 0 }]));
  for (const scenario of scenarios) {
    const given = edition === undefined ? scenario : { ...scenario, code_edition: edition };
    const { brief, judged } = await judgeScenario(given, known);
    for (const { rule } of known.rulebook.rulesOf(brief.code_edition)) {
      const count = judged.walls.filter(({ verdicts }) => verdicts.fires(rule.id)).length;
      const entry = seen.get(rule.id);
      if (!entry) continue;
      if (count > 0) entry.fires += 1;
      else entry.absent += 1;
      if (count < judged.walls.length) entry.holds += 1;
    }
  }
  return [...seen].map(([rule, { fires, holds, absent }]) => ({
    rule,
    fires_in: fires,
    holds_back_in: holds,
    absent_from: absent,
  }));
}
