import type { Catalogue } from './catalogue.ts';
import type { Cladding, DeeperFurring, Price } from './catalogue-schema.ts';

const made = new WeakMap<Cladding, { readonly furring: DeeperFurring; readonly cladding: Cladding }>();

/**
 * The cladding on deeper strips: thicker, heavier and dearer, with more wood for its nails; the same cladding otherwise,
 * under the same id. The same object each time. The code’s furring tables ask for 1x furring or more, so they hold as
 * before; their footnote c names 2-in. nominal furring where a cladding’s fasteners need more than 3/4 in. of wood.
 *
 * @returns the cladding itself where it doesn't come on furring
 */
export function onDeeperFurring(cladding: Cladding, { deeper_furring: furring }: Catalogue): Cladding {
  const words = cladding.deeper_furring;
  if (!words) return cladding;
  const known = made.get(cladding);
  if (known?.furring === furring) return known.cladding;
  const deeper: Cladding = {
    ...cladding,
    label: words.label,
    lath_or_furring: words.lath_or_furring,
    drainage: { ...cladding.drainage, gap_in: furring.thickness_in },
    layers: cladding.layers.map((layer) =>
      layer.role === 'furring'
        ? {
            ...layer,
            label: words.layer_label,
            thickness_in: furring.thickness_in,
            weight_psf: furring.weight_psf,
          }
        : layer,
    ),
    cost: { ...cladding.cost, usd_per_ft2: sum(cladding.cost.usd_per_ft2, furring.cost.usd_per_ft2) },
  };
  made.set(cladding, { furring, cladding: deeper });
  return deeper;
}

function sum(a: Price, b: Price): Price {
  return { low: a.low + b.low, likely: a.likely + b.likely, high: a.high + b.high };
}
