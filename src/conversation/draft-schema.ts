import { z } from 'zod';
import { FIELD_IDS } from './answers.ts';
import { answersSchema } from './answers-schema.ts';
import { QUESTION_IDS } from './questions.ts';
import { READERS } from './reader.ts';
import { MOST_EARLY } from './understanding/reading.ts';

/** An unfinished talk, `cladwright-draft/1`: kept after every accepted answer. */
export const draftSchema = z.strictObject({
  schema: z.literal('cladwright-draft/1'),
  saved_at: z.iso.datetime(),
  answers: answersSchema,
  windows_complete: z.boolean(),
  history: z.array(z.enum(QUESTION_IDS)).max(500),
  budget_total_usd: z.number().optional(),
  /** Second answers that contradict the first ones and wait to be settled. */
  unsettled: answersSchema.optional(),
  /** Of an unsettled budget that was told for the whole wall. */
  unsettled_total_usd: z.number().optional(),
  /** What was said of questions that are still to be asked, and does not answer them. */
  early: z
    .array(z.strictObject({ field: z.enum(FIELD_IDS), words: z.string().max(2000) }))
    .max(MOST_EARLY)
    .optional(),
  reader: z.enum(READERS).optional(),
  /** Its record has been saved: kept, and not offered as unfinished. */
  finished: z.boolean().optional(),
});
