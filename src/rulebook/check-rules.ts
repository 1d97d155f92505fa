import { showValue } from '../base/refusal.ts';
import { misfitOf } from './fact-dictionary.ts';
import { checkLimits, STRENGTH } from './limit-direction.ts';
import type { LoadedRule } from './loaded-rule.ts';
import { nearestNames } from './nearest-name.ts';
import { type FiredExample, findContradictions, findDuplicates, type RuleProblem } from './rule-conflicts.ts';
import { RuleEngine } from './rule-engine.ts';
import type { Facts, Rule } from './rule-schema.ts';
import type { Rulebook } from './rulebook.ts';
import { appliesTruth, type RuleState, stateOf, truthOf } from './three-valued.ts';

export type RuleCheck = {
  readonly packs: number;
  readonly rules: number;
  readonly facts: number;
  readonly examples: number;
  /** Sorted by file, then rule; empty when the rulebook is sound. */
  readonly problems: readonly RuleProblem[];
};

type Example = Rule['examples']['fires'][number];
const KINDS = ['fires', 'silent', 'undecided'] as const;
type Kind = (typeof KINDS)[number];

const ALLOWED: Readonly<Record<Kind, readonly RuleState[]>> = {
  fires: ['fires'],
  silent: ['silent', 'pass'],
  undecided: ['open'],
};
const STATE_WORDS: Readonly<Record<RuleState, string>> = {
  silent: 'it does not apply',
  pass: 'it applies and is kept',
  fires: 'it fires',
  open: 'it is undecided',
};

/**
 * Puts a loaded rulebook to the test: runs every example, and looks for rules that can't fire, rules that say the
 * same twice, and rules that forbid and prefer on the same facts. What can't even be loaded (unknown facts and
 * operators, values outside a fact's list) is refused by `loadRulebook` before.
 */
export async function checkRules(rulebook: Rulebook): Promise<RuleCheck> {
  const engines = new Map<Rule, RuleEngine>();
  const runRule = async (rule: Rule, facts: Facts): Promise<RuleState> => {
    const engine = engines.get(rule) ?? new RuleEngine([rule]);
    engines.set(rule, engine);
    const [state] = await engine.run(facts);
    return state ?? 'silent';
  };
  const run = ({ rule }: LoadedRule, facts: Facts) => runRule(rule, facts);
  const problems: RuleProblem[] = [];
  const fired: FiredExample[] = [];
  let examples = 0;
  for (const loaded of rulebook.rules) {
    const report = (message: string) => problems.push({ file: loaded.file, rule: loaded.rule.id, message });
    let firedHere = 0;
    for (const kind of KINDS) {
      for (const example of loaded.rule.examples[kind] ?? []) {
        examples += 1;
        const wrong = wrongFacts(example, loaded, rulebook);
        for (const message of wrong) report(`example "${example.name}": ${message}`);
        if (wrong.length > 0) continue;
        // Examples speak of the rule as it was written, not of what a firm made of it.
        const state = await runRule(loaded.tightened?.before ?? loaded.rule, example.facts);
        const isStricter = loaded.tightened !== null && loaded.rule.verdict !== 'prefer';
        if (
          state === 'fires' &&
          isStricter &&
          (await run(loaded, example.facts)) !== 'fires' &&
          !isTakenOver(example, loaded, rulebook)
        ) {
          report(
            `example "${example.name}" fires as shipped, no longer does as a house pack has it, and no rule as strong takes over.`,
          );
        }
        if (state === 'fires') {
          firedHere += 1;
          fired.push({ loaded, name: example.name, facts: example.facts });
        }
        if (!ALLOWED[kind].includes(state)) {
          report(`example "${example.name}" stands under "${kind}", but ${STATE_WORDS[state]}.`);
        }
      }
    }
    if (firedHere === 0) report('unreachable: none of its examples makes it fire.');
  }
  problems.push(...checkLimits(rulebook.rules, rulebook.limits, 'limits.json'));
  problems.push(...findDuplicates(rulebook.rules));
  problems.push(...(await findContradictions(rulebook.rules, fired, run)));
  problems.sort((a, b) => compare(a.file, b.file) || compare(a.rule, b.rule));
  return {
    packs: rulebook.packs.length,
    rules: rulebook.rules.length,
    facts: rulebook.facts.size,
    examples,
    problems,
  };
}

/**
 * Whether in each of its editions another rule speaks where a firm's stricter limit silences this one (a band of caution
 * below a ban): as strong as this was shipped, reading a limit that was moved, and not kept by the example's facts.
 */
function isTakenOver({ facts }: Example, { rule, tightened }: LoadedRule, { rules }: Rulebook): boolean {
  if (!tightened) return false;
  const moved = tightened.limits.map(({ limit }) => limit);
  const speaking = rules.filter((other) => {
    if (other.rule.id === rule.id || !other.limits.some(({ limit }) => moved.includes(limit))) return false;
    if (STRENGTH[other.rule.verdict] < STRENGTH[tightened.before.verdict]) return false;
    const known = Object.fromEntries(other.reads.map((id) => [id, facts[id] ?? null]));
    const state = stateOf(appliesTruth(other.rule, known), truthOf(other.rule.conditions, known));
    return state === 'fires' || state === 'open';
  });
  return rule.editions.every((edition) => speaking.some((other) => other.rule.editions.includes(edition)));
}

/** An example gives exactly the facts that its rule reads, each of its type. */
function wrongFacts(example: Example, { reads }: LoadedRule, rulebook: Rulebook): string[] {
  const wrong = reads
    .filter((id) => !Object.hasOwn(example.facts, id))
    .map((id) => `${id} is missing; the rule reads it.`);
  for (const [id, value] of Object.entries(example.facts)) {
    const entry = rulebook.facts.find(id);
    if (!entry) wrong.push(`${id} is no fact. ${rulebook.facts.unknownFact(id)}`);
    else if (!reads.includes(id)) {
      const [near] = nearestNames(id, reads, 1);
      wrong.push(`${id} is given, but the rule doesn't read it${near ? ` (it reads ${near})` : ''}.`);
    } else {
      const misfit = misfitOf(entry, value);
      if (misfit) wrong.push(`${id}: ${showValue(value)} is not accepted. ${misfit}`);
    }
  }
  return wrong;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

export type { RuleProblem };
