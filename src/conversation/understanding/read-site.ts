import type { Clause, Taken } from './line-text.ts';
import { DIGITS, hundredths, LENGTH, NUMBER, readLengthIn, readNumber, readSigned } from './numbers.ts';
import { isWindowTalk } from './read-framing.ts';
import type { Gathering, Reader } from './reading.ts';
import { roofOfStoreys } from './vague-answers.ts';

/** Miles per hour in the other units people give. */
const MPH_PER_M_S = 2.23694;
const MPH_PER_KM_H = 0.621371;

const SPEEDS = [
  {
    pattern: new RegExp(
      `(-?${NUMBER})\\s*-?(?:mph\\b|miles (?:per|an) hour)(?:,? (?:a )?3[- ]sec(?:ond)?[- ]gusts?)?(?: winds?)?`,
    ),
    factor: 1,
  },
  { pattern: new RegExp(`(${NUMBER})\\s*(?:m/s\\b|met(?:er|re)s per second)`), factor: MPH_PER_M_S },
  {
    pattern: new RegExp(`(${NUMBER})\\s*(?:km/?h\\b|kph\\b|kilomet(?:er|re)s per hour)`),
    factor: MPH_PER_KM_H,
  },
] as const;
const EXPOSURE = /\bexp(?:osure|\.)?(?: category| class)?[ :-]*([bcd])\b(?::[^\u0001]*)?/;
const EXPOSURES = [
  {
    value: 'B',
    pattern: /\b(?:suburb(?:an|s)?|town|urban|city|wood(?:s|ed|land)|forest|sheltered|built[- ]up)\b/,
  },
  { value: 'C', pattern: /\b(?:open (?:country|terrain|land|fields?)|prairie|farmland|grassland)\b/ },
  {
    value: 'D',
    pattern:
      /\b(?:coast(?:al)?|shore(?:line)?|water ?front|open water|lake ?(?:front|shore)|beach|mud ?flats|salt flats)\b/,
  },
] as const;
/** Said of where the house stands, whatever is asked. A place may have any of these words in its name. */
const EXPOSURES_ANYWHERE = [
  { value: 'B', pattern: /\b(?:in (?:a |the )?)?suburb(?:an|s)?\b|\b(?:in|among) (?:the )?woods\b/ },
  { value: 'C', pattern: /\b(?:in (?:the )?)?open (?:country|terrain|land|fields?)\b/ },
  { value: 'D', pattern: /\b(?:on|at|by) the (?:coast|shore|beach|water ?front|lake ?(?:front|shore))\b/ },
] as const;
/** A speed by its name. */
const WIND_IS = new RegExp(`\\bwind(?: speed)?(?:'s| is| of|:)?(?: about)? (${DIGITS})$`);
const ROOF = new RegExp(
  `(${LENGTH})\\s*(?:-\\s*)?(?:(?:to|at) the (?:mean |(?:middle|midpoint|center|centre) of the )?roof(?: height)?|(?:mean )?roof(?: height)?\\b|(?:high|tall)\\b)|\\b(?:mean )?roof(?: height)?(?: is| of| at)?\\s*(${LENGTH}|${NUMBER})`,
);

const STOREYS = new RegExp(
  `(?<![\\w.$/-])(?:(single|multi|several|${NUMBER})((?:[- ]and[- ]a[- ]half)?)|half a)[- ]?(?:stor(?:e?ys?|ies|eyed|ied)|floors?|levels?)\\b`,
);

/** What a height must be of, where it is not asked. */
const OF_HOUSE = /\b(?:roof|house|home|building|walls?|ceilings?)\b/;

/** Storeys and nothing else: beside "new" or a year they only describe the house. */
const STOREYS_ALONE = new RegExp(
  `^(?:(?:it|that|this|we|i|(?:the |our |my |an? )?(?:house|home|building|roof))(?:'?s|'ve| is| has| have)?(?: got)? )?(?:an? |about |only |just )*(?:${STOREYS.source})(?: (?:high|tall|house|home|building))?$`,
);

