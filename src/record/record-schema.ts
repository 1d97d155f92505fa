import { z } from 'zod';
import { adviceSchema } from '../advice/advice-schema.ts';
import { scenarioSchema } from '../brief/scenario.ts';

/** The record format that this program writes and reads. */
export const RECORD_VERSION = 1;
export const RECORD_SCHEMA = `cladwright-record/${RECORD_VERSION}` as const;

export const RECORD_STATUSES = ['proposed', 'accepted', 'superseded'] as const;
export type RecordStatus = (typeof RECORD_STATUSES)[number];

/** Who signs, in the order of the lines. */
export const SIGNERS = ['owner', 'builder', 'designer'] as const;

const signatureSchema = z.strictObject({
  name: z.string().min(1, 'Give the name of who signed.'),
  date: z.iso.date('Give the day as year-month-day, for example "2026-03-14".'),
});

const DIGEST_MESSAGE = 'Give a SHA-256 digest: 64 hexadecimal digits.';
const digestSchema = z.string(DIGEST_MESSAGE).regex(/^[0-9a-f]{64}$/, DIGEST_MESSAGE);

/** Everything in a record but its digest. */
export const recordContentSchema = z.strictObject({
  schema: z.literal(RECORD_SCHEMA),
  schema_version: z.literal(RECORD_VERSION),
  tool_version: z.string(),
  /** When the record was written, UTC. */
  created: z.iso.datetime('Give a date and time, for example "2026-03-14T15:09:26.000Z".'),
  /** 1 for the first record of a wall; each later save of the same name counts one up. */
  revision: z.number().int().positive(),
  status: z.enum(RECORD_STATUSES),
  /** The record that this one replaces. That record itself stays untouched. */
  supersedes: z.strictObject({ file: z.string().min(1), digest: digestSchema }).optional(),
  title: z.string(),
  /** As it was given: what was left open stays open here; the assumptions stand in the advice. */
  scenario: scenarioSchema,
  advice: adviceSchema,
  sign_off: z.strictObject({
    owner: signatureSchema.nullable(),
    builder: signatureSchema.nullable(),
    designer: signatureSchema.nullable(),
  }),
});
export type RecordContent = z.output<typeof recordContentSchema>;

/** A saved decision, `cladwright-record/1`. Our own keys are strict; keys that a later advice brings are passed over. */
export const recordSchema = z.strictObject({
  ...recordContentSchema.shape,
  /** SHA-256 of the canonical JSON of everything else: a figure changed by hand shows. */
  digest: digestSchema,
});
export type DecisionRecord = z.output<typeof recordSchema>;
