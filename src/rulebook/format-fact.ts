import type { FactEntry } from './fact-dictionary.ts';
import type { FactValue } from './rule-schema.ts';

type Style = {
  readonly decimals: (value: number) => number;
  /** Whether zeros at the end go. */
  readonly trim: boolean;
};

const fixed = (decimals: number, trim = false): Style => ({ decimals: () => decimals, trim });
const plain = fixed(2, true);

/** How many decimals a unit's figures are worth. */
const STYLES: Readonly<Record<string, Style>> = {
  'Btu/(h·ft²·°F)': fixed(3),
  'h·ft²·°F/Btu': fixed(1, true),
  psf: fixed(1),
  psi: fixed(0),
  mph: fixed(0),
  ft: fixed(1, true),
  'ft²': fixed(0),
  'g/m²': fixed(0),
  '°F': fixed(1, true),
  '$/ft²': fixed(0),
  pieces: fixed(0),
  lb: { decimals: (value) => (Math.abs(value) < 10 ? 1 : 0), trim: true },
  '%': { decimals: (value) => (Math.abs(value) < 10 ? 1 : 0), trim: true },
  // Sixteenths of an inch in full, other lengths to a hundredth.
  'in.': { decimals: (value) => (Number.isInteger(value * 16) ? 4 : 2), trim: true },
  perm: { decimals: twoSignificant, trim: true },
};

function twoSignificant(value: number): number {
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return Math.max(0, 1 - magnitude);
}

/**
 * A number as its unit is usually written, without the unit.
 *
 * @param extra  decimals beyond the usual, to tell two figures apart
 */
export function formatNumber(value: number, unit: string, extra = 0): string {
  const style = STYLES[unit] ?? plain;
  const decimals = Math.min(style.decimals(value) + extra, 12);
  const text = value.toFixed(decimals);
  const shown = style.trim && text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  const signless = /^-[0.]+$/.test(shown) ? shown.slice(1) : shown;
  return signless.replace(/^(-?\d+)(?=\.|$)/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, ','));
}

/** A value with its unit, as it stands in a sentence. */
export function formatFact(entry: FactEntry, value: FactValue, extra = 0): string {
  if (value === null) return 'not known';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return readableText(value);
  const unit = entry.unit ?? '';
  const number = formatNumber(value, unit, extra);
  const { before, after } = unitMarks(unit);
  return number.startsWith('-') ? `-${before}${number.slice(1)}${after}` : before + number + after;
}

/** What stands before and after a number of a unit: `$29/ft²`, `R-12.6`, `24.5 °F`. */
export function unitMarks(unit: string): { before: string; after: string } {
  switch (unit) {
    case '':
    // The sentence says what is counted.
    case 'pieces':
      return { before: '', after: '' };
    case '%':
      return { before: '', after: '%' };
    case '$/ft²':
      return { before: '$', after: '/ft²' };
    case 'h·ft²·°F/Btu':
      return { before: 'R-', after: '' };
    default:
      return { before: '', after: ` ${unit}` };
  }
}

/** Identifiers become words (`class-iii`: class III, `mineral-wool`: mineral wool); any other text stays as it is. */
export function readableText(value: string): string {
  if (!/^[a-z]+(-[a-z0-9./]+)+$/.test(value)) return value;
  return value
    .replaceAll('-', ' ')
    .replace(/\bclass (i{1,3})\b/, (_, roman: string) => `class ${roman.toUpperCase()}`);
}
