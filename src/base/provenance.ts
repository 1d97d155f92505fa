import { z } from 'zod';

/** How sure we are of a figure or a code passage, from the surest on. `memory` is said aloud wherever it is used. */
export const PROVENANCES = [
  'two-sources',
  'verified',
  'computed',
  'proposal',
  'common-practice',
  'memory',
] as const;
export type Provenance = (typeof PROVENANCES)[number];

export const provenanceSchema = z.enum(PROVENANCES);
