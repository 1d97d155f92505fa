import type { Catalogue } from '../assembly/catalogue.ts';
import { pricedCatalogue } from '../assembly/price-book.ts';
import type { Brief } from '../brief/brief.ts';
import { mergePriceBooks, type PriceBook } from '../brief/price-book.ts';
import type { Knowledge } from './judge-walls.ts';

/**
 * The knowledge with the prices that hold for one answer: shipped, then the firm's, then the user's own. The same
 * knowledge where nobody brings prices.
 *
 * @param knowledge  with the shipped catalogue
 * @throws Refusal for an item of the user's price book that the catalogue doesn't have
 */
export function withOwnPrices(
  knowledge: Knowledge,
  brief: Brief,
  firm: PriceBook | null = knowledge.rulebook.house.prices?.book ?? null,
): Knowledge {
  const user = brief.price_book;
  // Looked at by itself first, so that a message speaks of the user's list and not of the joined one.
  if (firm && user) pricedCatalogue(knowledge.catalogue, user);
  const book = firm && user ? mergePriceBooks(firm, user) : (user ?? firm);
  return book ? { ...knowledge, catalogue: priced(knowledge.catalogue, book) } : knowledge;
}

/** Price books whose catalogue is kept, so that the next answer with the same prices finds what was worked out with it. */
const MOST_KEPT = 4;
const kept = new WeakMap<Catalogue, Map<string, Catalogue>>();

function priced(catalogue: Catalogue, book: PriceBook): Catalogue {
  const books = kept.get(catalogue) ?? new Map<string, Catalogue>();
  kept.set(catalogue, books);
  const key = JSON.stringify(book);
  const found = books.get(key) ?? pricedCatalogue(catalogue, book);
  // Put last again, so that the one dropped is the one not asked for the longest.
  books.delete(key);
  books.set(key, found);
  const [oldest] = books.keys();
  if (books.size > MOST_KEPT && oldest !== undefined) books.delete(oldest);
  return found;
}
