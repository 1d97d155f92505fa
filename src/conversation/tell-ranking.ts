import type { Advice, RankedAssembly } from '../advice/advice-schema.ts';
import { criterionWords } from '../advice/criterion-words.ts';
import type { Block } from './blocks.ts';

/** How many moves are told; the rest stand in the JSON and in the record. */
const MOST_MOVES = 6;

/** The tie with the first choice, and the near-duplicates that a wall stands for. */
export function kindLines({ tie, folded }: RankedAssembly): string[] {
  return [...(tie ? [tie.words] : []), ...(folded && folded.count > 1 ? [folded.words] : [])];
}

/** The parts of the score, each with its weight. */
export function scoreBlocks({ scores, score }: RankedAssembly, { weights }: Advice): Block[] {
  if (!weights) return [];
  return [
    { kind: 'heading', text: `How it scores: ${score.toFixed(3)} of 1` },
    {
      kind: 'figures',
      rows: Object.entries(scores).map(([key, value]) => {
        const weight = weights[key];
        const told = weight === undefined ? '' : `, weight ${Number(weight.toFixed(2))}`;
        return { label: capital(criterionWords(key)), value: `${value.toFixed(2)}${told}` };
      }),
    },
  ];
}

/** How far things must move before another wall wins; what stands firm in one sentence. */
export function robustnessBlocks({ robustness = [], ranked }: Advice): Block[] {
  if (ranked.length === 0) return [];
  // Other readings of the assumptions have a place of their own.
  const moves = robustness.filter(({ kind }) => kind !== 'assumption');
  if (moves.length === 0) return [];
  const telling = moves.filter(({ until }) => until !== null);
  const firm = moves.filter(({ until }) => until === null);
  return [
    { kind: 'title', text: 'How firm the first choice is' },
    ...(telling.length > 0
      ? [
          {
            kind: 'list' as const,
            items: telling.slice(0, MOST_MOVES).map(({ sentence }) => sentence),
          },
        ]
      : []),
    ...(firm.length > 0 ? [{ kind: 'paragraph' as const, text: firmWords(firm) }] : []),
  ];
}

function firmWords(firm: NonNullable<Advice['robustness']>): string {
  const of = (wanted: string) => firm.filter(({ kind }) => kind === wanted).map(({ what }) => what);
  const weights = of('weight').map(criterionWords);
  const prices = of('price');
  const parts = [
    ...(weights.length > 0 ? [`the weight of ${weights.join(', ')} (nothing to ten times)`] : []),
    ...(prices.length > 0 ? [`the price of ${prices.join(', ')} (half to twice)`] : []),
    ...(of('budget').length > 0 ? ['the budget (half to twice)'] : []),
    ...(of('room').length > 0 ? ['the room outside'] : []),
  ];
  return `Moved alone within these ranges, none of the following changes it: ${parts.join('; ')}.`;
}

/** What to find out before ordering, most telling first. */
export function findOutBlocks({ find_out_first: open = [] }: Advice): Block[] {
  if (open.length === 0) return [];
  return [
    { kind: 'title', text: 'Find out first' },
    {
      kind: 'list',
      numbered: true,
      items: open.map(({ effect, how }) => `${effect.words} How to find out: ${how}`),
    },
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
