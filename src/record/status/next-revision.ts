import { basename } from 'node:path';
import { Refusal, showValue } from '../../base/refusal.ts';
import { recordDigest } from '../build-record.ts';
import type { MadeRecord } from '../publish-record.ts';
import { asRecord, type ReadRecord } from '../read-record.ts';
import { RECORD_SCHEMA, RECORD_VERSION, type RecordLink } from '../record-schema.ts';
import { safeName } from '../safe-name.ts';

/** A record that a new revision goes on from. */
export type Predecessor = ReadRecord & { readonly path: string };

/** What a new revision may change: never the answer. */
export type StatusChange = Partial<
  Pick<ReadRecord['record'], 'status' | 'sign_off' | 'supersedes' | 'superseded_by'>
>;

/**
 * A further revision of a record: the same answer with another status. Everything else goes over as it stands in the
 * file, also what this program doesn't know.
 */
export function continued(
  before: Predecessor,
  change: StatusChange,
  { revision, created, toolVersion }: { revision: number; created: Date; toolVersion: string },
): MadeRecord {
  const { digest: _, ...old } = before.data as { digest?: unknown };
  const content = {
    ...old,
    schema: RECORD_SCHEMA,
    schema_version: RECORD_VERSION,
    tool_version: toolVersion,
    created: created.toISOString(),
    revision,
    continues: linkTo(before),
    ...change,
  };
  const data = { ...content, digest: recordDigest(content) };
  const { record } = asRecord(data, before.path);
  return { record, data };
}

/** How another record in the same folder names this one. */
export function linkTo({ path, record }: Pick<Predecessor, 'path' | 'record'>): RecordLink {
  return { file: basename(path), digest: record.digest };
}

/** The name that revisions of this file share: `quarry-lane` of `quarry-lane-r2.json`; from its title when it was renamed. */
export function revisionStem({ path, record }: Predecessor): string {
  const stem = /^([a-z0-9-]+?)(?:-r[1-9]\d{0,5})?\.json$/.exec(basename(path))?.[1];
  return stem !== undefined && safeName(stem) === stem ? stem : safeName(record.title);
}

/** @throws Refusal when somebody changed the file after it was saved: signing it would make a forgery a decision */
export function refuseAltered({ isAltered, path }: Predecessor): void {
  if (!isAltered) return;
  throw new Refusal({
    field: 'record',
    value: showValue(path),
    accepted:
      'That file was changed after it was saved: its content does not fit its digest. Find out who changed what, or make the record anew.',
  });
}
