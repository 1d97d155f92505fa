import type { ScenarioWindow } from '../../brief/scenario.ts';
import type { WindowReading } from '../windows.ts';
import { withoutFillers } from './left-words.ts';
import type { Clause } from './line-text.ts';
import { hundredths, NUMBER, readLengthIn, readNumber, readSigned } from './numbers.ts';
import { matterOf } from './other-matters.ts';
import { isWindowTalk } from './read-framing.ts';
import { addWall } from './read-job.ts';
import type { Gathering } from './reading.ts';

const UNIT = String.raw`(?:\s*(inches|inch|in\b\.?|"|feet|foot|ft\b\.?|'|mm|cm|m(?![a-z0-9])))?`;
const SIZE = new RegExp(
  `(?<![\\w.])(${NUMBER})${UNIT}\\s*(?:wide\\s*(?:x|by)?|x|by)\\s*(${NUMBER})${UNIT}(?:\\s*(?:high|tall))?(?![\\w/-]*\\d)`,
);
/** "rough opening 37 x 61 in.", "RO of 37x61" */
const ROUGH_OPENING = new RegExp(
  `\\b(?:in an? |with an? )?(?:rough openings?|ro)(?: (?:of|is|are|measures?|measuring))?:?\\s*(${NUMBER})${UNIT}\\s*(?:x|by)\\s*(${NUMBER})${UNIT}`,
);
/** Trade shorthand: 3-0 x 5-0 is three feet no inches by five feet no inches, and so is 3x5-0; so is the callout 3050. */
const INCHES_OF_A_FOOT = String.raw`(\d|1[01])`;
const FEET_DASH_INCHES = new RegExp(
  `(?<![\\w.-])(\\d{1,2})'?-${INCHES_OF_A_FOOT}"?(?:\\s*(?:x|by)\\s*|\\s+)(\\d{1,2})'?-${INCHES_OF_A_FOOT}"?(?![\\w./-])|(?<![\\w.-])(\\d)\\s*(?:x|by)\\s*(\\d)'?-${INCHES_OF_A_FOOT}"?(?![\\w./-])`,
);
/** "5 feet by 8 feet 6 1/2 inches": inches after the feet of either side. */
const FEET_THEN_INCHES = String.raw`\d+ ?(?:'|ft\.?|feet|foot) ?-?(?:\d+(?:[ -]\d+/\d+|\.\d+)?|\d+/\d+) ?(?:"|inches|inch|in\b\.?)?`;
const FEET_ALONE = String.raw`\d+(?:\.\d+)? ?(?:'|ft\b\.?|feet|foot)`;
const FEET_AND_INCHES = new RegExp(
  `(?<![\\w.-])(${FEET_THEN_INCHES}|${FEET_ALONE})\\s*(?:wide\\s*)?(?:x|by)\\s*(${FEET_THEN_INCHES}|${FEET_ALONE})(?:\\s*(?:high|tall))?`,
);
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
  { value: 'hung', pattern: /\b(?:single|double)[- ]hungs?\b|\bhungs?\b|\b[sd]h\b/ },
  { value: 'casement', pattern: /\bcasements?\b/ },
  { value: 'awning', pattern: /\bawnings?\b/ },
  { value: 'sliding', pattern: /\bslid(?:ers?|ing)\b/ },
  { value: 'fixed', pattern: /\bfixed(?:[- ]lights?)?\b|\bpicture\b/ },
] as const;
const FOR_ALL = /\b(?:all|both|every(?: one)?|each of them)\b(?: of them)?/;
/** A figure of something else is no number of windows. */
const OTHER_UNIT =
  '\\s*(?:inch(?:es)?|in\\.|feet|foot|ft|mm|cm|met(?:er|re)s?|m|mils?|gau?ge|ga|stor(?:e?ys?|ies)|floors?|levels?|mph|years?)(?![\\w])';
const COUNT = new RegExp(`(?<![\\w.$'"/-])(-?${NUMBER})(?![\\w'"/%-]|\\.\\d|${OTHER_UNIT})`);
/** So many for each of what is not counted. */
const FOR_EACH_OF = /\bwindows? (?:(?:in |on )?each|per \w+)\b(?! (?:about |around )?\d)/;
const WINDOW_WORD = /\b(?:windows?|units?|lights?)\b/;

/** A size and nothing else, in feet or inches; lumber goes without a unit. */
const SIZE_ALONE = new RegExp(
  `^${NUMBER}${UNIT}\\s*(?:x|by)\\s*${NUMBER}\\s*(?:inches|inch|in\\b\\.?|"|feet|foot|ft\\b\\.?|'|mm|cm)(?: each| in size)?$`,
);
/** "2 2x3", after windows: so many of a size. */
const COUNT_AND_SIZE = /^\d+ \d+ ?x ?\d+$/;

