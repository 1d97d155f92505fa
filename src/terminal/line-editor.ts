import stringWidth from 'string-width';
import { visibleText } from '../conversation/visible-text.ts';

/** The line being typed: what a reader sees as characters, and where the cursor stands among them. */
export type EditedLine = { readonly characters: readonly string[]; readonly cursor: number };

export const EMPTY_LINE: EditedLine = { characters: [], cursor: 0 };

const LONGEST = 2000;
const segmenter = new Intl.Segmenter();

export function lineText(line: EditedLine): string {
  return line.characters.join('');
}

/** Puts text in at the cursor. Control characters come in visible, so that nothing pasted can steer the terminal. */
export function insertText(line: EditedLine, text: string): EditedLine {
  const before = line.characters.slice(0, line.cursor).join('') + visibleText(text);
  const after = line.characters.slice(line.cursor).join('');
  // The whole is cut anew: a combining mark belongs to the character before it, wherever that came from.
  const characters = charactersOf(before + after).slice(0, LONGEST);
  return { characters, cursor: Math.min(charactersOf(before).length, characters.length) };
}

export function eraseBack(line: EditedLine): EditedLine {
  if (line.cursor === 0) return line;
  return {
    characters: [...line.characters.slice(0, line.cursor - 1), ...line.characters.slice(line.cursor)],
    cursor: line.cursor - 1,
  };
}

/** Rubs out the word before the cursor, with the blanks between. */
export function eraseWord(line: EditedLine): EditedLine {
  let start = line.cursor;
  while (start > 0 && line.characters[start - 1] === ' ') start -= 1;
  while (start > 0 && line.characters[start - 1] !== ' ') start -= 1;
  return {
    characters: [...line.characters.slice(0, start), ...line.characters.slice(line.cursor)],
    cursor: start,
  };
}

export function eraseToStart(line: EditedLine): EditedLine {
  return { characters: line.characters.slice(line.cursor), cursor: 0 };
}

export function eraseToEnd(line: EditedLine): EditedLine {
  return { characters: line.characters.slice(0, line.cursor), cursor: line.cursor };
}

export function moveCursor(line: EditedLine, to: number): EditedLine {
  return { ...line, cursor: Math.max(0, Math.min(line.characters.length, to)) };
}

/** The stretch of the line around the cursor that fits, and the column where the cursor stands in it. */
export function lineWindow(line: EditedLine, columns: number): { text: string; column: number } {
  const room = Math.max(1, columns - 1);
  let start = 0;
  while (width(line, start, line.cursor) > room) start += 1;
  let end = line.cursor;
  while (end < line.characters.length && width(line, start, end + 1) <= room) end += 1;
  return { text: line.characters.slice(start, end).join(''), column: width(line, start, line.cursor) };
}

function width(line: EditedLine, start: number, end: number): number {
  return stringWidth(line.characters.slice(start, end).join(''));
}

function charactersOf(text: string): string[] {
  return [...segmenter.segment(text)].map(({ segment }) => segment);
}
