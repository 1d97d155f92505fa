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

/** Words for where a figure comes from; what is remembered or has no source says so. */
const PROVENANCE_WORDS: Readonly<Record<Provenance | 'given' | 'house', string>> = {
  verified: 'verified in a published source',
  'two-sources': 'two sources agree',
  computed: 'computed',
  memory: 'from memory, not verified',
  proposal: 'our proposal, no source',
  'common-practice': 'common practice, no source',
  given: 'as given',
  house: 'the firm’s own',
};

/** A provenance in words; one that isn't known here is shown as it stands. */
export function provenanceText(provenance: string): string {
  return Object.hasOwn(PROVENANCE_WORDS, provenance)
    ? PROVENANCE_WORDS[provenance as keyof typeof PROVENANCE_WORDS]
    : provenance;
}
