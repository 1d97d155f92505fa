import type { FieldId } from '../answers.ts';
import { takeBareBudget } from './dollars.ts';
import type { Clause, Taken } from './line-text.ts';
import { DIGITS, hundredths, LENGTH, NUMBER, readLengthIn, readSigned } from './numbers.ts';
import type { Gathering } from './reading.ts';

/** How a figure without any word is taken when its field is being asked. */
type Figure = {
  readonly unit: 'in' | 'ft' | null;
  /** Values that a bare number is taken to mean this field for; it may still be refused, or said with its unit. */
  readonly usual: readonly [number, number];
};

const FIGURES: Partial<Record<FieldId, Figure>> = {
  'framing.depth_in': { unit: 'in', usual: [2.5, 11.5] },
  'framing.spacing_in': { unit: 'in', usual: [12, 24] },
  'framing.steel_thickness_mil': { unit: null, usual: [30, 120] },
  cavity_insulation_r: { unit: null, usual: [7, 60] },
  budget_usd_per_ft2: { unit: null, usual: [1, 1000] },
  wall_area_ft2: { unit: null, usual: [50, 1_000_000] },
  max_added_thickness_in: { unit: 'in', usual: [0.5, 20] },
  basic_wind_speed_mph: { unit: null, usual: [70, 250] },
  mean_roof_height_ft: { unit: 'ft', usual: [8, 60] },
  fire_separation_ft: { unit: 'ft', usual: [0, 10_000] },
};

/** Fields being asked that a bare number may mean. */
export function fieldsForNumber(gathering: Gathering, value: number): FieldId[] {
  const open = openFigures(gathering);
  const fitting = open.filter(({ figure }) => value >= figure.usual[0] && value <= figure.usual[1]);
  // With one field open there is no doubt what is meant; whether it is possible is another matter.
  const [only] = open;
  if (fitting.length === 0 && open.length === 1 && only) return [only.field];
  return fitting.map(({ field }) => field);
}

function openFigures(gathering: Gathering): { field: FieldId; figure: Figure }[] {
  return gathering.context.open.flatMap((field) => {
    const figure = FIGURES[field];
    const isFound = gathering.findings.some((finding) => finding.field === field);
    return figure && !isFound ? [{ field, figure }] : [];
  });
}

/** A figure of something else that is never asked: "3 acres" is no distance. */
const OTHER_UNIT =
  '\\s*(?:sides?|walls?|stor(?:e?ys?|ies)|floors?|levels?|gables?|faces?|rooms?|of|acres?|miles?|yards?|yds?|blocks?|hectares?|kilomet(?:er|re)s?|km|houses?|mils?|gau?ge|years?|bedrooms?|studs?|batts?|bays?|crews?|roofs?|homes?|units?|windows?|doors?|inch(?:es)?|feet|foot|ft|mm|cm)\\b';
const BARE = new RegExp(`(?<![\\w.$/'"])(-?(?:${NUMBER}))(?![\\w%/'"]|\\.\\d|${OTHER_UNIT})`);
/** A length of something else: "9 ft walls", "1 inch of stucco". */
const OF_OTHER =
  '(?!\\s*(?:(?:thick|deep|high|tall|wide|long) )*(?:of|walls?|ceilings?|floors?|roofs?|studs?|batts?)\\b)';
const LENGTH_HERE = new RegExp(`(?<![\\w.$/])(-?${LENGTH})${OF_OTHER}`);

const COUNTS = /\b(?:there (?:are|is|were)|there's|(?:we|i|it|they) (?:have|has|got)|(?:we|i|they)'ve got)\b/;

/** Figures left in a clause, taken for the fields being asked: "12 ft" for the lot line, "30" for the budget. */
export function readFigures(clause: Clause, gathering: Gathering): void {
  for (const taken of clause.takeAll(LENGTH_HERE)) {
    const text = taken.groups[0] ?? '';
    const length_in = readLengthIn(text.replace(/^-/, ''));
    const sign = text.startsWith('-') ? -1 : 1;
    if (length_in !== null) placeLength(gathering, taken, sign * length_in);
  }
  // A number of things, whatever they are, is no measure.
  if (COUNTS.test(clause.text)) return;
  for (const taken of clause.takeAll(BARE)) {
    const text = taken.groups[0] ?? '';
    const value = readSigned(text);
    if (value !== null) placeNumber(gathering, taken, value);
  }
}

function placeLength(gathering: Gathering, taken: Taken, length_in: number): void {
  const open = openFigures(gathering).filter(({ figure }) => figure.unit !== null);
  const inUnit = (figure: Figure) => (figure.unit === 'ft' ? hundredths(length_in / 12) : length_in);
  const fitting = open.filter(
    ({ figure }) => inUnit(figure) >= figure.usual[0] && inUnit(figure) <= figure.usual[1],
  );
  const [first, second] = fitting.length > 0 ? fitting : open;
  if (first && !second) gathering.add(first.field, inUnit(first.figure), taken);
  else gathering.puzzle(taken.words, 'Say what is that long.');
}

function placeNumber(gathering: Gathering, taken: Taken, value: number): void {
  if (takeBareBudget(gathering, value, taken.words)) return;
  const [first, second] = fieldsForNumber(gathering, value);
  if (first && !second) gathering.add(first, value, taken);
  else gathering.puzzle(taken.words, 'Say what that number is, with its unit.');
}

/** "25 to 30", "between 2 and 3": two figures where one is needed. Not "3-5/8", "2-by-6" or "none-to-slight". */
const RANGE = new RegExp(
  `(?<![\\w.$/-])\\$?(?:r-?)?${DIGITS}k?\\s*(?:-|to|or)\\s*\\$?(?:r-?)?${DIGITS}k?(?![\\w/]|\\.\\d|\\s*(?:x|by)\\b)|\\bbetween\\s+\\$?${DIGITS}`,
);

/** Whether a clause gives a range where one figure is needed. A window's "3-0 x 5-0" is not one. */
export function hasRange(clause: string): boolean {
  return RANGE.test(
    clause.replace(/\d+(?:'?-\d{1,2}"?)?\s*(?:x|by)\s*\d+'?-\d{1,2}"?|\d+'?-\d{1,2}"? \d+'?-\d{1,2}"?/g, ' '),
  );
}
