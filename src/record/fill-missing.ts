import { z } from 'zod';

/** What stands where an older record has no words. */
const NOT_RECORDED = 'not recorded';

/**
 * Data of an older program brought into the shape of today's schema: keys that it could not have yet are filled with
 * what means "not known" there (null, an empty list, "not recorded"). Numbers, choices and yes-or-no can't be made up:
 * they stay missing, and the schema refuses them.
 *
 * Nothing that is there is changed.
 */
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
  return schema instanceof z.ZodObject ? fillMissing(schema, {}) : undefined;
}
