const UNITS = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;

const UNITS_BY_WORD: ReadonlyMap<string, number> = new Map(UNITS.map((word, i) => [word, i]));
const TENS_BY_WORD: ReadonlyMap<string, number> = new Map(TENS.map((word, i) => [word, (i + 2) * 10]));

const tensWords = TENS.join('|');
const unitWords = [...UNITS].sort((a, b) => b.length - a.length).join('|');

/** Pattern source of a number in digits: `30`, `5.5`, `.75`. */
export const DIGITS = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;

/** Pattern source of a number in digits, words ("six", "thirty-two", "a dozen") or a mixed fraction ("5 1/2", "3-5/8"). */
export const NUMBER = `(?:(?:\\d+[ -])?\\d+/\\d+|${DIGITS}|half a dozen|a dozen|dozen|a couple of|a couple|a pair of|(?:${tensWords})(?:[- ](?:${unitWords}))?|(?:${unitWords}))`;

/** Reads what {@link NUMBER} matches; null for anything else. */
export function readNumber(text: string): number | null {
  const said = text.trim();
  if (new RegExp(`^${DIGITS}$`).test(said)) return Number(said);
  const mixed = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(said);
  if (mixed) {
    const under = Number(mixed[3]);
    return under === 0 ? null : Number(mixed[1] ?? 0) + Number(mixed[2]) / under;
  }
  if (said === 'half a dozen') return 6;
  if (/^(?:a )?dozen$/.test(said)) return 12;
  if (/^a (?:couple|pair)(?: of)?$/.test(said)) return 2;
  const [first = '', second = ''] = said.split(/[- ]/);
  const tens = TENS_BY_WORD.get(first);
  if (tens !== undefined) return second === '' ? tens : tens + (UNITS_BY_WORD.get(second) ?? 0);
  return second === '' ? (UNITS_BY_WORD.get(first) ?? null) : null;
}

/** The same with a minus sign in front allowed, so that a negative figure is refused by name rather than misread. */
export function readSigned(text: string): number | null {
  const said = text.trim();
  const size = readNumber(said.replace(/^-/, ''));
  return size === null ? null : said.startsWith('-') ? -size : size;
}

const LENGTH_UNIT = String.raw`(?:inches|inch|in\b\.?|"|feet|foot|ft\b\.?|'|millimet(?:er|re)s?|mm|centimet(?:er|re)s?|cm|met(?:er|re)s?|m(?![a-z2/]))`;

/** Pattern source of a length with its unit: `16 in.`, `5 1/2"`, `3'6"`, `140 mm`. */
export const LENGTH = `(?:(?:\\d+ ?(?:'|ft\\.?|feet) ?-?\\d+(?:[ -]\\d+/\\d+|\\.\\d+)? ?(?:"|inches|inch|in\\b\\.?))|${NUMBER}[ -]?${LENGTH_UNIT})`;

const INCHES_PER: readonly { readonly unit: RegExp; readonly inches: number }[] = [
  { unit: /^(?:inches|inch|in\.?|")$/, inches: 1 },
  { unit: /^(?:feet|foot|ft\.?|')$/, inches: 12 },
  { unit: /^(?:mm|millimet(?:er|re)s?)$/, inches: 1 / 25.4 },
  { unit: /^(?:cm|centimet(?:er|re)s?)$/, inches: 1 / 2.54 },
  { unit: /^(?:m|met(?:er|re)s?)$/, inches: 1000 / 25.4 },
];

/** Inches in what {@link LENGTH} matches, rounded to thousandths; null for anything else. */
export function readLengthIn(text: string): number | null {
  const said = text.trim();
  const feetAndInches = /^(\d+) ?(?:'|ft\.?|feet) ?-?(\d.*?) ?(?:"|inches|inch|in\.?)$/.exec(said);
  if (feetAndInches) {
    const inches = readNumber(feetAndInches[2] ?? '');
    return inches === null ? null : thousandths(Number(feetAndInches[1]) * 12 + inches);
  }
  const single = new RegExp(`^(${NUMBER})[ -]?(${LENGTH_UNIT})$`).exec(said);
  const value = single ? readNumber(single[1] ?? '') : null;
  const unit = INCHES_PER.find((candidate) => candidate.unit.test(single?.[2] ?? ''));
  return value === null || !unit ? null : thousandths(value * unit.inches);
}

export function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}

/** Fine enough for eighths and sixteenths of an inch. */
function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}
