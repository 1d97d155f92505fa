import { rm } from 'node:fs/promises';
import { basename, dirname, relative, resolve, sep } from 'node:path';
import { Refusal, showValue } from '../../base/refusal.ts';
import type { PublishedRecord } from '../publish-record.ts';
import { readPredecessor } from './predecessor.ts';
import { publishNext } from './publish-next.ts';

export type SupersedeInput = {
  readonly oldPath: string;
  readonly newPath: string;
  readonly created: Date;
  readonly toolVersion: string;
};

export type Superseded = { readonly old: PublishedRecord; readonly successor: PublishedRecord };

/**
 * Lets one record take another's place: a new revision of each says so, and both files stay as they are. Both new
 * revisions are written or none.
 *
 * @throws Refusal for altered or superseded records and those that have a later revision, for a record and itself, and
 *   where a folder can't be written to
 */
export async function supersedeRecord(input: SupersedeInput): Promise<Superseded> {
  const { oldPath, newPath } = input;
  const [old, successor] = [await readPredecessor(oldPath), await readPredecessor(newPath)];
  if (old.record.digest === successor.record.digest) {
    throw new Refusal({
      field: 'NEW',
      value: showValue(newPath),
      accepted: 'A record can’t take its own place. Give the record that takes the place of the first one.',
    });
  }
  const written = await publishNext(successor, input, {
    supersedes: { file: pathFrom(newPath, oldPath), digest: old.record.digest },
  });
  try {
    const [successorPath = newPath] = written.paths;
    return {
      successor: written,
      old: await publishNext(
        old,
        input,
        {
          status: 'superseded',
          superseded_by: { file: pathFrom(oldPath, successorPath), digest: written.record.digest },
        },
        written.record.digest,
      ),
    };
  } catch (error) {
    for (const path of written.paths) await rm(path, { force: true });
    throw error;
  }
}

/** How the record at one path names the file at another: its name alone in the same folder. */
function pathFrom(from: string, to: string): string {
  const dir = resolve(dirname(from));
  if (resolve(dirname(to)) === dir) return basename(to);
  return relative(dir, resolve(to)).split(sep).join('/');
}
