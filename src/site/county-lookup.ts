import { distance } from 'fastest-levenshtein';
import { listed } from '../base/listed.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { loadTowns, type Town, townKey } from './city-data.ts';
import {
  type County,
  type CountyData,
  countiesByKey,
  countiesOf,
  countyTitle,
  loadCounties,
} from './county-data.ts';
import { nameKey, readCountyName, type SaidKind, type SaidName } from './place-names.ts';

export type FoundCounty = {
  readonly county: County;
  /** Said to the user when another place has the same name. */
  readonly notes: readonly string[];
};

/**
 * The county that a state and a county name mean. Forgiving about case, marks, "County", "Parish", "Co." and
 * "Saint"; never guesses a misspelt name.
 *
 * @param state   two letters
 * @param county  as the user wrote it
 * @param path    put before the field names of a refusal: "place." or ""
 * @throws Refusal for a state that is not in the table, or a county that is not in that state, with near names
 */
export async function findCounty(state: string, county: string, path = 'place.'): Promise<FoundCounty> {
  const data = await loadCounties();
  const code = state.toUpperCase();
  if (!Object.hasOwn(data.states, code)) throw await unknownState(data, state, county, path);
  const counties = countiesOf(data, code);
  for (const reading of readCountyName(county)) {
    const hits = countiesNamed(data, code, counties, reading);
    const [first] = hits;
    if (first) return { county: first, notes: homonymNotes(first, hits) };
  }
  throw await unknownCounty(data, code, county, path);
}

/**
 * Counties of a state under one reading of a name. Of two with the same name only the one of the kind that
 * was said; when none was said both, the county first. A town called "X City" is not taken for X County.
 */
export function countiesNamed(
  data: CountyData,
  state: string,
  counties: readonly County[],
  said: SaidName,
): County[] {
  const alias = data.also_known_as.find((other) => other.state === state && nameKey(other.said) === said.key);
  const key = alias ? nameKey(alias.name) : said.key;
  const named = (countiesByKey(counties).get(key) ?? []).filter(
    (county) => said.kind !== 'city' || county.kind === 'city',
  );
  const ofKind = named.filter((county) => kindRank(county, said.kind) === 0);
  if (said.kind !== null && ofKind.length > 0) return ofKind;
  return named.sort((a, b) => kindRank(a, said.kind) - kindRank(b, said.kind));
}

/** 0 for a county of the kind that was said, 1 for another; unsaid and "county" mean anything but an independent city. */
export function kindRank(county: County, said: SaidKind): number {
  const kind = county.kind.toLowerCase();
  if (said === null || said === 'county') return kind === 'city' ? 1 : 0;
  return kind === said || kind.endsWith(` ${said}`) ? 0 : 1;
}

function homonymNotes(taken: County, hits: readonly County[]): string[] {
  return hits
    .filter((other) => other !== taken)
    .map(
      (other) =>
        `${taken.state} has both ${countyTitle(taken)} and ${countyTitle(other)}: ${countyTitle(taken)} was taken. Write "${countyTitle(other)}" for the other one.`,
    );
}

async function unknownState(data: CountyData, state: string, county: string, path: string): Promise<Refusal> {
  const elsewhere = await statesWith(data, county, '');
  const hint = elsewhere.length > 0 ? ` ${shownCounty(county)} is a county of ${list(elsewhere)}.` : '';
  return new Refusal({
    field: `${path}state`,
    value: showValue(state),
    accepted: `Give a two-letter code of a US state, for example "CO".${hint} For a place outside the United States give its climate_zone or its twelve months.`,
  });
}

