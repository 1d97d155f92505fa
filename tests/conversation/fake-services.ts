import { Refusal } from '../../src/base/refusal.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import type { Draft, DraftStore } from '../../src/conversation/draft.ts';
import type { Services } from '../../src/conversation/session.ts';
import type { PlaceMatch } from '../../src/conversation/state.ts';
import { sampleAdvice } from './sample-advice.ts';

export type FakeServices = Services & { readonly asked: Scenario[]; readonly saved: Scenario[] };

const PLACES: readonly (PlaceMatch & { readonly words: RegExp })[] = [
  { words: /boulder/i, state: 'CO', county: 'Boulder', zone: '5B', match: 'exact' },
  { words: /gallatin/i, state: 'MT', county: 'Gallatin', zone: '6B', match: 'exact' },
  { words: /bozeman/i, state: 'MT', county: 'Gallatin', zone: '6B', match: 'town' },
  { words: /lincoln/i, state: 'ME', county: 'Lincoln', zone: '6A', match: 'exact' },
  { words: /lincoln/i, state: 'OR', county: 'Lincoln', zone: '4C', match: 'exact' },
];

/** The few places there are here, by the words in a text. */
export function placesNamed(text: string): PlaceMatch[] {
  return PLACES.filter(({ words }) => words.test(text)).map(({ state, county, zone, match }) => ({
    state,
    county,
    zone,
    match: match ?? 'weak',
  }));
}

/** Services without the rest of the program: a few places, one answer, records that go nowhere. */
export function fakeServices(change: Partial<Services> = {}): FakeServices {
  const asked: Scenario[] = [];
  const saved: Scenario[] = [];
  return {
    asked,
    saved,
    async findPlaces(text) {
      return placesNamed(text);
    },
    async advise(scenario) {
      asked.push(scenario);
      if ('county' in scenario.place && scenario.place.county === 'Nowhere') {
        throw new Refusal({ field: 'place.county', value: '"Nowhere"', accepted: 'Give a county.' });
      }
      return sampleAdvice(scenario);
    },
    async saveRecord(scenario) {
      saved.push(scenario);
      return { paths: ['/tmp/records/wall.md', '/tmp/records/wall.json'] };
    },
    ...change,
  };
}

export type MemoryStore = DraftStore & { readonly kept: Draft[]; current(): Draft | null };

/** A draft store that remembers every draft it was given. */
export function memoryStore(first: Draft | null = null, setAside: string | null = null): MemoryStore {
  let current = first;
  const kept: Draft[] = [];
  return {
    kept,
    current: () => current,
    async load() {
      return { draft: current, setAside };
    },
    async save(draft) {
      kept.push(draft);
      current = draft;
    },
    async clear() {
      current = null;
    },
  };
}