/** Storeys are no height: an estimate is put to the user. */
function estimateRoof(clause: Clause, gathering: Gathering): void {
  if (!gathering.isOpen('mean_roof_height_ft')) {
    const early = STOREYS_ALONE.test(clause.text) ? clause.take(STOREYS) : null;
    if (early) gathering.early.push({ field: 'mean_roof_height_ft', words: early.words });
    return;
  }
  const taken = clause.take(STOREYS);
  if (!taken) return;
  const [said = '', half = ''] = taken.groups;
  const whole = said === 'single' ? 1 : readNumber(said);
  const roof = whole === null ? null : roofOfStoreys(whole + (half === '' ? 0 : 0.5));
  if (!roof) {
    gathering.puzzle(
      taken.words,
      'Storeys are no height: measure from the ground to the eaves and to the ridge, and take the mean. How many feet is it?',
    );
    return;
  }
  const field = 'mean_roof_height_ft';
  gathering.either = {
    words: taken.words,
    findings: [
      { field, value: roof.height_ft, words: taken.words },
      { field, value: 'unknown', words: taken.words },
    ],
    asks: `"${taken.words}": taken as about ${roof.height_ft} ft (${roof.basis})? Better is the mean of eaves and ridge, measured.`,
  };
}

/** Wind speed, exposure and roof height. */
export const readWind: Reader = (clause, gathering) => {
  estimateRoof(clause, gathering);
  for (const { pattern, factor } of SPEEDS) {
    for (const taken of clause.takeAll(pattern)) {
      const text = taken.groups[0] ?? '';
      const value = readSigned(text);
      if (value !== null) gathering.add('basic_wind_speed_mph', hundredths(value * factor), taken);
    }
  }
  for (const taken of clause.takeAll(EXPOSURE)) {
    gathering.add('exposure', (taken.groups[0] ?? '').toUpperCase(), taken);
  }
  // A window is so high as well.
  const isOfWindow = gathering.isAsked('windows') && !/\broof\b/.test(clause.text);
  for (const taken of isOfWindow || isWindowTalk(clause.text) ? [] : clause.takeAll(ROOF)) {
    const text = taken.groups[0] ?? taken.groups[1] ?? '';
    const height_in = readLengthIn(text);
    const height_ft = height_in === null ? readNumber(text) : hundredths(height_in / 12);
    if (height_ft === null) continue;
    if (gathering.isAsked('wind') || OF_HOUSE.test(clause.text)) {
      gathering.add('mean_roof_height_ft', height_ft, taken);
    } else gathering.puzzle(taken.words, 'What is so high? Of the roof say "22 ft to the roof".');
  }
  const wind = clause.take(WIND_IS);
  if (wind) gathering.add('basic_wind_speed_mph', Number(wind.groups[0]), wind);
  if (!gathering.isAsked('wind')) {
    if (gathering.isAsked('place')) return;
    for (const { value, pattern } of EXPOSURES_ANYWHERE) {
      for (const taken of clause.takeAll(pattern)) gathering.add('exposure', value, taken);
    }
    return;
  }
  for (const { value, pattern } of EXPOSURES) {
    for (const taken of clause.takeAll(pattern)) gathering.add('exposure', value, taken);
  }
  const letter = clause.take(/(?<![\w.'-])([bcd])(?![\w.'-])/);
  if (letter) gathering.add('exposure', (letter.groups[0] ?? '').toUpperCase(), letter);
};

const LOT_LINE = new RegExp(
  `(?:\\b(?:at least|more than|over|about|around)\\s+)?(-?${LENGTH}|-?${NUMBER})\\s*(?:away |off )?(?:to|from|off|of)?\\s*(?:the )?(?:lot|property|boundary)[- ]?(?:line)?\\b|\\b(?:lot|property|boundary)[- ]?line(?: is| at)?\\s*(?:about |at least |over |more than )?(-?${LENGTH}|-?${NUMBER})(?: away)?|\\bfire separation(?: distance)?(?: is| of)?\\s*(-?${LENGTH}|-?${NUMBER})`,
);
/** Farther than the lot line, which lies between: taken for it, a wall too close to the line would pass. */
const TO_A_HOUSE =
  /^.*\b(?:next(?: door)?|neighbou?r(?:s|'s|s'|ing)?|other) ?(?:house|home|building|garage|wall)?\b.*\d.*$|^.*\d.*\b(?:next|neighbou?r(?:s|'s|s'|ing)?|other) ?(?:house|home|building|garage|wall|door)\b.*$/;
