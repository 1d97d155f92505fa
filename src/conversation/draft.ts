import { z } from 'zod';
import { answersSchema } from './answers.ts';
import { QUESTION_IDS } from './questions.ts';

/** An unfinished talk, `cladwright-draft/1`: kept after every accepted answer. */
export const draftSchema = z.strictObject({
  schema: z.literal('cladwright-draft/1'),
  saved_at: z.iso.datetime(),
  answers: answersSchema,
  windows_complete: z.boolean(),
  history: z.array(z.enum(QUESTION_IDS)).max(500),
});

export type Draft = z.output<typeof draftSchema>;

/** Where a draft is kept. Implemented outside: this folder touches no file. */
export type DraftStore = {
  /** The kept draft, and the path of one that could not be read and was set aside. */
  load(): Promise<{ readonly draft: Draft | null; readonly setAside: string | null }>;
  /** Writes the draft so that a crash at any moment leaves the old one or the new one. */
  save(draft: Draft): Promise<void>;
  clear(): Promise<void>;
};
