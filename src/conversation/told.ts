import type { Advice } from '../advice/advice-schema.ts';
import type { Block } from './blocks.ts';
import type { Reader } from './reader.ts';
import { adviceBlocks } from './tell-advice.ts';
import { briefBlocks } from './tell-briefly.ts';
import { homeownerBlocks } from './tell-homeowner.ts';

/** How much of an answer is told at once. */
export type Extent = 'brief' | 'whole';

/** The answer for one of the two readers: the same content, in another order and other words. */
export function toldTo(reader: Reader, advice: Advice, extent: Extent = 'whole'): readonly Block[] {
  if (extent === 'brief') return briefBlocks(advice, reader);
  return reader === 'homeowner' ? homeownerBlocks(advice) : adviceBlocks(advice);
}
