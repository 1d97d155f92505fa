import { lstat, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * The private names that a save writes under: `.UUID.part`, and the same with the digits that the writer puts behind it
 * until the text is whole.
 */
const PART = /^\.[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}\.part(?:\.\d+)?$/;
/** No save takes as long; what is younger may belong to one at work. */
const STALE_MS = 60 * 60 * 1000;

/**
 * Removes what saves left in a folder that were killed on the way.
 *
 * @param fresh  a file just written there: its time is by the clock of that disc, which needn't be this machine's
 */
export async function sweepParts(dir: string, fresh: string): Promise<void> {
  try {
    const now = (await lstat(fresh)).mtimeMs;
    for (const name of await readdir(dir)) {
      if (PART.test(name)) await removeStale(join(dir, name), now);
    }
  } catch {
    // What was to be saved is saved; the litter can wait for the next time.
  }
}

async function removeStale(path: string, now: number): Promise<void> {
  try {
    const found = await lstat(path);
    if (found.isFile() && now - found.mtimeMs > STALE_MS) await rm(path, { force: true });
  } catch {
    // Another save has removed it, or it isn't ours to remove.
  }
}
