import stringWidth from 'string-width';
import type { LiveRegion } from './live-region.ts';

/** Columns of each line of a frame, and where the cursor stands in it. */
export type Frame = {
  readonly widths: readonly number[];
  readonly cursor: { readonly x: number; readonly y: number } | null;
};

export function frameOf({ lines, cursor }: LiveRegion): Frame {
  return { widths: lines.map(({ text }) => Math.max(1, stringWidth(text))), cursor };
}

const UP = (rows: number) => (rows > 0 ? `\u001b[${rows}A` : '');
const ERASE_BELOW = '\u001b[J';

/**
 * What to write when a window has become narrower, so that nothing of the old frame stays behind. Most terminals wrap
 * lines that no longer fit: the frame is then taller than its drawer remembers. It is taken off as tall as it is now, and
 * the cursor left where the drawer believes it to be, with as many empty rows above as it remembers.
 *
 * @param rows  of the window: what has left it can't be reached
 * @returns nothing when every line still fits
 */
export function eraseWrapped({ widths, cursor }: Frame, columns: number, rows: number): string {
  if (widths.every((width) => width <= columns)) return '';
  const rowsOf = (width: number) => Math.max(1, Math.ceil(width / Math.max(1, columns)));
  const at = cursor ?? { x: 0, y: widths.length };
  const above = widths.slice(0, at.y).reduce((sum, width) => sum + rowsOf(width), 0);
  const inLine = Math.floor(at.x / Math.max(1, columns));
  const reach = Math.min(above + inLine, rows - 1);
  return `${UP(reach)}\r${ERASE_BELOW}${'\n'.repeat(Math.min(at.y, rows - 1))}${at.x > 0 ? `\u001b[${Math.min(at.x, columns - 1)}C` : ''}`;
}

/** Whether a terminal wraps anew what it shows when its window changes. Two kinds are known not to. */
export function wrapsAnew(env: Readonly<Record<string, string | undefined>>): boolean {
  return env.TERM !== 'linux' && (env.XTERM_VERSION ?? '') === '';
}
