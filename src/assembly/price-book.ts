import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import type { PriceBook } from '../brief/price-book.ts';
import labourJson from './catalogue/labour.json' with { type: 'json' };
import type { Catalogue } from './catalogue.ts';
import { type Price, provenance } from './catalogue-schema.ts';

const labourSchema = z.strictObject({
  schema: z.literal('cladwright-labour/1'),
  region: z.string(),
  region_factor: z.number().positive(),
  hours: z.array(
    z.strictObject({
      /** An item, or all items of a kind. */
      items: z.array(z.string()).min(1),
      per_100_ft2: z.number().positive().optional(),
      each: z.number().positive().optional(),
      source: z.string(),
      provenance,
    }),
  ),
});
type Labour = z.output<typeof labourSchema>;

let loaded: Labour | undefined;

/** The labour that is taken to be in the shipped prices: region, and hours by item; the rate stands with the prices. */
function shippedLabour(): Labour {
  loaded ??= parseInput(labourSchema, labourJson, 'labour.json');
  return loaded;
}

/**
 * The catalogue with its prices and carbon as a price book has them. What the book names is taken as it stands; the rest is
 * the shipped price with its labour at the book's rate, times the region factor. The shipped catalogue stays as it is.
 *
 * @param field  how messages call the book, for example `price_book`
 * @throws Refusal for an item that the catalogue doesn't have
 */
export function pricedCatalogue(catalogue: Catalogue, book: PriceBook, field = 'price_book'): Catalogue {
  const given = new Map((book.prices ?? []).map((entry) => [entry.item, entry]));
  const carbon = new Map((book.carbon ?? []).map((entry) => [entry.item, entry]));
  const issues: Issue[] = [
    ...unknownItems(book.prices ?? [], priceItems(catalogue), `${field}.prices`),
    ...unknownItems(book.carbon ?? [], carbonItems(catalogue), `${field}.carbon`),
  ];
  if (issues.length > 0) throw new Refusal(issues);
  const move = mover(book, catalogue.prices.labour_usd_per_hour.likely);
  const price = (
    item: string,
    shipped: Price,
    labour: string | null,
    kind: 'per_100_ft2' | 'each',
  ): Price => {
    const own = given.get(item);
    if (own) return { low: own.low, likely: own.likely, high: own.high };
    return move(shipped, labour === null ? 0 : hoursOf(labour, kind));
  };
  const perArea = (item: string, shipped: Price, labour: string | null = item) =>
    price(item, shipped, labour, 'per_100_ft2');
  const each = (item: string, shipped: Price, labour: string | null) => price(item, shipped, labour, 'each');
  const carbonOf = <T extends { value: number; source: string }>(item: string, shipped: T): T => {
    const own = carbon.get(item);
    return own
      ? { ...shipped, value: own.kgco2e, low: own.kgco2e, high: own.kgco2e, source: own.source }
      : shipped;
  };
  const insulations = catalogue.insulations.map((one) => {
    const at = `insulation/${one.id}`;
    return {
      ...one,
      cost: {
        ...one.cost,
        first_inch: perArea(`${at}/first-inch`, one.cost.first_inch, 'insulation/first-layer'),
        each_more_inch: perArea(`${at}/each-more-inch`, one.cost.each_more_inch, null),
        each_more_layer: perArea(
          `${at}/each-more-layer`,
          one.cost.each_more_layer,
          'insulation/each-more-layer',
        ),
      },
      carbon_kgco2e_per_m2_rsi: carbonOf(at, one.carbon_kgco2e_per_m2_rsi),
    };
  });
  const insulationOf = new Map(insulations.map((one) => [one.id, one]));
  const { prices } = catalogue;
  const fasteners = prices.fastener_material_usd_each;
  const rate = book.labour_usd_per_h;
  return {
    ...catalogue,
    insulations,
    builds: catalogue.builds.map((build) => ({
      ...build,
      insulation: insulationOf.get(build.insulation.id) ?? build.insulation,
    })),
    claddings: catalogue.claddings.map((one) => ({
      ...one,
      cost: { ...one.cost, usd_per_ft2: perArea(`cladding/${one.id}`, one.cost.usd_per_ft2) },
      carbon_kgco2e_per_m2: carbonOf(`cladding/${one.id}`, one.carbon_kgco2e_per_m2),
    })),
    deeper_furring: {
      ...catalogue.deeper_furring,
      cost: {
        ...catalogue.deeper_furring.cost,
        usd_per_ft2: move(catalogue.deeper_furring.cost.usd_per_ft2, 0),
      },
    },
    barriers: catalogue.barriers.map((one) => ({
      ...one,
      cost: { ...one.cost, usd_per_ft2: perArea(`barrier/${one.id}`, one.cost.usd_per_ft2) },
    })),
    retarders: catalogue.retarders.map((one) => ({
      ...one,
      cost: { ...one.cost, usd_per_ft2: perArea(`retarder/${one.id}`, one.cost.usd_per_ft2) },
    })),
    bucks: catalogue.bucks.map((one) => ({
      ...one,
      cost_each: { ...one.cost_each, usd: each(`buck/${one.id}`, one.cost_each.usd, `buck/${one.id}`) },
    })),
    prices: {
      ...prices,
      year: book.year ?? prices.year,
      source: `${prices.source}; in part from a price book of the user's or the firm's own`,
      // The rate of who drives the fasteners, whose minutes are counted one by one.
      labour_usd_per_hour: move(
        rate === undefined ? prices.labour_usd_per_hour : { low: rate, likely: rate, high: rate },
        0,
      ),
      fastener_material_usd_each: {
        up_to_4_in: each('fastener/up-to-4-in', fasteners.up_to_4_in, null),
        up_to_6_in: each('fastener/up-to-6-in', fasteners.up_to_6_in, null),
        longer: each('fastener/longer', fasteners.longer, null),
      },
      opening_flashing_usd_each: each(
        'opening-flashing',
        prices.opening_flashing_usd_each,
        'opening-flashing',
      ),
    },
  };
}

