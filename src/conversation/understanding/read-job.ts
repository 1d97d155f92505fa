import { CODE_EDITIONS } from '../../base/code-editions.ts';
import { NO_THICKNESS_LIMIT_IN } from '../../brief/field-words.ts';
import { takeDollars } from './dollars.ts';
import type { Taken } from './line-text.ts';
import { DIGITS, hundredths, LENGTH, NUMBER, readLengthIn, readNumber, readSigned } from './numbers.ts';
import { isWindowTalk } from './read-framing.ts';
import type { Gathering, Reader } from './reading.ts';

/** Words that a house may have between "new" and itself; not what else could be new on it. */
const OF_HOUSE =
  '(?:(?:one|two|three|single|double|multi|[1-3])(?:[- ]and[- ]a[- ]half)?[- ](?:stor(?:e?y|eyed|ied)|family|floor|level|bedroom)|small|little|tiny|big|large|wood(?:en)?|timber|steel|frame|framed|detached)[- ]';
const HOUSE =
  '(?:house|home|building|bungalow|cottage|cabin|garage|shed|studio|ranch|rambler|split[- ]level|colonial|cape|farmhouse|duplex|triplex|barn|wall)';
const NEW_HOUSE = new RegExp(`\\bnew[- ](?:${OF_HOUSE})+${HOUSE}\\b`);
/** Says nothing that is asked, but must not be read as a number. */
const STOREYS =
  /\b(?:one|two|three|single|multi|[1-3])(?:[- ]and[- ]a[- ]half)?[- ](?:stor(?:e?ys?|ies|eyed|ied)|floors?|levels?)\b/;
const NEW =
  /\bnew[- ]?(?:build|house|home|wall|construction|work|addition|building)\b|\bbrand[- ]new\b|\bfrom (?:scratch|the ground up)\b|\b(?:an? )?additions?\b(?! to)/;
const OLD =
  /\bretro(?:-?fit(?:ting|ted)?)?\b|\bre-?(?:side|siding|clad|cladding|cover)\b|\breno(?:vat\w+|s)?\b|\bremodel\w*|\b(?:existing|old) (?:(?!insul|foam)\S+ ){0,2}(?:house|home|wall|building)\b/;
/** What is new on a wall says nothing of the wall. */
const NEW_SKIN =
  /\bnew (?:(?:cement|real|true|acrylic|synthetic|exterior|outside|vinyl|wood|fib(?:er|re)[- ]cement|double|triple|energy[- ]efficient) )*(?:stucco|siding|cladding|skin|finish|face|coat|look|plaster|veneer|panels?|insulation|foam|boards?|windows?|doors?|roof|paint|exterior|outside)\b/;
