import type { DecisionRecord, RecordLink } from './record-schema.ts';

/** What of a record tells how it hangs together with others. */
export type RevisionFacts = Pick<
  DecisionRecord,
  'digest' | 'created' | 'revision' | 'status' | 'continues' | 'supersedes' | 'superseded_by'
>;

/** Where a decision has got to. */
export type LastRevision<T> = {
  /** The last revision of the decision. */
  readonly last: T;
  /** What took its place: a record among those known, or its name only where it isn't; null while the decision stands. */
  readonly superseder: { readonly known: T } | { readonly link: RecordLink | null } | null;
};

/**
 * Records, and which of them are revisions of one decision. Digests alone tell: files get renamed and copied.
 *
 * Earlier versions let one revision be gone on from twice. Of such branches the one written last counts, so that one
 * decision never stands twice.
 */
export class Revisions<T extends RevisionFacts> {
  readonly #byDigest: ReadonlyMap<string, T>;
  readonly #families = new Map<string, T[]>();
  /** By the digest of the record whose place is taken. */
  readonly #superseders = new Map<string, T>();

  constructor(records: readonly T[]) {
    this.#byDigest = new Map(records.map((record) => [record.digest, record]));
    for (const record of records) {
      const root = this.#rootOf(record);
      const family = this.#families.get(root);
      if (family) family.push(record);
      else this.#families.set(root, [record]);
      if (record.supersedes) this.#superseders.set(record.supersedes.digest, record);
    }
  }

  /** @param record  one of those known */
  lastOf(record: T): LastRevision<T> {
    const last = this.#lastIn(this.#families.get(this.#rootOf(record)) ?? [record]);
    const link = last.superseded_by ?? null;
    const known = (link && this.#byDigest.get(link.digest)) ?? this.#superseders.get(last.digest);
    if (last.status !== 'superseded' && !known) return { last, superseder: null };
    return { last, superseder: known ? { known } : { link } };
  }

  /** The record that stands today for this one, through all that took its place; a name only where it isn't known. */
  standingFor(record: T): { readonly known: T } | { readonly link: RecordLink | null } {
    const seen = new Set<string>();
    let at = record;
    for (;;) {
      const { last, superseder } = this.lastOf(at);
      if (superseder === null) return { known: last };
      // Only a digest written by hand can lead in a circle.
      if (!('known' in superseder) || seen.has(last.digest)) return superseder;
      seen.add(last.digest);
      at = superseder.known;
    }
  }

  /** The digest of the first revision, also where that one is gone. */
  #rootOf(record: RevisionFacts): string {
    const seen = new Set<string>();
    let at = record;
    while (at.continues && !seen.has(at.digest)) {
      seen.add(at.digest);
      const before = this.#byDigest.get(at.continues.digest);
      if (!before) return at.continues.digest;
      at = before;
    }
    return at.digest;
  }

  #lastIn(family: readonly T[]): T {
    const goneOnFrom = new Set(family.flatMap(({ continues }) => (continues ? [continues.digest] : [])));
    const ends = family.filter(({ digest }) => !goneOnFrom.has(digest));
    const own = new Set(family.map(({ digest }) => digest));
    // One branch superseded by the other: the other goes on.
    const going = ends.filter(({ superseded_by }) => !superseded_by || !own.has(superseded_by.digest));
    return newest([going, ends].find((list) => list.length > 0) ?? family);
  }
}

/** Revisions count up in one folder and under one name only, so the time comes first. */
function newest<T extends RevisionFacts>(records: readonly T[]): T {
  return records.reduce((a, b) => {
    const [then, now] = [Date.parse(a.created), Date.parse(b.created)];
    return now > then || (now === then && b.revision > a.revision) ? b : a;
  });
}
