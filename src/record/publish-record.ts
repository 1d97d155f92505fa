import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal, showValue } from '../base/refusal.ts';
import { buildSheet } from './build-sheet/build-sheet.ts';
import { type NewFile, publishFiles } from './publish-files.ts';
import { recordHtml } from './record-html.ts';
import { recordMarkdown } from './record-markdown.ts';
import type { DecisionRecord } from './record-schema.ts';
import { revisionName, revisionOf } from './safe-name.ts';

export type PublishedRecord = {
  /** The `.json` (the truth) first, then what is made from it, below the folder as it was given. */
  readonly paths: readonly string[];
  readonly record: DecisionRecord;
};

/** A record with the data that goes into its file, which may hold keys that this program doesn't know. */
export type MadeRecord = { readonly record: DecisionRecord; readonly data: object };

export const MOST_REVISIONS = 999_999;

/**
 * Writes a record and everything made from it under the next free revision of a name, all files or none. No existing
 * file is ever written to.
 *
 * @param name  as `safeName` makes it
 * @param make  the record as that revision; asked anew when another program took the number meanwhile
 * @throws the system's error; nothing is left behind then
 */
export async function publishRevision(
  dir: string,
  name: string,
  make: (revision: number) => MadeRecord | Promise<MadeRecord>,
): Promise<PublishedRecord> {
  for (let revision = await nextRevision(dir, name); revision <= MOST_REVISIONS; revision++) {
    const made = await make(revision);
    const files = recordFiles(made, revisionName(name, revision));
    if (await publishFiles(dir, files))
      return { paths: files.map((file) => join(dir, file.name)), record: made.record };
  }
  throw new Refusal({
    field: '--save',
    value: showValue(dir),
    accepted: `There are ${MOST_REVISIONS} revisions of ${name} already; give another folder.`,
  });
}

function recordFiles({ record, data }: MadeRecord, base: string): NewFile[] {
  const sheet = buildSheet(record);
  return [
    { name: `${base}.json`, text: `${JSON.stringify(data, null, 2)}\n` },
    { name: `${base}.md`, text: recordMarkdown(record) },
    { name: `${base}.html`, text: recordHtml(record) },
    ...(sheet
      ? [
          { name: `${base}.build-sheet.md`, text: sheet.markdown },
          { name: `${base}.build-sheet.html`, text: sheet.html },
          { name: `${base}.take-off.csv`, text: sheet.csv },
        ]
      : []),
  ];
}

/** One past the highest revision that any file in the folder belongs to: a gap left by a removed record stays a gap. */
export async function nextRevision(dir: string, name: string): Promise<number> {
  const taken = (await readdir(dir)).map((file) => revisionOf(file, name) ?? 0);
  return taken.reduce((highest, one) => Math.max(highest, one), 0) + 1;
}
