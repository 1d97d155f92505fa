import { LENGTH, NUMBER, readLengthIn, readNumber } from './numbers.ts';
import type { Reader } from './reading.ts';

/** Dressed depth of nominal lumber, in. (American Softwood Lumber Standard PS 20, dry dressed sizes). */
export const DRESSED_DEPTH_IN: ReadonlyMap<string, number> = new Map([
  ['4', 3.5],
  ['four', 3.5],
  ['89', 3.5],
  ['6', 5.5],
  ['six', 5.5],
  ['140', 5.5],
  ['8', 7.25],
  ['eight', 7.25],
  ['184', 7.25],
  ['10', 9.25],
  ['ten', 9.25],
  ['235', 9.25],
  ['12', 11.25],
  ['twelve', 11.25],
  ['286', 11.25],
]);

/** Designators of cold-formed studs ("600S162-54") begin with the web depth in hundredths of an inch, cut short (from memory). */
const DESIGNATED_DEPTH_IN: ReadonlyMap<string, number> = new Map([
  ['250', 2.5],
  ['350', 3.5],
  ['362', 3.625],
  ['400', 4],
  ['550', 5.5],
  ['600', 6],
  ['800', 8],
  ['1000', 10],
]);
export const STEEL_DEPTHS_IN: readonly number[] = [...DESIGNATED_DEPTH_IN.values()];