async function unknownCounty(
  data: CountyData,
  state: string,
  county: string,
  path: string,
): Promise<Refusal> {
  const parts: string[] = [];
  const town = (await loadTowns()).filter((t) => t.state === state).find(townNamed(county));
  if (town) parts.push(`${town.town} is a town; it lies in the county "${town.county}".`);
  const elsewhere = await statesWith(data, county, state);
  if (elsewhere.length > 0)
    parts.push(`${shownCounty(county)} is a county of ${list(elsewhere)}, not of ${state}.`);
  const ofState = countiesOf(data, state);
  const near = nearNames(ofState, readCountyName(county)).slice(0, 5);
  const [best] = near;
  if (best?.isLikely && !town) parts.push(`Did you mean ${best.title}?`);
  if (near.length > 0)
    parts.push(`Counties in ${state} that come close: ${near.map((n) => n.title).join(', ')}.`);
  if (near.length === 0 && ofState.length <= SHORT_STATE) {
    parts.push(`Counties of ${state}: ${ofState.map((c) => shortTitle(c, ofState)).join(', ')}.`);
  }
  if (parts.length === 0) {
    parts.push(`Give the name of a county of ${data.states[state]?.name ?? state}, without abbreviation.`);
  }
  return new Refusal({ field: `${path}county`, value: showValue(county), accepted: parts.join(' ') });
}

/** Tells the towns that a text may name. */
export function townNamed(text: string): (town: Town) => boolean {
  const keys = new Set([townKey(text), ...readCountyName(text).map(({ key }) => key)]);
  return ({ key }) => keys.has(key);
}

async function statesWith(data: CountyData, county: string, except: string): Promise<string[]> {
  const readings = readCountyName(county);
  return Object.keys(data.states)
    .filter((state) => state !== except)
    .filter((state) => {
      const counties = countiesOf(data, state);
      return readings.some((reading) => countiesNamed(data, state, counties, reading).length > 0);
    });
}

/** A state with so few counties is listed whole when nothing comes close. */
const SHORT_STATE = 16;

/** Share of letters to change up to which a name comes close. */
const CLOSE_SHARE = 0.4;

export type NearName = {
  readonly county: County;
  readonly title: string;
  /** Letters to change, over the length: 0 same, 1 nothing in common. */
  readonly share: number;
  /** So close that it is probably a slip of the keyboard, or the beginning of the name. */
  readonly isLikely: boolean;
};

/** Counties whose names come close to one reading of what was written, nearest first; ties by name. */
export function nearNames(
  counties: readonly County[],
  readings: readonly SaidName[],
  maxShare = CLOSE_SHARE,
): NearName[] {
  return counties
    .map((county) => {
      const { key } = county;
      const tries = readings.flatMap((reading) => {
        const isStart = reading.key.length >= 3 && key.startsWith(reading.key);
        const length = Math.max(key.length, reading.key.length);
        // At least the letters that one has more than the other must change.
        if (!isStart && Math.abs(key.length - reading.key.length) / length > maxShare) return [];
        const edits = distance(reading.key, key);
        return [
          { share: isStart ? 0.2 : edits / length, isLikely: isStart || edits <= (key.length >= 6 ? 2 : 1) },
        ];
      });
      const best = tries.sort((a, b) => a.share - b.share)[0] ?? { share: 1, isLikely: false };
      return { county, ...best };
    })
    .filter((near) => near.share <= maxShare)
    .map((near) => ({ ...near, title: shortTitle(near.county, counties) }))
    .sort((a, b) => a.share - b.share || a.title.localeCompare(b.title, 'en'));
}

/** The name as a scenario takes it: with its kind only where two of the state share the name. */
export function shortTitle(county: County, ofState: readonly County[]): string {
  const isShared = ofState.some((other) => other !== county && other.name === county.name);
  return isShared ? countyTitle(county) : county.name;
}

function shownCounty(text: string): string {
  const shown = showValue(text);
  return shown.slice(1, -1);
}

const LONGEST_LIST = 6;

function list(states: readonly string[]): string {
  if (states.length <= LONGEST_LIST) return listed(states);
  return `${states.slice(0, LONGEST_LIST).join(', ')} and ${states.length - LONGEST_LIST} more states`;
}
