import type { Scenario } from '../brief/scenario.ts';
import type { RuleOutcome, Verdict } from '../rulebook/rule-schema.ts';
import { chooseAlternatives } from './choose-alternatives.ts';
import { judgeScenario } from './judge-scenario.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from './judge-walls.ts';
import { wallTitle } from './titles.ts';

/** What one rule did among all walls of a scenario. */
export type RuleInScenario = {
  readonly name: string;
  readonly edition: string;
  readonly walls: number;
  /** False when the rule isn't of the edition that the scenario is judged by. */
  readonly is_in_force: boolean;
  /** Walls that this rule alone rules out. */
  readonly forbids_alone: number;
  /** Walls that it rules out together with others. */
  readonly forbids_together: number;
  readonly counts: Readonly<Record<Exclude<Verdict, 'forbid'> | 'silent', number>>;
  readonly first: FirstChoice | null;
  /** The first choice when all walls are judged again without this rule. */
  readonly first_without: FirstChoice | null;
  readonly decides_first_choice: boolean;
};

export type FirstChoice = {
  readonly title: string;
  /** What the rule says of it, with the facts it read; null where it is silent. */
  readonly outcome: RuleOutcome | null;
};

/**
 * Where a rule decided something: judges a scenario with and without it.
 *
 * @param ruleId  id of a rule in force
 * @throws Refusal for an unknown place or values outside a method's range
 */
export async function ruleInScenario(
  ruleId: string,
  scenario: Scenario,
  known: Knowledge,
): Promise<RuleInScenario> {
  const { brief, judged, knowledge } = await judgeScenario(scenario, known);
  const { rulebook } = knowledge;
  const isInForce = rulebook.find(ruleId)?.rule.editions.includes(brief.code_edition) ?? false;
  const others = { ...knowledge, rulebook: rulebook.without(ruleId) };
  const without = await judgeWalls(brief, judged.context.site, others, judged);
  const counts = { pass: 0, caution: 0, prefer: 0, undecided: 0, silent: 0 };
  let alone = 0;
  let together = 0;
  for (const { verdicts, forbids } of judged.walls) {
    const verdict = verdicts.verdictOf(ruleId);
    if (verdict !== 'forbid') counts[verdict] += 1;
    else if (forbids === 1) alone += 1;
    else together += 1;
  }
  const first = firstOf(judged);
  const firstWithout = firstOf(without);
  // The same wall, but as this rule sees it.
  const seen = judged.walls.find(({ candidate }) => candidate.id === firstWithout?.candidate.id) ?? null;
  return {
    name: brief.name,
    edition: brief.code_edition,
    walls: judged.walls.length,
    is_in_force: isInForce,
    forbids_alone: alone,
    forbids_together: together,
    counts,
    first: told(first, ruleId),
    first_without: told(seen, ruleId),
    decides_first_choice: first?.candidate.id !== firstWithout?.candidate.id,
  };
}

function firstOf({ admitted }: Judged): JudgedWall | null {
  return chooseAlternatives(admitted, 1)[0] ?? null;
}

function told(wall: JudgedWall | null, ruleId: string): FirstChoice | null {
  return wall ? { title: wallTitle(wall.candidate), outcome: wall.verdicts.outcome(ruleId) ?? null } : null;
}
