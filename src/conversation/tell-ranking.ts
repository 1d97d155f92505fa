import type { Advice, RankedAssembly } from '../advice/advice-schema.ts';
import { criterionWords } from '../advice/criterion-words.ts';
import { capital } from '../base/first-letter.ts';
import { inches } from '../base/inches.ts';
import type { Block } from './blocks.ts';
import type { Reader } from './reader.ts';

/** How many moves are told; the rest stand in the JSON and in the record. */
const MOST_MOVES = 6;

/** The tie with the first choice, and the near-duplicates that a wall stands for. */
export function kindLines({ tie, folded }: RankedAssembly): string[] {
  return [...(tie ? [tie.words] : []), ...(folded && folded.count > 1 ? [folded.words] : [])];
}

export const PLAIN_TIE = 'As good as the first choice, as far as prices can tell: get quotes for both.';

/** The same two things without scores: whether it ties, and what else passes. */
export function plainKindLines({ tie, tie_with_first, folded }: RankedAssembly): string[] {
  const lines: string[] = [];
  if (tie && tie_with_first) lines.push(PLAIN_TIE);
  if (folded && folded.count > 1) {
    const { low, high } = folded.thickness_in;
    const thick = low === high ? `${inches(low)} in.` : `${inches(low)} to ${inches(high)} in.`;
    const cheapest = `the cheapest is ${inches(folded.cheapest.thickness_in)} in. of ${folded.cheapest.insulation}`;
    lines.push(`${thick} of ${folded.insulations.join(' or ')} would pass too; ${cheapest}.`);
  }
  return lines;
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

/**
 * How far things must move before another wall wins; what stands firm in one sentence.
 *
 * @param most  moves told
 */
export function robustnessBlocks(
  { robustness = [], ranked }: Advice,
  reader: Reader = 'professional',
  most = MOST_MOVES,
): Block[] {
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
            items: telling.slice(0, most).map(({ sentence }) => sentence),
          },
        ]
      : []),
    ...(firm.length > 0
      ? [{ kind: 'paragraph' as const, text: reader === 'homeowner' ? FIRM_IN_PLAIN_WORDS : firmWords(firm) }]
      : []),
  ];
}

const FIRM_IN_PLAIN_WORDS =
  'Of the other prices, limits and wishes none changes it by itself, as far as I moved them.';

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
