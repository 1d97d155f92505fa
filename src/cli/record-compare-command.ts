import { advise } from '../advice/advise.ts';
import type { Knowledge } from '../advice/judge-walls.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { readScenario } from '../brief/read-scenario.ts';
import { asciiText } from '../conversation/visible-text.ts';
import { compareAnswers, type Side } from '../record/compare/compare-answers.ts';
import { comparisonDocument } from '../record/compare/comparison-document.ts';
import { asRecord, readJsonFile, schemaName } from '../record/read-record.ts';
import { documentText } from '../record/record-text.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { letInterruptsIn } from './interrupts.ts';
import { loadKnowledge } from './knowledge.ts';
import { jsonDocument, textWidth, writeResult } from './output.ts';
import type { RecordCheckFlags } from './record-check-command.ts';
import { TOOL_VERSION } from './version.ts';

/**
 * `record compare A B`: two records or scenarios side by side. A record is taken as it was saved, a scenario is
 * answered by today's rules.
 *
 * @throws Refusal without two files, and for one that is neither record nor scenario
 */
export async function runRecordCompare(
  [a, b]: readonly string[],
  { json, ascii, houseRules = [] }: RecordCheckFlags,
): Promise<ExitCode> {
  if (a === undefined || b === undefined) {
    throw new Refusal({
      field: a === undefined ? 'A' : 'B',
      value: showValue(undefined),
      accepted: 'Give two files, each a record or a scenario.',
    });
  }
  // Rules are loaded only when a scenario has to be answered.
  let loading: Promise<Knowledge> | undefined;
  const knowledge = () => {
    loading ??= loadKnowledge({ housePacks: houseRules });
    return loading;
  };
  const found = compareAnswers(await sideOf(a, knowledge), await sideOf(b, knowledge));
  const text = json
    ? jsonDocument(found)
    : documentText(
        { ...comparisonDocument(found), title: `Comparison: ${found.a.title} and ${found.b.title}` },
        textWidth(),
      );
  await writeResult(ascii && !json ? asciiText(text) : text);
  return EXIT.done;
}

async function sideOf(file: string, knowledge: () => Promise<Knowledge>): Promise<Side> {
  const data = await readJsonFile(file);
  if (schemaName(data)?.startsWith('cladwright-scenario/')) {
    const scenario = readScenario(data, file);
    const advice = await advise(scenario, await knowledge(), { top: 3, toolVersion: TOOL_VERSION });
    await letInterruptsIn();
    return { file, kind: 'scenario', title: advice.name, state: 'answered now', advice };
  }
  const { record, isAltered } = asRecord(data, file);
  const altered = isAltered ? ', ALTERED after it was saved' : '';
  return {
    file,
    kind: 'record',
    title: record.title,
    state: `${record.status}, revision ${record.revision}${altered}`,
    advice: record.advice,
  };
}
