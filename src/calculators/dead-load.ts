import { inRange, Refusal, showValue } from '../base/refusal.ts';

/** One layer's weight: straight as psf, or from thickness and density. */
export type LoadLayer = {
  readonly label: string;
  /** Dry, or as installed. */
  readonly weight: LayerWeight;
  /** Soaked or freshly placed; null when nobody knows. */
  readonly wet_weight: LayerWeight | null;
};

export type LayerWeight =
  | { readonly psf: number }
  | { readonly thickness_in: number; readonly density_pcf: number };

export type DeadLoad = {
  readonly dry_psf: number;
  /** With the wet weights that are known; a layer without one counts dry, so this is a lower bound then. */
  readonly wet_psf: number;
  readonly layers: readonly {
    readonly label: string;
    readonly dry_psf: number;
    readonly wet_psf: number | null;
  }[];
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Density of Portland cement plaster, lb/ft³: cured, and the heavier figure used for it wet.
 * From memory of the ASCE 7 commentary's and handbooks' 142 to 145 pcf.
 */
export const CEMENT_PLASTER_PCF = { cured: 142, wet: 145 } as const;

/**
 * Weight of a layer on a wall, lb per ft² of wall: thickness × density / 12.
 *
 * @param weight  psf (0 to 200), or inches (0 to 24) and lb/ft³ (0 to 500)
 * @throws Refusal outside those ranges, naming the field
 */
export function layerWeight_psf(weight: LayerWeight, label = 'layer'): number {
  if ('psf' in weight) return inRange(weight.psf, `${label}: psf`, 0, 200, 'pounds per square foot');
  const thickness = inRange(weight.thickness_in, `${label}: thickness_in`, 0, 24, 'inches');
  const density = inRange(weight.density_pcf, `${label}: density_pcf`, 0, 500, 'pounds per cubic foot');
  return (thickness * density) / 12;
}

/**
 * Dead load of a wall's layers, lb per ft² of wall, dry and wet.
 *
 * Give only the layers that the fasteners carry to get their gravity load; give all of them for the whole wall.
 * A wet weight under the dry one is a contradiction and refused. A layer whose wet weight is null counts dry and is
 * named in `notes`: the sum is then a lower bound.
 *
 * Source: weights as given by the caller with their own sources (ASCE 7 commentary Tables C3.1-1 and C3.1-2 hold
 * common ones).
 */
export function deadLoad(layers: readonly LoadLayer[]): DeadLoad {
  const weighed = layers.map(({ label, weight, wet_weight }) => {
    const dry_psf = layerWeight_psf(weight, label);
    const wet_psf = wet_weight === null ? null : layerWeight_psf(wet_weight, `${label}, wet`);
    if (wet_psf !== null && wet_psf < dry_psf - 1e-9) {
      throw new Refusal({
        field: `${label}: wet_weight`,
        value: showValue(wet_weight),
        accepted: `Give at least the dry weight, ${dry_psf} psf.`,
      });
    }
    return { label, dry_psf, wet_psf };
  });
  const unknownWhenWet = weighed.filter((l) => l.wet_psf === null && l.dry_psf > 0).map((l) => l.label);
  return {
    dry_psf: weighed.reduce((sum, l) => sum + l.dry_psf, 0),
    wet_psf: weighed.reduce((sum, l) => sum + (l.wet_psf ?? l.dry_psf), 0),
    layers: weighed,
    source: ['sum of layer weights, thickness × density / 12'],
    notes:
      unknownWhenWet.length > 0
        ? [
            `Wet weight not known for ${unknownWhenWet.join(', ')}: counted dry, so the wet sum is a lower bound.`,
          ]
        : [],
  };
}
