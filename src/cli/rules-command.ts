import { Refusal, showValue } from '../base/refusal.ts';
import { readScenario } from '../brief/read-scenario.ts';
import type { Scenario } from '../brief/scenario.ts';
import { visibleText } from '../conversation/visible-text.ts';
import { checkRules } from '../rulebook/check-rules.ts';
import { editionGaps } from '../rulebook/edition-gaps.ts';
import { explainLimit } from '../rulebook/explain-limit.ts';
import { explainRule } from '../rulebook/explain-rule.ts';
import { listRules } from '../rulebook/list-rules.ts';
import { loadCodeTables } from '../rulebook/load-code-tables.ts';
import { loadRulebook } from '../rulebook/load-rulebook.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import { findRulesDir } from '../rulebook/rules-dir.ts';
import { alignColumns } from './align-columns.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { parseJsonText } from './json-text.ts';
import { jsonDocument, writeResult } from './output.ts';
import { readText, sourceName } from './read-text.ts';

export type RulesFlags = {
  readonly houseRules?: readonly string[];
  readonly json?: true;
  /** Scenario files. */
  readonly in?: readonly string[];
};

/**
 * `rules check`: every rule against its own examples and against the others, and every edition against silence.
 *
 * @throws Refusal with each problem found; then nothing goes to standard output
 */
export async function runRulesCheck(flags: RulesFlags): Promise<ExitCode> {
  const rulebook = await rulebookOf(flags);
  const found = await checkRules(rulebook);
  const issues = [
    ...found.problems.map(({ file, rule, message }) => ({
      field: file,
      value: `rule ${showValue(rule)}`,
      accepted: message,
    })),
    ...editionGaps(rulebook, await loadCodeTables(findRulesDir())),
  ];
  if (issues.length > 0) throw new Refusal(issues);
  const coverage = flags.in ? await coverageText(await readScenarios(flags.in), flags) : '';
  await writeResult(
    `${found.packs} packs, ${found.rules} rules over ${found.facts} facts, ${found.examples} examples: no problem found.${coverage}`,
  );
  return EXIT.done;
}

/** `rules list`: one line for each rule, or JSON. */
export async function runRulesList(flags: RulesFlags): Promise<ExitCode> {
  const rows = listRules(await rulebookOf(flags));
  await writeResult(
    flags.json
      ? jsonDocument(rows)
      : alignColumns(
          ['rule', 'verdict', 'editions', 'provenance', 'citation'],
          rows.map((row) => [row.id, row.verdict, row.editions.join(' '), row.provenance, row.citation]),
        ),
  );
  return EXIT.done;
}

/**
 * `rules explain ID`: a rule, or a named limit; with scenarios, what the rule decided in each.
 *
 * @throws Refusal without an id and for an unknown one
 */
export async function runRulesExplain(id: string | undefined, flags: RulesFlags): Promise<ExitCode> {
  if (id === undefined) {
    throw new Refusal({
      field: 'ID',
      value: showValue(id),
      accepted: 'Give the id of a rule; "rules list" shows them all.',
    });
  }
  const rulebook = await rulebookOf(flags);
  const limit = explainLimit(rulebook, id);
  if (limit !== undefined && flags.in) {
    throw new Refusal({
      field: '--in',
      value: showValue(id),
      accepted: 'This is a limit; give the id of one of the rules that read it.',
    });
  }
  const text = limit ?? explainRule(rulebook, id);
  const decided = flags.in ? await decidedText(id, await readScenarios(flags.in), flags) : '';
  // Titles and reasons of a house pack are somebody's own text.
  await writeResult(visibleText(text + decided, true));
  return EXIT.done;
}

function rulebookOf({ houseRules = [] }: RulesFlags): Promise<Rulebook> {
  return loadRulebook(findRulesDir(), { extraPacks: houseRules });
}

/** Read one after the other, so that messages come in order. */
async function readScenarios(paths: readonly string[]): Promise<Scenario[]> {
  const scenarios: Scenario[] = [];
  for (const path of paths) {
    const data = parseJsonText(await readText(path, '--in'), sourceName(path));
    scenarios.push(readScenario(data, sourceName(path)));
  }
  return scenarios;
}

/** Calculators, catalogue and site data are loaded only where walls are judged. */
async function decidedText(id: string, scenarios: readonly Scenario[], flags: RulesFlags): Promise<string> {
  const [{ loadKnowledge }, { ruleInScenario }, { ruleInScenarioLines }] = await Promise.all([
    import('./knowledge.ts'),
    import('../advice/rule-in-scenario.ts'),
    import('../advice/rule-in-scenario-words.ts'),
  ]);
  const knowledge = await loadKnowledge({ housePacks: flags.houseRules ?? [] });
  const lines: string[] = ['', '', 'Where it decided something'];
  for (const scenario of scenarios) {
    const found = await ruleInScenario(id, scenario, knowledge);
    lines.push(...ruleInScenarioLines(found, knowledge.rulebook.facts));
  }
  return lines.join('\n');
}

async function coverageText(scenarios: readonly Scenario[], flags: RulesFlags): Promise<string> {
  const [{ loadKnowledge }, { ruleCoverage }] = await Promise.all([
    import('./knowledge.ts'),
    import('../advice/rule-coverage.ts'),
  ]);
  const knowledge = await loadKnowledge({ housePacks: flags.houseRules ?? [] });
  const coverage = await ruleCoverage(scenarios, knowledge);
  const nowhere = coverage.filter(({ fires_in }) => fires_in === 0).map(({ rule }) => rule);
  const always = coverage
    .filter(({ holds_back_in, fires_in }) => holds_back_in === 0 && fires_in > 0)
    .map(({ rule }) => rule);
  return [
    '',
    `Over ${scenarios.length} ${scenarios.length === 1 ? 'scenario' : 'scenarios'} ${coverage.length - nowhere.length - always.length} rules fire on some walls and hold back on others.`,
    `On every wall: ${always.join(', ') || 'none'}.`,
    `On no wall: ${nowhere.join(', ') || 'none'}.`,
  ].join('\n');
}
