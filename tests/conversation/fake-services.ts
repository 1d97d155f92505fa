import type { Impression } from '../../src/advice/first-impression.ts';
import type { WhyNot } from '../../src/advice/why-not-schema.ts';
import { Refusal } from '../../src/base/refusal.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { FIELD_IDS } from '../../src/conversation/answers.ts';
import type { Services } from '../../src/conversation/session.ts';
import type { PlaceMatch } from '../../src/conversation/state.ts';
import { sampleAdvice } from './sample-advice.ts';

export type FakeServices = Services & { readonly asked: Scenario[]; readonly saved: Scenario[] };

const PLACES: readonly (PlaceMatch & { readonly words: RegExp })[] = [
  { words: /boulder/i, state: 'CO', county: 'Boulder', title: 'Boulder County', zone: '5B', match: 'exact' },
  {
    words: /gallatin/i,
    state: 'MT',
    county: 'Gallatin',
    title: 'Gallatin County',
    zone: '6B',
    match: 'exact',
  },
  { words: /bozeman/i, state: 'MT', county: 'Gallatin', title: 'Gallatin County', zone: '6B', match: 'town' },
  { words: /lincoln/i, state: 'ME', county: 'Lincoln', title: 'Lincoln County', zone: '6A', match: 'exact' },
  { words: /lincoln/i, state: 'OR', county: 'Lincoln', title: 'Lincoln County', zone: '4C', match: 'exact' },
];

/** The few places there are here, by the words in a text. */
export function placesNamed(text: string): PlaceMatch[] {
  return PLACES.filter(({ words }) => words.test(text)).map(({ state, county, title, zone, match }) => ({
    state,
    county,
    title,
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

/**
 * An invented verdict: veneer is excluded, wood fibre or the second wall passes without being first.
 *
 * @throws Refusal for anything else
 */
export function sampleWhyNot(asked: string): WhyNot {
  const head = {
    schema: 'cladwright-why-not/1' as const,
    tool_version: '0.0.0-test',
    name: 'Unnamed wall',
    asked,
    understood: asked,
    notes: [],
    others_excluded: [],
    would_win: [],
    smallest_changes: [],
  };
  if (/veneer/.test(asked)) {
    return {
      ...head,
      verdict: 'excluded',
      considered: { candidates: 12, admitted: 0 },
      wall: { id: 'veneer', title: 'Adhered veneer over 6 in. of XPS', score: 0.4 },
      because: [
        {
          rule: 'structure.too-heavy',
          citation: 'an invented table, row 3',
          text: 'Twice the load its screws can carry.',
        },
      ],
      beaten_by: null,
      smallest_changes: [
        {
          changes: [{ field: 'wall', from: '6 in.', to: '3 in.' }],
          sentence: 'It passes with 3 in. of insulation.',
          then: { id: 'veneer-3', title: 'Adhered veneer over 3 in. of XPS', score: 0.55 },
        },
      ],
      tried: '4 changes were judged.',
    };
  }
  if (/wood fibre|^wall-2$/.test(asked)) {
    return {
      ...head,
      verdict: 'admitted',
      considered: { candidates: 12, admitted: 5 },
      wall: { id: 'wall-2', title: 'Stucco-look panels over 2 in. of wood fibre', score: 0.7 },
      because: [],
      beaten_by: {
        id: 'wall-1',
        title: 'Three-coat stucco over 3 in. of mineral wool',
        score: 0.8,
        behind: 0.1,
        in_everything: false,
        parts: [
          { criterion: 'cost', here: 0.2, there: 0.9, adds: 0.12 },
          { criterion: 'carbon', here: 0.9, there: 0.7, adds: -0.02 },
        ],
      },
      would_win: ['A wall of this kind would be first once low carbon counts more than 3 times.'],
      tried: 'It breaks no rule.',
    };
  }
  throw new Refusal({ field: 'why-not', value: `"${asked}"`, accepted: 'Nothing here is called that.' });
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
    async whyNot(_scenario, words) {
      return sampleWhyNot(words);
    },
    async saveRecord(scenario) {
      saved.push(scenario);
      return { paths: ['/tmp/records/wall.md', '/tmp/records/wall.json'] };
    },
    ...change,
  };
}
