import { Refusal, showValue } from '../base/refusal.ts';
import { asciiText, visibleText } from '../conversation/visible-text.ts';
import { basisOf } from '../record/basis.ts';
import { type CheckedRecord, type CheckMeans, checkRecord } from '../record/check/check-record.ts';
import { checkLines, checkVerdict } from '../record/check/check-text.ts';
import { type FoundRecords, findRecords } from '../record/check/find-records.ts';
import { alignColumns } from './align-columns.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { letInterruptsIn } from './interrupts.ts';
import { loadKnowledge } from './knowledge.ts';
import { jsonDocument, writeResult } from './output.ts';
import { SOURCE_DIGEST, TOOL_VERSION } from './version.ts';

export type RecordCheckFlags = {
  readonly json?: true;
  readonly ascii?: true;
  readonly houseRules?: readonly string[];
};

type Line = { readonly file: string } & (
  | { readonly checked: CheckedRecord }
  | { readonly refused: readonly string[] }
);

/**
 * `record check FILE…`: works saved records out again. A folder stands for the records in it; then each gets one line,
 * and a file that can't be read doesn't stop the others.
 *
 * @returns 1 when a record no longer holds, 2 when one of several can't be read
 * @throws Refusal without a path, and for a single file that can't be read or worked out
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
      ? lines.flatMap((line) => ('checked' in line ? checkLines(line.checked) : line.refused)).join('\n')
      : asTable(lines, records);
  // Titles and file names come from outside and must not steer the terminal.
  const safe = json ? text : visibleText(text, true);
  await writeResult(ascii && !json ? asciiText(safe) : safe);
  if (lines.some((line) => 'refused' in line)) return EXIT.badInput;
  return lines.every((line) => 'checked' in line && line.checked.holds) ? EXIT.done : EXIT.answerIsNo;
}

/** One after the other: each is a second of solid work at worst. */
async function checkAll({ found }: FoundRecords, means: CheckMeans, isOne: boolean): Promise<Line[]> {
  const lines: Line[] = [];
  for (const one of found) {
    await letInterruptsIn();
    try {
      if ('refusal' in one) throw one.refusal;
      lines.push({ file: one.file, checked: await checkRecord(one.read, means) });
    } catch (error) {
      if (!(error instanceof Refusal) || isOne) throw error;
      lines.push({ file: one.file, refused: error.message.split('\n') });
    }
  }
  return lines;
}

function summaryOf(lines: readonly Line[], { passed_over }: FoundRecords) {
  const checked = lines.flatMap((line) => ('checked' in line ? [line.checked] : []));
  const count = (is: (one: CheckedRecord) => boolean) => checked.filter(is).length;
  return {
    records: lines.length,
    hold: count((one) => one.holds),
    same: count((one) => one.outcome === 'same'),
    figures_changed: count((one) => one.outcome === 'figures-changed'),
    different_decision: count((one) => one.outcome === 'different-decision'),
    altered: count((one) => one.is_altered || one.is_unexplained),
    unreadable: lines.length - checked.length,
    passed_over: passed_over.length,
  };
}

function asDocument(lines: readonly Line[], records: FoundRecords) {
  return {
    schema: 'cladwright-record-check/1',
    records: lines.map((line) =>
      'checked' in line ? { file: line.file, ...line.checked } : { file: line.file, refused: line.refused },
    ),
    passed_over: records.passed_over,
    summary: summaryOf(lines, records),
  };
}

function asTable(lines: readonly Line[], records: FoundRecords): string {
  const sum = summaryOf(lines, records);
  const table = alignColumns(
    ['record', 'status', 'today', 'decision'],
    lines.map((line) => {
      if ('refused' in line) return [line.file, '', `can't be read: ${line.refused[0] ?? ''}`, ''];
      const { decision, status, outcome } = line.checked;
      const now = outcome === 'different-decision' ? `; now ${decision.now.title}` : '';
      return [line.file, status, checkVerdict(line.checked), `${decision.then.title}${now}`];
    }),
  );
  const passed =
    sum.passed_over > 0
      ? `; ${sum.passed_over} files passed over (no records, or replaced by later ones)`
      : '';
  const unreadable = sum.unreadable > 0 ? `; ${sum.unreadable} can't be read` : '';
  return `${table}\n\n${sum.records} records: ${sum.same} the same, ${sum.figures_changed} with changed figures, ${sum.different_decision} decided differently today, ${sum.altered} altered${unreadable}${passed}. --json has the details.`;
}
