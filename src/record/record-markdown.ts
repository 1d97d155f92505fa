import { cleanText } from './clean-text.ts';
import { composeDocument } from './compose-document.ts';
import { sentence } from './figure-text.ts';
import type { FactRow, ListItem, RecordBlock, RecordDocument, TableBlock } from './record-document.ts';
import type { DecisionRecord } from './record-schema.ts';

/** The record as a Markdown page (CommonMark with tables). Everything in it is text: no name can become markup. */
export function recordMarkdown(record: DecisionRecord): string {
  const document = composeDocument(record);
  return documentMarkdown({ ...document, title: `Decision record: ${document.title}` });
}

/** Any document of ours as a Markdown page; the appendix follows the rest. */
export function documentMarkdown({ title, head, notice, sections, appendix }: RecordDocument): string {
  const parts = [
    `# ${escapeMarkdown(title)}`,
    facts(head),
    `**${escapeMarkdown(notice)}**`,
    ...[...sections, ...appendix].flatMap(({ heading, blocks }) => [
      `## ${escapeMarkdown(heading)}`,
      ...blocks.map(block),
    ]),
  ];
  return `${parts.join('\n\n')}\n`;
}

function block(given: RecordBlock): string {
  switch (given.kind) {
    case 'paragraph': {
      const text = escapeMarkdown(given.text);
      return given.isStrong ? `**${text}**` : text;
    }
    case 'subheading':
      return `### ${escapeMarkdown(given.text)}`;
    case 'facts':
      return facts(given.rows);
    case 'list':
      return given.items
        .map((entry, i) => `${given.isNumbered ? `${i + 1}.` : '-'} ${item(entry)}`)
        .join('\n');
    case 'table':
      return table(given);
    case 'drawn-wall':
    case 'drawing':
    case 'drawn-chart':
      return table(given.table);
    case 'signatures':
      return tableText(
        ['Role', 'Why', 'Name', 'Signature', 'Date'],
        given.rows.map(({ role, duty, name, date }) => [role, duty, name, '', date]),
        [false, false, false, false, false],
      );
  }
}

function facts(rows: readonly FactRow[]): string {
  return rows
    .map(({ label, value }) => `- **${escapeMarkdown(label)}:** ${escapeMarkdown(value)}`)
    .join('\n');
}

function item({ lead, text, hold, aside }: ListItem): string {
  const start = lead === undefined ? '' : `**${escapeMarkdown(lead)}:** `;
  const end = aside === undefined ? '' : ` (${escapeMarkdown(aside)})`;
  const stop = hold === undefined ? '' : ` **Hold: ${escapeMarkdown(sentence(hold))}**`;
  return `${start}${escapeMarkdown(sentence(text))}${stop}${end}`;
}

function table({ columns, rows }: TableBlock): string {
  return tableText(
    columns.map((column) => column.title),
    rows,
    columns.map((column) => column.isNumber ?? false),
  );
}

function tableText(
  titles: readonly string[],
  rows: readonly (readonly string[])[],
  isNumber: readonly boolean[],
): string {
  const line = (cells: readonly string[]) => `| ${cells.map(escapeMarkdown).join(' | ')} |`;
  const rule = `|${isNumber.map((number) => (number ? ' ---: ' : ' --- ')).join('|')}|`;
  return [line(titles), rule, ...rows.map(line)].join('\n');
}

/**
 * Text that reads the same in any CommonMark or GitHub-flavoured reader: one line, control and direction characters
 * shown, markup characters escaped only where they could act as markup (so that `wall.u_factor` stays readable).
 *
 * Source: CommonMark 0.31, sections 2.4 (backslash escapes) and 4 (what begins a block).
 */
export function escapeMarkdown(text: string): string {
  return (
    cleanText(text)
      .replace(/[\\`*[\]|~]/g, '\\$&')
      // Entities, not backslashes: some readers pass `\<` on to the browser.
      .replace(/&(?=#?\w+;)/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/(?<![A-Za-z0-9])_|_(?![A-Za-z0-9])/g, '\\_')
      // A dollar sign before a figure is money; any other could begin or end a formula.
      .replace(/\$(?!\d)/g, '\\$')
      .replace(/:(?=\/\/)/g, '\\:')
      .replace(/^(#+|[-+=]+)(?=\s|$|-|=)/, '\\$&')
      .replace(/^(\d{1,9})([.)])(?=\s|$)/, '$1\\$2')
  );
}