const NOMINAL =
  /\b(?:2|two)\s*(?:x|by|-by-)\s*(4|6|8|10|12|four|six|eight|ten|twelve)s?\b(?!\s*(?:ft|feet|foot|'|"|in\b|inch|x\b))/;
/** Lumber of 38 mm by its dressed depth, as it is named where lumber goes by millimetres. */
const NOMINAL_MM = /\b38\s*x\s*(89|140|184|235|286)\b(?:\s*mm\b)?/;
const DESIGNATOR = /\b(\d{3,4})s(\d{3})(?:-(\d+))?\b/;
/** Sheets go by the mil as well, thinner ones. */
const NO_SHEET = '(?! ?(?:poly|plastic|sheet|film|vapou?r|foil|vinyl))';
const MIL_WORDS = `[ -]?mils?\\b(?: (?:thick|studs?|steel|metal))*${NO_SHEET}`;
const MILS = new RegExp(`(?<![\\w.])(${NUMBER})${MIL_WORDS}`);
const MILS_ANYWHERE = new RegExp(`(?<![\\w.])(\\d{2,3})${MIL_WORDS}`);
/** What else goes by its gauge. */
const OF_WIRE = /\b(?:lath|mesh|wire|staples?|nails?|screws?|flashing|furring|roof(?:ing)?)\b/;
const GAUGE = /\b(1[0-9]|2[0-9])[ -]?(?:gau?ge|ga)\b\.?(?: (?:studs?|steel|metal))*/;
/** Structural studs by gauge (from memory): 20 is 33 mil, 18 is 43, 16 is 54. */
const MIL_OF_GAUGE: ReadonlyMap<string, number> = new Map([
  ['20', 33],
  ['18', 43],
  ['16', 54],
]);
/** What may follow a material that is that of the studs; "wood siding" and "a metal roof" are something else. */
const AFTER_MATERIAL = [
  'two|at|on|every|spaced|oc|o\\.c|deep|in|from|for',
  'studs?|studwork|stud work|fram\\w*|walls?|house|home|construction|built|lumber|timber',
  "i|we|is|are|as|not|isn't|aren't|or|too|probably|maybe|please",
].join('|');
const NO_OTHER_NOUN = `(?! (?!(?:${AFTER_MATERIAL})\\b)[a-z])`;
const MADE_OF = '(?:[- ]?(?:studs?|stud ?work|fram(?:e|ed|ing)))';
const STEEL = new RegExp(
  `\\b(?:(?:light[- ]gau?ge|cold[- ]formed|galvani[sz]ed)[- ])?(?:steel|metal)(?:${MADE_OF}\\b|\\b${NO_OTHER_NOUN})`,
);
const WOOD = new RegExp(
  `\\b(?:(?:wood(?:en)?|timber|lumber|spf|spruce(?:[- ]pine[- ]fir)?|douglas[- ]fir)(?:${MADE_OF}\\b|\\b${NO_OTHER_NOUN})|stick[- ]?(?:fram(?:e|ed|ing)|built|build|construction)\\b)`,
);
const STUDS = /\bstuds?\b|\bfram(?:e|ed|ing)\b/;
const ON_CENTER = new RegExp(
  `(?:\\b(?:at|on|every|spaced)\\s*|@\\s*)?(?<![\\w.])(${LENGTH}|${NUMBER})\\s*(?:o\\.?\\s?c\\b\\.?|on[- ]?cent(?:er|re)s?|cent(?:er|re)s\\b|apart\\b|spacing\\b)`,
);
const AT = new RegExp(
  `(?:\\b(?:at|every|spaced(?: at)?|spacing(?: is| of)?)\\s+|@\\s*)(${LENGTH}|${NUMBER})(?![\\w/])`,
);
const DEEP = new RegExp(
  `(${LENGTH})\\s*(?=(?:deep\\s*)?(?:(?:wood|wooden|timber|steel|metal|light[- ]gau?ge)\\s*)*(?:studs?|fram(?:e|ing))\\b|deep\\b)(?:deep\\b)?`,
);

/** Lumber that was never planed to its dressed size. */
const ROUGH_SAWN =
  /\b(?:rough(?:[- ]?sawn|[- ]?cut)?|full[- ](?:size[d]?|dimension(?:al|ed)?|cut)|actual|true) (?=2|two)/;
/** From here on a spacing without its unit is in millimetres, beside lumber that is named so. */
const LEAST_SPACING_MM = 100;

/** "Steel studs 6 in.": no studs stand that close together. */
const DEEP_AFTER =
  /(?<=\bstuds?,? )([2-9](?:[ -]\d+\/\d+|\.\d+)? ?(?:inches|inch|in\b\.?|"))(?! ?(?:o\.?\s?c\b|on[- ]?cent|cent|apart|spac))/;

/** Whether a clause speaks of studs for sure, also where the windows are asked and "2x6" alone may be one. */
export function isStudTalk(text: string): boolean {
  return /\bstuds?\b|\bfram(?:ed|ing)\b|\bo\.?\s?c\b|\bon[- ]?cent(?:er|re)s?\b|\bmils?\b|\bgau?ge\b|\b2 ?x ?(?:4|6|8|10|12) (?:at|@) \d/.test(
    text,
  );
}

/** Studs: nominal lumber ("2x6" is 5.5 in. of wood), steel designators, depth, spacing. */
export const readFraming: Reader = (clause, gathering) => {
  const asked = gathering.isAsked('framing');
  const isAboutStuds = asked || [STUDS, NOMINAL, NOMINAL_MM, DESIGNATOR].some((sign) => clause.has(sign));
  const saysSteel = isAboutStuds && clause.has(STEEL);

  readSteelThickness(clause, gathering, isAboutStuds);
  // Before anything else, so that "3 5/8 in. steel studs at 16" does not read the depth as a spacing.
  for (const taken of isAboutStuds ? [...clause.takeAll(DEEP), ...clause.takeAll(DEEP_AFTER)] : []) {
    const depth_in = readLengthIn(taken.groups[0] ?? '');
    if (depth_in !== null) gathering.add('framing.depth_in', depth_in, taken);
  }
  for (const taken of clause.takeAll(DESIGNATOR)) {
    const depth_in = DESIGNATED_DEPTH_IN.get(taken.groups[0] ?? '');
    if (depth_in === undefined) gathering.puzzle(taken.words, 'Give the depth of the stud in inches.');
    else {
      gathering.add('framing.depth_in', depth_in, taken);
      gathering.add('framing.material', 'steel', taken);
      const mil = readNumber(taken.groups[2] ?? '');
      if (mil !== null) gathering.add('framing.steel_thickness_mil', mil, taken);
    }
  }
  if (!isWindowTalk(clause.text) || isLumberBesideWindows(clause.text)) {
    for (const taken of [...clause.takeAll(NOMINAL), ...clause.takeAll(NOMINAL_MM)]) {
      const depth_in = DRESSED_DEPTH_IN.get(taken.groups[0] ?? '');
      if (saysSteel) {
        gathering.puzzle(
          taken.words,
          'Steel studs go by their depth in inches: 3 1/2, 3 5/8, 5 1/2, 6 or 8.',
        );
      } else if (ROUGH_SAWN.test(clause.text)) {
        gathering.add('framing.material', 'wood', taken);
        gathering.puzzle(
          taken.words,
          'Rough-sawn lumber is as deep as it measures. How many inches is that?',
        );
      } else if (depth_in !== undefined) {
        gathering.add('framing.depth_in', depth_in, taken);
      }
    }
  }
  for (const taken of clause.takeAll(ON_CENTER)) addSpacing(taken.groups[0], taken);
  if (isAboutStuds) for (const taken of clause.takeAll(AT)) addSpacing(taken.groups[0], taken);
  if (isAboutStuds) {
    for (const taken of clause.takeAll(STEEL)) gathering.add('framing.material', 'steel', taken);
    for (const taken of clause.takeAll(WOOD)) gathering.add('framing.material', 'wood', taken);
  }

  function addSpacing(text: string | undefined, taken: Parameters<typeof gathering.add>[2]): void {
    const bare = readNumber(text ?? '');
    if (bare !== null && bare >= LEAST_SPACING_MM && NOMINAL_MM.test(clause.text)) {
      const words = `${taken.words} mm`;
      gathering.add('framing.spacing_in', readLengthIn(`${bare} mm`) ?? bare, { ...taken, words });
      return;
    }
    const spacing_in = readLengthIn(text ?? '') ?? bare;
    if (spacing_in !== null) gathering.add('framing.spacing_in', spacing_in, taken);
  }
};

/** "43 mil", "18 gauge": of the steel in a stud. */
function readSteelThickness(
  clause: Parameters<Reader>[0],
  gathering: Parameters<Reader>[1],
  isAboutStuds: boolean,
): void {
  const isWood = gathering.context.answers['framing.material'] === 'wood';
  const isOfStud = isAboutStuds || !(isWood || OF_WIRE.test(clause.text));
  for (const taken of isOfStud ? clause.takeAll(isAboutStuds ? MILS : MILS_ANYWHERE) : []) {
    const mil = readNumber(taken.groups[0] ?? '');
    if (mil !== null) gathering.add('framing.steel_thickness_mil', mil, taken);
  }
  for (const taken of isOfStud ? clause.takeAll(GAUGE) : []) {
    const mil = MIL_OF_GAUGE.get(taken.groups[0] ?? '');
    if (mil === undefined) gathering.puzzle(taken.words, 'Give the thickness in mils: 33, 43 or 54.');
    else gathering.add('framing.steel_thickness_mil', mil, taken);
  }
}

const LUMBER = String.raw`2 ?x ?(?:4|6|8|10|12)\b(?! ?(?:ft|feet|foot|'|in\b|in\.|"))`;
const OF_WINDOW =
  '(?:(?:double|single|triple|quad|hung|fixed|picture|casement|awning|sliding|flanged|flangeless|glazed|pane|paned|vinyl|wood|wooden|aluminum|fiberglass|new|old|big|small|large|low-e)[- ])*';
const WINDOW_NOUN = '(?:windows?|doors?|casements?|awnings?|sliders?|units?|sash(?:es)?|lights?)';
/** "Five 2x4 windows", "windows 2x4": feet. */
const SIZED_WINDOW = new RegExp(
  `\\b(?:${WINDOW_NOUN}|hung|fixed|casement|awning|sliding|\\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen)(?:,|:)?(?: (?:of|at|about|are|is|them|each|all|those|these|measure|measuring))* (?<!\\d)${LUMBER}|\\b${LUMBER} ${OF_WINDOW}${WINDOW_NOUN}\\b`,
);
const NAMED_LUMBER = new RegExp(
  `(?<![\\dx.])${LUMBER} ?(?:s\\b|studs?|walls?|fram\\w+|at\\b|@|o\\.?c|on center|\\d)`,
);

/** Whether "2x6" in a clause is lumber although it speaks of windows too: "our 2x6 wall has 5 windows", "2x4, no windows". */
export function isLumberBesideWindows(text: string): boolean {
  return NAMED_LUMBER.test(text) && !SIZED_WINDOW.test(text);
}

/** Whether a clause speaks of windows, so that "2x6" in it is feet, not lumber. */
export function isWindowTalk(text: string): boolean {
  // A size of two figures each is no lumber's, but for lumber named by millimetres.
  if (/(?<![\w.])(?!38\s*x)\d{2,3}(?:\s*(?:in\.?|"))?\s*x\s*\d{2,3}\b/.test(text)) return true;
  return /\b(?:windows?|casements?|awnings?|sliders?|sliding|picture|(?:single|double)[- ]hung|hung|doors?|triple|fixed (?:triple|double|units?|lights?)|glaz(?:ed|ing)|panes?|flange[ds]?|flangeless|fins?)\b/.test(
    text,
  );
}
