import type { FactEntry } from './fact-dictionary.ts';
import type { FactValue } from './rule-schema.ts';

/**
 * A column sorts the values of one fact (or of a pair of facts) into numbered classes, such that no comparison
 * in any rule can tell two values of one class apart. Class 0 is "not known".
 */
export type ClassOf = (value: FactValue | undefined) => number;

/**
 * Classes of a number: below, at, between and above the limits that rules compare it with.
 * With limits t0 < t1 < …, class 1 + 2i is the open interval below ti, class 2 + 2i is ti itself.
 *
 * @returns throws on anything that isn't a finite number or null
 */
export function numberClasses(id: string, limits: readonly number[]): ClassOf {
  return (value) => {
    if (value === null) return 0;
    if (typeof value !== 'number' || !Number.isFinite(value)) throw misfit(id, value);
    let low = 0;
    let high = limits.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((limits[middle] ?? Number.POSITIVE_INFINITY) < value) low = middle + 1;
      else high = middle;
    }
    return limits[low] === value ? 2 + 2 * low : 1 + 2 * low;
  };
}

/** Classes of a text or yes-no fact: each listed value, and one for all others. */
export function valueClasses(entry: FactEntry, values: readonly (string | boolean)[]): ClassOf {
  const codes = new Map<string | boolean, number>(values.map((value, i) => [value, i + 2]));
  const type = entry.type === 'text' ? 'string' : 'boolean';
  return (value) => {
    if (value === null) return 0;
    if (typeof value !== type || typeof value === 'number' || value === undefined)
      throw misfit(entry.id, value);
    const code = codes.get(value);
    if (code === undefined && entry.values) throw misfit(entry.id, value);
    return code ?? 1;
  };
}

function misfit(id: string, value: unknown): Error {
  return value === undefined
    ? new Error(`fact ${id} is missing; give null when it is not known`)
    : new Error(`fact ${id} can't be ${typeof value === 'string' ? `"${value}"` : String(value)}`);
}

/** Class of a pair that rules compare with each other: which is larger, or whether they are the same. */
export function pairClass(left: FactValue, right: FactValue): number {
  if (left === null || right === null) return 0;
  if (left === right) return 2;
  return typeof left === 'number' && typeof right === 'number' && left < right ? 1 : 3;
}

/**
 * Coarser classes for one rule: maps the classes made for the limits of all rules to those made for its own.
 *
 * @param limits  all limits, ascending
 * @param own     the rule's limits, a subset
 */
export function coarserNumberClasses(limits: readonly number[], own: ReadonlySet<number>): number[] {
  const map = [0];
  let passed = 0;
  for (const limit of limits) {
    map.push(1 + 2 * passed);
    if (own.has(limit)) {
      map.push(2 + 2 * passed);
      passed += 1;
    } else {
      map.push(1 + 2 * passed);
    }
  }
  map.push(1 + 2 * passed);
  return map;
}

/** The same for text and yes-no classes. */
export function coarserValueClasses(
  values: readonly (string | boolean)[],
  own: ReadonlySet<string | boolean>,
): number[] {
  let next = 2;
  const map = [0, 1];
  for (const value of values) map.push(own.has(value) ? next++ : 1);
  return map;
}
