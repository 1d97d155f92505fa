import { escapeHtml } from '../escape-html.ts';

/** A point in drawing units. */
export type Point = { readonly x: number; readonly y: number };

/** A coordinate with as many digits as a drawing needs. */
export function n(value: number): string {
  return `${Number(value.toFixed(2))}`;
}

/** An inline drawing with its title and description, so that it can be told without being seen. */
export function svg(
  { id, className, width, height, title, description }: DrawingFrame,
  parts: readonly string[],
): string {
  return [
    `<svg class="${className}" viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-labelledby="${id}-title ${id}-desc">`,
    `<title id="${id}-title">${escapeHtml(title)}</title>`,
    `<desc id="${id}-desc">${escapeHtml(description)}</desc>`,
    ...parts,
    '</svg>',
  ].join('\n');
}

export type DrawingFrame = {
  /** ASCII, unique in the page. */
  readonly id: string;
  readonly className: string;
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
};

export function path(points: readonly Point[], className: string, isClosed = false): string {
  const d = points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join(' ');
  return `<path class="${className}" d="${d}${isClosed ? ' Z' : ''}"/>`;
}

export function text(
  words: string,
  { x, y }: Point,
  anchor: 'start' | 'middle' | 'end' = 'start',
  className?: string,
): string {
  const kind = className === undefined ? '' : ` class="${className}"`;
  const place = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  return `<text${kind} x="${n(x)}" y="${n(y)}"${place}>${escapeHtml(words)}</text>`;
}

/** About how wide a character of a drawing is, in drawing units: on the wide side, so that words never run out. */
const CHARACTER = 6.6;

/**
 * A level dimension line with slashes at its ends and its words below, pushed aside where they would leave the drawing.
 *
 * @param width  of the drawing
 */
export function dimension(from: number, to: number, y: number, words: string, width: number): string[] {
  const slash = (x: number) => `M${n(x - 4)} ${n(y + 4)} L${n(x + 4)} ${n(y - 4)}`;
  const half = (words.length * CHARACTER) / 2;
  const middle = Math.max(half + 2, Math.min(width - half - 2, (from + to) / 2));
  return [
    `<path class="dimension" d="M${n(from - 6)} ${n(y)} H${n(to + 6)} ${slash(from)} ${slash(to)}"/>`,
    text(words, { x: middle, y: y + 14 }, 'middle'),
  ];
}

/** An upright dimension line with its words to the left, read from the right. */
export function uprightDimension(x: number, from: number, to: number, words: string): string[] {
  const slash = (y: number) => `M${n(x - 4)} ${n(y + 4)} L${n(x + 4)} ${n(y - 4)}`;
  const middle = (from + to) / 2;
  return [
    `<path class="dimension" d="M${n(x)} ${n(from)} V${n(to)} ${slash(from)} ${slash(to)}"/>`,
    `<text x="${n(x - 5)}" y="${n(middle)}" text-anchor="middle" transform="rotate(-90 ${n(x - 5)} ${n(middle)})">${escapeHtml(words)}</text>`,
  ];
}

/** How far a key's circle reaches. */
export const KEY_RADIUS = 10;

/** A numbered key with its leader to what it names. */
export function key(number: number, at: Point, target: Point): string {
  return [
    `<path class="leader" d="M${n(at.x)} ${n(at.y)} L${n(target.x)} ${n(target.y)}"/>`,
    `<circle class="spot" cx="${n(target.x)}" cy="${n(target.y)}" r="1.8"/>`,
    `<circle class="key" cx="${n(at.x)}" cy="${n(at.y)}" r="${KEY_RADIUS}"/>`,
    text(`${number}`, { x: at.x, y: at.y + 4 }, 'middle', 'number'),
  ].join('\n');
}
