import type { Advice } from '../advice/advice-schema.ts';
import type { Block } from './blocks.ts';
import type { Reader } from './reader.ts';
import { adviceBlocks } from './tell-advice.ts';
import { homeownerBlocks } from './tell-homeowner.ts';

/** The answer for one of the two readers: the same content, in another order and other words. */
export function toldTo(reader: Reader, advice: Advice): readonly Block[] {
  return reader === 'homeowner' ? homeownerBlocks(advice) : adviceBlocks(advice);
}
