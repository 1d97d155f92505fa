import { loadCatalogue } from '../assembly/catalogue.ts';
import { CODE_EDITIONS, RETARDERS } from '../brief/scenario.ts';
import type { Report } from './check-conditions.ts';
import { ruleLeaves } from './condition-tree.ts';
import { type HouseName, houseWords } from './house-standard.ts';
import { didYouMean } from './nearest-name.ts';
import type { FactValue, ProductCategory, ProductWish, Rule } from './rule-schema.ts';

type Category = { readonly fact: string; readonly words: string; readonly ids: () => readonly string[] };

const idsOf = (entries: readonly { readonly id: string }[]) => entries.map(({ id }) => id);

/** The fact that tells a product of each kind, and the products there are. */
const CATEGORIES: Readonly<Record<ProductCategory, Category>> = {
  cladding: { fact: 'cladding.id', words: 'cladding', ids: () => idsOf(loadCatalogue().claddings) },
  insulation: { fact: 'insulation.id', words: 'insulation', ids: () => idsOf(loadCatalogue().insulations) },
  barrier: { fact: 'wrb.id', words: 'water-resistive barrier', ids: () => idsOf(loadCatalogue().barriers) },
  retarder: { fact: 'retarder.class', words: 'interior vapour retarder', ids: () => RETARDERS },
  buck: { fact: 'buck.id', words: 'window buck', ids: () => idsOf(loadCatalogue().bucks) },
};

/** Words for how a wish is kept and broken. */
const HOW = {
  only: { title: 'Only the firm’s own', verdict: 'forbid', operator: 'notIn' },
  forbid: { title: 'Not built by the firm:', verdict: 'forbid', operator: 'in' },
  prefer: { title: 'Preferred by the firm:', verdict: 'prefer', operator: 'in' },
} as const;

/**
 * Writes a firm's wishes about products as rules, so that they are judged, traced and explained like any other.
 *
 * @param report  told of each product that the catalogue doesn't have, by its path below the pack
 */
export function productRules(wishes: readonly ProductWish[], house: HouseName, report: Report): Rule[] {
  const used = new Map<string, number>();
  return wishes.map((wish, i) => {
    const how = wish.only ? 'only' : wish.forbid ? 'forbid' : 'prefer';
    const wanted = wish[how] ?? [];
    const { fact, words, ids } = CATEGORIES[wish.category];
    const known = ids();
    wanted.forEach((id, j) => {
      if (known.includes(id)) return;
      report(
        ['products', i, how, j],
        id,
        `Give a ${words} of the catalogue: ${known.join(', ')}.${didYouMean(id, known)}`,
      );
    });
    if (how !== 'prefer' && known.every((id) => wanted.includes(id))) {
      const accepted =
        how === 'only'
          ? 'Leave one out at least: all of them is no choice.'
          : 'Leave one: no wall does without.';
      report(['products', i, how], wanted, accepted);
    }
    const base = `${house.name}.${how}-${wish.category}`;
    const count = (used.get(base) ?? 0) + 1;
    used.set(base, count);
    return productRule(wish, how, {
      id: count === 1 ? base : `${base}-${count}`,
      fact,
      words,
      wanted,
      other: known.find((id) => !wanted.includes(id)) ?? 'another',
      house,
    });
  });
}

type Parts = {
  readonly id: string;
  readonly fact: string;
  readonly words: string;
  readonly wanted: readonly string[];
  readonly other: string;
  readonly house: HouseName;
};

function productRule(wish: ProductWish, how: keyof typeof HOW, parts: Parts): Rule {
  const { id, fact, words, wanted, other, house } = parts;
  const { title, verdict, operator } = HOW[how];
  const isRetarder = wish.category === 'retarder';
  // What stands in an old wall was not the firm's to choose.
  const applies = isRetarder
    ? {
        applies_when: {
          all: [{ fact: 'retarder.is_existing', operator: 'equal' as const, value: false }],
        },
      }
    : {};
  const [first = other] = wanted;
  const inside = how === 'only' ? other : first;
  const outside = how === 'only' ? first : other;
  const facts = (value: string): Record<string, FactValue> => ({
    [fact]: value,
    ...(isRetarder ? { 'retarder.is_existing': false } : {}),
  });
  return {
    id,
    title: `${title} ${words}`,
    editions: [...CODE_EDITIONS],
    citation: { text: `House rule of ${houseWords(house)}`, provenance: 'house' },
    ...applies,
    conditions: { all: [{ fact, operator, value: [...wanted] }] },
    verdict,
    reason: `${wish.reason} The ${words} is {${fact}}.`,
    remedy: how === 'forbid' ? `Take another ${words}.` : `Take one of: ${wanted.join(', ')}.`,
    examples: {
      fires: [{ name: `the ${words} is ${inside}`, facts: facts(inside) }],
      silent: [{ name: `the ${words} is ${outside}`, facts: facts(outside) }],
    },
  };
}

/** Facts that name a product of the catalogue, whose list of values is the catalogue itself. */
const CATALOGUE_FACTS = new Map(
  [CATEGORIES.cladding, CATEGORIES.barrier, CATEGORIES.buck].map((c) => [c.fact, c]),
);

/** Whether every product that a rule's comparisons name is in the catalogue: a name that isn't would never match. */
export function checkProductNames(rule: Rule, report: Report): void {
  for (const { fact, value } of ruleLeaves(rule)) {
    const category = CATALOGUE_FACTS.get(fact);
    if (!category) continue;
    for (const name of Array.isArray(value) ? value : [value]) {
      const known = category.ids();
      if (typeof name !== 'string' || known.includes(name)) continue;
      report(
        ['conditions'],
        name,
        `${fact} is compared with a ${category.words} that the catalogue doesn't have; give one of ${known.join(', ')}.${didYouMean(name, known)}`,
      );
    }
  }
}