/** Every item whose price can be given, as a price book names it. */
export function priceItems(catalogue: Catalogue): string[] {
  const named = (kind: string, entries: readonly { readonly id: string }[]) =>
    entries.map(({ id }) => `${kind}/${id}`);
  return [
    ...named('cladding', catalogue.claddings),
    ...catalogue.insulations.flatMap(({ id }) =>
      ['first-inch', 'each-more-inch', 'each-more-layer'].map((part) => `insulation/${id}/${part}`),
    ),
    ...named('barrier', catalogue.barriers),
    ...named('retarder', catalogue.retarders),
    ...named('buck', catalogue.bucks),
    'fastener/up-to-4-in',
    'fastener/up-to-6-in',
    'fastener/longer',
    'opening-flashing',
  ];
}

function carbonItems(catalogue: Catalogue): string[] {
  return [
    ...catalogue.claddings.map(({ id }) => `cladding/${id}`),
    ...catalogue.insulations.map(({ id }) => `insulation/${id}`),
  ];
}

function unknownItems(
  entries: readonly { readonly item: string }[],
  known: readonly string[],
  field: string,
): Issue[] {
  const seen = new Set<string>();
  return entries.flatMap(({ item }, i): Issue[] => {
    const isDoubled = seen.has(item);
    seen.add(item);
    if (known.includes(item) && !isDoubled) return [];
    return [
      {
        field: `${field}[${i}].item`,
        value: showValue(item),
        accepted: isDoubled ? 'Give each item once.' : `Give one of ${known.join(', ')}.`,
      },
    ];
  });
}

/** Labour at another rate on top, then the region. A price never falls below nothing. */
function mover(book: PriceBook, shipped_usd_per_h: number): (price: Price, hours: number) => Price {
  const labour = shippedLabour();
  const factor = (book.region_factor ?? labour.region_factor) / labour.region_factor;
  const dearer = (book.labour_usd_per_h ?? shipped_usd_per_h) - shipped_usd_per_h;
  const moved = (value: number, hours: number) => Math.max(0, value + hours * dearer) * factor;
  return ({ low, likely, high }, given) => {
    // What costs nothing is not there, and nobody works on it.
    const hours = high > 0 ? given : 0;
    return { low: moved(low, hours), likely: moved(likely, hours), high: moved(high, hours) };
  };
}

/** Hours in one square foot, or in one piece. An item without an entry has those of its kind; without that, none. */
function hoursOf(item: string, kind: 'per_100_ft2' | 'each'): number {
  const { hours } = shippedLabour();
  const entry =
    hours.find(({ items }) => items.includes(item)) ??
    hours.find(({ items }) => items.includes(item.split('/', 1)[0] ?? item));
  const given = entry?.[kind] ?? 0;
  return kind === 'each' ? given : given / 100;
}
