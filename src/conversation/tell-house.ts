import type { Advice } from '../advice/advice-schema.ts';
import type { Block } from './blocks.ts';

/** What a firm's own packs did to the answer; nothing where none was in force. */
export function houseBlocks({ house }: Advice): Block[] {
  if (!house) return [];
  return [
    { kind: 'heading', text: 'House rules' },
    { kind: 'list', items: house.sentences },
  ];
}
