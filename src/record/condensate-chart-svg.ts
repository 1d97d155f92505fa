import type { CondensateMonth } from '../advice/wall-physics-schema.ts';
import { monthName, monthShort } from '../base/month-names.ts';
import { escapeHtml } from './escape-html.ts';
import { fixed } from './figure-text.ts';
import type { DrawnCondensate } from './record-document.ts';

const WIDTH = 600;
const HEIGHT = 240;
const LEFT = 64;
const RIGHT = 16;
const TOP = 24;
const BOTTOM = 34;
const GAP_SHARE = 0.3;

/** Water held at the end of each month as inline SVG bars; null when no month holds any. */
export function condensateChartSvg({ id, title, months }: DrawnCondensate): string | null {
  const peak = Math.max(0, ...months.map((month) => month.accumulated_g_m2));
  if (!(peak > 0)) return null;
  const top_g_m2 = niceCeiling(peak);
  const floor = HEIGHT - BOTTOM;
  const y = (held: number) => floor - (held / top_g_m2) * (floor - TOP);
  const slot = (WIDTH - LEFT - RIGHT) / months.length;
  const ticks = [0, 0.5, 1].map((share) => share * top_g_m2);
  return [
    `<svg class="chart" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-labelledby="${id}-title ${id}-desc">`,
    `<title id="${id}-title">${escapeHtml(title)}</title>`,
    `<desc id="${id}-desc">${escapeHtml(description(months, peak))}</desc>`,
    ...ticks.map(
      (held) =>
        `<path class="grid" d="M${LEFT} ${n(y(held))} H${WIDTH - RIGHT}"/><text x="${LEFT - 8}" y="${n(y(held) + 4)}" text-anchor="end">${n(held)}</text>`,
    ),
    ...months.flatMap((month, i) => {
      const x = LEFT + slot * (i + GAP_SHARE / 2);
      const name = `<text x="${n(LEFT + slot * (i + 0.5))}" y="${floor + 18}" text-anchor="middle">${monthShort(month.month)}</text>`;
      if (!(month.accumulated_g_m2 > 0)) return [name];
      const held = y(month.accumulated_g_m2);
      return [
        `<rect class="bar" x="${n(x)}" y="${n(held)}" width="${n(slot * (1 - GAP_SHARE))}" height="${n(floor - held)}"/>`,
        name,
      ];
    }),
    `<text x="12" y="${TOP - 10}">g/m²</text>`,
    '</svg>',
  ].join('\n');
}

/** The next of 1, 2, 5, 10, … at or above a value. */
function niceCeiling(value: number): number {
  const magnitude = 10 ** Math.floor(Math.log10(value));
  return [1, 2, 5, 10].map((step) => step * magnitude).find((step) => step >= value - 1e-9) ?? value;
}

function description(months: readonly CondensateMonth[], peak: number): string {
  const wettest = months.find((month) => month.accumulated_g_m2 === peak);
  const last = months.at(-1)?.accumulated_g_m2 ?? 0;
  const end =
    last > 0 ? `${fixed(last, 1)} g/m² are left after twelve months` : 'nothing is left after twelve months';
  return `Water held in the wall at the end of each month, from ${monthName(months[0]?.month ?? 1)} on. The most is ${fixed(peak, 1)} g/m² in ${monthName(wettest?.month ?? 1)}; ${end}. The figures stand in the table below.`;
}

function n(value: number): string {
  return `${Number(value.toFixed(2))}`;
}
