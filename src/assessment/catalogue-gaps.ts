import type { Catalogue } from '../assembly/catalogue.ts';
import { type Issue, showValue } from '../base/refusal.ts';
import type { FactIndex } from '../rulebook/fact-dictionary.ts';
import type { FasteningPractice } from './schedule/fastening-practice.ts';

type Parts = Pick<Catalogue, 'claddings' | 'insulations' | 'barriers' | 'sheathings' | 'materials'>;
type OnFurring = { readonly [K in keyof FasteningPractice['on_furring']]: { readonly claddings: string[] } };

/**
 * What a product of the catalogue lacks in the files beside its own: without it nothing fails, but the wall is drawn
 * and fastened with a piece left out.
 *
 * @param catalogue   every product with its layers
 * @param on_furring  of `fastening-practice.json`
 */
export function catalogueGaps(catalogue: Parts, on_furring: OnFurring): Issue[] {
  return [
    ...unfastened(catalogue, on_furring),
    ...withoutMaterial(catalogue),
    ...unknownInsulations(catalogue),
  ];
}

function unfastened({ claddings }: Parts, on_furring: OnFurring): Issue[] {
  const fastened = Object.values(on_furring).flatMap((kind) => kind.claddings);
  const onFurring = claddings.filter(({ attachment }) => attachment === 'furring').map(({ id }) => id);
  return [
    ...onFurring
      .filter((id) => !fastened.includes(id))
      .map((id) => ({
        field: 'claddings.json: id',
        value: showValue(id),
        accepted: `A cladding on furring is fixed in one of the ways of src/assessment/data/fastening-practice.json: add its id to "claddings" of one of ${Object.keys(on_furring).join(', ')} there.`,
      })),
    ...fastened
      .filter((id) => !onFurring.includes(id))
      .map((id) => ({
        field: 'fastening-practice.json: on_furring',
        value: showValue(id),
        accepted: 'No cladding of claddings.json on furring has this id: correct or remove it.',
      })),
  ];
}

/** Interior retarders may be paint, which is no layer of its own, and aren't asked for here. */
function withoutMaterial({ claddings, insulations, barriers, sheathings, materials }: Parts): Issue[] {
  const known = new Set(materials.flatMap(({ used_for }) => used_for));
  const wanted = [
    ...claddings.flatMap(({ id, layers }) =>
      layers.map(({ role }) => ({ file: 'claddings.json', id, use: `${role}/${id}` })),
    ),
    ...insulations.map(({ id }) => ({ file: 'insulations.json', id, use: `insulation/${id}` })),
    ...barriers.map(({ id }) => ({ file: 'barriers.json', id, use: `barrier/${id}` })),
    ...sheathings.flatMap(({ id, thickness_in }) =>
      thickness_in > 0 ? [{ file: 'sheathings.json', id, use: `sheathing/${id}` }] : [],
    ),
  ];
  return wanted
    .filter(({ use }) => !known.has(use))
    .map(({ file, id, use }) => ({
      field: `${file}: id`,
      value: showValue(id),
      accepted: `What this layer is made of stands in src/assembly/catalogue/materials.json: add "${use}" to "used_for" of a material there.`,
    }));
}

function unknownInsulations({ claddings, insulations }: Parts): Issue[] {
  const known = new Set<string>(insulations.map(({ id }) => id));
  return claddings.flatMap(({ id, works_with }) =>
    works_with.insulations
      .filter((insulation) => !known.has(insulation))
      .map((insulation) => ({
        field: `claddings.json: ${id}, works_with.insulations`,
        value: showValue(insulation),
        accepted: `Give ids of insulations.json: ${[...known].join(', ')}.`,
      })),
  );
}

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
