import { Refusal, showValue } from '../../base/refusal.ts';
import { decisionOf } from '../decided-wall.ts';
import type { PublishedRecord } from '../publish-record.ts';
import type { DecisionRecord } from '../record-schema.ts';
import { readPredecessor } from './predecessor.ts';
import { publishNext } from './publish-next.ts';
import { type Signer, whoMustSign } from './who-must-sign.ts';

export type AcceptInput = {
  readonly path: string;
  /** Names of those who signed; lines that are signed already stay. */
  readonly names: Readonly<Partial<Record<Signer, string>>>;
  /** Day of signing, `2026-03-14`. */
  readonly date: string;
  readonly created: Date;
  readonly toolVersion: string;
};

/**
 * Accepts a proposed record: writes a new revision of it, signed. The old file stays as it is.
 *
 * @throws Refusal when somebody who must sign did not, for an altered or superseded record, one that has a later
 *   revision, one without a wall, and where the folder can't be written to
 */
export async function acceptRecord(input: AcceptInput): Promise<PublishedRecord> {
  const { path } = input;
  const before = await readPredecessor(path);
  const { advice, sign_off } = before.record;
  if (decisionOf(advice).kind === 'none') {
    throw new Refusal({
      field: 'record',
      value: showValue(path),
      accepted: 'No wall passes in that record: there is nothing to accept.',
    });
  }
  const signed = signatures(sign_off, input);
  const missing = whoMustSign(advice).filter(({ role, must }) => must && signed[role] === null);
  if (missing.length > 0) {
    throw new Refusal(
      missing.map(({ role, why }) => ({
        field: `--${role}`,
        value: '(nothing)',
        accepted: `Give the name of the ${role} who signed (${why}).`,
      })),
    );
  }
  return publishNext(before, input, { status: 'accepted', sign_off: signed });
}

function signatures(
  before: DecisionRecord['sign_off'],
  { names, date }: AcceptInput,
): DecisionRecord['sign_off'] {
  const line = (role: Signer) => {
    const name = names[role]?.trim();
    if (name === undefined) return before[role];
    if (name !== '' && name.length <= 120) return { name, date };
    throw new Refusal({
      field: `--${role}`,
      value: showValue(names[role]),
      accepted: 'Give the name of who signed, at most 120 characters.',
    });
  };
  return { owner: line('owner'), builder: line('builder'), designer: line('designer') };
}
