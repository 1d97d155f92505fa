import { existsSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { Refusal, showValue } from '../../base/refusal.ts';
import { filesBelow } from '../files-below.ts';
import { errorCode } from '../publish-files.ts';
import { asRecord, type ReadRecord, readJsonFile, schemaName } from '../read-record.ts';

/** A record on disc, or why it can't be read. */
export type FoundRecord =
  | { readonly file: string; readonly read: ReadRecord }
  | { readonly file: string; readonly refusal: Refusal };

export type FoundRecords = {
  readonly found: readonly FoundRecord[];
  /** JSON files of folders that are something else, and records that a later one in the same folder goes on from. */
  readonly passed_over: readonly { readonly file: string; readonly why: string }[];
};

/**
 * Reads records: each path is a file, or a folder whose `.json` files (and those of its folders) are read in order of
 * their names. In a folder, what is no record is passed over, and so is a record that a later one there goes on from
 * or takes the place of: only what stands is checked.
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
  const replaced = new Set(found.flatMap((one) => ('read' in one ? replacedBy(one.read) : [])));
  const isReplaced = (one: FoundRecord) => 'read' in one && replaced.has(one.read.record.digest);
  const isOver = (one: FoundRecord) => 'read' in one && one.read.record.status === 'superseded';
  return {
    found: found.filter((one) => !isReplaced(one) && !isOver(one)),
    passed_over: [
      ...passed_over,
      ...found
        .filter((one) => isReplaced(one) || isOver(one))
        .map(({ file }) => ({ file, why: 'a later record took its place' })),
    ],
  };
}

function replacedBy({ record: { supersedes, continues } }: ReadRecord): string[] {
  return [supersedes, continues].flatMap((link) => (link ? [link.digest] : []));
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
