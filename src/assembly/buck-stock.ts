import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import { provenanceSchema as provenance } from '../base/provenance.ts';
import stockJson from './catalogue/buck-stock.json' with { type: 'json' };

export const BUCK_STOCKS = ['lumber', 'lumber-flat', 'laminated', 'plywood', 'plywood-double'] as const;

const stockSchema = z.strictObject({
  id: z.enum(BUCK_STOCKS),
  label: z.string().min(3),
  /** Which side of the piece lies across the wall. */
  across: z.enum(['width', 'thickness']),
  /** Its other side, in. */
  other_in: z.number().positive(),
  /** As sold, smallest first, by the side that lies across the wall. */
  sizes: z.array(z.strictObject({ name: z.string().min(3), size_in: z.number().positive() })).min(1),
  source: z.string().min(5),
  provenance,
});
/** What the pieces of a buck are cut from. */
export type BuckStock = z.output<typeof stockSchema>;

const fileSchema = z.strictObject({
  schema: z.literal('cladwright-buck-stock/1'),
  stocks: z.array(stockSchema).min(1),
});

let loaded: readonly BuckStock[] | undefined;

/**
 * The shipped sizes, checked once per process.
 * @throws Refusal naming the key that doesn't fit the schema
 */
export function loadBuckStock(): readonly BuckStock[] {
  loaded ??= parseInput(fileSchema, stockJson, 'buck-stock.json').stocks;
  return loaded;
}
