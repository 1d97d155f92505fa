import { z } from 'zod';

/** What a firm's own packs did to an answer. */
export const houseSchema = z.object({
  packs: z.array(z.object({ name: z.string(), version: z.string(), firm: z.string().nullable() })),
  /** Named limits that were moved to the stricter side. */
  tightened: z.array(
    z.object({
      limit: z.string(),
      meaning: z.string(),
      from: z.number(),
      to: z.number(),
      pack: z.string(),
      reason: z.string(),
    }),
  ),
  /** Cautions that were made bans. */
  raised: z.array(z.object({ rule: z.string(), from: z.string(), pack: z.string(), reason: z.string() })),
  /** Walls that the house rules alone turn down. */
  turned_down: z.number(),
  /** Whether another wall would come first without the packs: found by judging all walls again. */
  changes_first_choice: z.boolean(),
  /** Each of the above in a sentence. */
  sentences: z.array(z.string()),
});
export type HouseEffect = z.output<typeof houseSchema>;
