import { isAbsolute, join, normalize } from 'node:path';
import type { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { CheckedFiles } from './checked-files.ts';
import { readDataFile } from './read-data-file.ts';

/**
 * Reads one `*.table.json` of the rules folder: limits that a standard prints as a table.
 *
 * @param dir           the rules folder
 * @param relativePath  for example `energy/wall-r.table.json`
 * @param schema        zod schema of the whole file
 * @param checked       tables that need no other check
 * @throws Refusal with file and path for anything that doesn't fit the schema
 */
export async function readCodeTable<S extends z.ZodType>(
  dir: string,
  relativePath: string,
  schema: S,
  checked = new CheckedFiles(),
): Promise<z.output<S>> {
  const inside = normalize(relativePath);
  if (isAbsolute(inside) || inside.startsWith('..') || !inside.endsWith('.table.json')) {
    throw new Refusal({
      field: 'table',
      value: showValue(relativePath),
      accepted: 'Give the path of a .table.json file inside the rules folder.',
    });
  }
  const { data, sha256 } = await readDataFile(join(dir, inside), relativePath);
  return checked.valueOf(relativePath, sha256, () => parseInput(schema, data(), relativePath));
}
