import { CLIMATE_ZONES } from '../../base/climate-zones.ts';
import type { Place } from '../../brief/scenario.ts';
import { isStateCode, STATE_NAMES } from './states.ts';

export type PlaceReading = {
  /** The line without what was read as the place. */
  readonly rest: string;
  readonly zone: { readonly place: Place; readonly words: string } | null;
  /** A county or town to look up. */
  readonly lookUp: string | null;
  /** A zone whose letter is missing. */
  readonly halfZone: { readonly words: string; readonly offered: readonly string[] } | null;
};

const ZONE =
  /(?<!\b(?:wind|wall|seismic|fire|lot)\s)\b(?:(?:climate |iecc |doe )*zone|cz)\s*(\d{1,2})\s*-?\s*([abc])?\b(?:\s*\(?(moist|humid|damp|dry|marine)\)?)?/i;
/** A zone's code and nothing else. */
const ZONE_CODE = /^\s*([0-6])\s?([abc])\s*[.!]*$/i;
const BARE_ZONE = /^\s*([0-6])\s?([abc])\s*$|^\s*([78])\s*$/i;
/** A code that begins a line or stands between commas, or before what kind of job it is. */
const ZONE_BEFORE =
  /(?<=^|[,;]\s*)([0-6])\s?([abc])(?=\s*[,;]|\s+(?:new|retro-?fit|existing|old|house|home|wall|climate)\b)/i;
const MOISTURE_LETTER: Readonly<Record<string, string>> = {
  moist: 'A',
  humid: 'A',
  damp: 'A',
  dry: 'B',
  marine: 'C',
};

const stateNames = [...STATE_NAMES].sort((a, b) => b.length - a.length).join('|');
/** "Gallatin County, MT", in any case: the word county makes it sure. */
const COUNTY_AND_STATE = new RegExp(
  `\\b(?:in |near )?((?:[\\p{L}.'-]+\\s){0,3}?[\\p{L}.'-]+\\s+(?:county|parish|borough)\\s*[?,]*\\s*(?:${stateNames}|[a-z]{2}))\\b`,
  'iu',
);
/** "Boulder, CO" or "in Boulder CO": capitals, and a comma or "in", make it sure enough to look up. */
const NAME_AND_STATE = new RegExp(
  `(?:\\b[Ii]n |\\b[Nn]ear |(?<=^|[,;]\\s?))(\\p{Lu}[\\p{L}.'-]*(?:\\s\\p{Lu}[\\p{L}.'-]*){0,3}(?:,\\s?|\\s)([A-Z]{2}|${capitalised(stateNames)}))(?![\\p{L}])`,
  'u',
);

/**
 * "houston tx, brick house": where the place is asked, in any case, at the beginning of what is said or behind a comma.
 * A code that is a word as well counts only at the very beginning.
 */
const LOWER_NAME_AND_STATE = new RegExp(
  `(?:^|[,;.]\\s*)(?:(?:i'?m |we'?re |it'?s )?(?:in |near )?)((?:[\\p{L}'.-]+\\s){0,2}[\\p{L}'.-]+,?\\s+(?:${stateNames}|[a-z]{2}))(?=\\s*(?:[,;.]|$))`,
  'iu',
);
const CODE_AND_WORD = /\s(?:al|as|co|de|hi|id|in|la|ma|me|mo|of|oh|ok|or|pa)$/i;
const NO_NAME = /\b(?:house|home|walls?|studs?|wood|steel|siding|retrofit|new|project|addition)\b/i;
/** Behind a state; the county is what counts. */
const ZIP_BEHIND_STATE = new RegExp(
  `(?<=\\b(?:${stateNames}|[a-z]{2}),?) \\d{5}(?:-\\d{4})?(?![\\d-])`,
  'gi',
);

/** "My house is from 1954 and stands in Duluth": a name after "in", where the place is asked. */
const IN_NAME =
  /\b(?:in|near|outside(?: of)?|around)\s+((?:St\. |Ft\. |Mt\. )?\p{Lu}[\p{L}'-]*(?:\s(?!I\b)\p{Lu}[\p{L}'-]*){0,3})(?![\p{L}])/u;

