import type { RankedAssembly } from './advice-schema.ts';

/**
 * Whether the wall holds no window. Its buck was drawn up for nothing then. A record from before windows were listed
 * one by one has a verdict on its buck.
 */
export function isWindowless({ openings, buck }: Pick<RankedAssembly, 'openings' | 'buck'>): boolean {
  return openings.length === 0 && buck.verdict === null;
}

export const NO_WINDOWS = 'none in this wall';
