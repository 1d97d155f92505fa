import { existsSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { errorCode } from '../../base/error-code.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import { filesBelow } from '../files-below.ts';
import { asRecord, type ReadRecord, readJsonFile, schemaName } from '../read-record.ts';
import { type RevisionFacts, Revisions } from '../revisions.ts';

/** A record on disc, or why it can't be read. */
export type FoundRecord =
  | { readonly file: string; readonly read: ReadRecord }
  | { readonly file: string; readonly refusal: Refusal };

export type FoundRecords = {
  readonly found: readonly FoundRecord[];
  /** JSON files of folders that are something else, and records that a later one in the same folder goes on from or replaces. */
  readonly passed_over: readonly { readonly file: string; readonly why: string }[];
};

/**
 * Reads records: each path is a file, or a folder whose `.json` files (and those of its folders) are read in order of
 * their names. In a folder, what is no record is passed over, and so is every revision of a decision but its last one,
 * and that too where another record took its place: only what stands is checked.
 *
 * @throws Refusal for a path that isn't there or a folder without records
 */
export async function findRecords(paths: readonly string[]): Promise<FoundRecords> {
  const found: FoundRecord[] = [];
  const passed_over: { file: string; why: string }[] = [];
  for (const path of paths) {
    if (!(await isFolder(path))) {
      const one = await readOne(path);
      // Named and not there is a slip of the pen, not a record that no longer holds.
      if ('refusal' in one && !existsSync(path)) throw one.refusal;
      found.push(one);
      continue;
    }
    const here = await readFolder(path);
    if (here.found.length === 0) {
      throw new Refusal({
        field: 'FILE',
        value: showValue(path),
        accepted: 'There is no record in that folder. Give a folder that --save wrote into.',
      });
    }
    found.push(...here.found);
    passed_over.push(...here.passed_over);
  }
  return { found, passed_over };
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return !path.includes('\0') && (await stat(path)).isDirectory();
  } catch {
    // Whatever is wrong with it, reading it as a record says so.
    return false;
  }
}

async function readOne(file: string): Promise<FoundRecord> {
  try {
    return { file, read: asRecord(await readJsonFile(file), file) };
  } catch (error) {
    if (error instanceof Refusal) return { file, refusal: error };
    throw error;
  }
}

async function readFolder(dir: string): Promise<FoundRecords> {
  const found: FoundRecord[] = [];
  const passed_over: { file: string; why: string }[] = [];
  for (const file of await jsonFiles(dir)) {
    try {
      const data = await readJsonFile(file);
      if (!schemaName(data)?.startsWith('cladwright-record/')) {
        passed_over.push({ file, why: 'no record' });
        continue;
      }
      found.push({ file, read: asRecord(data, file) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      found.push({ file, refusal: error });
    }
  }
  const standing = standingAmong(found);
  return {
    found: found.filter(standing),
    passed_over: [
      ...passed_over,
      ...found
        .filter((one) => !standing(one))
        .map(({ file }) => ({ file, why: 'a later record took its place' })),
    ],
  };
}

/** What can't be read stays in the list: somebody has to look at it. */
function standingAmong(found: readonly FoundRecord[]): (one: FoundRecord) => boolean {
  const facts = new Map(
    found.flatMap((one) => ('read' in one ? [[one.file, factsOf(one.read)] as const] : [])),
  );
  const revisions = new Revisions([...facts.values()]);
  return ({ file }) => {
    const here = facts.get(file);
    if (!here) return true;
    const { last, superseder } = revisions.lastOf(here);
    // A copy of the last revision is no earlier one.
    return superseder === null && last.digest === here.digest;
  };
}

/** Nobody takes a record out of the check by writing into a file that its decision is over. */
function factsOf({ record, isAltered }: ReadRecord): RevisionFacts {
  if (!isAltered) return record;
  const { digest, created, revision, continues } = record;
  return { digest, created, revision, status: 'proposed', ...(continues ? { continues } : {}) };
}

async function jsonFiles(dir: string): Promise<string[]> {
  try {
    return await filesBelow(dir, (entry) => entry.isFile() && entry.name.endsWith('.json'));
  } catch (error) {
    if (errorCode(error) === null) throw error;
    throw new Refusal({
      field: 'FILE',
      value: showValue(dir),
      accepted: 'That folder can’t be read. Give one that you may read.',
    });
  }
}
