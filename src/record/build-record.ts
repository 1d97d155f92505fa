import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Advice } from '../advice/advice-schema.ts';
import type { Scenario } from '../brief/scenario.ts';
import { canonicalJson } from './canonical-json.ts';
import {
  type Basis,
  type DecisionRecord,
  RECORD_SCHEMA,
  RECORD_VERSION,
  type RecordContent,
  type RecordLink,
  recordContentSchema,
} from './record-schema.ts';

export type RecordInput = {
  /** As the user gave it. */
  readonly scenario: Scenario;
  readonly advice: Advice;
  /** The moment of saving, passed in so that the same input gives the same record. */
  readonly created: Date;
  /** 1 for the first record of a wall. */
  readonly revision: number;
  /** The record that this one replaces. */
  readonly supersedes?: RecordLink;
  /** What the answer was worked out with; left out, a later check can only name whole packs. */
  readonly basis?: Basis;
};

/**
 * The decision record of one answer, unsigned and proposed. Pure.
 *
 * @throws Error when the answer isn't of its own schema: a fault of the program, not of the user
 */
export function buildRecord({
  scenario,
  advice,
  created,
  revision,
  supersedes,
  basis,
}: RecordInput): DecisionRecord {
  const content: RecordContent = {
    schema: RECORD_SCHEMA,
    schema_version: RECORD_VERSION,
    tool_version: advice.tool_version,
    created: created.toISOString(),
    revision,
    status: 'proposed',
    ...(supersedes ? { supersedes: { ...supersedes } } : {}),
    title: scenario.name?.trim() || advice.name,
    scenario,
    advice,
    ...(basis ? { basis } : {}),
    sign_off: { owner: null, builder: null, designer: null },
  };
  const checked = recordContentSchema.safeParse(content);
  if (!checked.success) {
    throw new Error(`the record can't be written as it is:\n${z.prettifyError(checked.error)}`);
  }
  return { ...checked.data, digest: recordDigest(checked.data) };
}

/**
 * SHA-256 over the canonical JSON of a record without its own digest, as 64 hexadecimal digits.
 * Taken over the data as it stands in the file, so that keys this program doesn't know count too.
 */
export function recordDigest(record: object): string {
  const { digest: _, ...content } = record as { digest?: unknown };
  return createHash('sha256').update(canonicalJson(content), 'utf8').digest('hex');
}
