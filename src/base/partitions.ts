/** Items sorted into classes: two items of one class can't be told apart by what made the partition. */
export type Partition = {
  /** How many classes there are. */
  readonly count: number;
  /** Class of every item; classes are numbered in the order of their first items. */
  readonly at: Uint32Array;
  /** The first item of every class: it stands for all of them. */
  readonly first: Uint32Array;
};

/** The common refinement of some partitions, with the class of each that every joint class lies in. */
export type Joint = Partition & {
  /** By the place in the list asked for, then by joint class. */
  readonly classOf: readonly Uint32Array[];
};

/** All items in one class. */
export function onePartition(items: number): Partition {
  const count = Math.min(items, 1);
  return { count, at: new Uint32Array(items), first: new Uint32Array(count) };
}

/** Every item in a class of its own. */
export function finestPartition(items: number): Partition {
  const at = new Uint32Array(items);
  for (let i = 0; i < items; i++) at[i] = i;
  return { count: items, at, first: at };
}

/** Items with the same key, by identity, in one class. */
export function partitionBy<T>(items: readonly T[], keyOf: (item: T) => unknown): Partition {
  const at = new Uint32Array(items.length);
  const first: number[] = [];
  const known = new Map<unknown, number>();
  for (let i = 0; i < items.length; i++) {
    const key = keyOf(items[i] as T);
    let found = known.get(key);
    if (found === undefined) {
      found = first.length;
      known.set(key, found);
      first.push(i);
    }
    at[i] = found;
  }
  return { count: first.length, at, first: Uint32Array.from(first) };
}

/** Up to this many pairs of classes a plain array is quicker than a map. */
const DENSE_PAIRS = 4_000_000;

/** The common refinement of two partitions of the same items. */
export function refine(a: Partition, b: Partition): Partition {
  if (a === b || b.count <= 1 || a.count === a.at.length) return a;
  if (a.count <= 1 || b.count === b.at.length) return b;
  const pairs = a.count * b.count;
  return pairs <= DENSE_PAIRS ? refineDensely(a, b, new Uint32Array(pairs)) : refineByMap(a, b);
}

/** @param numbers  zeros: takes the number of each pair of classes, from 1 */
function refineDensely(a: Partition, b: Partition, numbers: Uint32Array): Partition {
  const { length } = a.at;
  const at = new Uint32Array(length);
  const first = new Uint32Array(length);
  let count = 0;
  for (let i = 0; i < length; i++) {
    const pair = (a.at[i] ?? 0) * b.count + (b.at[i] ?? 0);
    let found = numbers[pair] ?? 0;
    if (found === 0) {
      first[count] = i;
      count += 1;
      found = count;
      numbers[pair] = found;
    }
    at[i] = found - 1;
  }
  return { count, at, first: first.slice(0, count) };
}

function refineByMap(a: Partition, b: Partition): Partition {
  const pairs = Array.from(a.at, (classA, i) => classA * b.count + (b.at[i] ?? 0));
  return partitionBy(pairs, (pair) => pair);
}

function picked(from: Uint32Array, places: Uint32Array): Uint32Array {
  // A loop: `from` with a callback takes twenty times as long.
  const values = new Uint32Array(places.length);
  for (let i = 0; i < values.length; i++) values[i] = from[places[i] ?? 0] ?? 0;
  return values;
}

/** Several partitions of the same items; their joint refinements are worked out once. */
export class Partitions {
  readonly items: number;
  readonly parts: readonly Partition[];
  readonly #joints = new Map<string, Joint>();

  constructor(items: number, parts: readonly Partition[]) {
    this.items = items;
    this.parts = parts;
  }

  /** @param places  of the partitions wanted, ascending; the same list gives the same object */
  joint(places: readonly number[]): Joint {
    const key = places.join(' ');
    const found = this.#joints.get(key);
    if (found) return found;
    const wanted = places.map((place) => this.#part(place));
    const all = wanted.reduce<Partition>((sofar, part) => refine(sofar, part), onePartition(this.items));
    const classOf = wanted.map((part) => picked(part.at, all.first));
    const joint = { ...all, classOf };
    this.#joints.set(key, joint);
    return joint;
  }

  #part(place: number): Partition {
    const part = this.parts[place];
    if (!part) throw new Error(`there is no partition ${place}`);
    return part;
  }
}
