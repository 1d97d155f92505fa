import { DIGITS, hundredths } from './numbers.ts';
import type { Reader } from './reading.ts';

/** 1 m²·K/W in h·ft²·°F/Btu, from 1 Btu/h·ft²·°F = 5.678 W/m²·K (SI brochure conversion factors). */
const R_PER_RSI = 5.678263;

const SHEATHINGS = [
  { value: 'osb', anywhere: /\bosb\b|\boriented strand(?: ?board)?\b/, asked: null },
  { value: 'plywood', anywhere: /\bplywood\b(?!\s*bucks?)|\bcdx\b/, asked: /\bply\b/ },
  {
    value: 'gypsum',
    anywhere: /\b(?:exterior |glass[- ]mat )(?:gypsum|gyp)(?: (?:board|sheathing))?\b|\bgypsum sheathing\b/,
    asked: /\b(?:gypsum|gyp)(?: board)?\b/,
  },
  {
    value: 'fibreboard',
    anywhere: /\b(?:asphalt(?:ed)? |black )?fib(?:re|er) ?board\b/,
    asked: /\bblack ?board\b/,
  },
  {
    value: 'boards',
    anywhere:
      /\b(?:solid|diagonal|plank|1x(?:6|8|10)|ship ?lap) (?:boards?|sheathing|planks?)\b|\bboard sheathing\b/,
    asked:
      /(?:\b1 ?(?:x|by) ?\d+s? )?\b(?:solid )?(?:boards?|planks?|ship ?lap|tongue[- ]and[- ]groove|t ?& ?g)\b/,
  },
  {
    value: 'none',
    anywhere: /\b(?:no|without)(?: any)? sheathing\b|\bunsheathed\b/,
    asked: /^(?:none|nothing|no)(?: (?:at all|there|yet|now|outside|on (?:it|them|the studs)))*$/,
  },
] as const;

/** Sold as sheathing seldom; mostly OSB is meant. */
const CHIPS = /\b(?:some kind of )?(?:chip|particle|press(?:ed)?|wafer) ?boards?\b/;

