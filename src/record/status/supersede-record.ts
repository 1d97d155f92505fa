import { rm } from 'node:fs/promises';
import { basename, dirname, relative, resolve, sep } from 'node:path';
import { Refusal, showValue } from '../../base/refusal.ts';
import { discRefusal } from '../disc-refusal.ts';
import { type PublishedRecord, publishRevision } from '../publish-record.ts';
import { continued, type Predecessor, revisionStem, type StatusChange } from './next-revision.ts';
import { readPredecessor, refuseGoneOnFrom } from './predecessor.ts';

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
  const written = await publish(successor, input, {
    supersedes: { file: pathFrom(newPath, oldPath), digest: old.record.digest },
  });
  try {
    const [successorPath = newPath] = written.paths;
    return {
      successor: written,
      old: await publish(
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

/** @param ownDigest  of the record that this call wrote already */
async function publish(
  before: Predecessor,
  { created, toolVersion }: SupersedeInput,
  change: StatusChange,
  ownDigest?: string,
): Promise<PublishedRecord> {
  const dir = dirname(before.path);
  try {
    return await publishRevision(dir, revisionStem(before), async (revision) => {
      // Again, with the number in hand: somebody may have signed that file meanwhile.
      await refuseGoneOnFrom(before, ownDigest);
      return continued(before, change, { revision, created, toolVersion });
    });
  } catch (error) {
    throw discRefusal(error, 'FILE', dir);
  }
}

/** How the record at one path names the file at another: its name alone in the same folder. */
function pathFrom(from: string, to: string): string {
  const dir = resolve(dirname(from));
  if (resolve(dirname(to)) === dir) return basename(to);
  return relative(dir, resolve(to)).split(sep).join('/');
}
