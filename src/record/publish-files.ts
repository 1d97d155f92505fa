import { randomUUID } from 'node:crypto';
import { constants, copyFile, link, open, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { errorCode } from '../base/error-code.ts';
import { sweepParts } from './sweep-parts.ts';

export type NewFile = { readonly name: string; readonly text: string };

/** A write that came out short: some systems report a full disc this way instead of failing. */
export class ShortWrite extends Error {
  readonly code = 'ENOSPC';
}

/**
 * Writes several new files into a folder, all of them or none, and never over an existing one.
 *
 * Each file is first written whole and synced under a private name, then given its real name in one step that fails
 * when the name is taken. Two programs saving at once can't both get the first name, and no reader ever sees half a file.
 * What an earlier save left that was killed on the way is removed.
 *
 * @returns false when one of the names was taken meanwhile; nothing is left behind then
 * @throws the system's error (ENOSPC, EACCES, ...); nothing is left behind then either
 */
export async function publishFiles(dir: string, files: readonly NewFile[]): Promise<boolean> {
  const staged: string[] = [];
  const published: string[] = [];
  try {
    for (const { text } of files) {
      const path = join(dir, `.${randomUUID()}.part`);
      staged.push(path);
      await writeWhole(path, text);
    }
    for (const [i, { name }] of files.entries()) {
      const target = join(dir, name);
      await giveName(staged[i] ?? '', target);
      published.push(target);
    }
    await syncFolder(dir);
    if (published[0] !== undefined) await sweepParts(dir, published[0]);
    return true;
  } catch (error) {
    await removeAll(published);
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  } finally {
    await removeAll(staged);
  }
}

async function writeWhole(path: string, text: string): Promise<void> {
  await writeFileAtomic(path, text, { encoding: 'utf8' });
  const { size } = await stat(path);
  const expected = Buffer.byteLength(text, 'utf8');
  if (size !== expected) throw new ShortWrite(`${path}: ${size} of ${expected} bytes written`);
}

/** Systems and discs without hard links answer one of these. */
const NO_LINKS: ReadonlySet<string> = new Set([
  'EPERM',
  'ENOTSUP',
  'EOPNOTSUPP',
  'ENOSYS',
  'EMLINK',
  'EINVAL',
]);

/** Gives a finished file its name; EEXIST when the name is taken. */
async function giveName(staged: string, target: string): Promise<void> {
  try {
    await link(staged, target);
  } catch (error) {
    if (!NO_LINKS.has(errorCode(error) ?? '')) throw error;
    await copyFile(staged, target, constants.COPYFILE_EXCL);
  }
}

async function syncFolder(dir: string): Promise<void> {
  try {
    const folder = await open(dir, 'r');
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  } catch {
    // Not every system can sync a folder. The files themselves are synced, only their names could be lost in a power cut.
  }
}

async function removeAll(paths: readonly string[]): Promise<void> {
  for (const path of paths) {
    // Already failing: a file that can't be removed must not hide the first error.
    await rm(path, { force: true }).catch(() => {});
  }
}
