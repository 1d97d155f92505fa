import { chartSvg } from './chart-svg.ts';
import { composeDocument } from './compose-document.ts';
import { escapeHtml } from './escape-html.ts';
import { sentence } from './figure-text.ts';
import { PAGE_STYLE } from './page-style.ts';
import type {
  DrawnChart,
  FactRow,
  ListItem,
  RecordBlock,
  RecordSection,
  TableBlock,
} from './record-document.ts';
import type { DecisionRecord } from './record-schema.ts';
import { wallSectionSvg } from './wall-section-svg.ts';

/** The record as one self-contained page: its own style, no scripts, nothing fetched from anywhere. */
export function recordHtml(record: DecisionRecord): string {
  const { title, head, notice, sections } = composeDocument(record);
  return [
    '<!DOCTYPE html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    // Even if something hostile got past the escaping, the browser would neither run nor fetch it.
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    `<title>Decision record: ${escapeHtml(title)}</title>`,
    `<style>${PAGE_STYLE}</style>`,
    '</head>',
    '<body>',
    '<header>',
    `<h1><span class="what">Decision record</span> ${escapeHtml(title)}</h1>`,
    facts(head),
    `<p class="notice">${escapeHtml(notice)}</p>`,
    '</header>',
    contents(sections),
    '<main>',
    ...sections.map(section),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

const CHART_CAPTIONS: Readonly<Record<DrawnChart['kind'], string>> = {
  profile:
    'Inside on the left, the thickness to scale. The numbers on top are those of the layers; the figures stand in the table below.',
  condensate: 'From the first month in which water forms. The figures stand in the table below.',
};

function contents(sections: readonly RecordSection[]): string {
  const links = sections.map(({ id, heading }) => `<li><a href="#${id}">${escapeHtml(heading)}</a></li>`);
  return `<nav aria-label="Contents">\n<ul>\n${links.join('\n')}\n</ul>\n</nav>`;
}

function section({ id, heading, blocks }: RecordSection): string {
  return [
    `<section id="${id}" aria-labelledby="${id}-heading">`,
    `<h2 id="${id}-heading">${escapeHtml(heading)}</h2>`,
    ...blocks.map(block),
    '</section>',
  ].join('\n');
}

function block(given: RecordBlock): string {
  switch (given.kind) {
    case 'paragraph':
      return `<p${given.isStrong ? ' class="strong"' : ''}>${escapeHtml(given.text)}</p>`;
    case 'subheading':
      return `<h3>${escapeHtml(given.text)}</h3>`;
    case 'facts':
      return facts(given.rows);
    case 'list': {
      const tag = given.isNumbered ? 'ol' : 'ul';
      return `<${tag}>\n${given.items.map((entry) => `<li>${item(entry)}</li>`).join('\n')}\n</${tag}>`;
    }
    case 'table':
      return table(given);
    case 'drawn-wall': {
      const drawing = wallSectionSvg(given.wall);
      const figure = drawing
        ? `<figure>\n${drawing}\n<figcaption class="aside">Section through the wall, to scale. The numbers are those of the table below.</figcaption>\n</figure>\n`
        : '';
      return `${figure}${table(given.table)}`;
    }
    case 'drawn-chart': {
      const drawing = chartSvg(given.chart);
      const figure = drawing
        ? `<figure>\n${drawing}\n<figcaption class="aside">${CHART_CAPTIONS[given.chart.kind]}</figcaption>\n</figure>\n`
        : '';
      return `${figure}${table(given.table)}`;
    }
    case 'signatures':
      return [
        '<table class="signatures">',
        '<caption>Signed by</caption>',
        `<thead><tr>${['Role', 'Why', 'Name', 'Signature', 'Date'].map((title) => `<th scope="col">${title}</th>`).join('')}</tr></thead>`,
        '<tbody>',
        ...given.rows.map(
          ({ role, duty, name, date }) =>
            `<tr><th scope="row">${escapeHtml(role)}</th><td class="duty">${escapeHtml(duty)}</td><td>${escapeHtml(name)}</td><td></td><td>${escapeHtml(date)}</td></tr>`,
        ),
        '</tbody>',
        '</table>',
      ].join('\n');
  }
}

function facts(rows: readonly FactRow[]): string {
  const pairs = rows.map(({ label, value }) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd>`);
  return `<dl>\n${pairs.join('\n')}\n</dl>`;
}

function item({ lead, text, aside }: ListItem): string {
  const start = lead === undefined ? '' : `<strong>${escapeHtml(lead)}:</strong> `;
  const end = aside === undefined ? '' : ` <span class="aside">(${escapeHtml(aside)})</span>`;
  return `${start}${escapeHtml(sentence(text))}${end}`;
}

/** In a box of its own that scrolls sideways on a narrow screen and can be reached by keyboard. */
function table({ caption, columns, rows }: TableBlock): string {
  const name = escapeHtml(caption);
  const kind = (i: number) => (columns[i]?.isNumber ? ' class="number-cell"' : '');
  const heads = columns.map((column, i) => `<th scope="col"${kind(i)}>${escapeHtml(column.title)}</th>`);
  const lines = rows.map((row) => {
    const cells = columns.map((_, i) => {
      const text = escapeHtml(row[i] ?? '');
      return i === 0 ? `<th scope="row"${kind(i)}>${text}</th>` : `<td${kind(i)}>${text}</td>`;
    });
    return `<tr>${cells.join('')}</tr>`;
  });
  return [
    `<div class="wide" role="region" aria-label="${name}" tabindex="0">`,
    '<table>',
    `<caption>${name}</caption>`,
    `<thead><tr>${heads.join('')}</tr></thead>`,
    '<tbody>',
    ...lines,
    '</tbody>',
    '</table>',
    '</div>',
  ].join('\n');
}
