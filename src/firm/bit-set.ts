/** A set of small whole numbers, one bit each; all sets of a problem have the same length. */
export type BitSet = Uint32Array;

/** An empty set for numbers from 0 to `size` - 1. */
export function emptySet(size: number): BitSet {
  return new Uint32Array(Math.ceil(size / 32));
}

export function setOf(size: number, members: Iterable<number>): BitSet {
  const set = emptySet(size);
  for (const member of members) add(set, member);
  return set;
}

export function add(set: BitSet, member: number): void {
  set[member >>> 5] = (set[member >>> 5] ?? 0) | (1 << (member & 31));
}

export function has(set: BitSet, member: number): boolean {
  return ((set[member >>> 5] ?? 0) & (1 << (member & 31))) !== 0;
}

/** Members of both, counted. */
export function countBoth(a: BitSet, b: BitSet): number {
  let count = 0;
  for (let i = 0; i < a.length; i++) count += onesIn((a[i] ?? 0) & (b[i] ?? 0));
  return count;
}

export function countOf(set: BitSet): number {
  let count = 0;
  for (const word of set) count += onesIn(word);
  return count;
}

export function without(a: BitSet, b: BitSet): BitSet {
  return a.map((word, i) => word & ~(b[i] ?? 0));
}

export function union(a: BitSet, b: BitSet): BitSet {
  return a.map((word, i) => word | (b[i] ?? 0));
}

export function isEmpty(set: BitSet): boolean {
  return set.every((word) => word === 0);
}

/** Whether every member of `a` is one of `b`. */
export function isWithin(a: BitSet, b: BitSet): boolean {
  for (let i = 0; i < a.length; i++) if (((a[i] ?? 0) & ~(b[i] ?? 0)) !== 0) return false;
  return true;
}

/** Members in rising order. */
export function membersOf(set: BitSet): number[] {
  const members: number[] = [];
  for (const [i, word] of set.entries()) {
    for (let rest = word; rest !== 0; rest &= rest - 1) {
      members.push(32 * i + 31 - Math.clz32(rest & -rest));
    }
  }
  return members;
}

/** Bits set in a 32-bit word, counted side by side in ever wider fields. */
function onesIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
