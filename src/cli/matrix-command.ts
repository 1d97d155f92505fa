import { Refusal, showValue } from '../base/refusal.ts';
import { workOutMatrix } from '../firm/matrix.ts';
import { matrixCsv } from '../firm/matrix-csv.ts';
import { matrixDocument } from '../firm/matrix-document.ts';
import { planMatrix } from '../firm/matrix-plan.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { parseJsonText } from './json-text.ts';
import { loadKnowledge } from './knowledge.ts';
import { progressOn } from './progress.ts';
import { type AxisFlags, readAxes } from './read-axes.ts';
import { readText, sourceName } from './read-text.ts';
import { putOut, type ReportFlags, readOutlet } from './report-forms.ts';
import { TOOL_VERSION } from './version.ts';

export type MatrixFlags = AxisFlags & ReportFlags & { readonly houseRules?: readonly string[] };

/**
 * `matrix FILE`: places by framings by finishes by budgets, each cell judged as an answer of its own, and the fewest
 * assemblies that cover them.
 *
 * @returns 1 when there is a cell where nothing passes
 * @throws Refusal for bad flags, a file that can't be read or worked on, house rules with an error
 */
export async function runMatrix(path: string | undefined, flags: MatrixFlags): Promise<ExitCode> {
  const axes = readAxes(flags);
  const outlet = readOutlet(flags);
  if (path === undefined) {
    throw new Refusal({
      field: 'FILE',
      value: showValue(path),
      accepted: 'Give a firm’s file or a scenario to start from, or "-" for standard input.',
    });
  }
  const name = sourceName(path);
  const plan = planMatrix(parseJsonText(await readText(path, 'FILE'), name), name, axes);
  const knowledge = await loadKnowledge({ housePacks: flags.houseRules ?? [] });
  const progress = progressOn('cells');
  const matrix = await workOutMatrix(plan, knowledge, {
    toolVersion: TOOL_VERSION,
    onProgress: progress.tell,
  }).finally(progress.end);
  await putOut(
    {
      what: 'Wall standard',
      word: 'matrix',
      document: matrixDocument(matrix),
      csv: matrixCsv(matrix),
      data: matrix,
    },
    outlet,
  );
  return matrix.standard.cells_where_nothing_passes > 0 ? EXIT.answerIsNo : EXIT.done;
}
