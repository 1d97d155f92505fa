import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import { factsLackingProducts } from '../../src/rulebook/product-gaps.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';

const CATALOGUE = loadCatalogue();

describe('what a product is by a fact of listed words', async () => {
  const { facts } = await loadRulebook(findRulesDir());

  it('is in the list for everything that is shipped', () => {
    expect(factsLackingProducts(CATALOGUE, facts)).toEqual([]);
  });

  it('is named with fact and file where the list has not got it', () => {
    const without = (id: string, word: string) => {
      const entry = facts.get(id);
      return {
        find: (one: string) =>
          one === id ? { ...entry, values: entry.values?.filter((v) => v !== word) } : facts.find(one),
      };
    };
    for (const [id, word, file] of [
      ['insulation.id', 'wood-fibre', 'insulations.json'],
      ['sheathing.kind', 'gypsum', 'sheathings.json'],
      ['retarder.class', 'responsive', 'retarders.json'],
      ['buck.support', 'steel-bracket', 'bucks.json'],
    ] as const) {
      expect(factsLackingProducts(CATALOGUE, without(id, word))).toEqual([
        {
          field: `facts.json: ${id}, values`,
          value: `"${word}" of ${file}`,
          accepted: expect.stringContaining('add it'),
        },
      ]);
    }
  });
});