/** "The addition to our old house" is new, whatever it is added to. */
const ADDED_TO = new RegExp(
  `(?<!\\bin )\\badditions? (?:to|on|onto) (?:(?:the|our|my|an?|this) )?(?:(?:existing|old) )?${HOUSE}\\b`,
);
const STANDS =
  /^(?:it|(?:the|our|my) (?:house|home|building|wall))(?:'s| is)? (?:stands|standing|built)(?: (?:already|there))+$/;
const STANDING =
  /\b(?:existing|old|(?:it )?stands(?: already)?|already (?:there|built|standing)|(?:there|built|standing) already)\b/;

/** Decades of the last century, told by their name. */
const DECADES: readonly string[] = [
  'twenties',
  'thirties',
  'forties',
  'fifties',
  'sixties',
  'seventies',
  'eighties',
  'nineties',
];
const FIRST_DECADE = 1920;
const YEAR = String.raw`(1[6-9]\d\d(?!\d)|20[0-4]\d(?!\d)|${DECADES.join('|')})(?:'?s)?`;
const BUILT_IN = new RegExp(
  `\\b(?:(?:(?:it|(?:our|the|my) ${HOUSE})(?:'?s| is| was) |was )?(?:built|from|dates?(?: back)?(?: from| to)?|dating from|(?:has )?(?:stood|stands)(?: there)? since)(?: in| around| about)?(?: the)?(?: early| mid| late)? )${YEAR}\\b|\\b${YEAR}[- ](?:${OF_HOUSE})*(?:${HOUSE}|(?:one|two|three|[1-3])[- ]stor(?:e?y|eys|ies))\\b`,
);
/** A clause of nothing but a decade says of which time the house is. */
const DECADE_ALONE = /^(?:the )?(?:early |mid |late )?((?:1[6-9]|20)\d0)'?s$/;
const TO_COME = /\b(?:to be|will be|going to be|being|gets?) (?:built|finished)\b/;

/** Whether a clause says when the house was built. */
export function saysWhenBuilt(text: string): boolean {
  return BUILT_IN.test(text) || DECADE_ALONE.test(text);
}

/** New wall or retrofit. */
export const readProject: Reader = (clause, gathering) => {
  const year = clause.take(DECADE_ALONE) ?? clause.take(BUILT_IN);
  const said = year?.groups[0] ?? year?.groups[1] ?? '';
  const decade = DECADES.indexOf(said);
  if (year && isWindowTalk(clause.text)) {
    gathering.puzzle(year.words, 'Of that year I can make nothing; what is in the wall counts.');
  } else if (year && TO_COME.test(clause.text)) {
    gathering.add('project', 'new', year);
  } else if (year) {
    gathering.add('project', 'retrofit', { ...year, isNegated: false });
    gathering.builtIn = decade < 0 ? Number(said) : FIRST_DECADE + 10 * decade;
  }
  for (const taken of clause.takeAll(ADDED_TO)) gathering.add('project', 'new', taken);
  for (const taken of clause.takeAll(NEW_HOUSE)) gathering.add('project', 'new', taken);
  clause.takeAll(STOREYS);
  for (const taken of clause.takeAll(OLD)) gathering.add('project', 'retrofit', taken);
  for (const taken of clause.takeAll(NEW)) gathering.add('project', 'new', taken);
  // Alone between commas it means the wall; with windows being asked about it may mean them.
  const alone = gathering.isAsked('windows') ? null : clause.take(/^new$/);
  if (alone) gathering.add('project', 'new', alone);
  const old = gathering.isAsked('windows')
    ? null
    : clause.take(/^(?:an? |it'?s (?:an? )?)?(?:existing|old)(?: one)?$/);
  if (old) gathering.add('project', 'retrofit', old);
  const stands = clause.take(STANDS);
  if (stands) gathering.add('project', 'retrofit', stands);
  if (!gathering.isAsked('project')) return;
  const standing = clause.take(STANDING);
  if (standing) gathering.add('project', 'retrofit', standing);
  const skin = clause.take(NEW_SKIN);
  if (skin) gathering.puzzle(skin.words, 'Is the wall itself new, or does it stand already?');
  // Other readers may have taken what is new, the windows say, and left the word.
  if (NEW_SKIN.test(clause.text)) return;
  const fresh = clause.take(/\bnew\b/);
  if (fresh) gathering.add('project', 'new', fresh);
};

const YEARS = CODE_EDITIONS.join('|');
const EDITION = new RegExp(
  `\\b(${YEARS})(?: (?:edition|code|irc|ibc|iecc)\\b)|\\b(?:code|edition|irc|ibc|iecc)(?: edition| of)? (${YEARS})\\b`,
);

/** Edition of the model codes. */
export const readEdition: Reader = (clause, gathering) => {
  for (const taken of clause.takeAll(EDITION)) {
    const edition = taken.groups[0] ?? taken.groups[1];
    if (edition) gathering.add('code_edition', edition, taken);
  }
};

const FIXED =
  /\bopenings?(?: sizes?)? (?:(?:can'?t|cannot|can not|may not|must not|won'?t|shouldn'?t)(?: be)? (?:change\w*|enlarged?|made (?:larger|bigger)|grow|move\w*|touched)|(?:are |is |will |must |have to |to )?(?:fixed|stay|remain|stand)(?: as (?:they are|it is))?(?: fixed)?)\b|\b(?:can'?t|cannot|may not) (?:change|enlarge|touch) (?:the )?(?:rough )?openings?\b|\b(?:no change to|keep|keeping) (?:the )?(?:rough )?openings?\b/;
const FREE =
  /\bopenings? (?:can|may|could|might)(?: be)? (?:change\w*|enlarged?|made (?:larger|bigger)|grow|move\w*)\b|\b(?:can|may|could) (?:change|enlarge) (?:the )?(?:rough )?openings?\b/;
const YES =
  /^(?:yes|y|yeah|yep|sure|ok|okay|of course|(?:they |it )?(?:can|may)(?: (?:change|grow|be (?:made )?(?:changed|bigger|larger|enlarged)))?|bigger is (?:fine|ok|okay))$/;
const NO =
  /^(?:no|n|nope|no way|never|(?:(?:i|we) )?(?:do not|don'?t|would not|wouldn'?t) (?:want|like)(?: to)? (?:(?:make|change|touch|enlarge|cut|have)(?: (?:them|it|those|the (?:windows|openings)|anything))?|them|it)(?: (?:any )?(?:bigger|larger|changed))?|(?:i'?d |we'?d |i would |we would )?(?:rather|prefer) not(?: to)?|(?:please )?(?:don'?t|do not) (?:touch|change|enlarge) (?:them|it|anything)|(?:they|(?:the |my |our )?(?:windows|openings)) (?:(?:have to|must|should|will) )?(?:can'?t|cannot|may not|stay|remain)(?: (?:as they are|(?:at )?the same(?: size)?))?|(?:(?:i'?d|we'?d|i would|we would) (?:like|want|prefer) to )?(?:please )?(?:stay|keep|leave)(?: them)?(?: (?:as (?:they are|is)|alone|the same(?: size)?))?|fixed)$/;

/** Whether rough openings may be made larger. */
export const readOpenings: Reader = (clause, gathering) => {
  const fixed = clause.take(FIXED);
  if (fixed) gathering.add('rough_opening_can_change', false, { ...fixed, isNegated: false });
  const free = clause.take(FREE);
  if (free) gathering.add('rough_opening_can_change', true, free);
  if (!gathering.isAsked('openings')) return;
  const yes = clause.take(YES);
  if (yes) gathering.add('rough_opening_can_change', true, yes);
  const no = clause.take(NO);
  if (no) gathering.add('rough_opening_can_change', false, no);
};

const TRUE_STUCCO =
  /\b(?:(?:true|real|genuine|actual|traditional|portland|hard[- ]coat|three[- ]coat|3[- ]coat|cement) )+stucco\b|\bhard[- ]?coat\b|\bcement plaster\b|\bstucco(?: and)? nothing else\b/;
const LOOK =
  /\b(?:the )?(?:look|appearance|texture) (?:of|like) (?:real )?stucco(?: (?:is )?(?:enough|fine))?\b|\bstucco[- ](?:looks?|look-alike|texture[d]?|style|like)(?: (?:panels?|is enough|is fine))?\b|\blooks? like (?:real )?stucco\b/;
const ANY_FINISH = /\bany(?: kind of)? (?:finish|cladding)\b/;
const ANY =
  /^(?:any|(?:the )?cheapest(?: (?:one|thing|finish|that works))?|anything(?: goes| works| that (?:works|serves).*)?|whatever(?: works| is best| looks (?:good|nice|best))?|no preference|(?:i |we )?(?:don'?t|do not) (?:mind|care)(?: (?:what|how) (?:it|they) looks?(?: like)?)?|(?:it )?(?:doesn'?t|does not) matter|open|either)$/;

const OTHER_FINISH =
  /\b(?:(?:just|wood|wooden|vinyl|metal|steel|fib(?:re|er)[- ]cement|cedar|horizontal|vertical|lap) )*(?:sidings?|clapboards?|shingles?|shakes?|planks?|panels?|bricks?|stone|vinyl|wood|metal|cedar|fib(?:re|er)[- ]cement)\b(?: (?:is|are|would be) (?:fine|ok|okay|nice))?/;

const ANY_HINT = 'Say "anything", and I choose among all claddings; only stucco can be asked for by name.';

const CHEAPEST_NOTE =
  'I choose among all claddings then. So that cost decides, say "cost matters most" when I ask what matters, or now.';

/** The finish wanted. "Stucco" alone may mean either, so it is asked about. */
export const readFinish: Reader = (clause, gathering) => {
  for (const taken of clause.takeAll(LOOK)) gathering.add('finish', 'stucco-look', taken);
  for (const taken of clause.takeAll(TRUE_STUCCO)) gathering.add('finish', 'cement-stucco', taken);
  for (const taken of clause.takeAll(ANY_FINISH)) gathering.add('finish', 'any', taken);
  if (gathering.isAsked('finish')) {
    const any = clause.take(ANY);
    if (any) gathering.add('finish', 'any', any);
    if (any && /cheap/.test(any.words)) gathering.notes.push(CHEAPEST_NOTE);
    const other = any ? null : clause.take(OTHER_FINISH);
    if (other) {
      gathering.puzzle(other.words, ANY_HINT);
    }
    const look = clause.take(/^(?:just |only )?(?:the )?look(?: is enough| only)?$/);
    if (look) gathering.add('finish', 'stucco-look', look);
    // It adds nothing to the finish that was named before it.
    if (gathering.findings.some(({ field }) => field === 'finish'))
      clause.take(/^nothing else(?: will do)?$/);
    const real = clause.take(/^(?:the )?(?:true|real) (?:one|thing)$/);
    if (real) gathering.add('finish', 'cement-stucco', real);
  }
  const bare = clause.take(
    /\bstucco\b(?! (?:crew|experience|experienced|workers?|contractors?|plasterers?))/,
  );
  if (bare?.isNegated) {
    gathering.puzzle(`not ${bare.words}`, `I can't leave one finish out. ${ANY_HINT}`);
  } else if (bare) {
    gathering.puzzle(bare.words, 'True cement stucco, or is the look of stucco enough?');
  }
};

const PER_FOOT = String.raw`(?:(?:a|per|/|each|the)\s*)?(?:sq(?:uare)?\.?\s*(?:ft|foot|feet)|sf|sqft|ft2|foot|ft\b)`;
const PER_METRE = String.raw`(?:a|per|/)\s*(?:sq(?:uare)?\.?\s*(?:m\b|met(?:er|re)s?)|m2)`;
/** Square feet in a square metre. */
const FT2_PER_M2 = 10.7639;
const AT_MOST =
  '(?:(?:up to|at most|no more than|not more than|max(?:imum)?(?: of)?|under|below|less than|about|around) )?';

const DOLLARS_PER_METRE = new RegExp(
  `${AT_MOST}(?:(?:\\$|usd)\\s*)?(${NUMBER})\\s*(?:dollars|bucks|usd)?\\s*${PER_METRE}`,
);
const IN_ALL =
  '(?:in )?total|altogether|all together|in all|all in|for (?:everything|it all|all of it|the (?:whole|job|house|wall)(?: (?:thing|job|house|wall|side))?)';
const THOUSANDS = `(${NUMBER})\\s?(?:k\\b|thousand\\b|grand\\b)(?!\\s*(?:${PER_FOOT}))`;
/** "Eight in all" is windows, "1800 in all" may be square feet: a total without a currency is a large figure. */
const LARGE = '(\\d{5,})';
const TOTAL = new RegExp(
  `${AT_MOST}(?:\\$\\s*)?(?<![\\w.-])${THOUSANDS}(?:\\s*(?:dollars|bucks|usd|${IN_ALL})\\b)*|${AT_MOST}(?:(?:\\$|usd)\\s*(${NUMBER})|(?<![\\w.-])(${NUMBER})\\s*(?:dollars|bucks|usd)|(?<![\\w.-])${LARGE})\\s*(?:${IN_ALL})\\b`,
);
/** Where money is asked, "1800 in all" is dollars too. */
const TOTAL_HERE = new RegExp(`${AT_MOST}(?<![\\w.$-])(${DIGITS})\\s*(?:${IN_ALL})\\b`);
const DOLLARS = new RegExp(
  `${AT_MOST}(?:\\$|usd\\s|us\\$)\\s*(-?${NUMBER})(?:\\s*(?:${PER_FOOT}))?(?![\\w.])|${AT_MOST}(?<![\\w.$-])(-?${NUMBER})\\s*(?:dollars|bucks|usd)(?:\\s*${PER_FOOT})?|${AT_MOST}(?<![\\w.$-])(${NUMBER})\\s*(?:a|per|/)\\s*(?:sq(?:uare)?\\.?\\s*(?:ft|foot|feet)|sf|ft2|foot|ft\\b)`,
);

const OTHER_MONEY = new RegExp(
  `(?:[€£¥]|\\b(?:euros?|eur|gbp|cad|c\\$))\\s*${NUMBER}k?|(?<![\\w.-])${NUMBER}\\s*(?:k\\s*)?(?:[€£¥]|(?:euros?|eur|gbp|cad|pounds sterling|canadian dollars)\\b)`,
);
const NAMED = new RegExp(`\\bbudget(?: is| of| about| around|:)*\\s+(${DIGITS})$`);

/** Budget per square foot. A total is not divided here: the area that it covers is known elsewhere. */
export const readBudget: Reader = (clause, gathering) => {
  const foreign = clause.take(OTHER_MONEY);
  if (foreign) gathering.puzzle(foreign.words, 'I count in US dollars: say the budget in those.');
  const total = clause.take(TOTAL);
  if (total) {
    const [thousands, ...dollars] = total.groups;
    const figure = readNumber(thousands ?? dollars.find((text) => text !== undefined) ?? '');
    const usd = figure === null || thousands === undefined ? figure : 1000 * figure;
    if (usd !== null) gathering.budgetTotal = { usd, words: total.words };
  }
  const here = gathering.isAsked('budget') ? clause.take(TOTAL_HERE) : null;
  if (here) gathering.budgetTotal = { usd: Number(here.groups[0]), words: here.words };
  for (const taken of clause.takeAll(DOLLARS_PER_METRE)) {
    const value = readNumber(taken.groups[0] ?? '');
    if (value !== null) gathering.add('budget_usd_per_ft2', hundredths(value / FT2_PER_M2), taken);
  }
  for (const taken of clause.takeAll(DOLLARS)) {
    const text = taken.groups.find((group) => group !== undefined) ?? '';
    const value = readSigned(text);
    if (value !== null) addDollars(gathering, value, taken);
  }
  const named = clause.take(NAMED);
  const value = readNumber(named?.groups[0] ?? '');
  if (named && value !== null) addDollars(gathering, value, named);
};

function addDollars(gathering: Parameters<Reader>[1], usd: number, taken: Taken): void {
  const isPerFoot = new RegExp(PER_FOOT).test(taken.words);
  if (isPerFoot) gathering.add('budget_usd_per_ft2', usd, { ...taken, isNegated: false });
  else takeDollars(gathering, usd, taken.words);
}

const CREWS = [
  {
    value: 'exterior-insulation-experienced',
    pattern:
      /\b(?:experienced (?:(?:with|in) )?|knows? |skilled )?(?:exterior|outside|continuous) insulation(?: (?:crew|experience|experienced|people))\b|\bexperienced (?:with|in) (?:exterior|outside|continuous) insulation\b|\b(?:has|have|we've|they've) (?:done|built|hung) (?:exterior|outside|continuous) insulation(?: before)?\b/,
  },
  {
    value: 'stucco-experienced',
    pattern:
      /\b(?:experienced (?:(?:with|in) )?|knows? |skilled |good )?stucco (?:crew|experience|experienced|workers?|contractors?|plasterers?)\b|\bexperienced (?:with|in) stucco\b|\b(?:knows?|knew) stucco\b|\b(?:has|have|with) (?:a )?plasterers?\b|\b(?:experienced |skilled |good )?(?:plasterers?(?: crew)?|plaster(?:ing)? crew|lathers)\b/,
  },
  {
    value: 'first-time',
    pattern:
      /\bfirst[- ]?tim(?:e|ers?)\b(?: (?:doing this|crew))?|\bnever (?:done|did|built)(?: (?:this|it|one|that))?(?: before)?\b|\bbeginners?\b|\bd\.?i\.?y\b|\bdo[- ]it[- ]yourself\b|\bdoing it myself\b|\bowner[- ]build(?:er|ers)?\b|\b(?:no|without) experience\b|\binexperienced\b/,
  },
  {
    value: 'general',
    pattern:
      /\bgeneral (?:carpenters|crew|builders?|contractors?|framers?)\b(?:(?:, | )no plasterers?)?|\b(?:i'?m|i am|we'?re|we are) (?:an? )?(?:carpenters?|framers?|(?:house ?)?builders?)\b|\b(?:carpenters|framers|framing crew|general crew|ordinary crew|house builders)\b/,
  },
] as const;

/** The crew. */
export const readCrew: Reader = (clause, gathering) => {
  if (gathering.isAsked('crew')) {
    if (isAboutHiring(clause, gathering)) return;
  } else if (SAYS_WHO_HIRES.test(clause.text)) {
    const hired = clause.take(HIRED);
    if (hired) gathering.early.push({ field: 'crew_skill', words: hired.words });
  }
  const without = clause.take(
    /\b(?:no|without|not)(?: an?| any)? (?:plaster(?:ing)? crew|plasterers?|stucco (?:crew|experience))\b/,
  );
  for (const { value, pattern } of CREWS) {
    for (const taken of clause.takeAll(pattern)) {
      gathering.add('crew_skill', value, taken);
    }
  }
  if (gathering.isAsked('crew')) {
    const general = clause.take(/^(?:general|average|ordinary|a general one)$/);
    if (general) gathering.add('crew_skill', 'general', general);
    const stucco = clause.take(/^(?:stucco|stucco[- ]experienced|plaster)$/);
    if (stucco) gathering.add('crew_skill', 'stucco-experienced', stucco);
    const outside = clause.take(/^(?:exterior|outside) insulation(?:[- ]experienced)?$/);
    if (outside) gathering.add('crew_skill', 'exterior-insulation-experienced', outside);
  }
  if (gathering.findings.some((finding) => finding.field === 'crew_skill')) return;
  if (without) {
    gathering.puzzle(
      without.words,
      'Who builds it then: a crew doing this for the first time, or general carpenters?',
    );
  }
  // Whoever builds for themselves may be a carpenter.
  const own = clause.take(OWN_HANDS);
  if (own?.isNegated) gathering.puzzle(`not ${own.words}`, 'Who builds it then?');
  else if (own && !gathering.unclear.some(({ hint }) => hint === OWN_HANDS_HINT)) {
    gathering.puzzle(own.words, OWN_HANDS_HINT);
  }
};

const FIRST_TIME =
  /^(?:(?:it|this)(?:'?s| is| will be|'?ll be)? )?(?:(?:my|our|the|a) )?(?:very )?first[- ]?time(?: (?:for )?(?:me|us))?$/;
const SAYS_WHO_HIRES = /^(?:i|we)\b/;
const HIRED =
  /^(?:(?:i|we)(?:'?m|'?re|'?ll| am| are| will| want to)? )?(?:hire|hiring|pay|paying)(?: (?:a|an|the|some))?(?: \w+)?$|^(?:a|an|the|my|our|some)? ?(?:local |good |small |professional )?(?:handym[ae]n|contractors?|builders?|company|professionals?|pros?|somebody|someone)$/;

/** Who hires is not who builds: then it is asked what the hired ones have built. */
function isAboutHiring(clause: Parameters<Reader>[0], gathering: Parameters<Reader>[1]): boolean {
  const first = gathering.context.isHomeowner ? clause.take(FIRST_TIME) : null;
  if (first) {
    gathering.puzzle(
      first.words,
      'Do you build it yourself for the first time, or is it the first time that you hire a crew, and what has that crew built?',
    );
  }
  const hired = first ? null : clause.take(HIRED);
  if (hired) {
    gathering.puzzle(
      hired.words,
      '"Don\'t know" will do while nobody is hired. What have they built: stucco, outside insulation, or neither (general carpenters)?',
    );
  }
  return (first ?? hired) !== null;
}

/** Asked of whoever builds for themselves, until it is said whether they have done it before. */
export const OWN_HANDS_HINT = 'Is it the first time that you do this, or are you general carpenters?';
const OWN_HANDS =
  /\b(?:(?:do(?:ing)?|build(?:ing)?|did|make) (?:it|this|that|the work|most of it) )?(?:all )?(?:by )?(?:(?:my|our)sel(?:f|ves))\b(?:,? (?:and|with) (?:my|our|a|some) (?:brothers?|sons?|daughters?|wife|husband|father|dad|family|friends?|neighbou?rs?))?|\b(?:(?:and|with) )?(?:my|our) (?:brothers?|sons?|daughters?|wife|husband|father|dad|family|friends?|neighbou?rs?)\b/;

const AREA_FT = new RegExp(
  `(?<![$\\w.-])(-?${NUMBER})\\s*(?:sq(?:uare)?\\.?\\s*(?:ft|foot|feet)|sf\\b|sqft\\b|ft2\\b)\\.?(?:\\s+of\\s+walls?)?`,
);
const IN2_PER_FT2 = 144;
const AREA_M = new RegExp(
  `(?<![$\\w.-])(${NUMBER})\\s*(?:sq(?:uare)?\\.?\\s*(?:m\\b|met(?:er|re)s?)|m2\\b)(?:\\s+of\\s+walls?)?`,
);

/** An area by its name, or a wall by its two lengths. */
const AREA_IS = new RegExp(`\\b(?:wall )?area(?:'s| is| of|:)?(?: about| around)? (${DIGITS})$`);
const LONG_AND_HIGH = new RegExp(
  `(?<![\\w.$-])(${LENGTH}) (?:long|wide) (?:by|x) (${LENGTH}) (?:high|tall)\\b`,
);

const WALL_BY = new RegExp(
  `\\bwall (?:is |of |about |around )*(${LENGTH}|${DIGITS}) ?(?:by|x) ?(${LENGTH}|${DIGITS})(?![\\w-])`,
);
/** Smaller than any wall that is clad by itself: its lengths are of something else. */
const LEAST_WALL_FT2 = 50;

/** A wall by its two lengths; one of several is not the whole. */
export function addWall(gathering: Gathering, area_ft2: number, taken: Taken): void {
  const rounded_ft2 = Math.round(area_ft2);
  if (gathering.isOneOfSeveral) {
    gathering.puzzle(
      taken.words,
      `That is one wall of ${rounded_ft2.toLocaleString('en-US')} sq ft. How many square feet are all of them together?`,
    );
  } else gathering.add('wall_area_ft2', rounded_ft2, taken);
}

/** Wall area. */
export const readArea: Reader = (clause, gathering) => {
  const named = clause.take(AREA_IS);
  if (named) gathering.add('wall_area_ft2', Number(named.groups[0]), named);
  // A wall is long, a window wide.
  const isOfWindow =
    isWindowTalk(clause.text) || (gathering.isAsked('windows') && /\bwide\b/.test(clause.text));
  const wall = isOfWindow ? null : clause.take(LONG_AND_HIGH);
  const [length_in, height_in] = (wall?.groups ?? []).map((text) => readLengthIn(text ?? ''));
  if (wall && length_in && height_in) addWall(gathering, (length_in * height_in) / IN2_PER_FT2, wall);
  const [, ...sides] = wall || isOfWindow ? [] : (WALL_BY.exec(clause.rest) ?? []);
  // Nobody gives a wall in inches without saying so.
  const inFeet = sides.every((text) => /^[\d.]+$|(?:'|ft\.?|feet|foot)$/.test(text));
  const lengthIn = (text: string) => readLengthIn(inFeet && /^[\d.]+$/.test(text) ? `${text} ft` : text) ?? 0;
  const [side_in = 0, other_in = 0] = sides.map(lengthIn);
  const area_ft2 = (side_in * other_in) / IN2_PER_FT2;
  const by = area_ft2 < LEAST_WALL_FT2 ? null : clause.take(WALL_BY);
  if (by) addWall(gathering, area_ft2, by);
  for (const taken of clause.takeAll(AREA_FT)) {
    const text = taken.groups[0] ?? '';
    const value = readSigned(text);
    if (value !== null) gathering.add('wall_area_ft2', value, taken);
  }
  for (const taken of clause.takeAll(AREA_M)) {
    const value = readNumber(taken.groups[0] ?? '');
    if (value !== null) gathering.add('wall_area_ft2', Math.round(value * FT2_PER_M2), taken);
  }
};

/** "It can only stick out 3 inches". */
const MAY_GROW =
  "(?:can(?:'?t|not)?|could(?:n'?t)?|may|must|should)(?: not)?(?: only)? (?:stick|come|go|extend|project|grow|move|build)(?: it)?(?: out)?(?: (?:only|by|up to|at most|any|no|not|more|thicker|further|farther|than))*";
/** What is so thick is not said: only with a limit by its name. */
const LIMIT = new RegExp(
  `(?:\\b(?:at most|(?:no|not) (?:thicker|deeper|wider|bigger|more|further|farther) than|max(?:imum)?(?: of)?|up to|limit(?: of)?|thickness(?: limit)?(?: of| is)?|${MAY_GROW})\\s+)(${LENGTH})(?!\\s*(?:thick )?of\\b)(?:\\s+(?:thick(?:er|ness)?|added|out(?:ward)?s?|total))*|(${LENGTH})\\s+(?:max(?:imum)?|at most|thick(?:ness)? (?:limit|max(?:imum)?|at most|in all)|added|outward|limit|or less)\\b`,
);
const NO_LIMIT =
  /\b(?:no|without)(?: an?| any)? (?:thickness )?limit(?: on (?:the )?thickness)?\b|\bunlimited\b|\bas thick as (?:needed|it takes)\b/;

const NO_LIMIT_OF_ANYTHING = /^(?:(?:no|without)(?: an?| any)? limit|unlimited)$/;

/** How far the wall may grow outward. */
export const readThickness: Reader = (clause, gathering) => {
  for (const taken of clause.takeAll(NO_LIMIT)) {
    const mayBeBudget =
      !gathering.isAsked('size') && gathering.context.answers.budget_usd_per_ft2 === undefined;
    if (mayBeBudget && NO_LIMIT_OF_ANYTHING.test(taken.words)) {
      gathering.puzzle(taken.words, 'Say "no limit on thickness" or "no budget".');
      continue;
    }
    gathering.add('max_added_thickness_in', NO_THICKNESS_LIMIT_IN, { ...taken, isNegated: false });
  }
  for (const taken of clause.takeAll(LIMIT)) {
    const thickness_in = readLengthIn(taken.groups[0] ?? taken.groups[1] ?? '');
    if (thickness_in !== null) {
      gathering.add('max_added_thickness_in', thickness_in, { ...taken, isNegated: false });
    }
  }
};
