import { join } from 'node:path';
import { Refusal, showValue } from '../base/refusal.ts';
import { discRefusal } from '../record/disc-refusal.ts';
import { makeFolder } from '../record/make-folder.ts';
import { publishFiles } from '../record/publish-files.ts';
import { MOST_REVISIONS, nextRevision } from '../record/publish-record.ts';
import { revisionName, safeName } from '../record/safe-name.ts';

export type ReportFile = { readonly end: 'json' | 'md' | 'csv' | 'html'; readonly text: string };

/**
 * Saves a report in all its forms under one safe name, all files or none; a name that is taken gives a new revision
 * and leaves the old files alone.
 *
 * @param what  the kind of report, last word of the file name: "matrix"
 * @returns the paths, below `dir` as it was given
 * @throws Refusal for field `--save` when the folder can't be written to; nothing is left behind then
 */
export async function saveReport(
  dir: string,
  title: string,
  what: string,
  files: readonly ReportFile[],
): Promise<string[]> {
  const name = `${safeName(title)}-${what}`;
  let undo = async () => {};
  try {
    undo = await makeFolder(dir);
    for (let revision = await nextRevision(dir, name); revision <= MOST_REVISIONS; revision++) {
      const base = revisionName(name, revision);
      const named = files.map(({ end, text }) => ({ name: `${base}.${end}`, text }));
      if (await publishFiles(dir, named)) return named.map((file) => join(dir, file.name));
    }
    throw new Refusal({
      field: '--save',
      value: showValue(dir),
      accepted: `There are ${MOST_REVISIONS} revisions of ${name} already; give another folder.`,
    });
  } catch (error) {
    await undo();
    throw discRefusal(error, '--save', dir);
  }
}
