import type { FieldId } from '../answers.ts';
import type { QuestionId } from '../questions.ts';
import type { WindowAspect } from '../windows.ts';

const DONT_KNOW =
  /(?:\b(?:i|we) )?(?:\b(?:really |honestly )?(?:do not|don'?t)(?: really| yet)? know(?: yet)?\b|\b(?:no|not an?) (?:idea|clue)\b|\bnot sure\b|\bunsure\b|\bunknown\b|\bnot known\b|\bdunno\b|\bidk\b|\bcan(?:'?t|not) (?:say|tell)\b|\b(?:that(?:'?s| is) )?all (?:that )?(?:i|we) know\b|\bskip\b(?: (?:it|this|that|one))*|\bpass\b|\bno answer\b|\bn\/a\b|\b(?:you|please) (?:choose|decide|assume)\b(?: for me)?|^assume(?: something)?$|\bleave (?:it|that|this) open\b|^\?+$|^work (?:it|that|them) out(?: for me)?$)/;

/** Words that may stand beside "don't know" without naming anything. */
const EMPTY_WORDS =
  /\b(?:the|a|an|it|its|that|this|about|of|for|yet|which|what|is|are|how|one|question|i|we|have|there|any|exactly|whether|rest|others|remaining|details?|else|them|much|if|really|right now|at the moment|sorry|maybe|under|underneath|behind|beneath)\b|[?.!]/g;

const TOPICS: readonly { readonly pattern: RegExp; readonly fields: readonly FieldId[] }[] = [
  {
    pattern: /\b(?:steel thickness|thickness of (?:the )?(?:steel|studs?)|gau?ges?|mils?)\b/,
    fields: ['framing.steel_thickness_mil'],
  },
  { pattern: /\b(?:spacing|on cent(?:er|re)s?|apart|how far apart)\b/, fields: ['framing.spacing_in'] },
  { pattern: /\b(?:stud )?(?:size|depth|deep)\b/, fields: ['framing.depth_in'] },
  { pattern: /\b(?:material|wood or steel)\b/, fields: ['framing.material'] },
  { pattern: /\bsheathing\b/, fields: ['sheathing'] },
  { pattern: /\b(?:cavity|insulation|r-?\s?values?|batts?)\b/, fields: ['cavity_insulation_r'] },
  { pattern: /\b(?:vapou?r|retarders?|barrier|kraft|poly)\b/, fields: ['interior_vapour_retarder'] },
  { pattern: /\bwindows\b/, fields: ['windows'] },
  { pattern: /\bopenings?\b/, fields: ['rough_opening_can_change'] },
  { pattern: /\bfinish\b/, fields: ['finish'] },
  { pattern: /\b(?:budget|costs?|price|money)\b/, fields: ['budget_usd_per_ft2'] },
  { pattern: /\b(?:crew|skill)\b/, fields: ['crew_skill'] },
  { pattern: /\barea\b(?! of)/, fields: ['wall_area_ft2'] },
  { pattern: /\b(?:thick(?:ness)?|limit|outward)\b/, fields: ['max_added_thickness_in'] },
  { pattern: /\b(?:wind|speed)\b/, fields: ['basic_wind_speed_mph'] },
  { pattern: /\bexposure\b/, fields: ['exposure'] },
  { pattern: /\b(?:roof|height|high)\b/, fields: ['mean_roof_height_ft'] },
  { pattern: /\b(?:lot|property|distance|separation)(?: line)?\b/, fields: ['fire_separation_ft'] },
  { pattern: /\bwild ?fires?\b/, fields: ['wildfire_area'] },
  { pattern: /\btermites?\b/, fields: ['termite_area'] },
  { pattern: /\b(?:priorit(?:y|ies)|matters)\b/, fields: ['priorities'] },
];

const WINDOW_TOPICS: readonly { readonly pattern: RegExp; readonly aspects: readonly WindowAspect[] }[] = [
  { pattern: /\bweights?\b/, aspects: ['weight_lb'] },
  { pattern: /\b(?:mounting|flanges?|flanged|fins?)\b/, aspects: ['mounting'] },
  { pattern: /\b(?:glazing|panes?|glass)\b/, aspects: ['glazing'] },
  { pattern: /\b(?:operation|kind|type|sort)\b/, aspects: ['operation'] },
  { pattern: /\b(?:sizes?|dimensions?|width|height)\b/, aspects: ['width_in', 'height_in'] },
  { pattern: /\b(?:count|how many|number)\b/, aspects: ['count'] },
];

/** What leaves one question open without "don't know". */
const LEFT_OPEN: readonly {
  /** Means something else, or nothing, at any other question; null where it says what it is about. */
  readonly question: QuestionId | null;
  readonly field: FieldId;
  readonly pattern: RegExp;
}[] = [
  {
    question: 'budget',
    field: 'budget_usd_per_ft2',
    pattern:
      /^(?:(?:i |we )?(?:have )?(?:no|without an?) (?:budget|limit|cap|maximum|max)(?: (?:set|yet|on (?:the )?(?:budget|money|cost|price)))*|unlimited|money is no (?:object|problem|matter)|(?:the )?sky(?: is|'?s) the limit)$/,
  },
  {
    question: null,
    field: 'budget_usd_per_ft2',
    pattern:
      /^(?:(?:i |we )?(?:have )?(?:no|without an?|there is no) (?:budget|(?:limit|cap|maximum) on (?:the )?(?:budget|money|costs?|price))(?: (?:set|yet|limit))*|money is no (?:object|problem|matter))$/,
  },
  {
    question: 'crew',
    field: 'crew_skill',
    pattern:
      /^(?:no ?(?:body|[- ]?one)(?: (?:yet|so far|hired(?: yet)?))*|undecided|not (?:yet )?decided(?: yet)?|(?:i |we )?have(?: not|n'?t) (?:decided|hired)(?: (?:anyone|anybody|them))?(?: yet)?)$/,
  },
];

/** The field that a clause leaves open without "don't know": "no limit" of the budget, "nobody yet" of the crew. */
export function leftOpenBy(clause: string, question: QuestionId | null): FieldId | null {
  const open = LEFT_OPEN.find(
    (one) => (one.question === null || one.question === question) && one.pattern.test(clause),
  );
  return open?.field ?? null;
}

export type DontKnow = {
  /** Named fields; empty when it was said of the question as a whole. */
  readonly fields: readonly FieldId[];
  readonly windowAspects: readonly WindowAspect[];
};

/**
 * "Don't know", "skip", "?" and the like, alone or about something named ("spacing unknown"); null when the clause
 * says anything else as well.
 *
 * @param inWindows  whether windows are the question, so that "size" means theirs
 */
export function readDontKnow(clause: string, inWindows: boolean): DontKnow | null {
  const match = DONT_KNOW.exec(clause);
  if (!match) return null;
  let rest = clause.replace(match[0], ' ');
  const fields: FieldId[] = [];
  const windowAspects: WindowAspect[] = [];
  if (inWindows) {
    for (const topic of WINDOW_TOPICS) {
      if (!topic.pattern.test(rest)) continue;
      windowAspects.push(...topic.aspects);
      rest = rest.replace(topic.pattern, ' ');
    }
  }
  for (const topic of TOPICS) {
    if (!topic.pattern.test(rest)) continue;
    if (!(inWindows && topic.fields.includes('windows'))) fields.push(...topic.fields);
    rest = rest.replace(topic.pattern, ' ');
  }
  if (
    /[a-z0-9]/.test(
      rest.replace(/\b(?:stud|studs|vapou?r|retarder|line|or)\b/g, ' ').replace(EMPTY_WORDS, ' '),
    )
  )
    return null;
  return { fields, windowAspects };
}
