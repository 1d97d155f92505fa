import xterm from '@xterm/headless';
import { describe, expect, it } from 'vitest';
import { eraseWrapped, frameOf, wrapsAnew } from '../../src/terminal/frame-trace.ts';

const LINES = ['+-- a ruled title that is as long as it can be --+', 'A question?', '1 one', '>> typed'];
const REGION = {
  lines: LINES.map((text) => ({ text, role: 'body' as const })),
  cursor: { x: 8, y: 3 },
};

/** A terminal with some talk and a frame below it, made narrower; what it shows after the codes were written. */
async function narrowed(columns: number): Promise<{ rows: string[]; cursor: { x: number; y: number } }> {
  const terminal = new xterm.Terminal({ cols: 60, rows: 12, scrollback: 100, allowProposedApi: true });
  const write = (text: string) => new Promise<void>((resolve) => terminal.write(text, resolve));
  await write(`talk one\r\ntalk two\r\n${LINES.join('\r\n')}`);
  terminal.resize(columns, 12);
  await write(eraseWrapped(frameOf(REGION), columns, 12).replaceAll('\n', '\r\n'));
  const { active } = terminal.buffer;
  const rows = Array.from(
    { length: 12 },
    (_, i) => active.getLine(active.baseY + i)?.translateToString(true) ?? '',
  );
  return { rows, cursor: { x: active.cursorX, y: active.cursorY } };
}

describe('a frame in a window that became narrower', () => {
  it.each([40, 30, 20])('is taken off whole at %d columns, and the talk above stays', async (columns) => {
    const { rows, cursor } = await narrowed(columns);
    expect(rows.filter((row) => row !== '')).toEqual(['talk one', 'talk two']);
    // Where the drawer believes the line of the cursor to be: below as many rows as the frame has above it.
    expect(cursor.y).toBe(2 + 3);
  });

  it('is left alone while every line fits', () => {
    expect(eraseWrapped(frameOf(REGION), 50, 12)).toBe('');
    expect(eraseWrapped({ widths: [], cursor: null }, 10, 12)).toBe('');
  });

  it('is left to terminals that cut instead of wrapping', () => {
    expect(wrapsAnew({ TERM: 'xterm-256color' })).toBe(true);
    expect(wrapsAnew({ TERM: 'linux' })).toBe(false);
    expect(wrapsAnew({ TERM: 'xterm-256color', XTERM_VERSION: 'XTerm(390)' })).toBe(false);
  });
});
