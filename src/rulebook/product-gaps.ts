import type { Catalogue } from '../assembly/catalogue.ts';
import { type Issue, showValue } from '../base/refusal.ts';
import type { FactIndex } from './fact-dictionary.ts';

/**
 * What products of the catalogue are by a fact that takes listed words only, and that the list has not got: every answer
 * would end with a fault.
 *
 * @param facts  the dictionary of a rulebook
 */
export function factsLackingProducts(
  { claddings, insulations, barriers, sheathings, retarders, bucks }: Catalogue,
  facts: Pick<FactIndex, 'find'>,
): Issue[] {
  const words: readonly (readonly [string, string, readonly string[]])[] = [
    ['cladding.finish_kind', 'claddings.json', claddings.map(({ finish_kind }) => finish_kind)],
    ['cladding.attachment', 'claddings.json', claddings.map(({ attachment }) => attachment)],
    ['cladding.lath', 'claddings.json', claddings.map(({ lath }) => lath)],
    ['insulation.id', 'insulations.json', insulations.map(({ id }) => id)],
    ['sheathing.kind', 'sheathings.json', sheathings.map(({ id }) => id)],
    ['retarder.class', 'retarders.json', retarders.map((retarder) => retarder.class)],
    ['wrb.grade', 'barriers.json', barriers.map(({ grade }) => grade)],
    ['buck.support', 'bucks.json', bucks.map(({ support }) => support)],
  ];
  return words.flatMap(([fact, file, used]) => {
    const known = facts.find(fact)?.values ?? [];
    return [...new Set(used)]
      .filter((word) => !known.includes(word))
      .map((word) => ({
        field: `facts.json: ${fact}, values`,
        value: `${showValue(word)} of ${file}`,
        accepted: 'No wall could be judged by it: add it to the list.',
      }));
  });
}
