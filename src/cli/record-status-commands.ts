import { Refusal, showValue } from '../base/refusal.ts';
import { SIGNERS } from '../record/record-schema.ts';
import { acceptRecord } from '../record/status/accept-record.ts';
import { supersedeRecord } from '../record/status/supersede-record.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { writeResult } from './output.ts';
import { TOOL_VERSION } from './version.ts';

export type AcceptFlags = Readonly<Partial<Record<(typeof SIGNERS)[number] | 'date', string>>>;

/**
 * `record accept FILE`: a new revision with status "accepted" and the names of who signed.
 *
 * @throws Refusal without a file or a name that is needed, and for a record that can't be accepted
 */
export async function runRecordAccept(path: string | undefined, flags: AcceptFlags): Promise<ExitCode> {
  if (path === undefined) throw nothingGiven('FILE', 'Give the record to accept, the .json file.');
  const created = new Date();
  const date = flags.date ?? created.toISOString().slice(0, 10);
  if (!/^\d{4}-\d\d-\d\d$/.test(date) || Number.isNaN(Date.parse(date))) {
    throw new Refusal({
      field: '--date',
      value: showValue(date),
      accepted: 'Give the day of signing as year-month-day, for example 2026-03-14.',
    });
  }
  const names = Object.fromEntries(
    SIGNERS.flatMap((role) => {
      const name = flags[role];
      return name === undefined ? [] : [[role, name] as const];
    }),
  );
  const { paths } = await acceptRecord({ path, names, date, created, toolVersion: TOOL_VERSION });
  await writeResult(paths.map((saved) => `saved ${saved}`).join('\n'));
  return EXIT.done;
}

/**
 * `record supersede OLD NEW`: NEW takes OLD's place; a new revision of each says so.
 *
 * @throws Refusal without two files, and for records that can't be changed
 */
export async function runRecordSupersede([oldPath, newPath]: readonly string[]): Promise<ExitCode> {
  if (oldPath === undefined || newPath === undefined) {
    throw nothingGiven(
      oldPath === undefined ? 'OLD' : 'NEW',
      'Give two records: the one whose place is taken, and the one that takes it.',
    );
  }
  const { old, successor } = await supersedeRecord({
    oldPath,
    newPath,
    created: new Date(),
    toolVersion: TOOL_VERSION,
  });
  await writeResult([...successor.paths, ...old.paths].map((saved) => `saved ${saved}`).join('\n'));
  return EXIT.done;
}

function nothingGiven(field: string, accepted: string): Refusal {
  return new Refusal({ field, value: showValue(undefined), accepted });
}
