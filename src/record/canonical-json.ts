import { Refusal } from '../base/refusal.ts';

const DEEPEST = 100;

/**
 * JSON in one fixed form, so that the same content always has the same digest: keys sorted by UTF-16 code units, no
 * white space, numbers and strings as ECMAScript writes them. Keys whose value is undefined are left out.
 *
 * Source: RFC 8785, JSON Canonicalization Scheme, section 3.2.
 * Valid for: JSON values nested at most 100 deep.
 *
 * @throws Refusal when the value is nested deeper
 * @throws Error for what JSON can't hold (NaN, infinities, functions)
 */
export function canonicalJson(value: unknown): string {
  return canonical(value, 0);
}

function canonical(value: unknown, depth: number): string {
  if (depth > DEEPEST) {
    throw new Refusal({
      field: 'record',
      value: 'JSON nested too deep',
      accepted: `Give a file nested at most ${DEEPEST} deep.`,
    });
  }
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`JSON can't hold ${value}`);
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item, depth + 1)).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value)
      .filter(([, inner]) => inner !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner, depth + 1)}`);
    return `{${entries.join(',')}}`;
  }
  const text: string | undefined = JSON.stringify(value);
  if (text === undefined) throw new Error(`JSON can't hold a ${typeof value}`);
  return text;
}
