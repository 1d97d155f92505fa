import { inches } from '../base/inches.ts';
import { patternDefs, patternFill } from './drawing/layer-patterns.ts';
import { escapeHtml } from './escape-html.ts';
import { fixed } from './figure-text.ts';
import type { DrawnWall } from './record-document.ts';
import { KEY_RADIUS, KEY_Y, type WallSection, wallSection } from './wall-section.ts';

/** The wall section as inline SVG, drawn in the colour of the text around it; null when there is nothing to draw. */
export function wallSectionSvg(wall: DrawnWall): string | null {
  const section = wallSection(wall);
  if (!section) return null;
  const { width, height } = section;
  return [
    `<svg class="wall" viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-labelledby="wall-title wall-desc">`,
    '<title id="wall-title">Section through the wall, to scale</title>',
    `<desc id="wall-desc">${escapeHtml(description(section))}</desc>`,
    `<defs>${patternDefs(
      'wall',
      section.layers.map(({ layer }) => layer.role),
    )}</defs>`,
    ...section.layers.map((drawn) => layerSvg(drawn, section)),
    ...section.layers.map((drawn) => keySvg(drawn, section)),
    ...chain(section),
    ...dimensions(section),
    `<text x="${n(section.overall.from - 6)}" y="${n(section.top + 14)}" class="side" text-anchor="end">inside</text>`,
    `<text x="${n(section.overall.to + 6)}" y="${n(section.top + 14)}" class="side">outside</text>`,
    '</svg>',
  ].join('\n');
}

type Drawn = WallSection['layers'][number];

function layerSvg({ layer, key, x, width, isSheet }: Drawn, { top, bottom }: WallSection): string {
  const fill = patternFill('wall', layer.role);
  const rect = `<rect class="layer" data-layer="${key}" x="${n(x)}" y="${n(top)}" width="${n(width)}" height="${n(bottom - top)}" fill="${fill}"/>`;
  if (!isSheet) return rect;
  const middle = n(x + width / 2);
  return `${rect}\n<path class="sheet" d="M${middle} ${n(top)} V${n(bottom)}"/>`;
}

function keySvg({ key, x, width, keyX }: Drawn, { top }: WallSection): string {
  const middle = n(x + width / 2);
  return [
    `<path class="leader" d="M${n(keyX)} ${KEY_Y + KEY_RADIUS} L${middle} ${n(top - 6)} V${n(top)}"/>`,
    `<circle class="key" cx="${n(keyX)}" cy="${KEY_Y}" r="${KEY_RADIUS}"/>`,
    `<text class="number" x="${n(keyX)}" y="${KEY_Y + 4}" text-anchor="middle">${key}</text>`,
  ].join('\n');
}

function dimensions({ overall, added, bottom }: WallSection): string[] {
  const lower = added ? [dimension(added.from, added.to, bottom + 82)] : [];
  const label = added
    ? `<text x="${n(added.to)}" y="${n(bottom + 100)}" text-anchor="end">${fixed(added.inches, 2)} in. added ${added.outside}</text>`
    : '';
  return [
    dimension(overall.from, overall.to, bottom + 46),
    `<text x="${n((overall.from + overall.to) / 2)}" y="${n(bottom + 62)}" text-anchor="middle">${fixed(overall.inches, 2)} in. in all</text>`,
    ...lower,
    ...(label ? [label] : []),
  ];
}

/** Room that a layer's thickness takes in words; a narrower layer's would run into its neighbour's: the table has it. */
function wordsWidth(thickness_in: number): number {
  return `${inches(thickness_in)} in.`.length * 7 + 4;
}

/** The thickness of each layer that is wide enough for it, on one line with a slash at every boundary. */
function chain({ layers, overall, bottom }: WallSection): string[] {
  const y = bottom + 14;
  const ends = [
    ...new Set([overall.from, ...layers.filter(({ isSheet }) => !isSheet).map(({ x, width }) => x + width)]),
  ];
  const slashes = ends.map((x) => `M${n(x - 3)} ${n(y + 3)} L${n(x + 3)} ${n(y - 3)}`).join(' ');
  return [
    `<path class="dimension" d="M${n(overall.from - 6)} ${n(y)} H${n(overall.to + 6)} ${slashes}"/>`,
    ...layers.flatMap(({ layer, x, width }) =>
      width < wordsWidth(layer.thickness_in)
        ? []
        : [
            `<text x="${n(x + width / 2)}" y="${n(y + 15)}" text-anchor="middle">${inches(layer.thickness_in)} in.</text>`,
          ],
    ),
  ];
}

/** A dimension line with slashes at its ends. */
function dimension(from: number, to: number, y: number): string {
  const slash = (x: number) => `M${n(x - 4)} ${n(y + 4)} L${n(x + 4)} ${n(y - 4)}`;
  return `<path class="dimension" d="M${n(from - 6)} ${n(y)} H${n(to + 6)} ${slash(from)} ${slash(to)}"/>`;
}

function description({ layers }: WallSection): string {
  const words = layers.map(({ layer, key }) =>
    layer.thickness_in > 0
      ? `${key} ${layer.label}, ${fixed(layer.thickness_in, 3)} in.`
      : `${key} ${layer.label}`,
  );
  return `From inside on the left to outside on the right: ${words.join('; ')}.`;
}

/** A coordinate with as many digits as a drawing needs. */
function n(value: number): string {
  return `${Number(value.toFixed(3))}`;
}
