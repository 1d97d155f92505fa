import stringWidth from 'string-width';
import { visibleText } from '../conversation/visible-text.ts';

const GAP = '  ';

/** A text table: every column but the last as wide as its widest cell. Not wrapped, so that lines can be searched. */
export function alignColumns(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const cells = [head, ...rows].map((row) => row.map((cell) => visibleText(cell)));
  const widths = head.map((_, column) => Math.max(...cells.map((row) => stringWidth(row[column] ?? ''))));
  return cells
    .map((row) =>
      row
        .map((cell, column) =>
          column === row.length - 1 ? cell : cell + ' '.repeat((widths[column] ?? 0) - stringWidth(cell)),
        )
        .join(GAP)
        .trimEnd(),
    )
    .join('\n');
}
