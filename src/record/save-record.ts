import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Advice } from '../advice/advice-schema.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import { buildRecord } from './build-record.ts';
import { errorCode, makeFolder, publishFiles } from './publish-files.ts';
import { recordHtml } from './record-html.ts';
import { recordMarkdown } from './record-markdown.ts';
import type { DecisionRecord } from './record-schema.ts';
import { revisionName, revisionOf, safeName } from './safe-name.ts';

export type SaveInput = {
  /** The folder; made when missing. */
  readonly dir: string;
  readonly scenario: Scenario;
  readonly advice: Advice;
  readonly created: Date;
  /** The record that this one replaces, if it does. */
  readonly supersedes?: { readonly file: string; readonly digest: string };
};

export type SavedRecord = {
  /** The `.json` (the truth), the `.md` and the `.html`, in this order, below `dir` as it was given. */
  readonly paths: readonly string[];
  readonly record: DecisionRecord;
};

const MOST_REVISIONS = 999_999;

/**
 * Saves a decision record as JSON, Markdown and HTML under a safe name made from the scenario's name. A name that is
 * taken gives a new revision (`quarry-lane-r2`); no existing file is ever written to.
 *
 * @throws Refusal for field `--save` when the folder can't be written to; nothing of this call is left behind then
 */
export async function saveRecord({ dir, ...input }: SaveInput): Promise<SavedRecord> {
  if (dir === '' || dir.includes('\0')) throw refusal(dir, 'Give the path of a folder.');
  const name = safeName(input.scenario.name?.trim() || input.advice.name);
  let undo = async () => {};
  try {
    undo = await makeFolder(dir);
    let revision = await nextRevision(dir, name);
    for (; revision <= MOST_REVISIONS; revision++) {
      const record = buildRecord({ ...input, revision });
      const base = revisionName(name, revision);
      const files = [
        { name: `${base}.json`, text: `${JSON.stringify(record, null, 2)}\n` },
        { name: `${base}.md`, text: recordMarkdown(record) },
        { name: `${base}.html`, text: recordHtml(record) },
      ];
      if (await publishFiles(dir, files)) return { paths: files.map((file) => join(dir, file.name)), record };
    }
    throw refusal(dir, `There are ${MOST_REVISIONS} revisions of ${name} already; give another folder.`);
  } catch (error) {
    await undo();
    const accepted = whatWouldDo(error);
    if (accepted === null) throw error;
    throw new Refusal({ field: '--save', value: showValue(dir), accepted });
  }
}

/** One past the highest revision that any file in the folder belongs to: a gap left by a removed record stays a gap. */
async function nextRevision(dir: string, name: string): Promise<number> {
  const taken = (await readdir(dir)).map((file) => revisionOf(file, name) ?? 0);
  return taken.reduce((highest, one) => Math.max(highest, one), 0) + 1;
}

const A_FOLDER = 'Give a folder that exists or can be made.';

const WHAT_WOULD_DO: Readonly<Record<string, string>> = {
  ENOTDIR: `There is a file where a folder is needed. ${A_FOLDER}`,
  EEXIST: `There is a file where a folder is needed. ${A_FOLDER}`,
  ENOENT: `The folder can't be made there. ${A_FOLDER}`,
  ENAMETOOLONG: 'The path is too long. Give a shorter one.',
  ELOOP: `The path leads in a circle. ${A_FOLDER}`,
  EACCES: 'Writing there is not allowed. Give a folder that you may write to.',
  EPERM: 'Writing there is not allowed. Give a folder that you may write to.',
  EROFS: 'That disc can only be read. Give a folder that you may write to.',
  ENOSPC: 'The disc is full. Free some room, or give a folder on another disc.',
  EDQUOT: 'Your share of the disc is used up. Free some room, or give a folder on another disc.',
  EFBIG: 'The file system takes no file of this size. Give a folder on another disc.',
  EIO: 'The disc reports a fault. Give a folder on another disc.',
  EMFILE: 'Too many files are open. Close some programs and save again.',
  ENFILE: 'Too many files are open. Close some programs and save again.',
};

/** What the user can do about a system error; null for what isn't theirs to mend. */
function whatWouldDo(error: unknown): string | null {
  const code = errorCode(error);
  if (code === null || !/^E[A-Z0-9]+$/.test(code)) return null;
  return WHAT_WOULD_DO[code] ?? `It could not be written (${code}). ${A_FOLDER}`;
}

function refusal(dir: string, accepted: string): Refusal {
  return new Refusal({ field: '--save', value: showValue(dir), accepted });
}
