import { Refusal, showValue } from '../base/refusal.ts';
import { checkRules } from '../rulebook/check-rules.ts';
import { explainRule } from '../rulebook/explain-rule.ts';
import { listRules } from '../rulebook/list-rules.ts';
import { loadRulebook } from '../rulebook/load-rulebook.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import { findRulesDir } from '../rulebook/rules-dir.ts';
import { alignColumns } from './align-columns.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { jsonDocument, writeResult } from './output.ts';

export type RulesFlags = { readonly houseRules?: readonly string[]; readonly json?: true };

/**
 * `rules check`: every rule against its own examples and against the others.
 *
 * @throws Refusal with each problem found; then nothing goes to standard output
 */
export async function runRulesCheck(flags: RulesFlags): Promise<ExitCode> {
  const found = await checkRules(await rulebookOf(flags));
  if (found.problems.length > 0) {
    throw new Refusal(
      found.problems.map(({ file, rule, message }) => ({
        field: file,
        value: `rule ${showValue(rule)}`,
        accepted: message,
      })),
    );
  }
  await writeResult(
    `${found.packs} packs, ${found.rules} rules over ${found.facts} facts, ${found.examples} examples: no problem found.`,
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
 * `rules explain ID`.
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
  await writeResult(explainRule(await rulebookOf(flags), id));
  return EXIT.done;
}

function rulebookOf({ houseRules = [] }: RulesFlags): Promise<Rulebook> {
  return loadRulebook(findRulesDir(), { extraPacks: houseRules });
}
