/**
 * Text with everything that could steer a terminal made visible: escape and other control characters, C1 codes,
 * zero-width and direction marks. `\u001b[2J` is shown, not obeyed. Line ends stay when `keepLineEnds` is set;
 * tabs become one space.
 */
export function visibleText(text: string, keepLineEnds = false): string {
  return text
    .replace(/\t/g, ' ')
    .replace(
      /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]/g,
      (mark) =>
        keepLineEnds && mark === '\n' ? mark : `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
    )
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd');
}

const TWINS: ReadonlyMap<string, string> = new Map([
  ['°', 'deg '],
  ['²', '2'],
  ['³', '3'],
  ['×', 'x'],
  ['·', '*'],
  ['≤', '<='],
  ['≥', '>='],
  ['±', '+/-'],
  ['→', '->'],
  ['←', '<-'],
  ['–', '-'],
  ['—', '-'],
  ['−', '-'],
  ['‑', '-'],
  ['’', "'"],
  ['‘', "'"],
  ['′', "'"],
  ['“', '"'],
  ['”', '"'],
  ['″', '"'],
  ['…', '...'],
  ['»', '>>'],
  ['«', '<<'],
  ['├', '|'],
  ['┤', '|'],
  ['─', '-'],
  ['│', '|'],
  ['█', '#'],
  ['χ', 'chi'],
  ['ψ', 'psi'],
  ['µ', 'u'],
  ['\u00a0', ' '],
  ['\ufffd', '?'],
]);

/** The same text in plain ASCII: marks get a twin ("°F" → "deg F"), letters lose their accents, the rest becomes "?". */
export function asciiText(text: string): string {
  return [...plainFractions(text)]
    .map((char) => TWINS.get(char) ?? char)
    .join('')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\n\u0020-\u007e]/gu, '?');
}

/** "5½" as "5 1/2": fractions that are one character, written out and kept apart from the number before them. */
export function plainFractions(text: string): string {
  return text.replace(/(\d?)([\u00bc-\u00be\u2150-\u215e])/g, (_, digit: string, fraction: string) => {
    const written = fraction.normalize('NFKD').replace('\u2044', '/');
    return digit === '' ? written : `${digit} ${written}`;
  });
}
