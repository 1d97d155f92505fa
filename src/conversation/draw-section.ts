import type { RankedAssembly } from '../advice/advice-schema.ts';
import { inches } from '../base/inches.ts';
import type { FigureRow } from './blocks.ts';
import { type DrawnLayer, fillOf, type Span, spansOf } from './draw-layers.ts';

/** The narrowest section that can still be read, columns. */
export const NARROWEST_SECTION = 44;

const INDENT = '  ';
const ROWS = 5;

type Drawn = Pick<RankedAssembly, 'layers' | 'insulation' | 'added_thickness_in'>;

/**
 * The wall cut across, inside on the left, all layers at one scale; letters over the layers lead to the list below.
 *
 * @param width  columns, at most 72 are used; under 44 it is taken as 44
 */
export function drawSection(wall: Drawn, width: number): string[] {
  const layers = drawnLayers(wall);
  const room = Math.max(NARROWEST_SECTION, Math.min(72, Math.floor(width))) - INDENT.length - 1;
  const { spans, columns_per_in } = spansOf(layers, room);
  const end = spans.reduce((last, { from, width: own }) => Math.max(last, from + own), 0);
  const row = (at: number) => `${INDENT}${layers.map((layer, i) => cell(layer, spans[i], at)).join('')}|`;
  return [
    `${INDENT}${spread('inside', 'outside', end + 1)}`,
    `${INDENT}${keyRow(spans, end)}`,
    ...Array.from({ length: ROWS }, (_, at) => row(at)),
    ...addedRow(wall, end, columns_per_in),
    `${INDENT}${scaleBar(columns_per_in)}`,
  ].map((line) => line.trimEnd());
}

/** Letter, layer and thickness: the list that the letters lead to, and the drawing in words. */
export function sectionKey(wall: Drawn): FigureRow[] {
  return drawnLayers(wall).map(({ label, thickness_in }, i) => ({
    label: `${letter(i)}`,
    value: thickness_in > 0 ? withSize(label, inchWords(thickness_in)) : label,
  }));
}

/** The layers, the insulation taken apart into its boards. */
function drawnLayers({ layers, insulation }: Drawn): (DrawnLayer & { readonly label: string })[] {
  return layers.flatMap((layer) => {
    const boards = insulation.board_thicknesses_in;
    if (layer.role !== 'insulation' || boards.length < 2) return [layer];
    return boards.map((thickness_in, i) => ({
      role: layer.role,
      label: `${layer.label}, board ${i + 1} of ${boards.length}`,
      thickness_in,
    }));
  });
}

/** The left edge of a layer and its fill; a sheet is a single mark. */
function cell({ role }: DrawnLayer, span: Span | undefined, row: number): string {
  if (!span) return '';
  return span.isSheet ? fillOf(role, 1, row) : `|${fillOf(role, span.width - 1, row)}`;
}

function keyRow(spans: readonly Span[], end: number): string {
  const cells = Array.from({ length: end + 1 }, () => ' ');
  for (const [i, { from, width }] of spans.entries()) {
    cells[from + Math.floor(width / 2)] = letter(i);
  }
  return cells.join('');
}

function letter(index: number): string {
  return String.fromCharCode('a'.charCodeAt(0) + index);
}

/** How far the new layers reach, drawn under them. */
function addedRow({ added_thickness_in, layers }: Drawn, end: number, columns_per_in: number): string[] {
  const total_in = layers.reduce((sum, { thickness_in }) => sum + thickness_in, 0);
  if (!(added_thickness_in > 0) || added_thickness_in >= total_in) return [];
  const words = ` added ${inchWords(added_thickness_in)} `;
  const length = Math.max(words.length + 4, Math.round(added_thickness_in * columns_per_in) + 1);
  const spare = Math.max(0, length - words.length - 2);
  const bar = `<${'-'.repeat(Math.floor(spare / 2))}${words}${'-'.repeat(Math.ceil(spare / 2))}>`;
  return [`${INDENT}${bar.padStart(end + 1)}`];
}

/** A whole number of inches as a bar, and what it doesn't hold for: sheets thinner than a mark. */
function scaleBar(columns_per_in: number): string {
  const length_in = columns_per_in >= 4 ? 1 : columns_per_in >= 2 ? 2 : 4;
  const length = Math.round(length_in * columns_per_in);
  return `|${'-'.repeat(Math.max(1, length - 1))}| = ${length_in} in.; sheets not to scale`;
}

function spread(left: string, right: string, width: number): string {
  return `${left}${right.padStart(Math.max(0, width - left.length))}`;
}

function inchWords(value: number): string {
  return value < 1 / 16 ? `${value} in.` : `${inches(Math.round(value * 16) / 16)} in.`;
}

/** Labels often bring their size along. */
function withSize(label: string, words: string): string {
  return label.includes(words) ? label : `${label}, ${words}`;
}
