import type { Block } from './blocks.ts';
import type { Draft } from './draft.ts';
import { warning } from './notes.ts';
import type { Reader } from './reader.ts';
import type { ConversationState } from './state.ts';
import { remark } from './turns.ts';

function opening(reader: Reader): readonly Block[] {
  const switching = reader === 'homeowner' ? '' : '; "plain words" if you are not in the trade';
  return [
    { kind: 'title', text: 'Cladwright' },
    {
      kind: 'paragraph',
      text: 'Cladding over outside insulation on a framed wall. I ask about your wall, then draw up the whole assembly: insulation, layers, vapour and rain, fastening, windows, weight, cost and what it asks of the crew.',
    },
    {
      kind: 'paragraph',
      text: `Answer with a number or in your own words, several things at once if you like. "don't know" is an answer too: I then assume something and say so. "help" lists what else you can say${switching}.`,
    },
    warning(
      'Caution: what I draw up does not replace an engineer, the building department or a licensed professional. Local code decides.',
    ),
  ];
}

/**
 * The talk as it begins: a greeting, and the first question or the offer to go on with a kept talk. Needs nothing of
 * what understands answers, so that it stands on the screen before that is loaded.
 */
export function opened(
  state: ConversationState,
  draft: Draft | null,
  setAside: string | null,
): ConversationState {
  let talk = remark({ ...state, stage: 'asking' }, ...opening(state.reader));
  if (setAside) {
    const words = `Caution: a kept talk could not be read. It was set aside as ${setAside}; this is a fresh one.`;
    talk = remark(talk, warning(words));
  }
  const hasDraft = draft !== null && Object.keys(draft.answers).length > 0;
  return hasDraft ? { ...talk, asides: [{ kind: 'resume', draft }] } : talk;
}
