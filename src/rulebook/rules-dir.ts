import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * The folder of the shipped rule packs: `rules` beside the package's own files, found by walking upward
 * from this module, so that it holds for the sources, for the bundle and for its chunks.
 *
 * @param from  module address to start at; only tests give one
 * @throws Error when the package is incomplete
 */
export function findRulesDir(from: string = import.meta.url): string {
  const start = dirname(fileURLToPath(from));
  for (let here = start; ; here = dirname(here)) {
    const rules = join(here, 'rules');
    if (existsSync(join(rules, 'facts.json'))) return rules;
    if (dirname(here) === here) throw new Error(`no folder with rules/facts.json above ${start}`);
  }
}
