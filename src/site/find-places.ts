import { distance } from 'fastest-levenshtein';
import { loadTowns, type Town } from './city-data.ts';
import { type County, type CountyData, countiesOf, countyTitle, loadCounties } from './county-data.ts';
import { countiesNamed, kindRank, nearNames, shortTitle, townNamed } from './county-lookup.ts';
import { nameKey, plainWords, readCountyName } from './place-names.ts';

export type FoundPlace = {
  readonly state: string;
  /** As a scenario's `place.county` takes it. */
  readonly county: string;
  /** The same as it is called: "St. Louis County", "Orleans Parish". */
  readonly title: string;
  /** Zone of the 2021 county table. */
  readonly zone: string;
  /** How it was found: the name itself, a town in it, a name spelt nearly so, or merely the nearest in the state. */
  readonly match: 'exact' | 'town' | 'close' | 'weak';
  /** The town that it was found by; left out where it was found by its own name. */
  readonly town?: string;
};

const MOST_SHOWN = 6;
/** Share of letters to change up to which a name of the same state is still worth showing. */
const WEAK_SHARE = 0.8;

/**
 * Counties that free text may mean ("boulder co", "St. Louis county MO"), best first, at most six. Ask when there
 * is more than one, and always when the first is not `exact`; empty when nothing comes near.
 */
export async function findPlaces(text: string): Promise<FoundPlace[]> {
  const data = await loadCounties();
  const towns = await loadTowns();
  const readings = readPlace(data, text);
  // A reading that names a state and hits is meant; "jefferson co" is not every Jefferson Co.
  const inState = readings.filter(({ state }) => state !== null);
  const attempts = [
    () => inState.flatMap((reading) => exactMatches(data, towns, reading)),
    () => readings.flatMap((reading) => exactMatches(data, towns, reading)),
    () => readings.flatMap((reading) => closeMatches(data, towns, reading)),
    () => inState.flatMap((reading) => weakMatches(data, reading)),
  ];
  for (const attempt of attempts) {
    const found = unique(attempt());
    if (found.length > 0) return found.slice(0, MOST_SHOWN);
  }
  return [];
}

type PlaceReading = {
  readonly name: string;
  readonly state: string | null;
  /** The state's name is spelt nearly so. */
  readonly isStateGuessed?: boolean;
};

const LEAD_IN =
  /^(?:(?:im|i am|i|were|we are|we|its|it is|the|my|our|site|house|project|place|is|at|near|around|outside|live|lives|building) )+(?:in )?|^in /;
const COUNTRY = / (?:usa|us|u s a|united states|america)$/;

/** Readings of the text, the ones with a state first: "boulder co" is Boulder in Colorado before it is Boulder Co. */
function readPlace(data: CountyData, text: string): PlaceReading[] {
  const said = plainWords(text.slice(0, 200)).join(' ');
  const words = said.replace(LEAD_IN, '').replace(COUNTRY, '').split(' ');
  const readings: PlaceReading[] = [];
  for (const { code, spellings } of statesSpelt(data)) {
    for (const { spelling, parts } of spellings) {
      const isLast = words.length > parts.length && words.slice(-parts.length).join(' ') === spelling;
      const isFirst = words.length > parts.length && words.slice(0, parts.length).join(' ') === spelling;
      if (isLast) readings.push({ name: words.slice(0, -parts.length).join(' '), state: code });
      // A leading code is more often a word ("la porte", "de kalb"); a leading full name is a state.
      else if (isFirst && parts.join('').length > 2) {
        readings.push({ name: words.slice(parts.length).join(' '), state: code });
      }
    }
  }
  if (readings.length === 0) readings.push(...misspeltStates(data, words));
  return [...readings, { name: words.join(' '), state: null }].filter(({ name }) => name !== '');
}

type SpeltState = {
  readonly code: string;
  /** The whole name. */
  readonly name: string;
  /** Code, short names and the whole name, with their words. */
  readonly spellings: readonly { readonly spelling: string; readonly parts: readonly string[] }[];
};

const spelt = new WeakMap<CountyData, readonly SpeltState[]>();

function statesSpelt(data: CountyData): readonly SpeltState[] {
  const known = spelt.get(data);
  if (known) return known;
  const states = Object.entries(data.states).map(([code, state]) => {
    const name = plainWords(state.name).join(' ');
    const short = SHORT_NAMES.filter((s) => s.code === code).map((s) => s.name);
    const spellings = [code.toLowerCase(), ...short, name];
    return { code, name, spellings: spellings.map((spelling) => ({ spelling, parts: spelling.split(' ') })) };
  });
  spelt.set(data, states);
  return states;
}

/** Letters that may be wrong in the name of a state, by its length. */
const SLIPS = { few: 1, more: 2, longFrom: 8 } as const;

