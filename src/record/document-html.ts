import { chartSvg } from './chart-svg.ts';
import { fasteningElevationSvg } from './drawing/fastening-elevation-svg.ts';
import { PLACES } from './drawing/opening-detail.ts';
import { openingDetailSvg } from './drawing/opening-detail-svg.ts';
import { escapeHtml } from './escape-html.ts';
import { sentence } from './figure-text.ts';
import { PAGE_STYLE } from './page-style.ts';
import type {
  DrawnChart,
  FactRow,
  ListItem,
  RecordBlock,
  RecordDocument,
  RecordSection,
  TableBlock,
  WallDrawing,
} from './record-document.ts';
import { wallSectionSvg } from './wall-section-svg.ts';

/**
 * A document of ours as one self-contained page: its own style, no scripts, nothing fetched from anywhere. The appendix
 * is folded away on screen and left out on paper, where a note stands for it.
 *
 * @param what       what kind of document it is, before its title
 * @param pageClass  for the style sheet
 */
export function documentHtml(document: RecordDocument, what: string, pageClass = 'record'): string {
  const { title, head, notice, sections, appendix, appendixNote } = document;
  return [
    '<!DOCTYPE html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    // Even if something hostile got past the escaping, the browser would neither run nor fetch it.
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    `<title>${what}: ${escapeHtml(title)}</title>`,
    `<style>${PAGE_STYLE}</style>`,
    '</head>',
    `<body class="${pageClass}">`,
    '<header>',
    `<h1><span class="what">${what}</span> ${escapeHtml(title)}</h1>`,
    facts(head),
    `<p class="notice">${escapeHtml(notice)}</p>`,
    '</header>',
    contents(sections, appendix),
    '<main>',
    ...sections.map(section),
    ...appendixHtml(appendix, appendixNote),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function appendixHtml(appendix: readonly RecordSection[], note: string): string[] {
  if (appendix.length === 0) return [];
  return [
    `<p class="on-paper">${escapeHtml(note)}</p>`,
    '<details class="appendix" id="appendix">',
    '<summary>Appendix: everything behind it</summary>',
    ...appendix.map(section),
    '</details>',
  ];
}

const CHART_CAPTIONS: Readonly<Record<DrawnChart['kind'], string>> = {
  profile: 'Inside on the left, the thickness to scale. The numbers on top are those of the layers.',
  condensate: 'From the first month in which water forms.',
};

function contents(sections: readonly RecordSection[], appendix: readonly RecordSection[]): string {
  const behind = appendix.length > 0 ? [{ id: 'appendix', heading: 'Appendix: everything behind it' }] : [];
  const links = [...sections, ...behind].map(
    ({ id, heading }) => `<li><a href="#${id}">${escapeHtml(heading)}</a></li>`,
  );
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
    case 'drawing':
      return `${drawings(given.drawing)}${table(given.table)}`;
    case 'drawn-chart': {
      const drawing = chartSvg(given.chart);
      const words = CHART_CAPTIONS[given.chart.kind];
      return [
        ...(drawing
          ? [`<figure>\n${drawing}\n<figcaption class="aside">${words}</figcaption>\n</figure>`]
          : []),
        '<details class="behind">',
        `<summary>Figures: ${escapeHtml(given.table.caption)}</summary>`,
        table(given.table),
        '</details>',
      ].join('\n');
    }
    case 'signatures':
      return [
        '<div class="wide" role="region" aria-label="Signatures" tabindex="0">',
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
        '</div>',
      ].join('\n');
  }
}

function drawings(given: WallDrawing): string {
  if (given.kind === 'elevation') {
    const drawing = fasteningElevationSvg(given.wall);
    return drawing ? `<figure>\n${drawing}\n</figure>\n` : '';
  }
  const drawn = PLACES.map((place) => openingDetailSvg(given.wall, given.opening, place)).filter(
    (drawing) => drawing !== null,
  );
  return drawn.length === 0
    ? ''
    : `<div class="details">\n${drawn.map((drawing) => `<figure>\n${drawing}\n</figure>`).join('\n')}\n</div>\n`;
}

function facts(rows: readonly FactRow[]): string {
  const pairs = rows.map(({ label, value }) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd>`);
  return `<dl>\n${pairs.join('\n')}\n</dl>`;
}

function item({ lead, text, hold, aside }: ListItem): string {
  const start = lead === undefined ? '' : `<strong>${escapeHtml(lead)}:</strong> `;
  const end = aside === undefined ? '' : ` <span class="aside">(${escapeHtml(aside)})</span>`;
  const stop = hold === undefined ? '' : ` <strong class="hold">Hold: ${escapeHtml(sentence(hold))}</strong>`;
  return `${start}${escapeHtml(sentence(text))}${stop}${end}`;
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
