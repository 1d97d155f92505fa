import { isDeepStrictEqual } from 'node:util';
import { type CheckedFile, CheckedFiles } from './checked-files.ts';
import { loadCodeTables } from './load-code-tables.ts';
import { loadRulebook } from './load-rulebook.ts';

/**
 * Checks every shipped rule, table, fact and limit, for the build to keep.
 *
 * @param dir  the rules folder
 * @throws Refusal for a file with an error, Error for a checked value that JSON would change
 */
export async function checkShipped(dir: string): Promise<Record<string, CheckedFile>> {
  const checked = new CheckedFiles({});
  await loadRulebook(dir, { checked });
  await loadCodeTables(dir, checked);
  const { all } = checked;
  if (!isDeepStrictEqual(JSON.parse(JSON.stringify(all)), all)) {
    throw new Error('a checked file is more than JSON can hold');
  }
  return all;
}
