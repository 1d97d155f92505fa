import { z } from 'zod';
import { provenanceSchema } from '../base/provenance.ts';

/** What the reports of a firm share. */
export const wallFiguresSchema = z.object({
  score: z.number(),
  u_factor: z.number(),
  max_u_factor: z.number().nullable(),
  /** How sure the maximum is; null where there is none. */
  max_u_factor_provenance: provenanceSchema.nullable(),
  /** How far the U-factor lies below the maximum, % of it; negative above it, null where there is none. */
  u_margin_percent: z.number().nullable(),
  energy_route: z.enum(['u-factor', 'r-value', 'both', 'none', 'unknown']),
  cost_usd_per_ft2: z.object({ low: z.number(), likely: z.number(), high: z.number() }),
  added_thickness_in: z.number(),
  weight_psf: z.number(),
});
export type WallFigures = z.output<typeof wallFiguresSchema>;

/** Cladding over a build of boards, with barrier, interior retarder and window buck. */
export const assemblySchema = z.object({
  id: z.string(),
  title: z.string(),
  water_resistive_barrier: z.string(),
  interior_vapour_retarder: z.string(),
  /** What to know before it is taken for a standard; null where nothing. */
  remark: z.string().nullable(),
  buck: z.string(),
});
export type Assembly = z.output<typeof assemblySchema>;

export const closestSchema = z.object({
  id: z.string(),
  title: z.string(),
  because: z.array(
    z.object({ rule: z.string(), citation: z.string(), text: z.string(), remedy: z.string() }),
  ),
});
export type Closest = z.output<typeof closestSchema>;

export const packSchema = z.object({
  name: z.string(),
  version: z.string(),
  sha256: z.string(),
  /** A pack of the firm's own. */
  house: z.boolean(),
});
export type ReportPack = z.output<typeof packSchema>;
