import type { Dirent } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';

/**
 * What lies below a folder and is wanted, by path, without anything hidden or in a hidden folder: other programs keep
 * that for themselves.
 *
 * @throws Error of the system where the folder, or one below it, can't be read
 */
export async function filesBelow(folder: string, isWanted: (entry: Dirent) => boolean): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter(isWanted)
    .map(({ parentPath, name }) => join(parentPath, name))
    .filter((path) => !isHidden(relative(folder, path)))
    .sort();
}

function isHidden(path: string): boolean {
  return path.split(sep).some((part) => part.startsWith('.'));
}
