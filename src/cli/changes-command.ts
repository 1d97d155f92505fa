import { Refusal, showValue } from '../base/refusal.ts';
import { type RuleSet, workOutChanges } from '../firm/changes.ts';
import { changesCsv } from '../firm/changes-csv.ts';
import { changesDocument } from '../firm/changes-document.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { loadKnowledge } from './knowledge.ts';
import { passedOverText } from './passed-over.ts';
import { progressOn } from './progress.ts';
import { readEdition } from './read-axes.ts';
import { readProjects } from './read-projects.ts';
import { putOut, type ReportFlags, readOutlet } from './report-forms.ts';
import { TOOL_VERSION } from './version.ts';

export type ChangesFlags = ReportFlags & {
  readonly fromEdition?: string;
  readonly toEdition?: string;
  readonly fromHouse?: readonly string[];
  readonly toHouse?: readonly string[];
  readonly houseRules?: readonly string[];
};

/**
 * `changes PATH…`: what two rule sets decide differently for the same projects.
 *
 * @returns 1 when a decision changes
 * @throws Refusal for bad flags, a file that is no scenario, house rules with an error
 */
export async function runChanges(paths: readonly string[], flags: ChangesFlags): Promise<ExitCode> {
  const { fromEdition, toEdition, fromHouse, toHouse, houseRules = [] } = flags;
  if ([fromEdition, toEdition, fromHouse, toHouse].every((flag) => flag === undefined)) {
    throw new Refusal({
      field: 'changes',
      value: showValue(undefined),
      accepted:
        'Say what is to be compared, for example --from-edition 2018 --to-edition 2024, or --to-house new.rules.json.',
    });
  }
  const editions = {
    from: fromEdition === undefined ? null : readEdition(fromEdition, '--from-edition'),
    to: toEdition === undefined ? null : readEdition(toEdition, '--to-edition'),
  };
  const outlet = readOutlet(flags);
  const passedOver: string[] = [];
  const projects = await readProjects(paths, (file) => passedOver.push(file));
  process.stderr.write(passedOverText(passedOver));
  const from: RuleSet = {
    edition: editions.from,
    knowledge: await loadKnowledge({ housePacks: [...houseRules, ...(fromHouse ?? [])] }),
  };
  const to: RuleSet = {
    edition: editions.to,
    knowledge: await loadKnowledge({ housePacks: [...houseRules, ...(toHouse ?? [])] }),
  };
  const progress = progressOn('judgements');
  const changes = await workOutChanges(projects, from, to, {
    toolVersion: TOOL_VERSION,
    onProgress: progress.tell,
  }).finally(progress.end);
  await putOut(
    {
      what: 'What changed',
      word: 'changes',
      document: changesDocument(changes),
      csv: changesCsv(changes),
      data: changes,
    },
    outlet,
  );
  return changes.decisions_changed > 0 ? EXIT.answerIsNo : EXIT.done;
}
