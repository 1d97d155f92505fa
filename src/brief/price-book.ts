import { z } from 'zod';

const usd = (what: string) => {
  const message = `Give ${what} in US dollars from 0 to 10000, for example 12.5.`;
  return z.number(message).min(0, message).max(10_000, message);
};

const ORDER = 'Give low, likely and high in rising order, for example {"low":9,"likely":12,"high":16}.';

const PRICE =
  'Give a price as an object, for example {"item":"cladding/fibre-cement-panels","low":9,"likely":12,"high":16}.';

const priceSchema = z
  .strictObject(
    {
      /** Kind and id of the catalogue, for example `cladding/fibre-cement-panels`. */
      item: z.string('Name an item of the price book, for example "cladding/fibre-cement-panels".').min(3),
      low: usd('the low price'),
      likely: usd('the likely price'),
      high: usd('the high price'),
      source: z.string('Say where the price comes from, for example "quote of May".').max(200).optional(),
    },
    PRICE,
  )
  .refine(({ low, likely, high }) => low <= likely && likely <= high, ORDER);

const CARBON = 'Give kg CO2e from -100 to 1000, for example 3.2.';
const carbonSchema = z.strictObject(
  {
    item: z.string('Name an insulation or cladding, for example "insulation/eps".').min(3),
    /** Cladding: per m². Insulation: per m² and m²K/W. */
    kgco2e: z.number(CARBON).min(-100, CARBON).max(1000, CARBON),
    source: z.string('Say where the figure comes from, for example a product declaration.').min(3).max(200),
  },
  'Give a carbon figure as an object with "item", "kgco2e" and "source".',
);

const FACTOR = 'Give a factor from 0.2 to 5 on the shipped prices, for example 1.15.';
const RATE = 'Give US dollars an hour from 5 to 500, for example 80.';
const YEAR = 'Give the year of the prices, for example 2026.';

/**
 * Prices, labour and carbon that replace those of the shipped book. A price given here is taken as it stands; the region
 * factor and the labour rate move only what is still of the shipped book.
 */
export const priceBookSchema = z.strictObject(
  {
    year: z.number(YEAR).int(YEAR).min(2000, YEAR).max(2100, YEAR).optional(),
    region: z.string('Name the region in a few words.').min(1).max(80).optional(),
    region_factor: z.number(FACTOR).min(0.2, FACTOR).max(5, FACTOR).optional(),
    labour_usd_per_h: z.number(RATE).min(5, RATE).max(500, RATE).optional(),
    prices: z.array(priceSchema, 'Give a list of prices.').max(100, 'Give at most 100 prices.').optional(),
    carbon: z
      .array(carbonSchema, 'Give a list of carbon figures.')
      .max(50, 'Give at most 50 figures.')
      .optional(),
  },
  'Give an object, for example {"region_factor":1.15}.',
);
export type PriceBook = z.output<typeof priceBookSchema>;

/** Of two price books for one answer the second speaks where both do; items of both count. */
export function mergePriceBooks(first: PriceBook, second: PriceBook): PriceBook {
  return {
    ...first,
    ...second,
    prices: byItem([...(first.prices ?? []), ...(second.prices ?? [])]),
    carbon: byItem([...(first.carbon ?? []), ...(second.carbon ?? [])]),
  };
}

function byItem<T extends { readonly item: string }>(entries: readonly T[]): T[] {
  return [...new Map(entries.map((entry) => [entry.item, entry])).values()];
}

/** What a price book says, in one clause. */
export function priceBookWords(book: PriceBook): string {
  const items = (count: number, what: string) =>
    count === 0 ? [] : [`${count} ${count === 1 ? what : `${what}s`} of its own`];
  const parts = [
    ...(book.region === undefined ? [] : [book.region]),
    ...(book.year === undefined ? [] : [`prices of ${book.year}`]),
    ...(book.region_factor === undefined ? [] : [`region factor ${book.region_factor}`]),
    ...(book.labour_usd_per_h === undefined ? [] : [`labour $${book.labour_usd_per_h} an hour`]),
    ...items(book.prices?.length ?? 0, 'price'),
    ...items(book.carbon?.length ?? 0, 'carbon figure'),
  ];
  return parts.join(', ') || 'nothing of its own';
}
