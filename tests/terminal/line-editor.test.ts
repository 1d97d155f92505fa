import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import {
  type EditedLine,
  EMPTY_LINE,
  eraseBack,
  eraseToEnd,
  eraseToStart,
  eraseWord,
  insertText,
  lineText,
  lineWindow,
  moveCursor,
} from '../../src/terminal/line-editor.ts';

const typed = (text: string): EditedLine => insertText(EMPTY_LINE, text);

describe('editing a line', () => {
  it.each([
    ['a', ''],
    ['Doña', 'Doñ'],
    ['e\u0301', ''],
    ['木造', '木'],
    ['ab🏠', 'ab'],
    ['🇺🇸', ''],
  ])('rubs out one character of "%s" as a reader sees it', (before, after) => {
    expect(lineText(eraseBack(typed(before)))).toBe(after);
  });

  it('puts text in at the cursor', () => {
    const line = insertText(moveCursor(typed('2x at 16'), 2), '6');
    expect(lineText(line)).toBe('2x6 at 16');
    expect(line.cursor).toBe(3);
  });

  it('joins a combining mark to the character before it', () => {
    const line = insertText(typed('man'), '\u0303');
    expect(line.characters).toEqual(['m', 'a', 'n\u0303']);
    expect(line.cursor).toBe(3);
  });

  it('shows control characters that are pasted', () => {
    expect(lineText(typed('a\u001b[31mb'))).toBe('a\\u001b[31mb');
  });

  it('rubs out words and halves of the line', () => {
    expect(lineText(eraseWord(typed('2x6 at  16')))).toBe('2x6 at  ');
    expect(lineText(eraseWord(typed('2x6 at  ')))).toBe('2x6 ');
    expect(lineText(eraseToStart(moveCursor(typed('2x6 at 16'), 4)))).toBe('at 16');
    expect(lineText(eraseToEnd(moveCursor(typed('2x6 at 16'), 3)))).toBe('2x6');
  });

  it('does nothing at the ends', () => {
    expect(eraseBack(EMPTY_LINE)).toEqual(EMPTY_LINE);
    expect(moveCursor(typed('ab'), 9).cursor).toBe(2);
    expect(moveCursor(typed('ab'), -1).cursor).toBe(0);
  });

  it('keeps the cursor inside the line, whatever is done', () => {
    const act = fc.oneof(
      fc
        .string({ unit: 'grapheme', maxLength: 8 })
        .map((text) => (line: EditedLine) => insertText(line, text)),
      fc.integer({ min: -2, max: 30 }).map((to) => (line: EditedLine) => moveCursor(line, to)),
      fc.constantFrom(eraseBack, eraseWord, eraseToStart, eraseToEnd),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 20 }), (acts) => {
        const line = acts.reduce((before, next) => next(before), EMPTY_LINE);
        expect(line.cursor).toBeGreaterThanOrEqual(0);
        expect(line.cursor).toBeLessThanOrEqual(line.characters.length);
        expect(line.characters.every((character) => character !== '')).toBe(true);
      }),
    );
  });

  it('shows the stretch around the cursor, never wider than there is room', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 4, max: 40 }),
        (text, cursor, columns) => {
          const { text: shown, column } = lineWindow(moveCursor(typed(text), cursor), columns);
          expect(stringWidth(shown)).toBeLessThan(columns);
          expect(column).toBeLessThan(columns);
          expect(column).toBeLessThanOrEqual(stringWidth(shown));
        },
      ),
    );
  });
});
