import { Refusal, showValue } from '../base/refusal.ts';
import { asciiText } from '../conversation/visible-text.ts';
import { readRecord } from '../record/read-record.ts';
import { recordText } from '../record/record-text.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { textWidth, writeResult } from './output.ts';

/**
 * `record show FILE`: a saved record as text.
 *
 * @throws Refusal without a file, and for one that can't be read or is no record
 */
export async function runRecordShow(
  path: string | undefined,
  { ascii }: { readonly ascii?: true },
): Promise<ExitCode> {
  if (path === undefined) {
    throw new Refusal({
      field: 'FILE',
      value: showValue(path),
      accepted: 'Give the path of a saved record, the .json file.',
    });
  }
  const { record, isAltered } = await readRecord(path);
  const text = recordText(record, textWidth(), { isAltered });
  await writeResult(ascii ? asciiText(text) : text);
  return EXIT.done;
}