const SAYS_FEET = /\d ?(?:feet|foot|ft\b|')/;
const ON_LOT_LINE = /\b(?:right )?on the (?:lot|property) line\b|\bzero lot line\b/;
const NO_WILDFIRE =
  /\b(?:no|not (?:in |near )?(?:an? |the )?|without|outside (?:of )?(?:an? |the )?)\s*(?:wild ?fires?|wui|fire[- ]hazard)(?: (?:area|zone|hazard|risk|country))?\b|\bwild ?fires?:? (?:no|none)\b|\bwild ?fires?(?: (?:risk|danger|hazard))? (?:is|are)(?:n'?t| not|n'?t really| not really) (?:an? |any |much )?(?:(?:of an? )?(?:issue|problem|concern|risk|threat|danger|matter)s?)\b/;
/** Where the surroundings are asked, fire is the one that comes over land. */
const NO_FIRE =
  /\b(?:no|not (?:an? |any |much (?:of an? )?)?|without(?: any)?|low)\s*(?:(?:risk|danger|threat|fear) of (?:wild ?)?fires?|(?:wild ?|brush ?|forest ?|bush ?)?fires?(?: (?:risk|danger|hazard|threat|problem|issue|area|zone|country)s?)?)\b(?:(?: here| there| around here| either))*/;
const NEITHER_NAMED =
  /\b(?:no|neither|without) (?:wild ?)?fires?(?: (?:risk|danger|hazard|area)s?)? n?or termites?\b|\b(?:no|neither) termites? n?or (?:wild ?)?fires?(?: (?:risk|danger|hazard|area)s?)?\b/;
const NEITHER =
  /^(?:neither|(?:none|nothing|not any)(?: of)?(?: (?:that|those|these|them|it|the (?:two|above)))?|nothing like (?:that|it)|no to (?:both|all)|no(?:t|ne)? (?:of )?(?:either|both))(?: (?:of (?:that|those|these|them|the two)|one|applies|apply|(?:is|are) (?:a (?:matter|problem|concern)|an issue|problems)|here|there|around here|really))*$/;
const TERMITE_MAP_NOTE =
  'Termites are taken as none to slight. The map of the residential code decides that, not whether any were seen.';
const WILDFIRE =
  /\b(?:in (?:an? |the )?)?(?:wild ?fires?|wui)(?: (?:area|zone|hazard|risk|country))?(?::? yes)?\b/;
const TERMITES = [
  { value: 'very-heavy', level: 'very (?:heavy|bad|high)' },
  { value: 'none-to-slight', level: '(?:none(?:[- ]to[- ]|/| or )slight|no(?:ne)?|slight)' },
  { value: 'slight-to-moderate', level: 'slight(?:[- ]to[- ]|/)moderate' },
  { value: 'moderate-to-heavy', level: 'moderate(?:[- ]to[- ]|/)heavy' },
] as const;
const TERMITE_BARE = [
  { value: 'very-heavy', pattern: /\bvery heavy\b/ },
  { value: 'slight-to-moderate', pattern: /\bslight[- ]to[- ]moderate\b/ },
  { value: 'moderate-to-heavy', pattern: /\bmoderate[- ]to[- ]heavy\b/ },
  { value: 'none-to-slight', pattern: /\bnone[- ]to[- ]slight\b/ },
] as const;

/** Lot line, wildfire and termites. */
export const readSurroundings: Reader = (clause, gathering) => {
  const onLine = clause.take(ON_LOT_LINE);
  if (onLine) gathering.add('fire_separation_ft', 0, onLine);
  for (const taken of clause.takeAll(LOT_LINE)) addDistance(gathering, taken);
  const asked = gathering.isAsked('surroundings');
  if (asked) clause.take(/\b(?:from|to|off) the line\b/);
  const house = asked || SAYS_FEET.test(clause.text) ? clause.take(TO_A_HOUSE) : null;
  if (house && !asked) {
    gathering.early.push({ field: 'fire_separation_ft', words: house.words });
  } else if (house) {
    gathering.puzzle(
      house.words,
      'It is the lot line between that counts, not the next house. How many feet is that away?',
    );
  }

  if (asked && clause.take(NEITHER_NAMED)) addNeither(gathering, clause.text);
  const noFire = clause.take(NO_WILDFIRE) ?? (asked ? clause.take(NO_FIRE) : null);
  if (noFire) gathering.add('wildfire_area', false, { ...noFire, isNegated: false });
  const fire = clause.take(WILDFIRE);
  if (fire) gathering.add('wildfire_area', true, fire);

  readTermites(clause, gathering);
  if (!asked) return;
  const neither = clause.take(NEITHER);
  if (neither) addNeither(gathering, neither.words);
  const [only] = gathering.context.open;
  const isOnly = gathering.context.open.length === 1;
  if (isOnly && only === 'wildfire_area') {
    const yes = clause.take(/^(?:yes|y|yeah|yep)$/);
    if (yes) gathering.add('wildfire_area', true, yes);
  }
  const no = clause.take(/^(?:no|n|nope)$/);
  if (!no) return;
  if (isOnly) addNeither(gathering, no.words);
  else gathering.puzzle(no.words, 'No wildfire, no termites, or neither of them?');
};

/** Neither wildfire nor termites, as far as they are still open. */
function addNeither(gathering: Gathering, words: string): void {
  const isOpen = (field: 'wildfire_area' | 'termite_area') =>
    gathering.isOpen(field) && !gathering.findings.some((finding) => finding.field === field);
  if (isOpen('wildfire_area')) gathering.findings.push({ field: 'wildfire_area', value: false, words });
  if (!isOpen('termite_area')) return;
  gathering.findings.push({ field: 'termite_area', value: 'none-to-slight', words });
  gathering.notes.push(TERMITE_MAP_NOTE);
}

function addDistance(gathering: Gathering, taken: Taken): void {
  const text = taken.groups.find((group) => group !== undefined) ?? '';
  const sign = text.startsWith('-') ? -1 : 1;
  const size = text.replace(/^-/, '');
  const distance_in = readLengthIn(size);
  const distance_ft = distance_in === null ? readNumber(size) : hundredths(distance_in / 12);
  if (distance_ft !== null) gathering.add('fire_separation_ft', sign * distance_ft, taken);
}

const readTermites: Reader = (clause, gathering) => {
  for (const { value, level } of TERMITES) {
    const before = clause.take(
      new RegExp(`\\b${level} (?:chance of |risk of )?termites?(?: (?:area|risk))?\\b`),
    );
    const after = clause.take(
      new RegExp(`\\btermites?:?(?: (?:area|risk|are|is))*:? ${level}(?![- ]to[- ])\\b`),
    );
    for (const taken of [before, after]) {
      if (!taken) continue;
      gathering.add('termite_area', value, { ...taken, isNegated: false });
      if (/\bno(?:ne)?(?![- ]to[- ]|\/| or )\b/.test(taken.words)) gathering.notes.push(TERMITE_MAP_NOTE);
    }
  }
  if (gathering.isAsked('surroundings')) {
    for (const { value, pattern } of TERMITE_BARE) {
      const taken = clause.take(pattern);
      if (taken) gathering.add('termite_area', value, taken);
    }
  }
  const vague = clause.take(
    /(?:\b(?:some|few|bad|heavy|moderate|light|many) )?\btermites?\b(?: (?:are )?(?:heavy|moderate|bad|light|common))?/,
  );
  if (vague && !gathering.findings.some((finding) => finding.field === 'termite_area')) {
    gathering.puzzle(
      vague.words,
      'How bad are termites there: none to slight, slight to moderate, moderate to heavy, or very heavy?',
    );
  }
};

const PRIORITIES = [
  {
    key: 'moisture_safety',
    pattern:
      /\b(?:safety against )?moisture(?:[- ]safety)?\b|\bdry(?:ness|ing)?\b|\brot\b|(?<!\b(?:fire|wind|site|crew) )\bsafe(?:ty)?\b(?! (?:from|against) (?!moisture|water|damp|rot))/,
  },
  { key: 'cost', pattern: /\b(?:low(?:est)? )?(?:cost|price)\b|\bcheap(?:est)?\b|\bmoney\b/ },
  { key: 'energy', pattern: /\b(?:low(?:est)? )?energy(?: use)?\b|\bwarm(?:th)?\b/ },
  { key: 'ease', pattern: /\beas(?:e|y|iest)(?: to build| of building)?\b|\bsimpl(?:e|est|icity)\b/ },
  { key: 'carbon', pattern: /\b(?:low(?:est)? )?(?:embodied )?carbon\b|\bclimate\b/ },
] as const;

/** Weights for what is named, in the order it is named. */
const FIRST_WEIGHT = 3;
const SECOND_WEIGHT = 2;

const PRIORITY = PRIORITIES.map(({ pattern }) => pattern.source).join('|');
/** "Cost matters most", "energy first, then cost": what matters, said as such beside another question. */
const SAYS_PRIORITY = new RegExp(
  `(?:^|(?<=[,;.] ))(?:and |but )?(?:(?:${PRIORITY}) (?:(?:is |comes )?first(?! time)|matters? (?:the )?most|(?:is|are) (?:the )?most important|above all|is (?:the|our|my) (?:first |top |main )?priority)|(?:(?:the|our|my) )?(?:first |top |main )?priority(?: is|:) (?:${PRIORITY}))(?:,? (?:and )?then (?:${PRIORITY}))*(?=$|[,;.])`,
);

/**
 * What matters most; the order carries the weight, so that it is read over the whole line. Beside another question only
 * where it is said as such.
 */
export function readPriorities(line: string, gathering: Gathering): string | null {
  if (!gathering.isAsked('priorities')) {
    const said = SAYS_PRIORITY.exec(line)?.[0];
    if (line === 'balanced') return addBalanced(line, gathering);
    if (said === undefined) return null;
    addPriorities(said, gathering);
    return line.replace(said, ' ');
  }
  const balanced =
    /\b(?:balanced|all (?:the same|equal(?:ly)?|alike)|equal(?:ly)?|everything(?: equally)?)\b/.exec(line);
  if (balanced) return line.replace(balanced[0], addBalanced(balanced[0], gathering));
  if (prioritiesIn(line).length === 0) return null;
  if (/\b(?:not|no|never|least)\b|n'?t\b/.test(line)) {
    gathering.puzzle(line, 'Name what matters most, first things first.');
    return '';
  }
  const named = addPriorities(line, gathering);
  return named.reduce((rest, words) => rest.replace(words, ' '), line).replace(/\bkeep(?:ing)?\b/g, ' ');
}

/** All alike; returns what is left of the words. */
function addBalanced(words: string, gathering: Gathering): string {
  const value = { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 1 };
  gathering.findings.push({ field: 'priorities', value, words });
  return ' ';
}

function prioritiesIn(
  line: string,
): { readonly key: string; readonly index: number; readonly words: string }[] {
  return PRIORITIES.flatMap(({ key, pattern }) => {
    const match = pattern.exec(line);
    return match ? [{ key, index: match.index, words: match[0] }] : [];
  }).sort((a, b) => a.index - b.index);
}

/** Adds what a line names, in its order; returns the words. */
function addPriorities(line: string, gathering: Gathering): string[] {
  const named = prioritiesIn(line);
  gathering.findings.push({
    field: 'priorities',
    value: Object.fromEntries(
      named.map(({ key }, i) => [key, i === 0 ? FIRST_WEIGHT : i === 1 ? SECOND_WEIGHT : 1]),
    ),
    words: named.map(({ words }) => words).join(', '),
  });
  return named.map(({ words }) => words);
}
