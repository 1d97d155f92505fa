import type { Advice } from '../advice/advice-schema.ts';
import type { Block } from './blocks.ts';
import type { Reader } from './reader.ts';
import type { ConversationState, Extent } from './state.ts';
import { adviceBlocks } from './tell-advice.ts';
import { briefBlocks } from './tell-briefly.ts';
import { homeownerBlocks } from './tell-homeowner.ts';
import { withTurn } from './turns.ts';

/** The talk with the answer told to whoever listens; a turn keeps its words, whatever comes later. */
export function withAdviceTold(
  state: ConversationState,
  advice: Advice,
  extent: Extent = state.extent,
): ConversationState {
  const { reader } = state;
  return withTurn(state, { kind: 'advice', reader, extent, blocks: toldTo(reader, advice, extent) });
}

/** The answer for one of the two readers: the same content, in another order and other words. */
export function toldTo(reader: Reader, advice: Advice, extent: Extent = 'whole'): readonly Block[] {
  if (extent === 'brief') return briefBlocks(advice, reader);
  return reader === 'homeowner' ? homeownerBlocks(advice) : adviceBlocks(advice);
}
