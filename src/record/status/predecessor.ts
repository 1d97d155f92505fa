import { readdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { z } from 'zod';
import { errorCode } from '../../base/error-code.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import { readJsonFile, readRecord, schemaName } from '../read-record.ts';
import { recordContentSchema, recordSchema } from '../record-schema.ts';
import { type RevisionFacts, Revisions } from '../revisions.ts';
import { type Predecessor, refuseAltered } from './next-revision.ts';

/** A record in a folder, as far as it says what it goes on from. */
type Neighbour = RevisionFacts & { readonly file: string };

/**
 * Reads a record to go on from.
 *
 * @throws Refusal when it can't be read, was altered, was superseded or has a later revision in its folder: going on
 *   from it then would leave one decision standing twice
 */
export async function readPredecessor(path: string): Promise<Predecessor> {
  const before: Predecessor = { ...(await readRecord(path)), path };
  refuseAltered(before);
  await refuseGoneOnFrom(before);
  return before;
}

/**
 * @param except  digest of a record to leave out of account
 * @throws Refusal for a record that another in its folder goes on from or takes the place of; it names the last one
 */
export async function refuseGoneOnFrom({ path, record }: Predecessor, except?: string): Promise<void> {
  const here: Neighbour = { ...record, file: basename(path) };
  const others = (await neighbours(dirname(path))).filter(
    // Copies of the file itself say nothing of what came later.
    ({ digest }) => digest !== except && digest !== record.digest,
  );
  const revisions = new Revisions([...others, here]);
  const { last, superseder } = revisions.lastOf(here);
  if (superseder === null && last.digest === record.digest) return;
  const standing = revisions.standingFor(here);
  const instead = 'known' in standing ? standing.known.file : (standing.link?.file ?? null);
  const by = instead === null ? '' : ` by ${showValue(instead)}`;
  throw new Refusal({
    field: 'record',
    value: showValue(path),
    accepted:
      superseder === null
        ? `That record has a later revision in the same folder. Give the last one, ${showValue(last.file)}.`
        : `That record is superseded${by}. Take the one that took its place.`,
  });
}

/** Only what hangs records together: the rest of a neighbour may be of a later format or damaged, and its links still count. */
const linksSchema = z.object({
  digest: recordSchema.shape.digest,
  ...z.object(recordContentSchema.shape).pick({
    created: true,
    revision: true,
    status: true,
    continues: true,
    supersedes: true,
    superseded_by: true,
  }).shape,
});

async function neighbours(dir: string): Promise<Neighbour[]> {
  const found: Neighbour[] = [];
  for (const file of await jsonFiles(dir)) {
    const data = await dataOf(join(dir, file));
    if (!schemaName(data)?.startsWith('cladwright-record/')) continue;
    const links = linksSchema.safeParse(data);
    if (links.success) found.push({ ...links.data, file });
  }
  return found;
}

async function jsonFiles(dir: string): Promise<string[]> {
  try {
    return (await readdir(dir)).filter((name) => name.endsWith('.json') && !name.startsWith('.')).sort();
  } catch (error) {
    if (errorCode(error) === null) throw error;
    // A folder that can't be listed takes no new file either; writing says what is wrong with it.
    return [];
  }
}

/** Null for what is no JSON or can't be read: other files in the folder are none of this command's business. */
async function dataOf(path: string): Promise<unknown> {
  try {
    return await readJsonFile(path);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
