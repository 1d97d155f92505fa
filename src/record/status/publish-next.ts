import { dirname } from 'node:path';
import { discRefusal } from '../disc-refusal.ts';
import { type PublishedRecord, publishRevision } from '../publish-record.ts';
import { continued, type Predecessor, revisionStem, type StatusChange } from './next-revision.ts';
import { refuseGoneOnFrom } from './predecessor.ts';

/**
 * Writes the next revision of a record beside it.
 *
 * @param ownDigest  of a record that the same command wrote already
 * @throws Refusal where another went on from the record meanwhile, and where the folder can't be written to
 */
export async function publishNext(
  before: Predecessor,
  { created, toolVersion }: { readonly created: Date; readonly toolVersion: string },
  change: StatusChange,
  ownDigest?: string,
): Promise<PublishedRecord> {
  const dir = dirname(before.path);
  try {
    return await publishRevision(dir, revisionStem(before), async (revision) => {
      // Again, with the number in hand: of two at once only one may go on from this file.
      await refuseGoneOnFrom(before, ownDigest);
      return continued(before, change, { revision, created, toolVersion });
    });
  } catch (error) {
    throw discRefusal(error, 'FILE', dir);
  }
}
