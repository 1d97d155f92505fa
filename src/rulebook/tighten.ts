import { loadCatalogue } from '../assembly/catalogue.ts';
import { pricedCatalogue } from '../assembly/price-book.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { mergePriceBooks, type PriceBook } from '../brief/price-book.ts';
import {
  type HouseName,
  type HouseStandard,
  houseWords,
  type MovedLimit,
  type RaisedVerdict,
} from './house-standard.ts';
import { limitText } from './limits.ts';
import { type Dictionaries, type LoadedPack, type PackRule, withLimits } from './load-pack.ts';
import type { LoadedRule } from './loaded-rule.ts';
import { didYouMean } from './nearest-name.ts';
import type { HousePack, Tightening } from './rule-schema.ts';

export type Applied = { readonly house: HouseStandard; readonly rules: readonly LoadedRule[] };

/**
 * Applies what house packs say beside their own rules. A limit moves to the stricter side only, a caution becomes a ban and
 * nothing milder; of two firms that move the same limit the stricter one holds.
 *
 * @param packs         every pack, shipped and house
 * @param dictionaries  facts and limits as shipped
 * @throws Refusal that names rule or limit, the shipped value and the one attempted, for anything looser
 */
export function applyHouse(packs: readonly LoadedPack[], dictionaries: Dictionaries): Applied {
  const rules = packs.flatMap((pack) => pack.rules);
  const issues: Issue[] = [];
  const moved = new Map<string, MovedLimit>();
  const raised = new Map<string, RaisedVerdict>();
  let crew: HouseStandard['crew_skill'] = null;
  const books: { readonly book: PriceBook; readonly name: HouseName }[] = [];
  for (const { info, house } of packs) {
    if (!house) continue;
    const name: HouseName = { name: info.name, version: info.version, firm: house.firm ?? null };
    house.tighten.forEach((one, i) => {
      const field = `${info.file}: tighten[${i}]`;
      if ('limit' in one) moveLimit(one, { field, name, rules, dictionaries, issues, moved });
      else raiseVerdict(one, { field, name, rules, issues, raised });
    });
    crew = crewOf(house, info.file, name, crew, issues);
    if (house.prices) {
      checkPriceItems(house.prices, info.file, issues);
      books.push({ book: house.prices, name });
    }
  }
  if (issues.length > 0) throw new Refusal(issues);
  const inForce = dictionaries.limits.with(new Map([...moved].map(([id, { to }]) => [id, to])));
  return {
    house: {
      packs: packs.flatMap(({ info, house }) =>
        house ? [{ name: info.name, version: info.version, firm: house.firm ?? null }] : [],
      ),
      limits: [...moved.values()],
      raised: [...raised.values()],
      crew_skill: crew,
      prices: pricesOf(books),
    },
    rules: rules.map((one) => inForceRule(one, moved, raised, { ...dictionaries, limits: inForce })),
  };
}

function checkPriceItems(book: PriceBook, file: string, issues: Issue[]): void {
  try {
    pricedCatalogue(loadCatalogue(), book, `${file}: prices`);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    issues.push(...error.issues);
  }
}

/** The books of several packs as one: what a later pack says holds. */
function pricesOf(
  books: readonly { readonly book: PriceBook; readonly name: HouseName }[],
): HouseStandard['prices'] {
  const [first, ...more] = books;
  if (!first) return null;
  return {
    book: more.reduce((sofar, { book }) => mergePriceBooks(sofar, book), first.book),
    packs: books.map(({ name }) => name),
  };
}

