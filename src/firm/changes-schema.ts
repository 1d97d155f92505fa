import { z } from 'zod';
import { assemblySchema, closestSchema, packSchema, wallFiguresSchema } from './firm-schema.ts';

/** How a decision fares under the second rule set. */
export const OUTCOMES = [
  'same',
  'figures',
  'other-wall',
  'nothing-passes-now',
  'passes-now',
  'nothing-passes',
] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** Outcomes that mean another decision. */
export const DECIDES_OTHERWISE: ReadonlySet<Outcome> = new Set([
  'other-wall',
  'nothing-passes-now',
  'passes-now',
]);

const decisionSchema = z.object({
  climate_zone: z.string(),
  admitted: z.number(),
  choice: assemblySchema.extend(wallFiguresSchema.shape).nullable(),
  closest: closestSchema.nullable(),
});
export type Decision = z.output<typeof decisionSchema>;

const reasonSchema = z.object({
  kind: z.enum(['rules-it-out', 'no-longer-ruled-out', 'verdict', 'limit', 'price', 'score']),
  text: z.string(),
  /** What the rule now says. */
  detail: z.string().optional(),
  rule: z.string().optional(),
  citation: z.string().optional(),
  before: z.string().optional(),
  after: z.string().optional(),
});
export type Reason = z.output<typeof reasonSchema>;

const figureSchema = z.object({
  figure: z.string(),
  before: z.number().nullable(),
  after: z.number().nullable(),
});

const projectSchema = z.object({
  file: z.string(),
  name: z.string(),
  outcome: z.enum(OUTCOMES),
  before: decisionSchema,
  after: decisionSchema,
  /** Which parts of the first choice are others. */
  parts_changed: z.array(z.string()),
  /** Figures of the first choice that differ. */
  figures: z.array(figureSchema),
  why: z.array(reasonSchema),
});
export type ProjectChange = z.output<typeof projectSchema>;

const ruleSetSchema = z.object({
  /** Null: each project's own. */
  edition: z.string().nullable(),
  label: z.string(),
  packs: z.array(packSchema),
});

/** What two rule sets decide differently, `cladwright-changes/1`. */
export const changesSchema = z.object({
  schema: z.literal('cladwright-changes/1'),
  tool_version: z.string(),
  from: ruleSetSchema,
  to: ruleSetSchema,
  decisions_changed: z.number(),
  projects: z.array(projectSchema),
});
export type Changes = z.output<typeof changesSchema>;
