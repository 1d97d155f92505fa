import type { Catalogue } from '../assembly/catalogue.ts';
import { type Issue, showValue } from '../base/refusal.ts';
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
