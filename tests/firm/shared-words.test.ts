import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sharedWords } from '../../src/firm/shared-words.ts';

/** The sentences made again from what they share. */
function made({ text, slots }: NonNullable<ReturnType<typeof sharedWords>>, which: number): string {
  return slots.reduce((sofar, { mark, values }) => sofar.replace(mark, () => values[which] ?? ''), text);
}

describe('sentences that differ in figures only', () => {
  it('are told as one, with a letter for each figure', () => {
    const told = sharedWords([
      'In zone 4A the wall comes to U-0.056, where U-0.045 is the most allowed (from memory).',
      'In zone 5B the wall comes to U-0.049, where U-0.045 is the most allowed (from memory).',
    ]);
    expect(told).toEqual({
      text: 'In zone [a] the wall comes to U-[b], where U-0.045 is the most allowed (from memory).',
      slots: [
        { mark: '[a]', values: ['4A', '5B'] },
        { mark: '[b]', values: ['0.056', '0.049'] },
      ],
    });
  });

  it('keep a list whole with the bracket behind it, and leave brackets round all of it outside', () => {
    const told = sharedWords([
      'It is accepted by one of R-13 or R-10 continuous (two sources agree), and by none of the others (seen).',
      'It is accepted by one of R-30 or R-20 continuous (from memory), and by none of the others (not seen in print).',
    ]);
    expect(told?.text).toBe('It is accepted by one of [a], and by none of the others ([b]).');
    expect(told?.slots.map(({ values }) => values)).toEqual([
      ['R-13 or R-10 continuous (two sources agree)', 'R-30 or R-20 continuous (from memory)'],
      ['seen', 'not seen in print'],
    ]);
  });

  it('can be made again, whatever stands in them', () => {
    const words = fc.array(fc.stringMatching(/^[a-z0-9.,;:()$-]{1,6}$/), { minLength: 1, maxLength: 4 });
    const frame = 'one two three four five six seven eight nine';
    fc.assert(
      fc.property(fc.array(fc.tuple(words, words), { minLength: 2, maxLength: 5 }), (pairs) => {
        const texts = [
          ...new Set(pairs.map(([a, b]) => `${frame} ${a.join(' ')} then and there ${b.join(' ')} end.`)),
        ];
        fc.pre(texts.length > 1);
        const told = sharedWords(texts);
        if (told) expect(texts.map((_, i) => made(told, i))).toEqual(texts);
      }),
    );
  });
});

describe('different sentences', () => {
  it.each([
    ['have little in common', ['A gap of 1 in. is asked for.', 'No gap is asked for at all here.']],
    [
      'go on where the other ends',
      [
        'The wall is built as drawn and nothing more is said.',
        'The wall is built as drawn and nothing more is said. Mind it.',
      ],
    ],
  ])('are not told as one where they %s', (_, texts) => {
    expect(sharedWords(texts)).toBeNull();
  });
});
