import type { Draft, DraftStore } from '../../src/conversation/draft.ts';

export type MemoryStore = DraftStore & { readonly kept: Draft[]; current(): Draft | null };

/** A store of talks that remembers every draft it was given; talks with a name are kept beside the one in hand. */
export function memoryStore(first: Draft | null = null, setAside: string | null = null): MemoryStore {
  let current = first;
  const kept: Draft[] = [];
  const named = new Map<string, Draft>();
  return {
    kept,
    current: () => current,
    async load() {
      return { draft: current, setAside };
    },
    async save(draft) {
      kept.push(draft);
      current = draft;
      if (draft.answers.name !== undefined) named.set(draft.answers.name, draft);
    },
    async clear() {
      if (current?.answers.name !== undefined) named.delete(current.answers.name);
      current = null;
    },
    async list() {
      return [...named].map(([name, { saved_at, answers, finished }]) => ({
        name,
        saved_at,
        answered: Object.keys(answers).length,
        finished: finished ?? false,
      }));
    },
    async open(name) {
      const draft = named.get(name) ?? null;
      if (draft) current = draft;
      return draft;
    },
    putAway() {
      current = null;
    },
  };
}
