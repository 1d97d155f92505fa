import type { RankedAssembly } from '../../advice/advice-schema.ts';
import { fastenerWords } from '../../advice/schedule-words.ts';
import type { ScheduleStep } from '../../assessment/schedule/schedule-schema.ts';
import { numberText } from '../figure-text.ts';
import { type FastenerMark, type FasteningElevation, fasteningElevation } from './fastening-elevation.ts';
import { dimension, n, type Point, svg, text, uprightDimension } from './svg-parts.ts';

const LEGEND_ROW = 17;

/** The fastening pattern as inline SVG, field and corner, to scale; null when nothing is spaced over the wall. */
export function fasteningElevationSvg(wall: RankedAssembly): string | null {
  const drawn = fasteningElevation(wall);
  if (!drawn) return null;
  const { wall: area, corner_end, studs, boards, lines } = drawn;
  return svg(
    {
      id: 'elevation',
      className: 'elevation',
      width: drawn.width,
      height: drawn.height + lines.length * LEGEND_ROW - 30,
      title: 'Fastening pattern seen from outside, the corner of the house on the left',
      description: `To scale. ${lines.map(({ step }) => legendWords(step)).join('; ')}. Studs are dashed, boards outlined. The figures stand in the table below.`,
    },
    [
      `<rect class="zone" x="${n(area.left)}" y="${n(area.top)}" width="${n(corner_end - area.left)}" height="${n(area.bottom - area.top)}"/>`,
      ...boards.map(
        ({ x, y, width, height }) =>
          `<rect class="board" x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}"/>`,
      ),
      ...studs.map((x) => `<path class="stud" d="M${n(x)} ${n(area.top)} V${n(area.bottom)}"/>`),
      ...lines.flatMap(({ mark, points }) => points.map((point) => markSvg(mark, point))),
      ...measures(wall, drawn),
      ...lines.flatMap(({ step, mark }, i) => {
        const y = area.bottom + 48 + i * LEGEND_ROW;
        return [
          markSvg(mark, { x: area.left + 6, y: y - 4 }),
          text(legendWords(step), { x: area.left + 18, y }),
        ];
      }),
    ],
  );
}

/** Each mark has its own form, so that they can be told apart without colour. */
function markSvg(mark: FastenerMark, { x, y }: Point): string {
  if (mark === 'dot') return `<circle class="dot" cx="${n(x)}" cy="${n(y)}" r="2.6"/>`;
  if (mark === 'ring') return `<circle class="ring" cx="${n(x)}" cy="${n(y)}" r="3"/>`;
  return `<path class="cross" d="M${n(x - 3)} ${n(y - 3)} L${n(x + 3)} ${n(y + 3)} M${n(x + 3)} ${n(y - 3)} L${n(x - 3)} ${n(y + 3)}"/>`;
}

function measures(wall: RankedAssembly, { wall: area, corner_end, studs, lines, scale }: FasteningElevation) {
  const [first, second] = studs;
  const { corner_width_ft: width_ft, is_assumed } = wall.fastening_schedule.corner_zone;
  const [main] = lines;
  const along = main?.step.zones.find(({ zone }) => zone === 'corner')?.spacing_along_in ?? null;
  return [
    text(`corner zone, ${numberText(width_ft)} ft${is_assumed ? ' unless measured' : ''}`, {
      x: area.left,
      y: area.top - 20,
    }),
    text('field', { x: corner_end + 8, y: area.top - 20 }),
    `<path class="zone-end" d="M${n(corner_end)} ${n(area.top - 30)} V${n(area.bottom)}"/>`,
    ...(first !== undefined && second !== undefined
      ? dimension(
          first,
          second,
          area.bottom + 12,
          `${numberText(wall.fastening.stud_spacing_in)} in.`,
          area.right,
        )
      : []),
    ...(along === null
      ? []
      : uprightDimension(
          area.left - 14,
          area.bottom - (3 + along) * scale,
          area.bottom - 3 * scale,
          `${numberText(along)} in.`,
        )),
  ];
}

function legendWords(step: ScheduleStep): string {
  const spacing = (zone: 'field' | 'corner') => {
    const one = step.zones.find((entry) => entry.zone === zone);
    return one?.spacing_along_in === undefined || one.spacing_along_in === null
      ? 'none'
      : `${numberText(one.spacing_along_in)} in.`;
  };
  return `Line ${step.step}: ${fastenerWords(step)}; field ${spacing('field')}, corner ${spacing('corner')}`;
}