function inForceRule(
  one: PackRule,
  moved: ReadonlyMap<string, MovedLimit>,
  raised: ReadonlyMap<string, RaisedVerdict>,
  dictionaries: Dictionaries,
): LoadedRule {
  const { loaded } = one;
  const own = [...new Set(loaded.limits.map(({ limit }) => limit))].flatMap((id) => moved.get(id) ?? []);
  const ban = raised.get(loaded.rule.id) ?? null;
  if (own.length === 0 && !ban) return loaded;
  const written = own.length > 0 ? withLimits(one, dictionaries) : loaded.rule;
  const rule = ban ? { ...written, verdict: 'forbid' as const } : written;
  return { ...loaded, rule, tightened: { before: loaded.rule, limits: own, raised: ban } };
}

type Moving = {
  readonly field: string;
  readonly name: HouseName;
  readonly rules: readonly PackRule[];
  readonly dictionaries: Dictionaries;
  readonly issues: Issue[];
  readonly moved: Map<string, MovedLimit>;
};

function moveLimit(
  { limit: id, to, reason }: Extract<Tightening, { limit: string }>,
  { field, name, rules, dictionaries, issues, moved }: Moving,
): void {
  const limit = dictionaries.limits.find(id);
  if (!limit) {
    issues.push({
      field: `${field}.limit`,
      value: showValue(id),
      accepted: dictionaries.limits.unknownLimit(id),
    });
    return;
  }
  const isStricter = limit.stricter === 'lower' ? to <= limit.value : to >= limit.value;
  const shipped = limitText(limit, limit.value);
  if (!isStricter) {
    const readers = rules.filter(({ loaded }) => loaded.limits.some((use) => use.limit === id));
    const names = readers.map(({ loaded }) => loaded.rule.id).join(', ');
    issues.push({
      field: `${field}.to`,
      value: `${showValue(to)} for the limit ${showValue(id)}`,
      accepted: `The shipped limit on ${limit.meaning} is ${shipped} (read by ${names}), and a house rule may be stricter, never looser: give ${shipped} or ${limit.stricter === 'lower' ? 'less' : 'more'}.`,
    });
    return;
  }
  const before = moved.get(id);
  if (before && (limit.stricter === 'lower' ? before.to <= to : before.to >= to)) return;
  moved.set(id, {
    limit: id,
    meaning: limit.meaning,
    from: limit.value,
    to,
    from_text: shipped,
    to_text: limitText(limit, to),
    pack: name,
    reason,
  });
}

type Raising = {
  readonly field: string;
  readonly name: HouseName;
  readonly rules: readonly PackRule[];
  readonly issues: Issue[];
  readonly raised: Map<string, RaisedVerdict>;
};

function raiseVerdict(
  { rule: id, reason }: Extract<Tightening, { rule: string }>,
  { field, name, rules, issues, raised }: Raising,
): void {
  const found = rules.find(({ loaded }) => loaded.rule.id === id)?.loaded;
  const refuse = (accepted: string) =>
    issues.push({ field: `${field}.rule`, value: showValue(id), accepted });
  if (!found) {
    const near = didYouMean(
      id,
      rules.map(({ loaded }) => loaded.rule.id),
    );
    refuse(`Name a rule in force; "rules list" shows them all.${near}`);
  } else if (found.rule.verdict === 'prefer') {
    refuse(
      'This rule prefers, so that its conditions are what is good: they can’t become a ban. Add a rule of your own.',
    );
  } else if (found.rule.verdict !== 'forbid' && !raised.has(id)) {
    // Of two firms the first keeps its reason: a ban can't get stricter.
    raised.set(id, { rule: id, from: found.rule.verdict, pack: name, reason });
  }
}

function crewOf(
  { defaults }: HousePack,
  file: string,
  name: HouseName,
  before: HouseStandard['crew_skill'],
  issues: Issue[],
): HouseStandard['crew_skill'] {
  const value = defaults?.crew_skill;
  if (value === undefined) return before;
  if (before && before.value !== value) {
    issues.push({
      field: `${file}: defaults.crew_skill`,
      value: showValue(value),
      accepted: `${houseWords(before.pack)} has ${showValue(before.value)}; two packs in force must agree on the crew.`,
    });
  }
  return { value, pack: name };
}
