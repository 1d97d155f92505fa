import type { Advice } from '../advice/advice-schema.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import { buildRecord } from './build-record.ts';
import { discRefusal } from './disc-refusal.ts';
import { makeFolder } from './make-folder.ts';
import { type PublishedRecord, publishRevision } from './publish-record.ts';
import type { Basis, RecordLink } from './record-schema.ts';
import { safeName } from './safe-name.ts';

export type SaveInput = {
  /** The folder; made when missing. */
  readonly dir: string;
  readonly scenario: Scenario;
  readonly advice: Advice;
  readonly created: Date;
  /** The record that this one replaces, if it does. */
  readonly supersedes?: RecordLink;
  readonly basis?: Basis;
};

export type SavedRecord = PublishedRecord;

/**
 * Saves a decision record and what is made from it under a safe name made from the scenario's name. A name that is
 * taken gives a new revision (`quarry-lane-r2`); no existing file is ever written to.
 *
 * @throws Refusal for field `--save` when the folder can't be written to; nothing of this call is left behind then
 */
export async function saveRecord({ dir, ...input }: SaveInput): Promise<SavedRecord> {
  if (dir === '' || dir.includes('\0')) {
    throw new Refusal({ field: '--save', value: showValue(dir), accepted: 'Give the path of a folder.' });
  }
  const name = safeName(input.scenario.name?.trim() || input.advice.name);
  let undo = async () => {};
  try {
    undo = await makeFolder(dir);
    return await publishRevision(dir, name, (revision) => {
      const record = buildRecord({ ...input, revision });
      return { record, data: record };
    });
  } catch (error) {
    await undo();
    throw discRefusal(error, '--save', dir);
  }
}
