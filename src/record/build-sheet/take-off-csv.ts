import { cleanText } from '../clean-text.ts';
import type { TakeOffLine } from './take-off-line.ts';

const HEAD = [
  'group',
  'item',
  'net',
  'unit',
  'waste_percent',
  'order',
  'order_unit',
  'how_counted',
  'provenance',
] as const;

/**
 * The take-off for a spreadsheet: RFC 4180, with a head line and CRLF line ends; a quantity to be measured is empty.
 *
 * Words that a spreadsheet would take for a formula get an apostrophe before them, so that no name can run one.
 */
export function takeOffCsv(lines: readonly TakeOffLine[]): string {
  const rows = lines.map((line) => [
    line.group,
    line.item,
    line.net,
    line.unit,
    line.waste_percent,
    line.order,
    line.order_unit,
    line.how,
    line.provenance,
  ]);
  return [HEAD, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

/** One cell: numbers as they are, words quoted where they need it and never a formula. */
export function csvCell(value: string | number | null): string {
  if (value === null || Number.isNaN(value)) return '';
  if (typeof value === 'number') return `${value}`;
  const text = cleanText(value);
  const harmless = /^[=+\-@|%\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) || harmless !== harmless.trim()
    ? `"${harmless.replaceAll('"', '""')}"`
    : harmless;
}