/** "The sheathing is boards": named, so that any word for a board means this one. */
const SHEATHING_IS = /\b(?:sheathing|sheathed)(?:'s| is| are| in| of|:)? (?!is\b)/;

/** The board on the outside of the studs. */
export const readSheathing: Reader = (clause, gathering) => {
  const asked = gathering.isAsked('sheathing') || SHEATHING_IS.test(clause.text);
  const chips = asked ? clause.take(CHIPS) : null;
  if (chips) gathering.puzzle(chips.words, 'Is it OSB (large flat strands), plywood or fibreboard?');
  for (const { value, anywhere, asked: whenAsked } of SHEATHINGS) {
    for (const taken of clause.takeAll(anywhere)) gathering.add('sheathing', value, taken);
    if (!asked || !whenAsked) continue;
    const taken = clause.take(whenAsked);
    if (taken) gathering.add('sheathing', value, taken);
  }
};

const OUTSIDE = /\b(?:c\.?i\.?|continuous|exterior|outside|outboard|foam|rigid|boards?|outsulation)\b/;
const R_VALUE = new RegExp(`\\br(?:\\s?-\\s?|\\s)?(${DIGITS})(?![\\w/])`);
const R_SUM = new RegExp(`\\br?\\s?-?\\s?${DIGITS}\\s?\\+\\s?(?:r\\s?-?\\s?)?${DIGITS}(?:\\s?c\\.?i\\.?)?`);
const RSI = new RegExp(`\\brsi\\s?-?\\s?(${DIGITS})\\b`);
const EMPTY =
  /\b(?:uninsulated|(?:bays?|cavit(?:y|ies)|walls?) (?:is|are) (?:all )?empty|not insulated(?! (?:much|well|very|enough|fully))|empty(?: stud)? (?:bays?|cavit(?:y|ies)|walls?)|(?:no|without)(?: any)?(?: cavity)? insulation|(?:nothing|none) (?:in(?:side)?|between) (?:the |my |our |these |those )*(?:walls?|studs?|(?:stud )?bays?|cavit(?:y|ies)))\b|^(?:all )?empty$/;

/** R-value between the studs. What lies outside the studs is the program's to find, so "R-10 continuous" is not taken. */
export const readCavity: Reader = (clause, gathering) => {
  const sum = clause.take(R_SUM);
  if (sum) {
    gathering.puzzle(
      sum.words,
      'Only the R-value between the studs is asked, for example "R-21"; the insulation outside is what I work out.',
    );
  }
  if (OUTSIDE.test(clause.text) && clause.has(R_VALUE)) {
    gathering.puzzle(
      clause.text,
      'Insulation outside the studs is what I work out; only the R-value between the studs is asked, for example "R-21".',
    );
    clause.takeAll(/[^\u0001]+/);
    return;
  }
  for (const taken of clause.takeAll(RSI)) {
    gathering.add('cavity_insulation_r', hundredths(Number(taken.groups[0]) * R_PER_RSI), taken);
  }
  for (const taken of clause.takeAll(R_VALUE)) {
    gathering.add('cavity_insulation_r', Number(taken.groups[0]), taken);
  }
  for (const taken of clause.takeAll(EMPTY)) gathering.add('cavity_insulation_r', 0, taken);
  if (!gathering.isAsked('cavity')) return;
  const empty = clause.take(
    /^(?:(?:there(?:'?s| is) )?(?:none|nothing)(?: in (?:there|it|them))?|empty|no)$/,
  );
  if (empty) gathering.add('cavity_insulation_r', 0, empty);
};

const RETARDERS = [
  {
    value: 'none',
    pattern:
      /\b(?:no|without)(?: an?| any)?(?: interior)? (?:vapou?r )?(?:retarders?|barriers?|control)\b|\bno vapou?r\b/,
  },
  {
    value: 'class-iii',
    pattern:
      /\bclass[- ]?(?:iii|3)\b|\blatex(?: paint)?\b|\bpainted (?:gypsum(?: board)?|drywall|plasterboard)\b/,
  },
  {
    value: 'class-ii',
    pattern: /\bclass[- ]?(?:ii|2)\b|\bkraft(?:[- ]?(?:faced?|facing|paper))?\b|\basphalt(?:ed)? paper\b/,
  },
  {
    value: 'class-i',
    pattern:
      /\bclass[- ]?(?:i|1)\b|\b(?:\d+ ?mil )?poly(?:ethylene)?\b(?: (?:sheets?|sheeting|film))?|\bplastic (?:sheets?|sheeting|film|(?:behind|under|back of)(?: (?:it|them|that|the|drywall|plaster|gypsum|board|wall))*)\b|\b(?:aluminium|aluminum )?foil\b(?![- ]?faced (?:poly|foam))/,
  },
  {
    value: 'responsive',
    pattern:
      /\b(?:responsive|smart|variable|adaptive|humidity[- ]variable)(?:[- ]permeance)?(?: vapou?r)? (?:membrane|retarder|barrier)\b/,
  },
] as const;
const VAGUE_BARRIER = /\bvapou?r (?:barrier|retarder)\b|\btar ?paper\b/;

/** The layer on the room side that slows vapour. */
export const readRetarder: Reader = (clause, gathering) => {
  const asked = gathering.isAsked('retarder');
  for (const { value, pattern } of RETARDERS) {
    for (const taken of clause.takeAll(pattern)) gathering.add('interior_vapour_retarder', value, taken);
  }
  if (!asked) return;
  const nothing = clause.take(/^(?:none|nothing|no)$/);
  if (nothing) gathering.add('interior_vapour_retarder', 'none', nothing);
  const paint = clause.take(/^(?:just |only )?paint(?:ed)?$/);
  if (paint) gathering.add('interior_vapour_retarder', 'class-iii', paint);
  const plastic = clause.take(/\bplastic\b/);
  if (plastic) gathering.add('interior_vapour_retarder', 'class-i', plastic);
  const membrane = clause.take(/\b(?:responsive|smart membrane)\b/);
  if (membrane) gathering.add('interior_vapour_retarder', 'responsive', membrane);
  const vague = gathering.findings.some((f) => f.field === 'interior_vapour_retarder')
    ? clause.take(VAGUE_BARRIER) && null
    : clause.take(VAGUE_BARRIER);
  if (vague)
    gathering.puzzle(
      vague.words,
      'Which kind: latex paint, kraft paper, polyethylene or foil, or a responsive membrane?',
    );
};
