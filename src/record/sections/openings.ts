import type { RankedAssembly } from '../../advice/advice-schema.ts';
import {
  noteSentences,
  onceEach,
  openingSentences,
  openingTitle,
  otherSequences,
  planeSentences,
} from '../../advice/opening-words.ts';
import { listOf, present, type RecordBlock } from '../record-document.ts';
import { under } from './decision.ts';

/** Every kind of window: what carries it, where it sits, how its flashing differs, what must be kept apart. */
export function everyWindow({ openings, buck }: RankedAssembly): RecordBlock[] {
  if (openings.length === 0) return [];
  const texts = (items: readonly string[]) => items.map((text) => ({ text }));
  return present([
    ...under(
      'Every window',
      listOf(
        openings.map((opening) => ({
          lead: openingTitle(opening, openings.length),
          text: openingSentences(opening).join(' '),
        })),
      ),
    ),
    ...under('Where the windows sit', listOf(texts(planeSentences(openings)))),
    ...under('What the window figures rest on', listOf(texts(noteSentences(openings)))),
    ...otherSequences(openings, buck.flashing_sequence).flatMap((opening) =>
      under(
        `Flashing in its own order: ${openingTitle(opening, 1)}`,
        listOf(texts(opening.flashing_sequence), true),
      ),
    ),
    ...under(
      'What must not touch what (common practice, no source)',
      listOf(texts(onceEach(openings, 'compatibility'))),
    ),
    ...under('To replace a window later', listOf(texts(onceEach(openings, 'replace_later')))),
  ]);
}
