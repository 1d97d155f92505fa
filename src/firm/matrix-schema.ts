import { z } from 'zod';
import { assemblySchema, closestSchema, packSchema, wallFiguresSchema } from './firm-schema.ts';

/** A wall in a cell: its letter in the list of assemblies, and its figures there. */
const placedSchema = z.object({ assembly: z.string(), ...wallFiguresSchema.shape });

const cellSchema = z.object({
  place: z.string(),
  climate_zone: z.string(),
  framing: z.string(),
  finish: z.string(),
  budget_usd_per_ft2: z.number().nullable(),
  considered: z.object({ candidates: z.number(), admitted: z.number() }),
  /** What an answer for this cell alone ranks first; null where nothing passes. */
  first_choice: placedSchema.extend({ open_questions: z.array(z.string()) }).nullable(),
  /** The assembly of the standard that serves the cell. */
  standard: placedSchema.extend({ open_questions: z.array(z.string()) }).nullable(),
  /** How many assemblies count as covering the cell. */
  covering: z.number(),
  /** Where nothing passes: what comes closest, and the rules against it. */
  closest: closestSchema.nullable(),
});
export type MatrixCell = z.output<typeof cellSchema>;

/** The matrix of a firm, `cladwright-matrix/1`. */
export const matrixSchema = z.object({
  schema: z.literal('cladwright-matrix/1'),
  tool_version: z.string(),
  name: z.string(),
  code_edition: z.string(),
  axes: z.object({
    places: z.array(z.string()),
    framings: z.array(z.string()),
    finishes: z.array(z.string()),
    budgets_usd_per_ft2: z.array(z.number().nullable()),
  }),
  within_score: z.number(),
  cells: z.array(cellSchema),
  /** Every assembly that the matrix speaks of, by letter; those of the standard first. */
  assemblies: z.array(assemblySchema.extend({ letter: z.string(), is_standard: z.boolean() })),
  standard: z.object({
    assemblies: z.array(z.string()),
    cells_covered: z.number(),
    cells_where_nothing_passes: z.number(),
    /** No set that covers as many cells is smaller than this. */
    lower_bound: z.number(),
    is_proved: z.boolean(),
    curve: z.array(
      z.object({
        assemblies: z.array(z.string()),
        cells_covered: z.number(),
        most_possible: z.number(),
        is_proved: z.boolean(),
      }),
    ),
  }),
  /** What was not said and holds for every cell, or for some of them. */
  assumptions: z.array(
    z.object({
      field: z.string(),
      value: z.union([z.string(), z.number(), z.boolean(), z.null()]),
      why: z.string(),
      cells: z.number(),
    }),
  ),
  notes: z.array(z.string()),
  rules: z.object({ packs: z.array(packSchema) }),
});
export type Matrix = z.output<typeof matrixSchema>;
export type MatrixAssembly = Matrix['assemblies'][number];
