import type { Rule } from './rule-schema.ts';

/** A rule's citation as it must be shown: what is remembered or has no source says so. */
export function citationText({ text, provenance }: Rule['citation']): string {
  if (provenance === 'memory') return `${text} (from memory, not verified)`;
  if (provenance !== 'common-practice') return text;
  const says = 'common practice, no source';
  if (text.toLowerCase().includes(says)) return text;
  return /^common practice\.?$/i.test(text) ? says : `${text} (${says})`;
}
