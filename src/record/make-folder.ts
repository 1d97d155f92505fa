import { mkdir, rmdir, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { errorCode } from '../base/error-code.ts';

/**
 * Makes a folder with its parents where missing, one level at a time: the system's own way of making all of them
 * tries for ever where a file system answers "no such folder" below a folder that is there, as /proc does.
 *
 * @returns a function that takes back what was made here, as far as it is still empty
 * @throws the system's error: ENOENT where nothing can be made in a folder that is there, ENOTDIR and EEXIST for a file
 *   in the way; nothing is left behind then
 */
export async function makeFolder(dir: string): Promise<() => Promise<void>> {
  const made: string[] = [];
  const undo = async () => {
    for (const folder of made.reverse()) {
      // rmdir refuses a folder that somebody has put something into; then everything above it stays too.
      const isGone = await rmdir(folder).then(
        () => true,
        () => false,
      );
      if (!isGone) return;
    }
  };
  try {
    for (const folder of await missingFolders(resolve(dir))) {
      if (await makeOne(folder)) made.push(folder);
    }
  } catch (error) {
    await undo();
    throw error;
  }
  return undo;
}

/** The folder and those above it that aren't there, outermost first. */
async function missingFolders(dir: string): Promise<string[]> {
  const missing: string[] = [];
  for (let here = dir; ; here = dirname(here)) {
    if (await isThere(here)) return missing;
    missing.unshift(here);
    // The root of a disc that isn't there has nothing above it.
    if (dirname(here) === here) return missing;
  }
}

async function isThere(path: string): Promise<boolean> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
  throw Object.assign(new Error(`${path} is no folder`), { code: 'ENOTDIR' });
}

/** False where somebody else has made it meanwhile. */
async function makeOne(folder: string): Promise<boolean> {
  try {
    await mkdir(folder);
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST' && (await isThere(folder))) return false;
    throw error;
  }
}
