import type { Advice } from '../../advice/advice-schema.ts';
import { criterionWords } from '../../advice/criterion-words.ts';
import { capital } from '../../base/first-letter.ts';
import { listed } from '../../base/listed.ts';
import { fieldWords } from '../../brief/field-words.ts';
import { numberText } from '../figure-text.ts';
import { listOf, present, type RecordBlock, tableOf } from '../record-document.ts';

type Move = NonNullable<Advice['robustness']>[number];

/** How far each weight, price, the budget and the room must move, alone, before another wall wins; nearest first. */
export function firmness({ robustness = [], ranked }: Advice): RecordBlock[] {
  if (ranked.length === 0) return [];
  const moves = robustness.filter(({ kind }) => kind !== 'assumption');
  const telling = moves.filter(({ until }) => until !== null);
  const firm = moves.filter(({ until }) => until === null);
  return present([
    telling.length === 0
      ? null
      : {
          kind: 'paragraph',
          text: 'Each thing moved alone, the rest as it is: weights from nothing to ten times, prices and budget from half to twice what they are now. Another thickness or detail of the same wall does not count as another wall.',
        },
    tableOf(
      'What must move before another wall wins',
      [
        { title: 'What' },
        { title: 'Now', isNumber: true },
        { title: 'Until', isNumber: true },
        { title: 'Then' },
      ],
      telling.map((move) => [
        capital(nameOf(move)),
        amount(move.now, move.unit),
        amount(move.until, move.unit),
        move.sentence,
      ]),
    ),
    firm.length === 0
      ? null
      : {
          kind: 'paragraph',
          text: `Moved alone within these ranges, these change nothing: ${listed(firm.map(nameOf))}.`,
        },
  ]);
}

function nameOf({ kind, what }: Move): string {
  if (kind === 'weight') return `the weight of ${criterionWords(what)}`;
  return kind === 'price' ? `the price of ${what}` : `the ${what}`;
}

function amount(value: Move['now'], unit: string): string {
  if (typeof value !== 'number') return value === null ? 'open' : String(value);
  return unit === 'weight' ? numberText(value) : `${numberText(value)} ${unit}`;
}

/** The unknowns that would change the first choice, most telling first, with how to find out. */
export function findOutFirst({ find_out_first: open = [] }: Advice): RecordBlock[] {
  return present([
    listOf(
      open.map(({ field, how, effect }) => ({
        lead: fieldWords(field),
        text: `${effect.words} How to find out: ${how}`,
      })),
      true,
    ),
  ]);
}
