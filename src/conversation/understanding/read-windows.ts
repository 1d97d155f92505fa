import type { ScenarioWindow } from '../../brief/scenario.ts';
import type { WindowReading } from '../windows.ts';
import type { Clause } from './line-text.ts';
import { hundredths, NUMBER, readLengthIn, readNumber, readSigned } from './numbers.ts';
import { isWindowTalk } from './read-framing.ts';
import type { Gathering } from './reading.ts';

const UNIT = String.raw`(?:\s*(inches|inch|in\b\.?|"|feet|foot|ft\b\.?|'|mm|cm|m(?![a-z0-9])))?`;
const SIZE = new RegExp(
  `(?<![\\w.])(${NUMBER})${UNIT}\\s*(?:wide\\s*)?(?:x|by)\\s*(${NUMBER})${UNIT}(?:\\s*(?:high|tall))?`,
);
/** "rough opening 37 x 61 in.", "RO of 37x61" */
const ROUGH_OPENING = new RegExp(
  `\\b(?:in an? |with an? )?(?:rough openings?|ro)(?: (?:of|is|are|measures?|measuring))?:?\\s*(${NUMBER})${UNIT}\\s*(?:x|by)\\s*(${NUMBER})${UNIT}`,
);
/** Trade shorthand: 3-0 x 5-0 is three feet no inches by five feet no inches; so is the callout 3050. */
const FEET_DASH_INCHES = /(?<![\w.-])(\d+)'?-(\d{1,2})"?\s*(?:x|by)\s*(\d+)'?-(\d{1,2})"?(?![\w.-])/;
const FEET_AND_INCHES =
  /(?<![\w.-])(\d+ ?(?:'|ft) ?\d+(?:\.\d+)? ?(?:"|in\b\.?)?)\s*(?:x|by)\s*(\d+ ?(?:'|ft) ?\d+(?:\.\d+)? ?(?:"|in\b\.?)?)/;
const CALLOUT = /(?<![\w.$-])(?<!\b(?:from|in|of|since|about|around) )([1-9])(\d)([1-9])(\d)(?![\w.])/;
const WEIGHT = new RegExp(
  `(?:\\b(?:about|around|roughly|weigh(?:s|ing)?)\\s+)*(-?${NUMBER})\\s*-?(lbs?\\b\\.?|pounds?\\b|#|kg\\b|kilos?\\b|kilograms?\\b)(?:\\s+(?:each|a ?piece|per (?:unit|window)))?`,
);
const WORK_OUT =
  /\bwork (?:it|them|the weights?|that) out(?: for me)?\b|\bweights? (?:is |are )?(?:unknown|not known|to be worked out)\b|\b(?:don'?t|do not) know (?:the |their )?weights?\b|\bno idea (?:of|about) (?:the )?weights?\b/;
const LB_PER_KG = 2.20462;

const GLAZINGS = [
  {
    value: 'triple',
    pattern: /\btriple(?:[- ]?(?:panes?d?|glaz(?:ed|ing)))?\b|\b(?:3|three)[- ]?panes?d?\b/,
  },
  {
    value: 'double',
    pattern:
      /\b(?:double|dual)[- ]?(?:panes?d?|glaz(?:ed|ing))\b|\b(?:2|two)[- ]?panes?d?\b|\bdouble\b(?![- ]?hung)/,
  },
] as const;
const MOUNTINGS = [
  {
    value: 'flangeless',
    pattern:
      /\bflangeless\b|\bun-?flanged\b|\bfinless\b|\b(?:no|not|without)(?: an?| any)? (?:nail(?:ing)?[- ]?)?(?:flange[sd]?|fins?)\b|\bblock[- ]frame[sd]?\b/,
  },
  {
    value: 'flanged',
    pattern: /\b(?:nail(?:ing)?[- ]?)?flange[sd]?\b|\bnail(?:ing)?[- ]?fins?\b|\bfin(?:s|ned)?\b/,
  },
] as const;
const OPERATIONS = [
  { value: 'door', pattern: /\b(?:(?:sliding|patio|glass|entry|french|front|back) )*doors?\b/ },
  { value: 'hung', pattern: /\b(?:single|double)[- ]hungs?\b|\bhungs?\b/ },
  { value: 'casement', pattern: /\bcasements?\b/ },
  { value: 'awning', pattern: /\bawnings?\b/ },
  { value: 'sliding', pattern: /\bslid(?:ers?|ing)\b/ },
  { value: 'fixed', pattern: /\bfixed(?:[- ]lights?)?\b|\bpicture\b/ },
] as const;
const FOR_ALL = /\b(?:all|both|every(?: one)?|each of them)\b(?: of them)?/;
/** A figure of something else is no number of windows. */
const OTHER_UNIT =
  '\\s*(?:inch(?:es)?|in\\.|feet|foot|ft|mm|cm|met(?:er|re)s?|m|mils?|gau?ge|ga|stor(?:e?ys?|ies)|floors?|levels?|mph|years?)(?![\\w])';
const COUNT = new RegExp(`(?<![\\w.$'"/-])(-?${NUMBER})(?![\\w.'"/%-]|${OTHER_UNIT})`);
const WINDOW_WORD = /\b(?:windows?|units?|lights?)\b/;

/** A size and nothing else, in feet or inches; lumber goes without a unit. */
const SIZE_ALONE = new RegExp(
  `^${NUMBER}${UNIT}\\s*(?:x|by)\\s*${NUMBER}\\s*(?:inches|inch|in\\b\\.?|"|feet|foot|ft\\b\\.?|'|mm|cm)(?: each| in size)?$`,
);

/** Two lengths in feet, of whatever: lumber and thicknesses go by the inch. */
const SIZE_IN_FEET = new RegExp(
  `(?<![\\w.])(${NUMBER})(?:\\s*(?:feet|foot|ft\\b\\.?|'))?\\s*(?:x|by)\\s*(${NUMBER})\\s*(?:feet|foot|ft\\b\\.?|')(?!\\s*\\d)`,
);

/** Two lengths that make less than this may be a window's, also where the size of the wall is asked. */
const LEAST_WALL_FT2 = 60;

/**
 * Kinds of window in one clause. Where windows are the question, bare figures are about them.
 *
 * @param follows  whether windows were spoken of just before in the same line, so that a size alone is theirs
 */
export function readWindows(clause: Clause, gathering: Gathering, follows: boolean): WindowReading | null {
  const asked = gathering.isAsked('windows');
  const isTalk =
    isWindowTalk(clause.text) ||
    (follows && SIZE_ALONE.test(clause.text)) ||
    (WEIGHT.test(clause.text) && !/\bpsf\b/.test(clause.text));
  if (!asked && !isTalk) {
    const area = clause.take(SIZE_IN_FEET);
    const [width, height] = area?.groups ?? [];
    const wall_ft2 = (readNumber(width ?? '') ?? 0) * (readNumber(height ?? '') ?? 0);
    const isWallAsked =
      gathering.isOpen('wall_area_ft2') && !gathering.findings.some(({ field }) => field === 'wall_area_ft2');
    if (area && isWallAsked && wall_ft2 >= LEAST_WALL_FT2) {
      gathering.add('wall_area_ft2', Math.round(wall_ft2), area);
    } else if (area)
      gathering.puzzle(area.words, 'A window of that size, or the wall? Say which; the wall as square feet.');
    return null;
  }

  const window: ScenarioWindow = {};
  const opening = takeOpening(clause, gathering);
  if (opening) {
    window.rough_opening_width_in = opening.width_in;
    window.rough_opening_height_in = opening.height_in;
  }
  const size = takeSize(clause, gathering, isTalk);
  if (size) Object.assign(window, size);
  const workOut = clause.take(WORK_OUT);
  if (workOut) window.weight_lb = 'unknown';
  const weight = clause.take(WEIGHT);
  if (weight) {
    const text = weight.groups[0] ?? '';
    const value = readSigned(text) ?? 0;
    window.weight_lb = /^k/.test(weight.groups[1] ?? '') ? hundredths(value * LB_PER_KG) : value;
  }
  const single = clause.take(/\bsingle[- ]?(?:panes?d?|glaz(?:ed|ing))\b/);
  if (single) gathering.puzzle(single.words, 'Glazing is double or triple here.');
  const tilt = clause.take(/\btilt[- ]?(?:and[- ]?)?turns?\b/);
  if (tilt)
    gathering.puzzle(
      tilt.words,
      'Say which of fixed, casement, awning, hung, sliding or door comes nearest.',
    );
  for (const { value, pattern } of GLAZINGS) {
    const taken = clause.take(pattern);
    if (taken?.isNegated) gathering.puzzle(`not ${taken.words}`, 'Double or triple glazing?');
    else if (taken) window.glazing = value;
  }
  for (const { value, pattern } of MOUNTINGS) {
    const taken = clause.take(pattern);
    if (taken && window.mounting === undefined) window.mounting = value;
  }
  for (const { value, pattern } of OPERATIONS) {
    const taken = clause.take(pattern);
    if (taken?.isNegated) gathering.puzzle(`not ${taken.words}`, 'Which kind of window is it?');
    else if (taken && window.operation === undefined) window.operation = value;
  }
  const isForAll = clause.take(FOR_ALL) !== null;
  const hasWord = clause.take(WINDOW_WORD) !== null;
  const missing = gathering.context.windowsMissing;
  const wantsWeight =
    missing.includes('weight_lb') && !missing.includes('count') && window.weight_lb === undefined;
  const isCountKnown = gathering.context.windowsPhase === 'details' && !missing.includes('count');
  const figure = takeFigure(clause, window, asked, hasWord, !isCountKnown);
  if (figure !== null) window[wantsWeight && !hasWord ? 'weight_lb' : 'count'] = figure;
  return Object.keys(window).length > 0 ? { window, isForAll } : null;
}

/** A bare number: how many, unless only the weight is still missing. */
function takeFigure(
  clause: Clause,
  window: ScenarioWindow,
  asked: boolean,
  hasWord: boolean,
  isOneMeant: boolean,
): number | null {
  const saysWhat = hasWord || window.width_in !== undefined || window.operation !== undefined;
  if (!saysWhat && !asked) return null;
  const taken = clause.take(COUNT);
  if (taken) {
    const text = taken.groups[0] ?? '';
    return readSigned(text);
  }
  // "A casement", said of a kind whose number is known, is no second number.
  if (!isOneMeant) return null;
  return saysWhat && clause.take(/^(?:an?|the)\b/) && !/s\b/.test(clause.text) ? 1 : null;
}

/** The rough opening of the kind; taken before the unit's own size, which looks the same. */
function takeOpening(clause: Clause, gathering: Gathering): Size | null {
  const taken = clause.take(ROUGH_OPENING);
  return taken && sizeOf(taken.groups, taken.words, gathering);
}

type Size = { width_in: number; height_in: number };

function takeSize(clause: Clause, gathering: Gathering, isTalk: boolean): Size | null {
  const dashed = clause.take(FEET_DASH_INCHES);
  if (dashed) {
    const [widthFt, widthIn, heightFt, heightIn] = dashed.groups.map(Number);
    return {
      width_in: (widthFt ?? 0) * 12 + (widthIn ?? 0),
      height_in: (heightFt ?? 0) * 12 + (heightIn ?? 0),
    };
  }
  const feet = clause.take(FEET_AND_INCHES);
  if (feet) {
    const width_in = readFeet(feet.groups[0] ?? '');
    const height_in = readFeet(feet.groups[1] ?? '');
    return width_in !== null && height_in !== null ? { width_in, height_in } : null;
  }
  const isLumber =
    !isTalk && /^(?:\D*\b)?2 ?x ?(?:4|6|8|10|12)\b(?! ?(?:ft|feet|foot|'|in|"))/.test(clause.rest);
  const taken = clause.take(SIZE);
  if (taken) {
    if (isLumber) {
      gathering.puzzle(
        taken.words,
        'Is that a window of 2 ft by so many, or lumber? Say the unit, such as "24x48 in."',
      );
      return null;
    }
    return sizeOf(taken.groups, taken.words, gathering);
  }
  const callout = isTalk ? clause.take(CALLOUT) : null;
  if (callout) {
    const [wFt, wIn, hFt, hIn] = callout.groups.map(Number);
    return { width_in: (wFt ?? 0) * 12 + (wIn ?? 0), height_in: (hFt ?? 0) * 12 + (hIn ?? 0) };
  }
  return null;
}

function readFeet(text: string): number | null {
  const match = /^(\d+) ?(?:'|ft) ?(\d+(?:\.\d+)?)/.exec(text);
  return match ? Number(match[1]) * 12 + Number(match[2]) : null;
}

/** Largest figure taken as feet, and smallest taken as inches, when no unit is said. */
const MOST_FEET = 10;
const FEWEST_INCHES = 14;

function sizeOf(groups: readonly (string | undefined)[], words: string, gathering: Gathering): Size | null {
  const [first = '', firstUnit, second = '', secondUnit] = groups;
  const unitA = firstUnit ?? secondUnit;
  const unitB = secondUnit ?? firstUnit;
  const a = readNumber(first);
  const b = readNumber(second);
  if (a === null || b === null) return null;
  if (unitA && unitB) {
    const width_in = readLengthIn(`${first} ${unitA}`);
    const height_in = readLengthIn(`${second} ${unitB}`);
    return width_in !== null && height_in !== null ? { width_in, height_in } : null;
  }
  if (a <= MOST_FEET && b <= MOST_FEET)
    return { width_in: hundredths(a * 12), height_in: hundredths(b * 12) };
  if (a >= FEWEST_INCHES && b >= FEWEST_INCHES) return { width_in: a, height_in: b };
  gathering.puzzle(words, 'Is that in feet or inches? Say the unit, such as "36x60 in." or "3x5 ft".');
  return null;
}
