import { describeIssue, Refusal, showValue } from '../base/refusal.ts';
import { asciiText, visibleText } from '../conversation/visible-text.ts';
import { basisOf } from '../record/basis.ts';
import { type CheckedFile, checkListLines, summaryOf } from '../record/check/check-list.ts';
import { type CheckMeans, checkRecord } from '../record/check/check-record.ts';
import { checkLines } from '../record/check/check-text.ts';
import { type FoundRecords, findRecords } from '../record/check/find-records.ts';
import { wrapLines } from '../record/record-text.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { letInterruptsIn } from './interrupts.ts';
import { loadKnowledge } from './knowledge.ts';
import { jsonDocument, textWidth, writeResult } from './output.ts';
import { progressOn } from './progress.ts';
import { SOURCE_DIGEST, TOOL_VERSION } from './version.ts';

export type RecordCheckFlags = {
  readonly json?: true;
  readonly ascii?: true;
  readonly houseRules?: readonly string[];
};

/**
 * `record check FILE…`: works saved records out again. A folder stands for the records in it. Several are
 * listed by what came of them, and one that can't be read doesn't stop the others.
 *
 * @returns 1 when a record no longer holds, or one of several can't be read
 * @throws Refusal without a path or for one that isn't there, and for a single file that can't be read or worked out
 */
export async function runRecordCheck(
  paths: readonly string[],
  { json, ascii, houseRules = [] }: RecordCheckFlags,
): Promise<ExitCode> {
  if (paths.length === 0) {
    throw new Refusal({
      field: 'FILE',
      value: showValue(undefined),
      accepted: 'Give saved records, the .json files, or a folder of them.',
    });
  }
  const records = await findRecords(paths);
  const [only] = records.found;
  const isOne = records.found.length === 1 && records.passed_over.length === 0;
  if (isOne && only && 'refusal' in only) throw only.refusal;
  const knowledge = await loadKnowledge({ housePacks: houseRules });
  const means = { knowledge, basis: basisOf(knowledge, SOURCE_DIGEST), toolVersion: TOOL_VERSION };
  const lines = await checkAll(records, means, isOne);
  const text = json
    ? jsonDocument(asDocument(lines, records))
    : isOne
      ? wrapped(lines.flatMap((line) => ('checked' in line ? checkLines(line.checked) : [])))
      : wrapped(checkListLines(lines, records.passed_over.length));
  await writeResult(ascii && !json ? asciiText(text) : text);
  return lines.every((line) => 'checked' in line && line.checked.holds) ? EXIT.done : EXIT.answerIsNo;
}

/** Titles and file names come from outside and must not steer the terminal. */
function wrapped(lines: readonly string[]): string {
  return wrapLines(
    lines.map((line) => visibleText(line)),
    textWidth(),
  ).join('\n');
}

/** One after the other: each is a second of solid work at worst. */
async function checkAll({ found }: FoundRecords, means: CheckMeans, isOne: boolean): Promise<CheckedFile[]> {
  const lines: CheckedFile[] = [];
  const progress = progressOn('records');
  try {
    for (const [i, one] of found.entries()) {
      await letInterruptsIn();
      if (i > 0) progress.tell(i, found.length);
      try {
        if ('refusal' in one) throw one.refusal;
        lines.push({ file: one.file, checked: await checkRecord(one.read, means) });
      } catch (error) {
        if (!(error instanceof Refusal) || isOne) throw error;
        lines.push({ file: one.file, refused: error.issues });
      }
    }
    return lines;
  } finally {
    progress.end();
  }
}

function asDocument(files: readonly CheckedFile[], { passed_over }: FoundRecords) {
  return {
    schema: 'cladwright-record-check/1',
    records: files.map((one) =>
      'checked' in one
        ? { file: one.file, ...one.checked }
        : { file: one.file, refused: one.refused.map(describeIssue) },
    ),
    passed_over,
    summary: summaryOf(files, passed_over.length),
  };
}
