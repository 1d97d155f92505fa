import type { Knowledge } from '../advice/judge-walls.ts';
import { loadCatalogue } from '../assembly/catalogue.ts';
import { loadCodeTables } from '../rulebook/load-code-tables.ts';
import { loadRulebook, type ReadPack } from '../rulebook/load-rulebook.ts';
import { findRulesDir } from '../rulebook/rules-dir.ts';

/**
 * Everything an answer is made with: shipped and house rules, code tables, catalogue. Load it once per process.
 *
 * @param housePacks  a firm's own rule packs, by path or as read before
 * @throws Refusal for a pack or table with an error, naming file and path
 */
export async function loadKnowledge({
  housePacks,
}: {
  readonly housePacks: readonly (string | ReadPack)[];
}): Promise<Knowledge> {
  const dir = findRulesDir();
  const [rulebook, tables] = await Promise.all([
    loadRulebook(dir, { extraPacks: housePacks }),
    loadCodeTables(dir),
  ]);
  return { rulebook, tables, catalogue: loadCatalogue() };
}
