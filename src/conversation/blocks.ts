import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import { asciiText, visibleText } from './visible-text.ts';

/** Plain structured text: what is said, without saying how it looks. Every front end draws the same blocks. */
export type Block =
  /** A ruled title, drawn like a dimension line; `aside` stands at its right end. */
  | { readonly kind: 'title'; readonly text: string; readonly aside?: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly role?: LineRole }
  | {
      readonly kind: 'list';
      readonly items: readonly string[];
      readonly numbered?: boolean;
      readonly role?: LineRole;
    }
  | { readonly kind: 'figures'; readonly rows: readonly FigureRow[] }
  /**
   * A chart of fixed width, each mark with an ASCII twin of one column; a narrower drawing of the same where it doesn't
   * fit, and its figures in words where neither does.
   */
  | {
      readonly kind: 'drawing';
      readonly lines: readonly string[];
      readonly narrow?: readonly string[];
      /** What its marks mean; goes with a drawing, not with its words. */
      readonly key?: readonly FigureRow[];
      readonly instead: readonly FigureRow[];
    }
  /** Short things side by side, each in brackets and kept in one piece: what was understood. */
  | { readonly kind: 'chips'; readonly lead: string; readonly items: readonly string[] }
  /** The user's own words. */
  | { readonly kind: 'said'; readonly text: string };

export type FigureRow = { readonly label: string; readonly value: string };

/** What a line is, so that a front end may colour it; the words always say it too. */
export type LineRole = 'title' | 'heading' | 'body' | 'said' | 'note' | 'warning' | 'quiet';

export type Line = { readonly text: string; readonly role: LineRole };

export type LayOut = {
  readonly width: number;
  readonly ascii?: boolean;
  /** For ears: every drawing as its figures in words, titles without a rule. */
  readonly spoken?: boolean;
};

const NARROWEST = 24;
const LONGEST_RULE = 72;
const INDENT = '  ';
const LABEL_WIDTH = 22;

/**
 * Lines of at most `width` columns. Control characters in the text come out visible, never obeyed.
 *
 * @param width  columns; under 24 it is taken as 24
 */
export function layOutBlocks(
  blocks: readonly Block[],
  { width, ascii = false, spoken = false }: LayOut,
): Line[] {
  const columns = Math.max(NARROWEST, Math.floor(width));
  const lines = blocks.flatMap((block, index) => [
    ...(index > 0 && startsAfterGap(block, blocks[index - 1]) ? [{ text: '', role: 'body' as const }] : []),
    ...layOutBlock(spoken ? spokenBlock(safeBlock(block, ascii)) : safeBlock(block, ascii), columns, ascii),
  ]);
  return lines;
}

/** Blocks as text of at most `width` columns, without colour. */
export function blocksToText(
  blocks: readonly Block[],
  width: number,
  options: { ascii?: boolean; spoken?: boolean } = {},
): string {
  return layOutBlocks(blocks, { width, ...options })
    .map((line) => line.text.trimEnd())
    .join('\n');
}

function startsAfterGap(block: Block, before: Block | undefined): boolean {
  if (block.kind === 'title' || block.kind === 'heading') return true;
  return before?.kind === 'paragraph' && block.kind === 'paragraph' && !block.role;
}

function layOutBlock(block: Block, columns: number, ascii: boolean): Line[] {
  switch (block.kind) {
    case 'title':
      return [{ text: dimensionLine(block.text, block.aside, columns, ascii), role: 'title' }];
    case 'heading':
      return wrapped(block.text, columns, '', '').map((text) => ({ text, role: 'heading' }));
    case 'paragraph':
      return wrapped(block.text, columns, '', '').map((text) => ({ text, role: block.role ?? 'body' }));
    case 'said': {
      const mark = answerMark(ascii);
      return wrapped(block.text, columns, mark, ' '.repeat(mark.length)).map((text) => ({
        text,
        role: 'said',
      }));
    }
    case 'list': {
      const last = String(block.items.length).length;
      return block.items.flatMap((item, i) => {
        const mark = block.numbered ? `${INDENT}${String(i + 1).padStart(last)}  ` : `${INDENT}- `;
        return wrapped(item, columns, mark, ' '.repeat(mark.length)).map((text) => ({
          text,
          role: block.role ?? 'body',
        }));
      });
    }
    case 'figures':
      return figureRows(block.rows, columns);
    case 'chips':
      return chipLines(block.lead, block.items, columns).map((text) => ({ text, role: 'note' }));
    case 'drawing': {
      const fits = (lines: readonly string[]) => lines.every((line) => stringWidth(line) <= columns);
      const drawn = [block.lines, block.narrow ?? []].find((lines) => lines.length > 0 && fits(lines));
      if (!drawn) return figureRows(block.instead, columns);
      return [
        ...drawn.map((text): Line => ({ text, role: 'body' })),
        ...figureRows(block.key ?? [], columns),
      ];
    }
  }
}

