import type { ProfileSeason } from '../advice/wall-physics-schema.ts';
import type { Block } from './blocks.ts';
import { DRAWN_WIDTH, NARROW_WIDTH } from './drawn-width.ts';

/** One row of the chart: the outer face of a layer. */
export type ProfileRow = {
  readonly label: string;
  readonly temp_f: number;
  readonly dew_point_f: number | null;
};

/** The narrowest chart that can still be read, columns. */
export const NARROWEST_PROFILE = 52;

const LABEL = 13;
const FIGURE = 5;
/** Indent, label, two figures with their gaps, and the two edges of the plot. */
const AROUND_PLOT = 2 + LABEL + 2 * (FIGURE + 1) + 3;
const EDGE = '│';
const MARKS = { temp: 'T', dew: 'd', both: 'X', tempLine: '─', dewLine: '·' } as const;
const STEPS_F = [5, 10, 20, 40];

/**
 * Temperature and dew point through the wall as a text chart: a row for each layer from inside to outside, the
 * temperature scale across. In each row the line shows how far the temperature falls or rises across that layer.
 * Every mark has an ASCII twin of the same width, so the chart keeps its shape in plain ASCII.
 *
 * @param width  columns, at most 76 are used; under 52 it is taken as 52
 */
export function drawProfile(season: ProfileSeason, width: number): string[] {
  const plot = Math.max(NARROWEST_PROFILE, Math.min(76, Math.floor(width))) - AROUND_PLOT;
  const rows = profileRows(season);
  const scale = scaleOf(rows, plot);
  const figure = (value: number | null) => (value === null ? '?' : value.toFixed(1)).padStart(FIGURE);
  const line = (label: string, temp: string, dew: string, drawn: string) =>
    `  ${label.padEnd(LABEL)} ${temp} ${dew} ${drawn}`.trimEnd();
  return [
    line('outer face of', 'temp'.padStart(FIGURE), 'dew'.padStart(FIGURE), ` ${scale.ticks}`),
    ...rows.map((row, i) =>
      line(
        row.label,
        figure(row.temp_f),
        figure(row.dew_point_f),
        `${EDGE}${drawRow(row, rows[i - 1] ?? row, scale)}${EDGE}`,
      ),
    ),
  ];
}

/** The chart for wide and narrow windows. */
export function profileDrawing(season: ProfileSeason): Block {
  return {
    kind: 'drawing',
    lines: drawProfile(season, DRAWN_WIDTH),
    narrow: drawProfile(season, NARROW_WIDTH),
    instead: profileInWords(season),
  };
}

/** The same as pairs of words and figures, for windows too narrow for a chart. */
export function profileInWords(season: ProfileSeason): { label: string; value: string }[] {
  return profileRows(season).map(({ label, temp_f, dew_point_f }) => ({
    label,
    value: `${temp_f.toFixed(1)} °F${dew_point_f === null ? '' : `, dew point ${dew_point_f.toFixed(1)} °F`}`,
  }));
}

const ROLE_WORDS: Readonly<Record<string, string>> = {
  lining: 'lining',
  framing: 'cavity fill',
  sheathing: 'sheathing',
  barrier: 'rain barrier',
  insulation: 'insulation',
  drainage: 'drainage mat',
  furring: 'furring gap',
  lath: 'lath',
  finish: 'finish',
};

/** Indoor air, room face, every layer whose outer face differs from the one before, outdoor air. */
export function profileRows({ cavity, indoor_temp_f, indoor_dew_point_f }: ProfileSeason): ProfileRow[] {
  const dew_point_f = cavity.some((plane) => plane.dew_point_f !== null) ? indoor_dew_point_f : null;
  const rows: ProfileRow[] = [{ label: 'indoor air', temp_f: indoor_temp_f, dew_point_f }];
  for (const [i, { role, temp_f, dew_point_f: dew }] of cavity.entries()) {
    const isLast = i === cavity.length - 1;
    const before = rows.at(-1);
    if (!isLast && before?.temp_f === temp_f && before.dew_point_f === dew) continue;
    const label = i === 0 ? 'room face' : isLast ? 'outdoor air' : (ROLE_WORDS[role] ?? role);
    rows.push({ label, temp_f, dew_point_f: dew });
  }
  return rows;
}

type Scale = { readonly ticks: string; readonly column: (temp_f: number) => number; readonly plot: number };

function scaleOf(rows: readonly ProfileRow[], plot: number): Scale {
  const values = rows.flatMap((row) =>
    row.dew_point_f === null ? [row.temp_f] : [row.temp_f, row.dew_point_f],
  );
  const low = Math.min(...values);
  const high = Math.max(...values);
  const step = STEPS_F.find((candidate) => (high - low) / candidate <= 6) ?? 40;
  const from = Math.floor(low / step) * step;
  const to = Math.max(Math.ceil(high / step) * step, from + step);
  const column = (temp_f: number) => Math.round(((temp_f - from) / (to - from)) * (plot - 1));
  const ticks = Array.from({ length: plot }, () => ' ');
  for (let at = from; at <= to; at += step) {
    const text = `${at}`;
    // A figure stands over its column; the last one ends at the edge.
    const start = Math.min(Math.max(0, column(at) - Math.floor(text.length / 2)), plot - text.length);
    for (const [i, char] of [...text].entries()) ticks[start + i] = char;
  }
  return { ticks: ticks.join(''), column, plot };
}

function drawRow(row: ProfileRow, before: ProfileRow, { column, plot }: Scale): string {
  const cells = Array.from({ length: plot }, () => ' ');
  const trace = (from: number, to: number, mark: string) => {
    for (let i = Math.min(from, to); i <= Math.max(from, to); i += 1) cells[i] = mark;
  };
  const temp = column(row.temp_f);
  const dew = row.dew_point_f === null ? null : column(row.dew_point_f);
  if (dew !== null) trace(before.dew_point_f === null ? dew : column(before.dew_point_f), dew, MARKS.dewLine);
  trace(column(before.temp_f), temp, MARKS.tempLine);
  if (dew !== null) cells[dew] = MARKS.dew;
  cells[temp] = temp === dew ? MARKS.both : MARKS.temp;
  return cells.join('');
}
