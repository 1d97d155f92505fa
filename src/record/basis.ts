import { createHash } from 'node:crypto';
import type { Knowledge } from '../advice/judge-walls.ts';
import { canonicalJson } from './canonical-json.ts';
import type { Basis } from './record-schema.ts';

/** Lists of the catalogue whose entries carry an id. */
const LISTS = [
  'insulations',
  'claddings',
  'retarders',
  'barriers',
  'bucks',
  'sheathings',
  'materials',
] as const;

/**
 * Digests of everything that an answer rests on: each rule, table, catalogue entry and price by itself.
 *
 * @param program  digest of the program's source
 */
export function basisOf({ rulebook, tables, catalogue }: Knowledge, program: string): Basis {
  const { fastening, openings, ...single } = tables;
  const { deeper_furring } = catalogue;
  const named = [
    ...LISTS.flatMap((list) => catalogue[list].map((entry) => ({ name: `${list}/${entry.id}`, entry }))),
    { name: `furring/${deeper_furring.id}`, entry: deeper_furring },
  ];
  const entries = named.map(({ name, entry }) => {
    const { cost, cost_each, ...rest } = { cost: null, cost_each: null, ...entry };
    return { name, rest, price: cost ?? cost_each };
  });
  return {
    program,
    rules: digests(rulebook.rules.map(({ rule }) => [rule.id, rule])),
    tables: digests([
      ...Object.entries(single),
      ['limits', rulebook.limits.all],
      ...Object.entries(fastening).map(([key, table]): [string, unknown] => [`fastening/${key}`, table]),
      ...Object.entries(openings).map(([key, table]): [string, unknown] => [`openings/${key}`, table]),
    ]),
    catalogue: digests(entries.map(({ name, rest }) => [name, rest])),
    prices: digests([
      ...entries.flatMap(({ name, price }): [string, unknown][] => (price === null ? [] : [[name, price]])),
      ['fasteners and flashing', catalogue.prices],
    ]),
  };
}

function digests(things: readonly (readonly [name: string, thing: unknown])[]): Record<string, string> {
  return Object.fromEntries(things.map(([name, thing]) => [name, digestOf(thing)]));
}

function digestOf(thing: unknown): string {
  return createHash('sha256').update(canonicalJson(thing), 'utf8').digest('hex');
}