/** Lines of `[…]`; a chip goes to the next line whole, and is wrapped only where it is wider than the window. */
function chipLines(lead: string, items: readonly string[], columns: number): string[] {
  const lines: string[] = [];
  let line = lead;
  for (const item of items) {
    const chip = `[${item}]`;
    if (line !== '' && stringWidth(line) + 1 + stringWidth(chip) > columns) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? chip : `${line} ${chip}`;
  }
  return [...lines, line].flatMap((one) => wrapLines(one, columns));
}

/** The same for a reader who hears it. */
function spokenBlock(block: Block): Block {
  if (block.kind === 'drawing') return { kind: 'figures', rows: block.instead };
  if (block.kind === 'title') {
    return { kind: 'heading', text: block.aside ? `${block.text}, ${block.aside}` : block.text };
  }
  return block;
}

function figureRows(rows: readonly FigureRow[], columns: number): Line[] {
  const room = Math.min(
    LABEL_WIDTH,
    Math.floor(columns / 2) - INDENT.length,
    Math.max(...rows.map((row) => stringWidth(row.label)), 0) + 2,
  );
  return rows.flatMap((row) => figureLines(row, room, columns));
}

function figureLines(row: FigureRow, room: number, columns: number): Line[] {
  const labels = wrapLines(row.label, room - 1);
  const values = wrapLines(row.value, columns - INDENT.length - room);
  return Array.from({ length: Math.max(labels.length, values.length) }, (_, i) => ({
    text: `${INDENT}${padEnd(labels[i] ?? '', room)}${values[i] ?? ''}`,
    role: 'body' as const,
  }));
}

/** `├─ Framing ──────── 3 of 15 ─┤`: the way a drawing says how far something reaches. */
function dimensionLine(text: string, aside: string | undefined, columns: number, ascii: boolean): string {
  const [left, rule, right] = ascii ? ['|', '-', '|'] : ['├', '─', '┤'];
  const length = Math.min(columns, LONGEST_RULE);
  const end = aside ? ` ${aside} ${rule}${right}` : `${rule}${right}`;
  const room = length - 4 - stringWidth(end);
  const start = `${left}${rule} ${cutTo(text, Math.max(4, room), ascii)} `;
  return `${start}${rule.repeat(Math.max(0, length - stringWidth(start) - stringWidth(end)))}${end}`;
}

/** What stands before the user's own words. */
export function answerMark(ascii: boolean): string {
  return ascii ? '>> ' : '» ';
}

/** The longest start of the text that fits, with an ellipsis when something was cut off. */
export function cutTo(text: string, columns: number, ascii = false): string {
  if (stringWidth(text) <= columns) return text;
  const ellipsis = ascii ? '...' : '…';
  let kept = '';
  for (const { segment } of new Intl.Segmenter().segment(text)) {
    if (stringWidth(kept) + stringWidth(segment) + ellipsis.length > columns) break;
    kept += segment;
  }
  return `${kept}${ellipsis}`;
}

function wrapped(text: string, columns: number, first: string, rest: string): string[] {
  return wrapLines(text, columns - stringWidth(first)).map((line, i) => `${i === 0 ? first : rest}${line}`);
}

function wrapLines(text: string, columns: number): string[] {
  return wrapAnsi(text, Math.max(4, columns), { hard: true, trim: true }).split('\n');
}

function padEnd(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - stringWidth(text)));
}

function safeBlock(block: Block, ascii: boolean): Block {
  // Twins are often wider than their marks, so the exchange comes before the wrapping.
  const clean = (text: string) => (ascii ? asciiText(visibleText(text)) : visibleText(text));
  switch (block.kind) {
    case 'title':
      return {
        ...block,
        text: clean(block.text),
        ...(block.aside === undefined ? {} : { aside: clean(block.aside) }),
      };
    case 'list':
      return { ...block, items: block.items.map(clean) };
    case 'chips':
      return { ...block, lead: clean(block.lead), items: block.items.map(clean) };
    case 'figures':
      return { ...block, rows: cleanRows(block.rows, clean) };
    case 'drawing':
      return {
        ...block,
        lines: block.lines.map(clean),
        ...(block.narrow ? { narrow: block.narrow.map(clean) } : {}),
        ...(block.key ? { key: cleanRows(block.key, clean) } : {}),
        instead: cleanRows(block.instead, clean),
      };
    default:
      return { ...block, text: clean(block.text) };
  }
}

function cleanRows(rows: readonly FigureRow[], clean: (text: string) => string): FigureRow[] {
  return rows.map((row) => ({ label: clean(row.label), value: clean(row.value) }));
}
