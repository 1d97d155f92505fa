import type { Candidate } from '../assembly/candidates.ts';
import type { Material } from '../assembly/material-schema.ts';
import type { AnswerContext } from './answer-context.ts';

export type LayerMaterial = { readonly layer: string; readonly material: Material };

/** What a wall is made of, inside to outside; the boards of one insulation count once, paint not at all. */
export function layerMaterials(candidate: Candidate, { catalogue, brief }: AnswerContext): LayerMaterial[] {
  return layerUses(candidate, brief.framing.material, brief.cavity_insulation_r > 0).flatMap(
    ({ layer, use }) => {
      const material = catalogue.materials.find((entry) => entry.used_for.includes(use));
      return material ? [{ layer, material }] : [];
    },
  );
}

/** The layers of a wall by the names under which the materials catalogue knows them. */
export function layerUses(
  { inside, sheathing, barrier, build, cladding }: Candidate,
  framing: 'wood' | 'steel',
  isFilled: boolean,
): { layer: string; use: string }[] {
  return [
    { layer: 'lining', use: 'lining' },
    ...(inside.retarder ? [{ layer: 'vapour retarder', use: `retarder/${inside.retarder.id}` }] : []),
    ...(isFilled ? [{ layer: 'cavity insulation', use: 'cavity' }] : []),
    { layer: 'studs', use: `framing/${framing}` },
    ...(sheathing.thickness_in > 0 ? [{ layer: 'sheathing', use: `sheathing/${sheathing.id}` }] : []),
    { layer: 'water-resistive barrier', use: `barrier/${barrier.id}` },
    { layer: 'exterior insulation', use: `insulation/${build.insulation.id}` },
    ...cladding.layers.map((layer) => ({ layer: layer.label, use: `${layer.role}/${cladding.id}` })),
  ];
}
