import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { type Block, blocksToText, layOutBlocks } from '../../src/conversation/blocks.ts';
import { asciiText, visibleText } from '../../src/conversation/visible-text.ts';

const text = fc.string({ unit: 'grapheme', maxLength: 120 });
const block: fc.Arbitrary<Block> = fc.oneof(
  text.map((t): Block => ({ kind: 'title', text: t, aside: '3 of 15' })),
  text.map((t): Block => ({ kind: 'heading', text: t })),
  text.map((t): Block => ({ kind: 'paragraph', text: t })),
  text.map((t): Block => ({ kind: 'said', text: t })),
  fc.array(text, { maxLength: 12 }).map((items): Block => ({ kind: 'list', items, numbered: true })),
  fc
    .array(fc.record({ label: text, value: text }), { maxLength: 4 })
    .map((rows): Block => ({ kind: 'figures', rows })),
);

describe('blocks as text', () => {
  it('draws a title like a dimension line, with a twin in ASCII', () => {
    const blocks: Block[] = [{ kind: 'title', text: 'Framing', aside: '3 of 15' }];
    expect(blocksToText(blocks, 40)).toBe(`├─ Framing ${'─'.repeat(18)} 3 of 15 ─┤`);
    expect(blocksToText(blocks, 40, { ascii: true })).toBe(`|- Framing ${'-'.repeat(18)} 3 of 15 -|`);
  });

  it('hangs list items and figures on their first line', () => {
    const blocks: Block[] = [
      { kind: 'list', items: ['one two three four five six seven'] },
      { kind: 'figures', rows: [{ label: 'Weight', value: 'twelve pounds on each square foot' }] },
    ];
    expect(blocksToText(blocks, 30).split('\n')).toEqual([
      '  - one two three four five',
      '    six seven',
      '  Weight  twelve pounds on',
      '          each square foot',
    ]);
  });

  it('never makes a line wider than asked, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.array(block, { maxLength: 5 }),
        fc.integer({ min: 24, max: 140 }),
        fc.boolean(),
        (blocks, width, ascii) => {
          for (const line of layOutBlocks(blocks, { width, ascii })) {
            expect(stringWidth(line.text)).toBeLessThanOrEqual(width);
          }
        },
      ),
    );
  });

  it('is plain ASCII when asked, whatever the text', () => {
    fc.assert(
      fc.property(fc.array(block, { maxLength: 5 }), (blocks) => {
        expect(blocksToText(blocks, 80, { ascii: true })).toMatch(/^[\n\u0020-\u007e]*$/);
      }),
    );
  });

  it('shows control characters instead of obeying them', () => {
    const shown = blocksToText([{ kind: 'said', text: 'a\u001b[2Jb\u009bc\u202ed\u0007' }], 80);
    expect(shown).toBe('» a\\u001b[2Jb\\u009bc\\u202ed\\u0007');
  });
});

describe('visible text', () => {
  it('leaves no control character, whatever comes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (any) => {
        expect(visibleText(any)).not.toMatch(
          /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066-\u2069]/,
        );
      }),
    );
  });

  it('leaves ordinary letters alone, accents and other scripts too', () => {
    expect(visibleText('Doña Ana, 木造 ½″')).toBe('Doña Ana, 木造 ½″');
  });
});

describe('the ASCII twin', () => {
  it.each([
    ['0.7 kg/m², 5½″ × 60°F', '0.7 kg/m2, 5 1/2" x 60deg F'],
    ['Doña Ana – “yes”…', 'Dona Ana - "yes"...'],
    ['≤ 1 perm → class II', '<= 1 perm -> class II'],
  ])('of "%s" is "%s"', (marked, twin) => {
    expect(asciiText(marked)).toBe(twin);
  });
});
