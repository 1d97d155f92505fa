import type { RankedAssembly } from '../advice/advice-schema.ts';
import {
  noteSentences,
  onceEach,
  openingSentences,
  openingTitle,
  otherSequences,
  ownSteps,
  planeSentences,
} from '../advice/opening-words.ts';
import type { Block } from './blocks.ts';

/** Every kind of window of the wall: what carries it, what room it needs, and where its flashing differs. */
export function openingBlocks({ openings, buck }: RankedAssembly): Block[] {
  if (openings.length === 0) return [];
  return [
    ...list(
      'Every window',
      openings.map((opening) =>
        [`${openingTitle(opening, openings.length)}.`, ...openingSentences(opening)].join(' '),
      ),
    ),
    ...list('Where the windows sit', planeSentences(openings)),
    ...list('What the window figures rest on', noteSentences(openings)),
    ...otherSequences(openings, buck.flashing_sequence).flatMap((opening) =>
      list(`${openingTitle(opening, 1)}: the same order, but`, ownSteps(opening, buck.flashing_sequence)),
    ),
    ...list('What must not touch what (common practice, no source)', onceEach(openings, 'compatibility')),
    ...list('To replace a window later', onceEach(openings, 'replace_later')),
  ];
}

function list(title: string, items: readonly string[]): Block[] {
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: title },
        { kind: 'list', items },
      ];
}
