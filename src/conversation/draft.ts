import type { z } from 'zod';
import type { draftSchema } from './draft-schema.ts';
import type { ProjectEntry } from './projects.ts';

/** An unfinished talk. */
export type Draft = z.output<typeof draftSchema>;

/** Where talks are kept. Implemented outside: this folder touches no file. */
export type DraftStore = {
  /** The last unfinished talk, and the path of one that could not be read and was set aside. */
  load(): Promise<{ readonly draft: Draft | null; readonly setAside: string | null }>;
  /** Writes the draft so that a crash at any moment leaves the old one or the new one. */
  save(draft: Draft): Promise<void>;
  /** Forgets the talk in hand. */
  clear(): Promise<void>;
  /** All kept talks, the last one first. */
  list(): Promise<readonly ProjectEntry[]>;
  /** Takes another kept talk in hand; null when none goes by that name. The one in hand stays kept. */
  open(name: string): Promise<Draft | null>;
  /** Puts the talk in hand away, kept as it is; the next one saved is another. */
  putAway(): void;
};
