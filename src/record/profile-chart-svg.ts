import { escapeHtml } from './escape-html.ts';
import { type Point, type ProfileChart, profileChart } from './profile-chart.ts';
import type { DrawnProfile } from './record-document.ts';

const LEGEND_STEP = 130;

/** A temperature profile as inline SVG, in the colour of the text around it; null when there is nothing to draw. */
export function profileChartSvg({ id, title, season, layers }: DrawnProfile): string | null {
  const chart = profileChart(season, layers);
  if (!chart) return null;
  const { width, height, left, right, top, bottom } = chart;
  return [
    `<svg class="chart" viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-labelledby="${id}-title ${id}-desc">`,
    `<title id="${id}-title">${escapeHtml(title)}</title>`,
    `<desc id="${id}-desc">${escapeHtml(description(chart))}</desc>`,
    ...chart.ticks.map(
      ({ temp_f, y }) =>
        `<path class="grid" d="M${n(left)} ${n(y)} H${n(right)}"/><text x="${n(left - 8)}" y="${n(y + 4)}" text-anchor="end">${temp_f}</text>`,
    ),
    ...chart.boundaries.map((x) => `<path class="boundary" d="M${n(x)} ${n(top)} V${n(bottom)}"/>`),
    ...chart.keys.map(
      ({ key, x }) => `<text class="number" x="${n(x)}" y="${n(top - 8)}" text-anchor="middle">${key}</text>`,
    ),
    ...(chart.stud ? [line('stud', chart.stud)] : []),
    line('temperature', chart.temperature),
    ...(chart.dewPoint ? [line('dew-point', chart.dewPoint)] : []),
    ...chart.meeting.map(({ x, y }) => `<circle class="meeting" cx="${n(x)}" cy="${n(y)}" r="6"/>`),
    `<text x="${n(left)}" y="${n(bottom + 18)}" class="side">inside</text>`,
    `<text x="${n(right)}" y="${n(bottom + 18)}" class="side" text-anchor="end">outside</text>`,
    `<text x="12" y="${n(top - 8)}">°F</text>`,
    ...legend(chart),
    '</svg>',
  ].join('\n');
}

function line(kind: string, points: readonly Point[]): string {
  return `<polyline class="${kind}" points="${points.map(({ x, y }) => `${n(x)},${n(y)}`).join(' ')}"/>`;
}

/** A piece of each line with its name, below the chart. */
function legend({ stud, dewPoint, meeting, bottom, left }: ProfileChart): string[] {
  const y = bottom + 32;
  const entries = [
    { kind: 'temperature', words: 'temperature' },
    ...(stud ? [{ kind: 'stud', words: 'at a stud' }] : []),
    ...(dewPoint ? [{ kind: 'dew-point', words: 'dew point' }] : []),
  ];
  const drawn = entries.map(({ kind, words }, i) => {
    const x = left + i * LEGEND_STEP;
    return `<path class="${kind}" d="M${n(x)} ${n(y)} H${n(x + 26)}"/><text x="${n(x + 32)}" y="${n(y + 4)}">${words}</text>`;
  });
  if (meeting.length === 0) return drawn;
  const x = left + entries.length * LEGEND_STEP;
  return [
    ...drawn,
    `<circle class="meeting" cx="${n(x + 8)}" cy="${n(y)}" r="6"/><text x="${n(x + 20)}" y="${n(y + 4)}">they meet</text>`,
  ];
}

function description({ dewPoint, meeting }: ProfileChart): string {
  const dew = dewPoint ? 'and the dew point of the vapour ' : '';
  const meet =
    dewPoint === null
      ? ''
      : meeting.length > 0
        ? ' They meet where a ring is drawn: water can form there.'
        : ' They do not meet.';
  return `The temperature ${dew}from the indoor air on the left to the outdoor air on the right. The numbers on top are those of the layers.${meet} The figures stand in the table below.`;
}

/** A coordinate with as many digits as a drawing needs. */
function n(value: number): string {
  return `${Number(value.toFixed(2))}`;
}
