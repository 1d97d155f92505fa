import { PLACEHOLDER } from './condition-tree.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { formatFact, formatNumber, unitMarks } from './format-fact.ts';
import type { Facts } from './rule-schema.ts';
import { known } from './three-valued.ts';

const MOST_EXTRA_DECIMALS = 3;

/**
 * Fills `{fact.id}` with the fact's value and unit. What the sentence itself says around the placeholder
 * ("R-{…}", "U-{…}", "${…}", "{…} in.") isn't said twice, and two different figures of one unit get as many
 * decimals as it takes to tell them apart.
 *
 * @throws Error when a fact is missing from the sheet (null, not known, is fine)
 */
export function fillText(template: string, facts: Facts, index: FactIndex): string {
  const extra = extraDecimals(template, facts, index);
  return template.replace(PLACEHOLDER, (whole, id: string, offset: number) => {
    const entry = index.get(id);
    const value = known(facts, id);
    if (typeof value !== 'number') return formatFact(entry, value);
    const unit = entry.unit ?? '';
    const { before, after } = unitMarks(unit);
    const head = template.slice(0, offset);
    const tail = template.slice(offset + whole.length);
    const number = formatNumber(Math.abs(value), unit, extra.get(unit));
    const sign = value < 0 && /[1-9]/.test(number) ? '-' : '';
    const headSays = saidBefore(head, unit);
    // "U-0.045" needs no unit; "$29" still needs its "/ft²".
    const needsAfter = !saidAfter(tail, after.trim()) && !(headSays && before === '');
    // "in." at the end of a sentence brings its full stop along.
    const end = after.endsWith('.') && tail.startsWith('.') ? after.slice(0, -1) : after;
    return `${sign}${headSays ? '' : before}${number}${needsAfter ? end : ''}`;
  });
}

/** "R-", "U-" and "$" before a placeholder are part of its unit. */
function saidBefore(head: string, unit: string): boolean {
  if (unit === 'h·ft²·°F/Btu') return /\bR[- ]$/.test(head);
  if (unit === 'Btu/(h·ft²·°F)') return /\bU[- ]$/.test(head);
  return unit === '$/ft²' && head.endsWith('$');
}

function saidAfter(tail: string, unit: string): boolean {
  if (unit === '') return false;
  const rest = tail.trimStart();
  if (rest.startsWith(unit) && !/^\p{L}/u.test(rest.slice(unit.length))) return true;
  const spoken: Readonly<Record<string, RegExp>> = {
    '/ft²': /^(per|a) (square foot|ft²)/,
    'in.': /^inch/,
    lb: /^pound/,
    ft: /^(feet|foot)\b/,
    '%': /^percent/,
  };
  return spoken[unit]?.test(rest) ?? false;
}

/** Decimals that each unit needs beyond the usual so that different values don't look the same. */
function extraDecimals(template: string, facts: Facts, index: FactIndex): Map<string, number> {
  const byUnit = new Map<string, Set<number>>();
  for (const [, id = ''] of template.matchAll(PLACEHOLDER)) {
    const value = known(facts, id);
    if (typeof value !== 'number') continue;
    const unit = index.get(id).unit ?? '';
    byUnit.set(unit, (byUnit.get(unit) ?? new Set()).add(value));
  }
  const extra = new Map<string, number>();
  for (const [unit, values] of byUnit) {
    let more = 0;
    while (more < MOST_EXTRA_DECIMALS && distinct(values, unit, more) < values.size) more += 1;
    // Values that no reasonable precision tells apart are shown the usual way.
    extra.set(unit, distinct(values, unit, more) < values.size ? 0 : more);
  }
  return extra;
}

function distinct(values: ReadonlySet<number>, unit: string, extra: number): number {
  return new Set([...values].map((value) => formatNumber(value, unit, extra))).size;
}
