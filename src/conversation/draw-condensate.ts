import type { CondensateMonth } from '../advice/wall-physics-schema.ts';
import { monthShort } from '../base/month-names.ts';
import type { Block } from './blocks.ts';
import { DRAWN_WIDTH, NARROW_WIDTH } from './drawn-width.ts';

/** The narrowest chart that can still be read, columns. */
export const NARROWEST_CONDENSATE = 40;

const FIGURE = 8;
/** Indent, month, two figures with their gaps, and the edge that the bars stand on. */
const BEFORE_BAR = 2 + 10 + 2 * (FIGURE + 1) + 2;
const EDGE = '│';
const BAR = '█';

/**
 * Water in the wall month by month as bars, from the first condensing month on; the dry months at the end of the
 * year share one row. Null when no month holds water: then there is nothing to draw.
 *
 * @param months  twelve, from the start month on
 * @param width   columns, at most 76 are used; under 40 it is taken as 40
 */
export function drawCondensate(months: readonly CondensateMonth[], width: number): string[] | null {
  const peak = Math.max(...months.map((month) => month.accumulated_g_m2));
  if (!(peak > 0)) return null;
  const room = Math.max(NARROWEST_CONDENSATE, Math.min(76, Math.floor(width))) - BEFORE_BAR;
  const line = (month: string, gained: string, held: string, bar: string) =>
    `  ${month.padEnd(10)} ${gained.padStart(FIGURE)} ${held.padStart(FIGURE)} ${EDGE}${bar}`;
  return [
    `  ${'g/m2'.padEnd(10)} ${'gained'.padStart(FIGURE)} ${'held'.padStart(FIGURE)}`,
    ...monthRows(months).map((row) =>
      row.kind === 'dry'
        ? line(row.label, '', 'dry', '')
        : line(
            row.label,
            signed(row.condensate_g_m2),
            row.accumulated_g_m2.toFixed(1),
            BAR.repeat(barLength(row.accumulated_g_m2, peak, room)),
          ),
    ),
  ];
}

/** The chart for wide and narrow windows; nothing when no month holds water or the months are not known. */
export function condensateDrawing(months: readonly CondensateMonth[] | null): Block[] {
  const lines = months && drawCondensate(months, DRAWN_WIDTH);
  const narrow = months && drawCondensate(months, NARROW_WIDTH);
  return lines && narrow ? [{ kind: 'drawing', lines, narrow, instead: condensateInWords(months) }] : [];
}

/** The same as pairs of words and figures, for windows too narrow for a chart. */
export function condensateInWords(months: readonly CondensateMonth[]): { label: string; value: string }[] {
  return monthRows(months).map((row) => ({
    label: row.label,
    value:
      row.kind === 'dry'
        ? 'dry'
        : `${signed(row.condensate_g_m2)} g/m², holds ${row.accumulated_g_m2.toFixed(1)} g/m²`,
  }));
}

type Row = { readonly label: string } & (
  | ({ readonly kind: 'wet' } & CondensateMonth)
  | { readonly kind: 'dry' }
);

function monthRows(months: readonly CondensateMonth[]): Row[] {
  const lastWet = months.findLastIndex((month) => month.condensate_g_m2 !== 0 || month.accumulated_g_m2 > 0);
  const wet = months
    .slice(0, lastWet + 1)
    .map((month): Row => ({ kind: 'wet', label: monthShort(month.month), ...month }));
  const dry = months.slice(lastWet + 1);
  const [first] = dry;
  const last = dry.at(-1);
  if (!first || !last) return wet;
  const label =
    first === last ? monthShort(first.month) : `${monthShort(first.month)} to ${monthShort(last.month)}`;
  return [...wet, { kind: 'dry', label }];
}

/** A wall that holds water has a bar, however short. */
function barLength(held: number, peak: number, room: number): number {
  return held > 0 ? Math.max(1, Math.round((held / peak) * room)) : 0;
}

function signed(value: number): string {
  return value > 0 ? `+${value.toFixed(1)}` : value.toFixed(1).replace(/^-0\.0$/, '0.0');
}