/** "retrofit in Gallatin county MT": the name begins after the last of these. */
const LEAD_IN = /^.*\b(?:in|near|at|of)\s+(?=\S)/i;

function capitalised(names: string): string {
  return names.replace(/(?<=^|[| ])\p{L}/gu, (letter) => letter.toUpperCase());
}

/**
 * Takes the place out of a line before anything else is read, since its commas are not the user's commas.
 *
 * @param said   straightened, capitals kept
 * @param asked  whether the place is the question: then a zone may stand alone
 */
export function readPlace(said: string, asked: boolean): PlaceReading {
  const line = asked ? said.replace(ZIP_BEHIND_STATE, '') : said;
  const zone =
    ZONE.exec(line) ?? (asked ? (BARE_ZONE.exec(line) ?? ZONE_BEFORE.exec(line)) : ZONE_CODE.exec(line));
  if (zone) return readZone(line, zone);
  const county = COUNTY_AND_STATE.exec(line);
  if (county?.[1] && endsInState(county[1])) {
    const name = county[1].replace(LEAD_IN, '');
    const start = county.index + county[0].length - name.length;
    const lookUp = name.replace(/\s*\?+/g, '');
    return { rest: cutOut(line, start, name.length), zone: null, lookUp, halfZone: null };
  }
  const named = NAME_AND_STATE.exec(line);
  if (named?.[1] && endsInState(named[1])) {
    return { rest: cutOut(line, named.index, named[0].length), zone: null, lookUp: named[1], halfZone: null };
  }
  const lower = asked ? LOWER_NAME_AND_STATE.exec(line) : null;
  if (lower?.[1] && endsInState(lower[1]) && !NO_NAME.test(lower[1])) {
    const isSure = lower.index === 0 || !CODE_AND_WORD.test(lower[1]);
    const rest = cutOut(line, lower.index, lower[0].length);
    if (isSure) return { rest, zone: null, lookUp: lower[1], halfZone: null };
  }
  const inside = asked ? IN_NAME.exec(line) : null;
  if (inside?.[1]) {
    const rest = cutOut(line, inside.index, inside[0].length);
    return { rest, zone: null, lookUp: inside[1], halfZone: null };
  }
  return { rest: line, zone: null, lookUp: null, halfZone: null };
}

/** What of words that hold a place somewhere is its name: what follows the last "in" or "near". */
export function placeWords(words: string): string {
  return words.replace(/^.*\b(?:in|near)\s+(?=\p{L})/iu, '');
}

function readZone(line: string, match: RegExpExecArray): PlaceReading {
  const number = match[1] ?? match[3] ?? '';
  const letter = (match[2] ?? MOISTURE_LETTER[(match[3] ?? '').toLowerCase()] ?? '').toUpperCase();
  const digit = /^\d$/.test(number) ? number : (match[3] ?? '');
  const wanted = `${digit}${digit === '7' || digit === '8' ? '' : letter}`;
  const found = CLIMATE_ZONES.find((zone) => zone === wanted);
  const rest = cutOut(line, match.index, match[0].length);
  const words = match[0].trim();
  if (found) return { rest, zone: { place: { climate_zone: found }, words }, lookUp: null, halfZone: null };
  const offered = CLIMATE_ZONES.filter((zone) => zone.startsWith(digit));
  return { rest, zone: null, lookUp: null, halfZone: { words, offered } };
}

function endsInState(text: string): boolean {
  const last = /([A-Za-z]{2})$/.exec(text)?.[1];
  const lower = text.toLowerCase();
  if (STATE_NAMES.some((name) => lower.endsWith(` ${name}`) || lower.endsWith(`,${name}`))) return true;
  return last !== undefined && isStateCode(last) && /[\s,][A-Za-z]{2}$/.test(text);
}

function cutOut(line: string, start: number, length: number): string {
  return `${line.slice(0, start)}, ${line.slice(start + length)}`.trim();
}
