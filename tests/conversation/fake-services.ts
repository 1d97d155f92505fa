import type { Impression } from '../../src/advice/first-impression.ts';
import { Refusal } from '../../src/base/refusal.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { FIELD_IDS } from '../../src/conversation/answers.ts';
import type { Services } from '../../src/conversation/session.ts';
import type { PlaceMatch } from '../../src/conversation/state.ts';
import { whyNotFromAdvice } from '../../src/conversation/why-not.ts';
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

/** An invented impression; fewer walls the more has been said. */
export function sampleImpression(scenario: Scenario): Impression {
  const said = Object.keys(scenario).length;
  return {
    drawn: 4321,
    admitted: 500 - said,
    first: {
      title: 'Three-coat stucco over 3 in. of mineral wool',
      likely_usd_per_ft2: scenario.budget_usd_per_ft2 === 24 ? 22 : 29,
      u_factor: 0.041,
      added_thickness_in: 4.6,
      weight_psf: 12.1,
    },
  };
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
    async firstImpression(scenario) {
      return sampleImpression(scenario);
    },
    // Everything may still decide the first choice, so every question is asked, in the order of the list.
    async fieldsThatMatter() {
      return FIELD_IDS;
    },
    async whyNot(_scenario, words, advice) {
      return whyNotFromAdvice(words, advice);
    },
    async saveRecord(scenario) {
      saved.push(scenario);
      return { paths: ['/tmp/records/wall.md', '/tmp/records/wall.json'] };
    },
    ...change,
  };
}
