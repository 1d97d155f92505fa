import { z } from 'zod';

/** What stands where an older record has no words. */
const NOT_RECORDED = 'not recorded';

/** Stands for a figure that an older record has not got while the schema looks at it; no real figure is this. */
const NO_FIGURE = -1.234_567_89e300;

/**
 * Data of an older program brought into the shape of today's schema and checked: keys that it could not have yet are
 * filled with what means "not known" there (null, an empty list, "not recorded", NaN for a figure). Choices and
 * yes-or-no can't be made up: they stay missing, and the schema refuses them. Nothing that is there is changed.
 *
 * @param check  looks at the filled data; returns it typed, or throws
 */
export function parseOlder<T>(schema: z.core.$ZodType, data: unknown, check: (filled: unknown) => T): T {
  return withoutFigures(check(fillMissing(schema, data)));
}

/** Data with missing keys filled; figures by a stand-in that {@link withoutFigures} takes out again. */
export function fillMissing(schema: z.core.$ZodType, data: unknown): unknown {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable) {
    return data === null || data === undefined ? data : fillMissing(schema.unwrap(), data);
  }
  if (schema instanceof z.ZodArray) {
    return Array.isArray(data) ? data.map((item) => fillMissing(schema.element, item)) : data;
  }
  if (!(schema instanceof z.ZodObject) || typeof data !== 'object' || data === null || Array.isArray(data))
    return data;
  const given = new Map(Object.entries(data));
  const filled = Object.entries<z.core.$ZodType>(schema.shape).flatMap(([key, inner]) => {
    const value = given.has(key) ? fillMissing(inner, given.get(key)) : unknownOf(inner);
    return value === undefined ? [] : [[key, value] as const];
  });
  return { ...data, ...Object.fromEntries(filled) };
}

/** What means "not known" for a schema; undefined where nothing does. */
function unknownOf(schema: z.core.$ZodType): unknown {
  if (schema instanceof z.ZodOptional) return undefined;
  if (schema instanceof z.ZodNullable) return null;
  if (schema instanceof z.ZodArray) return [];
  if (schema instanceof z.ZodRecord) return {};
  if (schema instanceof z.ZodString) return NOT_RECORDED;
  if (schema instanceof z.ZodNumber) return NO_FIGURE;
  return schema instanceof z.ZodObject ? fillMissing(schema, {}) : undefined;
}

function withoutFigures<T>(value: T): T {
  if (value === NO_FIGURE) return Number.NaN as T;
  if (Array.isArray(value)) return value.map(withoutFigures) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withoutFigures(inner)])) as T;
}
