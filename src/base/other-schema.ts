/** A document of this program that is no scenario, by the schema that it names: house rules, a firm's file, a record. */
export function namesOtherSchema(data: unknown): data is { readonly schema: string } {
  if (typeof data !== 'object' || data === null || !('schema' in data)) return false;
  return typeof data.schema === 'string' && /^cladwright-(?!scenario\/)/.test(data.schema);
}
