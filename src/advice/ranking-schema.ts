import { z } from 'zod';

const waySchema = z.object({ id: z.string(), insulation: z.string(), thickness_in: z.number() });

/** Near-duplicates of a ranked wall: every admitted wall with the same cladding over the same family of boards. */
const foldedSchema = z.object({
  count: z.number().int().positive(),
  /** Thinnest and thickest insulation that passes. */
  thickness_in: z.object({ low: z.number(), high: z.number() }),
  /** Those of them whose fastening no code table permits: only with a design professional. */
  design_required_in: z.array(z.number()).optional(),
  insulations: z.array(z.string()),
  cheapest: waySchema.extend({ usd_per_ft2: z.number() }),
  lightest: waySchema.extend({ weight_psf: z.number() }),
  least_heat_loss: waySchema.extend({ u_factor: z.number() }),
  words: z.string(),
});

/** Keys of a ranked wall; left out in answers of before they were worked out. */
export const rankedWallShape = {
  folded: foldedSchema.optional(),
  /** Whether prices that only one of the two pays could make up for what it lies behind the first choice. */
  tie_with_first: z.boolean().optional(),
  tie: z
    .object({ score_behind: z.number(), price_swing: z.number(), words: z.string() })
    .nullable()
    .optional(),
};

/** How far one thing must move before another wall wins; `until` null: nothing within the range tried does it. */
const moveSchema = z.object({
  kind: z.enum(['weight', 'price', 'budget', 'room', 'assumption']),
  what: z.string(),
  now: z.union([z.string(), z.number(), z.boolean(), z.null()]),
  until: z.union([z.string(), z.number(), z.null()]),
  unit: z.string(),
  /** Id of the wall that wins then; null where none does, or where no wall passes. */
  winner: z.string().nullable(),
  sentence: z.string(),
});
export type Move = z.output<typeof moveSchema>;

/** An open answer that another reading of would change the first choice, and how to settle it. */
const toFindOutSchema = z.object({
  field: z.string(),
  why: z.string(),
  /** How to find out on site or by asking. */
  how: z.string(),
  effect: z.object({
    /** Whether the first choice still breaks no rule under that reading. */
    still_passes: z.boolean(),
    /** What is lost by building it all the same, as a difference of scores; null where it no longer passes. */
    score_loss: z.number().nullable(),
    words: z.string(),
  }),
});
export type ToFindOut = z.output<typeof toFindOutSchema>;

/** Keys of an answer; left out in answers of before they were worked out. */
export const rankingShape = {
  /** What each criterion weighs: the user's priorities and our own. */
  weights: z.record(z.string(), z.number()).optional(),
  robustness: z.array(moveSchema).optional(),
  /** Most telling first. */
  find_out_first: z.array(toFindOutSchema).optional(),
};
