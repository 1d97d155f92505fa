import type { RankedAssembly } from '../../advice/advice-schema.ts';
import type { Opening } from '../../advice/openings-schema.ts';
import { patternDefs, patternFill } from './layer-patterns.ts';
import { DETAIL_PARTS, type DetailPlace, openingDetail } from './opening-detail.ts';
import { dimension, key, n, svg, text } from './svg-parts.ts';

const TITLES: Readonly<Record<DetailPlace, string>> = {
  sill: 'Sill, upright section',
  jamb: 'Jamb, level section',
  head: 'Head, upright section',
};

/** A window's sill, jamb or head as inline SVG, to scale; null where the wall can't be drawn. */
export function openingDetailSvg(wall: RankedAssembly, opening: Opening, place: DetailPlace): string | null {
  const detail = openingDetail(wall, opening, place);
  if (!detail) return null;
  const id = `detail-${place}`;
  const roles = detail.shapes.flatMap(({ pattern }) => pattern ?? []);
  const names = [...detail.keys]
    .sort((a, b) => a.number - b.number)
    .map(({ number }) => `${number} ${DETAIL_PARTS[number as keyof typeof DETAIL_PARTS] ?? ''}`);
  return svg(
    {
      id,
      className: 'detail',
      width: detail.width,
      height: detail.height,
      title: `${TITLES[place]}: ${opening.window}`,
      description: `To scale, inside on the left, outside on the right. Carried by: ${opening.carried_by.label}. ${names.join('; ')}. ${detail.dimensions.map(({ words }) => words).join('; ')}.`,
    },
    [
      `<defs>${patternDefs(id, roles)}</defs>`,
      ...detail.shapes.map(({ className, points, isClosed, pattern }) => {
        const d = points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join(' ');
        const fill = pattern === undefined ? '' : ` fill="${patternFill(id, pattern)}"`;
        return `<path class="${className}" d="${d}${isClosed ? ' Z' : ''}"${fill}/>`;
      }),
      ...detail.keys.map(({ number, at, target }) => key(number, at, target)),
      ...detail.dimensions.flatMap(({ from, to, y, words }) => dimension(from, to, y, words, detail.width)),
      text(TITLES[place], { x: detail.width / 2, y: 12 }, 'middle', 'number'),
    ],
  );
}
