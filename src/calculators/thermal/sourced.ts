import { z } from 'zod';

/** How sure we are of a figure, from the surest on. `memory` is said aloud wherever the figure is used. */
export const provenanceSchema = z.enum([
  'two-sources',
  'verified',
  'computed',
  'proposal',
  'common-practice',
  'memory',
]);
export type Provenance = z.output<typeof provenanceSchema>;

/** A figure with where it comes from. */
export const figureSchema = z.strictObject({
  value: z.number(),
  source: z.string().min(3),
  provenance: provenanceSchema,
});

const bySureness = (a: Provenance, b: Provenance) =>
  provenanceSchema.options.indexOf(a) - provenanceSchema.options.indexOf(b);

/** The least sure of several provenances; a sum is no surer than the weakest figure in it. */
export function weakestProvenance(provenances: readonly Provenance[]): Provenance | null {
  return provenances.slice().sort(bySureness).at(-1) ?? null;
}

/** The surest of several provenances, for verdicts that any one of them carries alone. */
export function surestProvenance(provenances: readonly Provenance[]): Provenance | null {
  return provenances.slice().sort(bySureness)[0] ?? null;
}
