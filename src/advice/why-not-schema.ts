import { z } from 'zod';

const wallSchema = z.object({ id: z.string(), title: z.string(), score: z.number() });

const reasonSchema = z.object({
  rule: z.string().optional(),
  citation: z.string().optional(),
  text: z.string(),
  remedy: z.string().optional(),
});

const changeSchema = z.object({
  /** Path in the scenario, or `wall` where the wall itself is built otherwise. */
  field: z.string(),
  from: z.string(),
  to: z.string(),
});

/** Why an assembly that somebody named is not the first choice, `cladwright-why-not/1`. */
export const whyNotSchema = z.object({
  schema: z.literal('cladwright-why-not/1'),
  tool_version: z.string(),
  name: z.string(),
  asked: z.string(),
  /** What was understood by it, and what had to be taken otherwise than said. */
  understood: z.string(),
  notes: z.array(z.string()),
  /** `not-made`: the parts don't go together here, whatever the rules say. */
  verdict: z.enum(['first-choice', 'admitted', 'excluded', 'not-made']),
  /** Walls that fit the name, and how many of them break no rule. */
  considered: z.object({ candidates: z.number(), admitted: z.number() }),
  /** The best one that is admitted, or the one that came closest. */
  wall: wallSchema.nullable(),
  /** Excluded: the rules against the one that came closest. Not made: why the parts don't fit. */
  because: z.array(reasonSchema),
  /** Admitted, but by one of several claddings that the name fits: why the others are out. */
  others_excluded: z.array(z.object({ title: z.string(), because: z.array(reasonSchema) })),
  /** Admitted: the first choice, and where the difference of scores comes from, largest first. */
  beaten_by: wallSchema
    .extend({
      behind: z.number(),
      /** Whether the first choice is at least as good by every criterion. */
      in_everything: z.boolean(),
      parts: z.array(
        z.object({
          criterion: z.string(),
          here: z.number(),
          there: z.number(),
          /** What the criterion adds to (or takes from) the distance, weight counted. */
          adds: z.number(),
        }),
      ),
    })
    .nullable(),
  /** Admitted: how far a single weight must move before it is first; empty when none does. */
  would_win: z.array(z.string()),
  /** Excluded or not made: the smallest changes that admit it, found by judging again; smallest first. */
  smallest_changes: z.array(
    z.object({
      changes: z.array(changeSchema),
      sentence: z.string(),
      then: wallSchema,
    }),
  ),
  /** What was tried. */
  tried: z.string(),
});
export type WhyNot = z.output<typeof whyNotSchema>;
