import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { pricedCatalogue, priceItems } from '../../src/assembly/price-book.ts';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import {
  mergePriceBooks,
  type PriceBook,
  priceBookSchema,
  priceBookWords,
} from '../../src/brief/price-book.ts';

const SHIPPED = loadCatalogue();
const cladding = (book: PriceBook, id: string) =>
  pricedCatalogue(SHIPPED, book).claddings.find((one) => one.id === id)?.cost.usd_per_ft2;
const messageOf = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  throw new Error('nothing was refused');
};

describe('a price book', () => {
  it('that says nothing changes no price', () => {
    const priced = pricedCatalogue(SHIPPED, {});
    expect(priced.claddings.map((c) => c.cost)).toEqual(SHIPPED.claddings.map((c) => c.cost));
    expect(priced.builds.map((b) => b.insulation.cost)).toEqual(SHIPPED.builds.map((b) => b.insulation.cost));
    expect(priced.prices.fastener_material_usd_each).toEqual(SHIPPED.prices.fastener_material_usd_each);
  });

  // By hand: panels 9 / 12.5 / 17 $/ft², 7 h for 100 ft² at the shipped $60 an hour. At $80: 20 x 0.07 = 1.40 more.
  it('moves the labour in a price by its hours', () => {
    expect(SHIPPED.prices.labour_usd_per_hour.likely).toBe(60);
    const moved = cladding({ labour_usd_per_h: 80 }, 'fibre-cement-panels');
    expect(moved?.low).toBeCloseTo(10.4, 9);
    expect(moved?.likely).toBeCloseTo(13.9, 9);
    expect(moved?.high).toBeCloseTo(18.4, 9);
  });

  it('multiplies by the region after that: 13.90 x 1.1 = 15.29', () => {
    const moved = cladding({ labour_usd_per_h: 80, region_factor: 1.1 }, 'fibre-cement-panels');
    expect(moved?.likely).toBeCloseTo(15.29, 9);
  });

  it('takes an item of its own as it stands, whatever the region', () => {
    const book = {
      region_factor: 2,
      labour_usd_per_h: 200,
      prices: [{ item: 'cladding/wood-siding', low: 8, likely: 9, high: 10 }],
    };
    expect(cladding(book, 'wood-siding')).toEqual({ low: 8, likely: 9, high: 10 });
  });

  // A buck takes 2 h, a flange without one 1 h: at $75 an hour $30 and $15 more. What is free takes nobody's time.
  it('adds labour by the piece, and none to what is not there', () => {
    const priced = pricedCatalogue(SHIPPED, { labour_usd_per_h: 75 });
    const usd = (id: string, from = priced) => from.bucks.find((b) => b.id === id)?.cost_each.usd;
    expect(usd('plywood-box')?.likely).toBeCloseTo((usd('plywood-box', SHIPPED)?.likely ?? 0) + 30, 9);
    expect(usd('no-buck')?.likely).toBeCloseTo((usd('no-buck', SHIPPED)?.likely ?? 0) + 15, 9);
    const free = SHIPPED.retarders.filter((r) => r.cost.usd_per_ft2.high === 0).map(({ id }) => id);
    expect(free.length).toBeGreaterThan(0);
    for (const one of priced.retarders.filter(({ id }) => free.includes(id)))
      expect(one.cost.usd_per_ft2.likely).toBe(0);
  });

  // Whoever drives the fasteners is paid by the minute: the rate as given, times the region.
  it('gives the fasteners the rate itself', () => {
    const rate = (book: PriceBook) => pricedCatalogue(SHIPPED, book).prices.labour_usd_per_hour;
    expect(rate({ labour_usd_per_h: 80 })).toEqual({ low: 80, likely: 80, high: 80 });
    expect(rate({ region_factor: 1.5 }).likely).toBeCloseTo(90, 9);
  });

  it('never makes a price negative, and keeps ranges in order', () => {
    const priced = pricedCatalogue(SHIPPED, { labour_usd_per_h: 5, region_factor: 0.2 });
    const all = [
      ...priced.claddings.map((c) => c.cost.usd_per_ft2),
      ...priced.barriers.map((b) => b.cost.usd_per_ft2),
      ...priced.retarders.map((r) => r.cost.usd_per_ft2),
      ...priced.insulations.flatMap((i) => [
        i.cost.first_inch,
        i.cost.each_more_inch,
        i.cost.each_more_layer,
      ]),
      ...priced.bucks.map((b) => b.cost_each.usd),
    ];
    for (const { low, likely, high } of all) {
      expect(low).toBeGreaterThanOrEqual(0);
      expect(likely).toBeGreaterThanOrEqual(low);
      expect(high).toBeGreaterThanOrEqual(likely);
    }
  });

  it('reaches the boards, and their carbon', () => {
    const priced = pricedCatalogue(SHIPPED, {
      prices: [{ item: 'insulation/eps/first-inch', low: 1, likely: 1, high: 1 }],
      carbon: [{ item: 'insulation/eps', kgco2e: 2.2, source: 'a product declaration' }],
    });
    for (const { insulation } of priced.builds.filter((b) => b.insulation.id === 'eps')) {
      expect(insulation.cost.first_inch.likely).toBe(1);
      expect(insulation.carbon_kgco2e_per_m2_rsi).toMatchObject({
        value: 2.2,
        source: 'a product declaration',
      });
    }
  });

  it('leaves the shipped catalogue alone', () => {
    const before = JSON.stringify(SHIPPED.claddings);
    pricedCatalogue(SHIPPED, { region_factor: 3 });
    expect(JSON.stringify(SHIPPED.claddings)).toBe(before);
  });

  it('can price everything that has a price', () => {
    const prices = priceItems(SHIPPED).map((item) => ({ item, low: 1, likely: 2, high: 3 }));
    const priced = pricedCatalogue(SHIPPED, { prices, region_factor: 5 });
    expect(priced.barriers.every((b) => b.cost.usd_per_ft2.likely === 2)).toBe(true);
    expect(priced.prices.fastener_material_usd_each.longer.likely).toBe(2);
    expect(priced.prices.opening_flashing_usd_each.likely).toBe(2);
  });

  it.each([
    [
      { prices: [{ item: 'cladding/gold', low: 1, likely: 1, high: 1 }] },
      'price_book.prices[0].item: "cladding/gold"',
    ],
    [{ carbon: [{ item: 'buck/no-buck', kgco2e: 1, source: 'somewhere' }] }, 'price_book.carbon[0].item'],
    [
      {
        prices: [
          { item: 'opening-flashing', low: 1, likely: 1, high: 1 },
          { item: 'opening-flashing', low: 2, likely: 2, high: 2 },
        ],
      },
      'price_book.prices[1].item: "opening-flashing" is not accepted. Give each item once',
    ],
  ])('refuses an item that the catalogue lacks, or one given twice: %j', (book, message) => {
    expect(messageOf(() => pricedCatalogue(SHIPPED, book))).toContain(message);
  });

  it.each([
    [{ region_factor: 0.1 }, 'region_factor: 0.1'],
    [{ labour_usd_per_h: '80' }, 'labour_usd_per_h: "80"'],
    [{ year: 1999 }, 'year: 1999'],
    [{ prices: [{ item: 'opening-flashing', low: 2, likely: 1, high: 3 }] }, 'prices[0]'],
    [{ prices: [{ item: 'opening-flashing', low: -1, likely: 1, high: 3 }] }, 'prices[0].low: -1'],
    [{ prices: [{ item: 'opening-flashing', likely: 1 }] }, 'prices[0].low'],
    [{ factor: 2 }, 'factor: 2'],
  ])('refuses %j by its schema', (book, message) => {
    expect(messageOf(() => parseInput(priceBookSchema, book))).toContain(message);
  });

  it('joins with another: the second speaks where both do', () => {
    const one = { region_factor: 1.1, prices: [{ item: 'opening-flashing', low: 1, likely: 1, high: 1 }] };
    const two = { region_factor: 1.3, prices: [{ item: 'opening-flashing', low: 2, likely: 2, high: 2 }] };
    expect(mergePriceBooks(one, two)).toMatchObject({ region_factor: 1.3, prices: two.prices });
    expect(mergePriceBooks(two, { year: 2026 })).toMatchObject({ region_factor: 1.3, year: 2026 });
  });

  it('is told in one clause', () => {
    expect(priceBookWords({ year: 2026, region_factor: 1.1, labour_usd_per_h: 80 })).toBe(
      'prices of 2026, region factor 1.1, labour $80 an hour',
    );
  });
});
