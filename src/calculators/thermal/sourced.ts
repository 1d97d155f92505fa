import { z } from 'zod';
import { PROVENANCES, type Provenance, provenanceSchema } from '../../base/provenance.ts';

export { type Provenance, provenanceSchema };

/** A figure with where it comes from. */
export const figureSchema = z.strictObject({
  value: z.number(),
  source: z.string().min(3),
  provenance: provenanceSchema,
});

const bySureness = (a: Provenance, b: Provenance) => PROVENANCES.indexOf(a) - PROVENANCES.indexOf(b);

/** The least sure of several provenances; a sum is no surer than the weakest figure in it. */
export function weakestProvenance(provenances: readonly Provenance[]): Provenance | null {
  return provenances.slice().sort(bySureness).at(-1) ?? null;
}

/** The surest of several provenances, for verdicts that any one of them carries alone. */
export function surestProvenance(provenances: readonly Provenance[]): Provenance | null {
  return provenances.slice().sort(bySureness)[0] ?? null;
}
