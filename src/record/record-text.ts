import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import { cleanText } from './clean-text.ts';
import { composeDocument } from './compose-document.ts';
import { sentence } from './figure-text.ts';
import type { FactRow, ListItem, RecordBlock, RecordDocument, TableBlock } from './record-document.ts';
import type { DecisionRecord } from './record-schema.ts';

const NARROWEST = 40;
const LABEL_MOST = 26;
const STACKED = ' '.repeat(4);

const ALTERED =
  'This record was changed after it was saved: its content does not fit its digest. Trust none of its figures before finding out who changed what.';

/**
 * The record as plain lines of at most `width` columns, without colour.
 *
 * @param width  columns; under 40 it is taken as 40
 * @param options.isAltered  says on top that the file no longer fits its digest
 */
export function recordText(
  record: DecisionRecord,
  width: number,
  { isAltered = false }: { readonly isAltered?: boolean } = {},
): string {
  const document = composeDocument(record);
  return documentText(
    { ...document, title: `Decision record: ${document.title}` },
    width,
    isAltered ? ALTERED : null,
  );
}

/**
 * Any document of ours as plain lines of at most `width` columns, without colour.
 *
 * @param warning  stands right below the title; null for none
 */
export function documentText(
  { title, head, notice, sections, appendix }: RecordDocument,
  width: number,
  warning: string | null = null,
): string {
  const columns = Math.max(NARROWEST, Math.floor(width));
  const parts = [
    heading(title, '=', columns),
    ...(warning === null ? [] : [wrap(warning, columns)]),
    facts(head, columns),
    wrap(notice, columns),
    ...[...sections, ...appendix].flatMap((section) => [
      heading(section.heading, '-', columns),
      ...section.blocks.map((given) => block(given, columns)),
    ]),
  ];
  return `${parts.map((lines) => lines.map((line) => line.trimEnd()).join('\n')).join('\n\n')}\n`;
}

function block(given: RecordBlock, columns: number): string[] {
  switch (given.kind) {
    case 'paragraph':
      return wrap(given.text, columns);
    case 'subheading':
      return wrap(given.text, columns);
    case 'facts':
      return facts(given.rows, columns);
    case 'list': {
      const digits = String(given.items.length).length;
      return given.items.flatMap((entry, i) =>
        wrap(itemText(entry), columns, given.isNumbered ? `  ${String(i + 1).padStart(digits)}. ` : '  - '),
      );
    }
    case 'table':
      return table(given, columns);
    case 'drawn-wall':
    case 'drawing':
    case 'drawn-chart':
      return table(given.table, columns);
    case 'signatures':
      return given.rows.flatMap(({ role, duty, name, date }) => [
        ...wrap(`${role} (${duty})`, columns),
        ...wrap(`Name ${name || '_'.repeat(24)} Date ${date || '_'.repeat(10)}`, columns, STACKED),
        ...wrap(`Signature ${'_'.repeat(24)}`, columns, STACKED),
      ]);
  }
}

function itemText({ lead, text, hold, aside }: ListItem): string {
  const stop = hold === undefined ? '' : ` HOLD: ${sentence(hold)}`;
  return `${lead === undefined ? '' : `${lead}: `}${sentence(text)}${stop}${aside === undefined ? '' : ` (${aside})`}`;
}

function heading(text: string, rule: string, columns: number): string[] {
  const lines = wrap(text, columns);
  const widest = Math.max(...lines.map((line) => stringWidth(line)));
  return [...lines, rule.repeat(Math.min(columns, widest))];
}

function facts(rows: readonly FactRow[], columns: number): string[] {
  const labels = rows.map((row) => cleanText(row.label));
  const room =
    Math.min(LABEL_MOST, Math.floor(columns / 2), Math.max(...labels.map((label) => stringWidth(label)))) + 2;
  return rows.flatMap((row) => {
    const left = wrap(row.label, room - 2);
    const right = wrap(row.value, columns - room - 2);
    return Array.from(
      { length: Math.max(left.length, right.length) },
      (_, i) => `  ${pad(left[i] ?? '', room)}${right[i] ?? ''}`,
    );
  });
}

/** In columns where they fit; otherwise one entry for each row, its cells below its first one. */
function table({ columns: heads, rows }: TableBlock, columns: number): string[] {
  const titles = heads.map((head) => cleanText(head.title));
  const cells = rows.map((row) => heads.map((_, i) => cleanText(row[i] ?? '')));
  const widths = titles.map((title, i) =>
    Math.max(...[title, ...cells.map((row) => row[i] ?? '')].map((cell) => stringWidth(cell))),
  );
  const whole = widths.reduce((sum, one) => sum + one, 0) + 2 * widths.length;
  if (whole > columns) return cells.flatMap((row) => stacked(titles, row, columns));
  const line = (row: readonly string[]) =>
    `  ${row.map((cell, i) => (heads[i]?.isNumber ? padStart(cell, widths[i] ?? 0) : pad(cell, widths[i] ?? 0))).join('  ')}`;
  return [line(titles), line(widths.map((one) => '-'.repeat(one))), ...cells.map(line)];
}

function stacked(titles: readonly string[], row: readonly string[], columns: number): string[] {
  const isNumbered = /^\d+$/.test(row[0] ?? '');
  const lead = isNumbered ? `${row[0]}. ${row[1] ?? ''}` : (row[0] ?? '');
  const cells = titles.flatMap((title, i) => {
    const cell = row[i] ?? '';
    return i < (isNumbered ? 2 : 1) || cell === '' ? [] : [`${title}: ${cell}`];
  });
  const together = cells.join('; ');
  const isShort = stringWidth(together) <= 2 * (columns - STACKED.length);
  return [
    ...wrap(lead, columns, '  - '),
    ...(isShort ? [together] : cells).flatMap((cell) => wrap(cell, columns, STACKED)),
  ];
}

/** Lines wrapped to `columns`, each part below the beginning of its text: behind its indent, or its "- ". */
export function wrapLines(lines: readonly string[], columns: number): string[] {
  return lines.flatMap((line) => {
    const [first = ''] = /^ *(?:- )?/.exec(line) ?? [];
    return line === '' ? [''] : wrap(line.slice(first.length), Math.max(NARROWEST, columns), first);
  });
}

function wrap(text: string, columns: number, first = ''): string[] {
  const room = Math.max(8, columns - stringWidth(first));
  const rest = ' '.repeat(stringWidth(first));
  return wrapAnsi(cleanText(text), room, { hard: true, trim: true })
    .split('\n')
    .map((line, i) => `${i === 0 ? first : rest}${line}`);
}

function pad(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - stringWidth(text)));
}

function padStart(text: string, columns: number): string {
  return ' '.repeat(Math.max(0, columns - stringWidth(text))) + text;
}
