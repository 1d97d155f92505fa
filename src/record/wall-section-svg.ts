import { escapeHtml } from './escape-html.ts';
import { fixed } from './figure-text.ts';
import type { DrawnWall } from './record-document.ts';
import { KEY_RADIUS, KEY_Y, type WallSection, wallSection } from './wall-section.ts';

/** Layer roles that have a line pattern of their own; others stay blank. */
const PATTERNS: Readonly<Record<string, string>> = {
  finish: '<circle cx="2" cy="2" r="1"/><circle cx="7" cy="6" r="1"/>',
  insulation: '<path d="M0 2 L5 8 L10 2"/>',
  framing: '<path d="M0 5 C3 1 7 9 10 5"/>',
  sheathing: '<path d="M0 10 L10 0"/>',
  drainage: '<path d="M3 0 V6 M8 4 V10"/>',
  furring: '<path d="M0 2 H10 M0 7 H10"/>',
  lath: '<path d="M0 0 L10 10 M10 0 L0 10"/>',
};

/** The wall section as inline SVG, drawn in the colour of the text around it; null when there is nothing to draw. */
export function wallSectionSvg(wall: DrawnWall): string | null {
  const section = wallSection(wall);
  if (!section) return null;
  const { width, height } = section;
  return [
    `<svg class="wall" viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-labelledby="wall-title wall-desc">`,
    '<title id="wall-title">Section through the wall, to scale</title>',
    `<desc id="wall-desc">${escapeHtml(description(section))}</desc>`,
    `<defs>${patternDefs(section)}</defs>`,
    ...section.layers.map((drawn) => layerSvg(drawn, section)),
    ...section.layers.map((drawn) => keySvg(drawn, section)),
    ...dimensions(section),
    `<text x="${n(section.overall.from)}" y="${n(section.bottom + 16)}" class="side">inside</text>`,
    `<text x="${n(section.overall.to)}" y="${n(section.bottom + 16)}" class="side" text-anchor="end">outside</text>`,
    '</svg>',
  ].join('\n');
}

type Drawn = WallSection['layers'][number];

function layerSvg({ layer, key, x, width, isSheet }: Drawn, { top, bottom }: WallSection): string {
  const fill = Object.hasOwn(PATTERNS, layer.role) ? `url(#wall-${layer.role})` : 'none';
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
  const lower = added ? [dimension(added.from, added.to, bottom + 70)] : [];
  const label = added
    ? `<text x="${n(added.to)}" y="${n(bottom + 88)}" text-anchor="end">${fixed(added.inches, 2)} in. added outside the sheathing</text>`
    : '';
  return [
    dimension(overall.from, overall.to, bottom + 30),
    `<text x="${n((overall.from + overall.to) / 2)}" y="${n(bottom + 47)}" text-anchor="middle">${fixed(overall.inches, 2)} in. in all</text>`,
    ...lower,
    ...(label ? [label] : []),
  ];
}

/** A dimension line with slashes at its ends. */
function dimension(from: number, to: number, y: number): string {
  const slash = (x: number) => `M${n(x - 4)} ${n(y + 4)} L${n(x + 4)} ${n(y - 4)}`;
  return `<path class="dimension" d="M${n(from - 6)} ${n(y)} H${n(to + 6)} ${slash(from)} ${slash(to)}"/>`;
}

function patternDefs({ layers }: WallSection): string {
  const roles = [...new Set(layers.map(({ layer }) => layer.role))].filter((role) =>
    Object.hasOwn(PATTERNS, role),
  );
  return roles
    .map(
      (role) =>
        `<pattern id="wall-${role}" class="pattern" width="10" height="10" patternUnits="userSpaceOnUse">${PATTERNS[role]}</pattern>`,
    )
    .join('');
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
