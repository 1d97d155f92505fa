import { z } from 'zod';
import type { Face } from '../assembly/candidates.ts';
import { type DeadLoad, deadLoad, type LayerWeight } from '../calculators/dead-load.ts';

export const deadLoadSchema = z.object({
  dry_psf: z.number(),
  wet_psf: z.number(),
  /** True when some layer's wet weight is not known and was counted dry. */
  wet_is_lower_bound: z.boolean(),
  layers: z.array(
    z.object({
      label: z.string(),
      dry_psf: z.number(),
      wet_psf: z.number().nullable(),
      source: z.string(),
      provenance: z.string(),
    }),
  ),
  source: z.array(z.string()),
  notes: z.array(z.string()),
});
export type DeadLoadAnswer = z.output<typeof deadLoadSchema>;

type Weighed = {
  readonly label: string;
  readonly weight: LayerWeight;
  readonly wet_weight: LayerWeight | null;
  readonly source: string;
  readonly provenance: string;
};

/**
 * Dead load of everything put outside the barrier, lb per ft² of wall, dry and wet, layer by layer with sources.
 *
 * Boards by thickness and density, the rest by the catalogue's weights. The barrier, the fasteners and what hangs on
 * the wall (lamps, shutters) are not counted; a layer whose wet weight nobody gives counts dry.
 */
export function deadLoadPart(face: Face): DeadLoadAnswer {
  const weighed = [...boards(face), ...outerLayers(face)];
  const load: DeadLoad = deadLoad(weighed);
  return {
    dry_psf: load.dry_psf,
    wet_psf: load.wet_psf,
    wet_is_lower_bound: load.layers.some((layer) => layer.wet_psf === null && layer.dry_psf > 0),
    layers: load.layers.map((layer, i) => ({
      ...layer,
      source: weighed[i]?.source ?? '',
      provenance: weighed[i]?.provenance ?? 'memory',
    })),
    source: [...load.source],
    notes: [
      ...load.notes,
      'Not counted: the barrier, fasteners and ties (together under about 0.3 psf, common practice) and anything hung on the wall.',
    ],
  };
}

function boards({ build }: Face): Weighed[] {
  const { label, density_pcf } = build.insulation;
  return build.boards_in.map((thickness_in, i) => ({
    label: build.boards_in.length > 1 ? `${label}, layer ${i + 1}` : label,
    weight: { thickness_in, density_pcf: density_pcf.value },
    wet_weight: null,
    source: `${density_pcf.value} lb/ft³: ${density_pcf.source}`,
    provenance: density_pcf.provenance,
  }));
}

function outerLayers({ cladding }: Face): Weighed[] {
  return cladding.layers.map(({ label, weight_psf, wet_weight_psf }) => ({
    label,
    weight: { psf: weight_psf.value },
    wet_weight: wet_weight_psf ? { psf: wet_weight_psf.value } : null,
    source: wet_weight_psf ? `${weight_psf.source}; wet: ${wet_weight_psf.source}` : weight_psf.source,
    provenance: weight_psf.provenance,
  }));
}
