import { z } from 'zod';
import { adviceSchema } from '../advice/advice-schema.ts';
import { scenarioSchema } from '../brief/scenario.ts';

/** The record format that this program writes. It reads every format up to this one. */
export const RECORD_VERSION = 2;
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

/** Another record, by its file name and the digest that it had then. */
const recordLinkSchema = z.strictObject({ file: z.string().min(1), digest: digestSchema });
export type RecordLink = z.output<typeof recordLinkSchema>;

const digestsSchema = z.record(z.string(), digestSchema);

/** What the answer was worked out with, piece by piece, so that a later check can name the piece that changed. */
export const basisSchema = z.strictObject({
  /** Of the program's own source; "unbundled" where it ran without being built. */
  program: z.string(),
  /** By rule id. */
  rules: digestsSchema,
  /** Code and physics tables. */
  tables: digestsSchema,
  /** Catalogue entries without their prices. */
  catalogue: digestsSchema,
  prices: digestsSchema,
});
export type Basis = z.output<typeof basisSchema>;

/** Everything in a record but its digest. */
export const recordContentSchema = z.strictObject({
  schema: z.enum(['cladwright-record/1', RECORD_SCHEMA]),
  schema_version: z.union([z.literal(1), z.literal(RECORD_VERSION)]),
  tool_version: z.string(),
  /** When the record was written, UTC. */
  created: z.iso.datetime('Give a date and time, for example "2026-03-14T15:09:26.000Z".'),
  /** 1 for the first record of a wall; each later save of the same name counts one up. */
  revision: z.number().int().positive(),
  status: z.enum(RECORD_STATUSES),
  /** The record that this one replaces. That record itself stays untouched. */
  supersedes: recordLinkSchema.optional(),
  /** The record that took this one's place; with status "superseded". */
  superseded_by: recordLinkSchema.optional(),
  /** The revision of the same decision that this one goes on from: only status and signatures differ. */
  continues: recordLinkSchema.optional(),
  title: z.string(),
  /** As it was given: what was left open stays open here; the assumptions stand in the advice. */
  scenario: scenarioSchema,
  advice: adviceSchema,
  /** Absent in format 1. */
  basis: basisSchema.optional(),
  sign_off: z.strictObject({
    owner: signatureSchema.nullable(),
    builder: signatureSchema.nullable(),
    designer: signatureSchema.nullable(),
  }),
});
export type RecordContent = z.output<typeof recordContentSchema>;

/** A saved decision, `cladwright-record/2`, or one of the older formats. Our own keys are strict; keys that a later advice brings are passed over. */
export const recordSchema = z.strictObject({
  ...recordContentSchema.shape,
  /** SHA-256 of the canonical JSON of everything else: a figure changed by hand shows. */
  digest: digestSchema,
});
export type DecisionRecord = z.output<typeof recordSchema>;