/** Two lengths in feet, of whatever: lumber and thicknesses go by the inch. */
const SIZE_IN_FEET = new RegExp(
  `(?<![\\w.])(${NUMBER})(?:\\s*(?:(?:linear|lineal|running) )?(?:feet|foot|ft\\b\\.?|'))?\\s*(?:x|by)\\s*(${NUMBER})\\s*(?:feet|foot|ft\\b\\.?|')(?!\\s*\\d)`,
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
    (follows && (SIZE_ALONE.test(clause.text) || COUNT_AND_SIZE.test(clause.text))) ||
    (WEIGHT.test(clause.text) && !/\bpsf\b/.test(clause.text));
  if (!asked && !isTalk) {
    const area = clause.take(SIZE_IN_FEET);
    const [width, height] = area?.groups ?? [];
    const wall_ft2 = (readNumber(width ?? '') ?? 0) * (readNumber(height ?? '') ?? 0);
    const isWallAsked =
      gathering.isOpen('wall_area_ft2') && !gathering.findings.some(({ field }) => field === 'wall_area_ft2');
    if (area && isWallAsked && wall_ft2 >= LEAST_WALL_FT2) {
      addWall(gathering, wall_ft2, area);
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
  const saysWhat = hasWord || window.width_in !== undefined || window.operation !== undefined;
  if (saysWhat) {
    const figure = takeCount(clause, gathering);
    if (figure !== null) window[wantsWeight(gathering, window) && !hasWord ? 'weight_lb' : 'count'] = figure;
  }
  return Object.keys(window).length > 0 ? { window, isForAll } : null;
}

function isCountKnown({ context }: Gathering): boolean {
  return context.windowsPhase === 'details' && !context.windowsMissing.includes('count');
}

function wantsWeight(gathering: Gathering, window: ScenarioWindow): boolean {
  const missing = gathering.context.windowsMissing;
  return missing.includes('weight_lb') && !missing.includes('count') && window.weight_lb === undefined;
}

/** How many windows, in a clause that names them: the number that leads up to what was said of them, or ends it. */
function takeCount(clause: Clause, gathering: Gathering): number | null {
  if (FOR_EACH_OF.test(clause.text)) {
    gathering.puzzle(clause.text, 'How many windows is that in all?');
    clause.takeAll(/[^\u0001]+/);
    return null;
  }
  const leading = new RegExp(`${COUNT.source}(?=[^\\d\u0001]*\u0001)`);
  const ending = new RegExp(`${COUNT.source}(?=([^\\d\u0001]*)$)`);
  const isEnd = withoutFillers(ending.exec(clause.rest)?.[2] ?? '') === '';
  const taken = clause.take(leading) ?? (isEnd ? clause.take(ending) : null);
  if (taken) return readSigned(taken.groups[0] ?? '');
  // "A casement", said of a kind whose number is known, is no second number.
  if (isCountKnown(gathering)) return null;
  return clause.take(/^(?:an?|the)\b/) && !/s\b/.test(clause.text) ? 1 : null;
}

/** Says of a bare figure what it is of. */
const OF_THEM = /\bof (?:them|those|these)\b|\b(?:in )?total\b|\baltogether\b/;

/**
 * A bare number where windows are asked: how many, unless only the weight is still missing. Beside words that nobody
 * understands it may be the number of anything.
 *
 * @param window  what the clause says of them besides
 */
export function readBareFigure(
  clause: Clause,
  gathering: Gathering,
  window: WindowReading | null,
): WindowReading | null {
  const said = window?.window ?? {};
  if (said.count !== undefined) return window;
  const weighs = wantsWeight(gathering, said);
  if (!clause.has(COUNT)) return window;
  const taken = clause.take(COUNT);
  clause.take(weighs ? /\b(?:they |it )?weighs?\b/ : OF_THEM);
  const value = readSigned(taken?.groups[0] ?? '');
  if (!taken || value === null) return window;
  if (withoutFillers(clause.leftover()) !== '') {
    gathering.puzzle(
      clause.text,
      matterOf(clause.text, gathering.context) ?? 'If that is the number of windows, say "6 windows".',
    );
    clause.takeAll(/[^\u0001]+/);
    return window;
  }
  return {
    window: { ...said, [weighs ? 'weight_lb' : 'count']: value },
    isForAll: window?.isForAll ?? false,
  };
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
    const [wFt, wIn, hFt, hIn, onlyFt, thenFt, thenIn] = dashed.groups.map((text) => Number(text ?? 0));
    return {
      width_in: ((wFt ?? 0) + (onlyFt ?? 0)) * 12 + (wIn ?? 0),
      height_in: ((hFt ?? 0) + (thenFt ?? 0)) * 12 + (hIn ?? 0) + (thenIn ?? 0),
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
  const match = /^(\d+(?:\.\d+)?) ?(?:'|ft\.?|feet|foot) ?-?(.*?) ?(?:"|inches|inch|in\.?)?$/.exec(
    text.trim(),
  );
  if (!match) return null;
  const inches = match[2] ? readNumber(match[2]) : 0;
  return inches === null ? null : hundredths(Number(match[1]) * 12 + inches);
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
