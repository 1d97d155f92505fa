import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';

/** An invented firm's pack; whatever is given is added. */
export function rawHouse(parts: object): object {
  return {
    schema: 'cladwright-rules/1',
    pack: 'larch-row',
    version: '2.1.0',
    concern: 'structure',
    firm: 'Larch Row Framers',
    ...parts,
  };
}

/** Writes a pack (an object as JSON, a string as it is) into a folder of its own. */
export async function houseFile(pack: object | string, name = 'house.rules.json'): Promise<string> {
  const path = join(await mkdtemp(join(tmpdir(), 'house-pack-')), name);
  await writeFile(path, typeof pack === 'string' ? pack : JSON.stringify(pack));
  return path;
}

/** The shipped rules with an invented firm's packs. */
export async function shippedWith(...packs: readonly (object | string)[]): Promise<Rulebook> {
  const extraPacks = await Promise.all(packs.map((pack) => houseFile(pack)));
  return loadRulebook(findRulesDir(), { extraPacks });
}
