import type { Criterion } from './scoring.ts';

/** What each criterion asks for, to go into a sentence. */
export const CRITERION_WORDS: Readonly<Record<Criterion, string>> = {
  energy: 'holding heat',
  moisture_safety: 'staying dry',
  structure: 'a settled fastening',
  cost: 'low cost',
  ease: 'ease of building',
  carbon: 'low carbon',
  finish: 'the wanted finish',
  repair: 'durability and repair',
  thinness: 'a thin wall',
};

/** The same for a key of an answer, which may be of a later version. */
export function criterionWords(key: string): string {
  return Object.hasOwn(CRITERION_WORDS, key) ? CRITERION_WORDS[key as Criterion] : key.replaceAll('_', ' ');
}
