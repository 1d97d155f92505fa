import type { Catalogue } from '../assembly/catalogue.ts';

/** Something worked out, with everything that it rests on. */
export type Held<T> = { readonly rests_on: readonly unknown[]; readonly work: T };

/** Of one name: enough for an answer with all its other readings, and for a few places, framings and winds of a batch. */
const MOST_HELD = 12;

/**
 * Keeps what was worked out, for the other readings of an answer and for the next answers. What comes from here is the
 * same object as long as it rests on the very same things, so that whoever builds upon it can tell that nothing changed.
 */
export class Shelf {
  /** By name, the one used last at the end. */
  readonly #held = new Map<string, Held<unknown>[]>();

  /**
   * @param name      one name for one kind of work
   * @param rests_on  everything that the work reads: plain values, or objects that stay the same object as long as they
   *   mean the same. Something left out here comes back as a stale figure.
   * @param most      how many of the name are kept
   */
  hold<T>(name: string, rests_on: readonly unknown[], make: () => T, most = MOST_HELD): Held<T> {
    const held = this.#held.get(name) ?? [];
    this.#held.set(name, held);
    // One name stands for one kind of work, so that what is found is a T.
    const place = held.findLastIndex((one) => sameItems(one.rests_on, rests_on));
    const [found] = place < 0 ? [] : (held.splice(place, 1) as Held<T>[]);
    const kept = found ?? { rests_on, work: make() };
    held.push(kept);
    if (held.length > most) held.shift();
    return kept;
  }
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, i) => Object.is(item, b[i]));
}

const shelves = new WeakMap<Catalogue, Shelf>();

/** The shelf of everything that is made with one catalogue. */
export function shelfOf(catalogue: Catalogue): Shelf {
  const shelf = shelves.get(catalogue) ?? new Shelf();
  shelves.set(catalogue, shelf);
  return shelf;
}
