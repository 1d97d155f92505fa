import { isDeepStrictEqual } from 'node:util';
import { loadCatalogue } from '../assembly/catalogue.ts';
import { catalogueGaps } from '../assessment/catalogue-gaps.ts';
import { fasteningPractice } from '../assessment/schedule/fastening-practice.ts';
import { Refusal } from '../base/refusal.ts';
import { type CheckedFile, CheckedFiles } from './checked-files.ts';
import { editionGaps } from './edition-gaps.ts';
import { loadCodeTables } from './load-code-tables.ts';
import { loadRulebook } from './load-rulebook.ts';
import { factsLackingProducts } from './product-gaps.ts';

/**
 * Checks every shipped rule, table, fact and limit, for the build to keep.
 *
 * @param dir  the rules folder
 * @throws Refusal for a file with an error, which the program refuses too; Error for what only this check finds: an
 *   edition without rules or rows, a product without its entries in other files, a checked value that JSON would change
 */
export async function checkShipped(dir: string): Promise<Record<string, CheckedFile>> {
  const checked = new CheckedFiles({});
  const rulebook = await loadRulebook(dir, { checked });
  const tables = await loadCodeTables(dir, checked);
  // The program would not refuse these by itself: it would judge by what the edition does not say.
  const gaps = [
    ...editionGaps(rulebook, tables),
    ...catalogueGaps(loadCatalogue(), fasteningPractice().on_furring),
    ...factsLackingProducts(loadCatalogue(), rulebook.facts),
  ];
  if (gaps.length > 0) throw new Error(new Refusal(gaps).message);
  const { all } = checked;
  if (!isDeepStrictEqual(JSON.parse(JSON.stringify(all)), all)) {
    throw new Error('a checked file is more than JSON can hold');
  }
  return all;
}
