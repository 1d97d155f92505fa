/**
 * Editions of the model codes that rules and tables know, the oldest first. This is the only list; whatever differs
 * from edition to edition is keyed by it, so that the compiler or the check of the shipped data names what a new one
 * still lacks.
 */
export const CODE_EDITIONS = ['2018', '2021', '2024'] as const;
export type CodeEdition = (typeof CODE_EDITIONS)[number];
