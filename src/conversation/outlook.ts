import type { Impression } from '../advice/first-impression.ts';
import type { Block } from './blocks.ts';
import { note } from './notes.ts';
import type { ConversationState } from './state.ts';

/** One line for beside the question: the first choice so far, and how many walls are left. */
export function outlookLine({ outlook, answers }: ConversationState): string | null {
  if (!outlook) return null;
  const lead = outlook.answers === answers ? 'So far' : 'So far (before your last answer)';
  return `${lead}: ${impressionWords(outlook.impression)}`;
}

function impressionWords({ first, drawn, admitted }: Impression): string {
  const count = `${admitted.toLocaleString('en-US')} of ${drawn.toLocaleString('en-US')} walls still in`;
  return first ? `${first.title}; ${count}.` : `no wall passes; ${count}.`;
}

/** The same at length, when it is asked for. */
export function outlookBlocks(state: ConversationState): Block[] {
  const { outlook } = state;
  if (!outlook) {
    return [note('No impression yet: it needs at least the place.')];
  }
  const { first } = outlook.impression;
  return [
    note(outlookLine(state) ?? ''),
    ...(first
      ? [
          {
            kind: 'figures' as const,
            rows: [
              { label: 'Likely cost', value: `$${first.likely_usd_per_ft2.toFixed(0)} a square foot` },
              { label: 'U-factor', value: first.u_factor.toFixed(3) },
              { label: 'Added thickness', value: `${first.added_thickness_in.toFixed(1)} in.` },
              { label: 'Weight', value: `${first.weight_psf.toFixed(1)} lb per square foot` },
            ],
          },
        ]
      : []),
    {
      kind: 'paragraph',
      text: 'A first impression: what you have not said yet is assumed. The answer comes with its reasons and cautions.',
      role: 'quiet',
    },
  ];
}
