import { provenanceText } from '../base/provenance.ts';

/** A citation with its provenance, when the citation itself doesn't already own up to it. */
export function citationWithProvenance(citation: string, provenance: string): string {
  const owning =
    provenance === 'memory' ? 'from memory' : provenance === 'common-practice' ? 'no source' : null;
  if (owning === null || citation.toLowerCase().includes(owning)) return citation;
  return `${citation} (${provenanceText(provenance)})`;
}

/** A figure that an older record has not got is NaN. */
const NOT_KNOWN = 'not known';

/** A number to four significant digits, whole above 1000, thousands separated; "not known" for null and NaN. */
export function numberText(value: number | null): string {
  if (value === null || Number.isNaN(value)) return NOT_KNOWN;
  const rounded = Math.abs(value) >= 1000 ? Math.round(value) : Number(value.toPrecision(4));
  return rounded.toLocaleString('en-US', { maximumFractionDigits: 12 }).replace(/^-0$/, '0');
}

/** A number with its unit: `14.9 psf`, `62 %`; a number without unit alone. */
export function figureText(value: number | null, unit: string): string {
  return value === null || Number.isNaN(value) || unit === ''
    ? numberText(value)
    : `${numberText(value)} ${unit}`;
}

/** Rounded to a fixed number of decimals: `0.041`. */
export function fixed(value: number, decimals: number): string {
  if (Number.isNaN(value)) return NOT_KNOWN;
  return value.toFixed(decimals).replace(/^-(0(?:\.0+)?)$/, '$1');
}

/** `$29`, `$7.50` below ten dollars. */
export function dollars(value_usd: number): string {
  if (Number.isNaN(value_usd)) return NOT_KNOWN;
  const whole = Math.abs(value_usd) >= 10 || Number.isInteger(value_usd);
  return `$${value_usd.toLocaleString('en-US', { minimumFractionDigits: whole ? 0 : 2, maximumFractionDigits: whole ? 0 : 2 })}`;
}

const HUNDRED = 100;

/** A price per square foot times the wall, rounded to hundreds: `$50,700`. */
export function wholeWallUsd(usd_per_ft2: number, area_ft2: number): string {
  return `$${(Math.round((usd_per_ft2 * area_ft2) / HUNDRED) * HUNDRED).toLocaleString('en-US')}`;
}

/** `$29 per ft² (from $24 to $37)` */
export function priceText(price: { low: number; likely: number; high: number }): string {
  return `${dollars(price.likely)} per ft² (from ${dollars(price.low)} to ${dollars(price.high)})`;
}

/** `2026-03-14, 15:09 UTC` */
export function momentText(iso: string): string {
  return `${iso.slice(0, 10)}, ${iso.slice(11, 16)} UTC`;
}

/** `moisture_safety` → "moisture safety": a key of the answer read as words. */
export function keyWords(key: string): string {
  return key.replace(/[_-]+/g, ' ').trim();
}

/** A sentence with its full stop. */
export function sentence(text: string): string {
  return /[.!?:]$/.test(text) ? text : `${text}.`;
}