/** "duluth minesota": a last word or two that come near the name of one state. */
function misspeltStates(data: CountyData, words: readonly string[]): PlaceReading[] {
  return statesSpelt(data).flatMap(({ code: state, name: spelling }) => {
    const count = spelling.split(' ').length;
    const said = words.slice(-count).join(' ');
    const allowed = spelling.length >= SLIPS.longFrom ? SLIPS.more : SLIPS.few;
    const isNear = said.length > 4 && said[0] === spelling[0] && distance(said, spelling) <= allowed;
    return words.length > count && isNear
      ? [{ name: words.slice(0, -count).join(' '), state, isStateGuessed: true }]
      : [];
  });
}

const SHORT_NAMES = [
  { code: 'CA', name: 'calif' },
  { code: 'CO', name: 'colo' },
  { code: 'FL', name: 'fla' },
  { code: 'MA', name: 'mass' },
  { code: 'MI', name: 'mich' },
  { code: 'MN', name: 'minn' },
  { code: 'MT', name: 'mont' },
  { code: 'OR', name: 'ore' },
  { code: 'PA', name: 'penn' },
  { code: 'TN', name: 'tenn' },
  { code: 'TX', name: 'tex' },
  { code: 'WA', name: 'wash' },
  { code: 'WI', name: 'wis' },
  { code: 'DC', name: 'd c' },
] as const;

function exactMatches(data: CountyData, towns: readonly Town[], reading: PlaceReading): FoundPlace[] {
  const said = readCountyName(reading.name);
  const counties = statesOf(data, reading.state)
    .flatMap((state) => {
      const ofState = countiesOf(data, state);
      for (const one of said) {
        const hits = countiesNamed(data, state, ofState, one);
        if (hits.length > 0)
          return hits.map((county) => ({ county, ofState, rank: kindRank(county, one.kind) }));
      }
      return [];
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ county, ofState }) => place(county, ofState, 'exact'));
  const inTowns = towns
    .filter((town) => reading.state === null || town.state === reading.state)
    .filter(townNamed(reading.name))
    .flatMap((town) => {
      const ofState = countiesOf(data, town.state);
      const county = ofState.find(({ name, kind }) => name === town.county && kind !== 'city');
      return county ? [{ ...place(county, ofState, 'town'), town: town.town }] : [];
    });
  const found = [...counties, ...inTowns];
  return reading.isStateGuessed ? found.map(inGuessedState) : found;
}

/** A place in a state that was only guessed is put to the user. */
function inGuessedState(found: FoundPlace): FoundPlace {
  return found.match === 'exact' ? { ...found, match: 'close' } : found;
}

function closeMatches(data: CountyData, towns: readonly Town[], reading: PlaceReading): FoundPlace[] {
  const said = readCountyName(reading.name);
  const isMeant = isSameStart(reading);
  const near = statesOf(data, reading.state)
    .flatMap((state) => {
      const ofState = countiesOf(data, state);
      return nearNames(ofState.filter(isMeant), said).map((n) => ({ ...n, ofState }));
    })
    .sort((a, b) => a.share - b.share);
  const inState = near.map(({ county, ofState }) => place(county, ofState, 'close'));
  // The right name in the wrong state is a likelier slip than two wrong letters.
  const elsewhere =
    reading.state === null
      ? []
      : exactMatches(data, towns, { name: reading.name, state: null }).map((found) => ({
          ...found,
          match: 'close' as const,
        }));
  return [...elsewhere, ...inState];
}

/** Who names no state may mean a place that is in no table; a slip of the keyboard seldom hits the first letter. */
function isSameStart({ name, state }: PlaceReading): (county: County) => boolean {
  if (state !== null) return () => true;
  const [first = ''] = nameKey(name);
  return ({ key }) => key.startsWith(first);
}

function weakMatches(data: CountyData, reading: PlaceReading): FoundPlace[] {
  const ofState = statesOf(data, reading.state).flatMap((state) => countiesOf(data, state));
  return nearNames(ofState, readCountyName(reading.name), WEAK_SHARE).map(({ county }) =>
    place(county, ofState, 'weak'),
  );
}

function statesOf(data: CountyData, state: string | null): string[] {
  return state === null ? Object.keys(data.states) : [state];
}

function place(county: County, ofState: readonly County[], match: FoundPlace['match']): FoundPlace {
  const { state, zone_2021: zone } = county;
  return { state, county: shortTitle(county, ofState), title: countyTitle(county), zone, match };
}

function unique(places: readonly FoundPlace[]): FoundPlace[] {
  const seen = new Set<string>();
  return places.filter(({ state, county }) => {
    const key = `${state} ${county}`;
    return !seen.has(key) && seen.add(key);
  });
}
