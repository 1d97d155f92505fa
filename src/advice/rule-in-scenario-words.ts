import type { FactIndex } from '../rulebook/fact-dictionary.ts';
import { formatFact } from '../rulebook/format-fact.ts';
import type { FirstChoice, RuleInScenario } from './rule-in-scenario.ts';

/** What a rule did in one scenario, as plain lines. */
export function ruleInScenarioLines(found: RuleInScenario, index: FactIndex): string[] {
  const head = `  ${found.name} (${formatWhole(found.walls)} walls, edition ${found.edition})`;
  if (!found.is_in_force) return [head, '    - not a rule of this edition'];
  return [
    head,
    ...countLines(found).map((line) => `    - ${line}`),
    ...firstLines(found, index).map((line) => `    - ${line}`),
  ];
}

function countLines({ counts, forbids_alone, forbids_together, walls }: RuleInScenario): string[] {
  const said = (count: number, words: string) =>
    count === 0 ? [] : [`${words} ${formatWhole(count)} ${count === 1 ? 'wall' : 'walls'}`];
  if (counts.silent === walls) return ['has nothing to say about any of them'];
  return [
    ...said(forbids_alone, 'alone rules out'),
    ...said(forbids_together, 'together with other rules rules out'),
    ...said(counts.caution, 'cautions on'),
    ...said(counts.undecided, 'leaves open on'),
    ...said(counts.prefer, 'prefers'),
    ...said(counts.pass, 'is kept by'),
    ...said(counts.silent, 'has nothing to say about'),
  ];
}

function firstLines(
  { first, first_without, decides_first_choice }: RuleInScenario,
  index: FactIndex,
): string[] {
  const now = first ? [`first choice: ${first.title}; ${verdictWords(first, index)}`] : ['no wall passes'];
  if (!decides_first_choice)
    return [...now, 'does not decide the first choice: judged without it, it is the same'];
  const then = first_without
    ? `decides the first choice: judged without it, that would be ${first_without.title}; ${verdictWords(first_without, index)}`
    : 'decides the first choice: judged without it, no wall would pass';
  return [...now, then];
}

function formatWhole(count: number): string {
  return count.toLocaleString('en-US');
}

function verdictWords({ outcome }: FirstChoice, index: FactIndex): string {
  if (!outcome) return 'the rule is silent there';
  const facts = Object.entries(outcome.facts).map(([id, value]) => {
    const entry = index.find(id);
    return `${id} ${entry ? formatFact(entry, value) : String(value)}`;
  });
  return `the rule says ${outcome.verdict} there (${facts.join(', ')})`;
}
