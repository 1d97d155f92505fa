import { nearestNames } from '../rulebook/nearest-name.ts';
import { FIELD_IDS } from './answers.ts';
import { FIELD_LABELS } from './describe.ts';
import { QUESTIONS, type QuestionId, questionForField } from './questions.ts';
import type { Reader } from './reader.ts';
import { SHORT_QUESTIONS, type ShortQuestion } from './short-questions.ts';
import { TOO_DEAR } from './too-dear.ts';
import { normaliseLine } from './understanding/line-text.ts';

/** What can be drawn of a wall. */
export const PICTURES = ['section', 'temperatures', 'condensate', 'scores', 'fastening', 'buck'] as const;
export type Picture = (typeof PICTURES)[number];

type Plain =
  | 'back'
  | 'why'
  | 'help'
  | 'show'
  | 'done'
  | 'quit'
  | 'start-over'
  | 'keep'
  | 'take-back'
  | 'answer'
  | 'whole-answer'
  | 'cautions'
  | 'firmness'
  | 'find-out'
  | 'sound'
  | 'affordable'
  | 'too-dear'
  | 'contractor'
  | 'how-to-tell'
  | 'impression'
  | 'words'
  | 'projects';

/** Something said to the advisor rather than about the wall. */
export type Command =
  | { readonly [K in Plain | ShortQuestion]: { readonly kind: K } }[Plain | ShortQuestion]
  | { readonly kind: 'save'; readonly name: string | null }
  /** `question` is null when no question goes by that name; `near` says what may have been meant, `then` the new answer. */
  | {
      readonly kind: 'change';
      readonly question: QuestionId | null;
      readonly near: readonly string[];
      readonly then: string | null;
    }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'reader'; readonly reader: Reader }
  /** Of the wall with this rank; null: the first choice. */
  | { readonly kind: 'picture'; readonly picture: Picture; readonly rank: number | null }
  | { readonly kind: 'numbers'; readonly rank: number | null }
  | { readonly kind: 'compare'; readonly ranks: readonly [number, number] }
  | { readonly kind: 'what-if'; readonly words: string }
  | { readonly kind: 'why-not'; readonly words: string }
  | { readonly kind: 'explain'; readonly word: string }
  | { readonly kind: 'open-project'; readonly name: string }
  | { readonly kind: 'new-project'; readonly name: string | null };

const PHRASES: readonly { readonly kind: Plain; readonly pattern: RegExp }[] = [
  {
    kind: 'why',
    pattern:
      /^why(?: (?:do you ask|ask|is (?:that|this) asked|that|this)(?: that| this)?)?\??$|^what for\??$/,
  },
  {
    kind: 'help',
    pattern: /^(?:help|h|commands?|what can i (?:say|do|type|ask)(?: here)?|how does this work)\??$/,
  },
  { kind: 'back', pattern: /^(?:go )?back$|^previous(?: question)?$|^(?:the )?last question$/ },
  {
    kind: 'take-back',
    pattern:
      /^undo(?: (?:that|it))?$|^(?:no,? )?(?:that(?:'?s| is|'?s all| was) )?(?:not right|wrong)$|^take (?:it|that|the line) back$|^(?:i )?(?:did not|didn'?t) mean (?:it|that)$/,
  },
  {
    kind: 'answer',
    pattern:
      /^(?:show|tell|give)(?: me)? the (?:answer|advice|result)(?: again)?$|^(?:the answer|answer|tell me) again$|^repeat(?: (?:it|the answer))?$/,
  },
  {
    kind: 'whole-answer',
    pattern:
      /^(?:(?:show|tell|give)(?: me)? )?(?:(?:the )?(?:whole|full|long|complete) (?:answer|story|thing)|everything|all of it|(?:all )?the details|the rest)$|^(?:details|tell me more|say more|in full)$/,
  },
  {
    kind: 'cautions',
    pattern:
      /^(?:(?:show|tell|list|give)(?: me)? )?(?:(?:all|the) )*(?:cautions|warnings|dangers|hazards)$|^what (?:should|must) i (?:beware of|watch (?:out )?for|be careful (?:of|with|about))\??$/,
  },
  {
    kind: 'firmness',
    pattern:
      /^how (?:firm|sure|certain|robust|solid|settled)(?: (?:is|are) (?:that|it|this|you|the (?:first )?(?:choice|answer)))?(?: of (?:that|it|this))?\??$|^are you (?:sure|certain)\??$|^what (?:would|could|might) change (?:that|it|this|your mind|the (?:first )?(?:choice|answer))\??$/,
  },
  {
    kind: 'how-to-tell',
    pattern:
      /^(?:and )?how (?:do|can|could|would|should) (?:i|we|one) (?:find (?:that |this |it )?out|tell|know|check|measure|look|see)(?: that| this| it)?\??$|^where (?:do|can|should) (?:i|we) (?:find|look|see|read)(?: (?:that|this|it))?(?: up)?\??$|^how to (?:tell|find out|check|measure)(?: that| this| it)?\??$/,
  },
  {
    kind: 'find-out',
    pattern:
      /^(?:what (?:should|must|do) (?:i|we) (?:(?:have|need) to )?|what to )?(?:find out|check|ask|look (?:up|at)|measure|settle)(?: first| before (?:ordering|i order|we order))\??$|^what (?:should|must) (?:i|we) (?:find out|check)\??$/,
  },
  {
    kind: 'sound',
    pattern:
      /^(?:(?:so|and|but),? )?(?:is (?:it|that|this|the (?:wall|plan|answer|first choice|whole thing))(?: all)? (?:really )?(?:sane|sound|sensible|reasonable|crazy|ok|okay|all right|alright|any good|good|a (?:good|sound|sane|crazy|bad) (?:idea|plan|wall))|does (?:it|that|this)(?: all)? make (?:any )?sense|will (?:it|that|this) (?:really )?work|would you (?:build|do) (?:it|that|this)|should i (?:build|do) (?:it|that|this))\??$/,
  },
  {
    kind: 'affordable',
    pattern:
      /^(?:(?:so|and|but),? )?(?:is (?:it|that|this|the (?:wall|plan|first choice|whole thing)) (?:really )?(?:affordable|too (?:expensive|dear)|expensive|within (?:my |our |the )?budget)|can (?:i|we) (?:really )?afford (?:it|that|this|the wall)|(?:what|how much) (?:does|will|would|is|might|could) (?:it|that|this|the (?:wall|job|whole (?:wall|job|thing))|all (?:of )?(?:it|that|this))(?: all)?(?: cost| come to)?(?: me| us)?(?: in (?:all|total)| altogether| all together)?|what(?:'?s| is) the total(?: cost| price)?|(?:the )?total (?:cost|price)|(?:the )?cost in (?:all|total))\??$/,
  },
  { kind: 'too-dear', pattern: TOO_DEAR },
  {
    kind: 'contractor',
    pattern:
      /^(?:(?:so|and),? )?(?:what (?:should|do|must|can|could|would) (?:i|we) (?:(?:have|need) to )?ask|what to ask|(?:which |what )?questions (?:for|to)|what questions (?:should|do|must|can) (?:i|we) ask)(?: to| of| from)? (?:a|an|the|my|our|each|any|every)? ?(?:contractors?|builders?|bidders?|plasterers?|crews?|tradesm[ae]n)(?: first| before (?:hiring|i hire|we hire)(?: (?:them|one|him|her))?)?\??$|^how (?:do|should|can) (?:i|we) (?:choose|pick|find|hire|judge) (?:a|the|my) (?:contractor|builder|plasterer)\??$|^what (?:should|must|can) (?:i|we) ask(?: them)?\??$/,
  },
  {
    kind: 'show',
    pattern:
      /^(?:show|list)(?: me)?(?: (?:my|the|all))*(?: answers?)?(?: so far)?$|^(?:my )?answers$|^summary$|^so far$|^what have i said(?: so far)?\??$/,
  },
  {
    kind: 'impression',
    pattern:
      /^(?:(?:your |the )?first )?impression(?: so far)?$|^where (?:are|do) we(?: stand)?\??$|^what do you think(?: so far)?\??$|^how does it look(?: so far)?\??$/,
  },
  {
    kind: 'done',
    pattern:
      /^(?:i'?m )?done$|^finish(?:ed)?$|^that(?:'?s| is) (?:all|it|enough)$|^assume the rest$|^go ahead$|^enough$|^no more questions$|^(?:just )?(?:tell me|answer(?: now| me)?)$|^skip the rest$/,
  },
  { kind: 'quit', pattern: /^(?:quit|exit|bye|goodbye|leave|stop|close|q)$/ },
  { kind: 'start-over', pattern: /^(?:start|begin) (?:over|again|afresh|fresh|anew)$|^restart$|^reset$/ },
  {
    kind: 'keep',
    pattern:
      /^keep(?: (?:it|that|as is|as it is|the answer|what i said))*$|^(?:leave|as) (?:it )?(?:as it )?(?:is|was|before)$/,
  },
  { kind: 'words', pattern: /^(?:(?:show|list)(?: me)?(?: the)? )?(?:glossary|trade words|words you know)$/ },
  {
    kind: 'projects',
    pattern: /^(?:(?:show|list)(?: me)? )?(?:(?:my|the|all|kept|other) )*(?:projects|talks)$/,
  },
];

const READERS: readonly { readonly reader: Reader; readonly pattern: RegExp }[] = [
  {
    reader: 'homeowner',
    pattern:
      /^(?:in |use |speak )?(?:plain|simple) (?:words|language|english)(?:,? please)?$|^(?:speak|talk|explain (?:it|that)) (?:plainly|simply)$|^no jargon$|^(?:i'?m|i am|we'?re|we are|for)(?: just| only)?(?: an?)? home[- ]?owners?$|^home[- ]?owners?$|^(?:reader |for the )homeowner$|^(?:i'?m|i am|we'?re|we are) not (?:in the trade|(?:an? )?(?:builders?|professionals?|pros?))$/,
  },
  {
    reader: 'professional',
    pattern:
      /^figures first$|^(?:show )?figures and (?:sources|citations)$|^trade words please$|^(?:i'?m|i am|for) an? (?:professional|builder|contractor|engineer|architect)$|^professional$|^(?:reader |for the )professional$/,
  },
];

const CHANGE =
  /^(?:change|edit|correct|fix|redo|revise|go back to)(?: (?:the|my|our))*(?: answers? (?:to|on|about))?\s+(.+?)\.?$/;
const OURS = '(?:the|my|our|your|that|this) ';
const NOT_RIGHT =
  '(?:not (?:quite |at all )?(?:right|correct|true|what i (?:said|meant))|(?:all |quite )?(?:wrong|incorrect|mistaken))';
/** "The budget is wrong", "that's not my climate zone": an answer to be changed, with what it should be where that follows. */
const WRONG: readonly RegExp[] = [
  new RegExp(
    `^(?:no,? |sorry,? )?(?:${OURS})?(.+?)(?:'s| is| are| was| were) ${NOT_RIGHT}(?:[,;:.]? (?:it |they |that )?(?:should be|must be|make it|(?:'s|is|are)(?! not)) (.+))?$`,
  ),
  /^(?:no,? |sorry,? )?(?:the |my |our |your )?(.+?) (?:isn'?t|aren'?t|wasn'?t|weren'?t) (?:quite )?(?:right|correct|true)$/,
  /^(?:no,? |sorry,? )?(?:(?:that|this|it|those|these)(?:'?s| is| was| are| were)(?: not|n'?t) |(?:that|this|it|those|these) (?:isn'?t|wasn'?t|aren'?t) |not )(?:my|our|the right) (.+)$/,
  /^(?:no,? |sorry,? )?(?:(?:that|this|it)(?:'?s| is| was) )?(?:the |a )?wrong (.+)$/,
  /^(?:(?:i|we|you) (?:got|have|had|gave|said|took) )(?:the |my |our )?(.+?) wrong$/,
];
const NAME =
  /^(?:call (?:it|this|the (?:project|wall|record))|name (?:it|this)|rename(?: (?:it|this|the project|project))?(?: to)?|(?:project )?name(?: is|:)|title(?: is|:))\s+(.+)$/i;
const SAVE = /^(?:please )?save(?: (?:it|that|this|the record|record|my answers))*(?: as (.+))?$/i;
const OPEN =
  /^open(?: (?:the )?(?:project|talk))?(?: called)?\s+(?!(?:country|terrain|land|fields?|water|sites?|stud|bays?|joints?)\b)(.+)$/i;
const NEW_PROJECT =
  /^(?:begin |start )?(?:an?other |a )?new (?:project|talk)(?: (?:called|named))?(?:\s+(.+))?$/i;
const WHY_NOT =
  /^(?:(?:and )?why (?:not|no|isn'?t it|not use|not take|wouldn'?t (?:you|i|we) (?:use|take))|what(?:'?s| is) (?:wrong with|against))\s+(.+?)\??$/;
const WHAT_IF = /^(?:(?:and )?what if|suppose|what about|how about|try)\s+(.+?)\??$/;
const EXPLAIN =
  /^(?:explain|define|meaning of|what(?:'?s| is| are)|what do you mean by|what does)\s+(?:an? |the |word |term )*(.+?)(?: mean| stand for| is)?\??$/;
const COMPARE =
  /^compare(?:\s+(?:the )?(?:walls? |numbers? )?(\S+?)(?:\s+(?:and|with|to|against|vs\.?)\s+(?:the )?(?:wall |number )?(\S+?)(?: one)?)?)?$/;
/** "What's the difference between 1 and 3" asks for the same. */
const DIFFERENCE =
  /^(?:what(?:'?s| is| are) )?(?:the )?diff(?:erences?)?(?: between)? (?=(?:(?:the|walls?|numbers?) )*(?:\d|first|second|third|one|two|three)\b)/;
const OF_RANK = String.raw`(?:\s+(?:of|for))?(?:\s+the)?(?:\s+(?:wall|number|choice|no\.?))?(?:\s+(\d{1,2}|first|second|third)(?: (?:one|choice|wall))?)?`;
const NUMBERS = new RegExp(
  `^(?:(?:show|give|tell|list)(?: me)?(?: the| all(?: the)?)? (?:numbers|figures)|numbers|the numbers)${OF_RANK}$`,
);
const PICTURE_WORDS: readonly {
  readonly picture: Picture;
  readonly words: string;
  /** Taken without "show" before it: the word is no answer to anything. */
  readonly alone: boolean;
}[] = [
  { picture: 'section', words: 'drawings?|(?:wall )?section|pictures?', alone: true },
  { picture: 'section', words: 'wall|layers', alone: false },
  { picture: 'temperatures', words: 'temperatures?(?: profile)?|dew[- ]?points?', alone: true },
  { picture: 'condensate', words: 'condensate|condensation|water by month', alone: true },
  { picture: 'scores', words: 'scores?|score parts', alone: true },
  { picture: 'fastening', words: 'fastening(?: sketch)?|fasteners?|screws?', alone: false },
  { picture: 'buck', words: 'bucks?(?: sketch)?|window (?:buck|detail)|opening detail', alone: false },
];
const PICTURE_PATTERNS = PICTURE_WORDS.map(({ picture, words, alone }) => ({
  picture,
  pattern: new RegExp(
    `^(?:(?:show|draw|sketch|see)(?: me)?(?: the| a| its)?(?: (?:drawing|picture|sketch) of(?: the)?)?\\s+)${alone ? '?' : ''}(?:${words})${OF_RANK}$`,
  ),
}));
const LONGEST_NAME = 120;

/** The command that a line is, as a whole; null for an answer. */
export function readCommand(text: string): Command | null {
  const line = normaliseLine(text)
    .replace(/[.!]+$/, '')
    .replace(/^please,? |,? please(?=\??$)/g, '');
  const short = SHORT_QUESTIONS.find(({ pattern }) => pattern.test(line));
  if (short) return { kind: short.kind };
  const phrase = PHRASES.find(({ pattern }) => pattern.test(line));
  if (phrase) return { kind: phrase.kind };
  const reader = READERS.find(({ pattern }) => pattern.test(line));
  if (reader) return { kind: 'reader', reader: reader.reader };
  const said = line.replace(DIFFERENCE, 'compare ').replace(/(?<=^compare .*)\?+$/, '');
  return readNaming(text.trim().replace(/[.!]+$/, '')) ?? readAsking(said) ?? readViewing(said);
}

/** Commands that carry a name, whose capitals are kept. */
function readNaming(text: string): Command | null {
  const cut = (name: string) => name.trim().slice(0, LONGEST_NAME);
  const save = SAVE.exec(text);
  if (save) return { kind: 'save', name: save[1] ? cut(save[1]) : null };
  const fresh = NEW_PROJECT.exec(text);
  if (fresh) return { kind: 'new-project', name: fresh[1] ? cut(fresh[1]) : null };
  const opened = OPEN.exec(text);
  if (opened?.[1]) return { kind: 'open-project', name: cut(opened[1]).replace(/^["']|["']$/g, '') };
  const name = NAME.exec(text);
  return name?.[1] ? { kind: 'name', name: cut(name[1]) } : null;
}

function readAsking(line: string): Command | null {
  const against = WHY_NOT.exec(line);
  if (against?.[1]) return { kind: 'why-not', words: bareName(against[1]) };
  const trial = WHAT_IF.exec(line);
  if (trial?.[1]) return { kind: 'what-if', words: trial[1] };
  const change = CHANGE.exec(line);
  if (change?.[1]) return changeOf(change[1]);
  const wrong = wrongOf(line);
  if (wrong) return wrong;
  const word = EXPLAIN.exec(line);
  return word?.[1] ? { kind: 'explain', word: word[1] } : null;
}

function readViewing(line: string): Command | null {
  const numbers = NUMBERS.exec(line);
  if (numbers) return { kind: 'numbers', rank: rankOf(numbers[1]) };
  for (const { picture, pattern } of PICTURE_PATTERNS) {
    const match = pattern.exec(line);
    if (match) return { kind: 'picture', picture, rank: rankOf(match[1]) };
  }
  const compare = COMPARE.exec(line);
  if (!compare) return null;
  const first = rankOf(compare[1]) ?? 1;
  const second = rankOf(compare[2]);
  return { kind: 'compare', ranks: second === null ? besideFirst(compare[1], first) : [first, second] };
}

/** "Compare" alone is the first two; "compare 3" the first with the third. */
function besideFirst(said: string | undefined, rank: number): readonly [number, number] {
  return said === undefined || rank === 1 ? [1, 2] : [1, rank];
}

const ORDINALS: Readonly<Record<string, number>> = {
  first: 1,
  one: 1,
  second: 2,
  two: 2,
  third: 3,
  three: 3,
};

function rankOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (/^\d{1,2}$/.test(text)) return Number(text);
  return ORDINALS[text] ?? null;
}

/** A wall's name without the words around it: "use mineral wool instead". */
function bareName(words: string): string {
  const bare = words
    .replace(/^(?:(?:just|simply|go with|use|take|build|do|have|it|a|an|some|the) )+(?=\S)/, '')
    .replace(/(?:,? (?:instead|then|here|at all|outside|please))+$/, '');
  return rankNamed(words) === null ? bare : words;
}

/** "Wall 2", "number 2", "the second one": a ranked wall by its rank; null for any other words. */
export function rankNamed(words: string): number | null {
  const named =
    /^(?:the )?(?:(?:wall|number|choice|no\.?) )?(\d{1,2}|first|second|third)(?: (?:one|wall|choice))?$/;
  return rankOf(named.exec(words)?.[1]);
}

function questionNamed(said: string): QuestionId | null {
  const named = QUESTIONS.find(({ id, label, aliases }) =>
    [label.toLowerCase(), id, ...aliases].includes(said),
  );
  const field = FIELD_IDS.find((one) => FIELD_LABELS[one].toLowerCase() === said);
  return named?.id ?? (field ? (questionForField(field)?.id ?? null) : null);
}

/** Something is said to be wrong that a question goes by the name of; else it is no command but something about the wall. */
function wrongOf(line: string): Command | null {
  for (const pattern of WRONG) {
    const [, subject = '', then = null] = pattern.exec(line.replace(/[?]$/, '')) ?? [];
    const bare = subject.replace(/ (?:answer|figure|number|value|amount)s?$/, '');
    const question = questionNamed(subject) ?? questionNamed(bare);
    if (question) return { kind: 'change', question, near: [], then };
  }
  return null;
}

function changeOf(wanted: string): Command {
  const whole = questionNamed(wanted);
  if (whole) return { kind: 'change', question: whole, near: [], then: null };
  const [subject = '', value] = wanted.split(/ to (.+)/);
  const question = questionNamed(subject);
  if (question && value) return { kind: 'change', question, near: [], then: value };
  const near = nearestNames(
    subject,
    QUESTIONS.map((q) => q.label.toLowerCase()),
  );
  return { kind: 'change', question: null, near, then: null };
}

/** What can be said at any time; shown by "help". */
export const COMMAND_HELP: readonly {
  readonly title: string;
  readonly rows: readonly { readonly say: string; readonly does: string }[];
}[] = [
  {
    title: 'While I ask',
    rows: [
      { say: "don't know", does: 'leave it open; I assume something, say what, and say so in the answer' },
      { say: 'why', does: 'why the question is asked' },
      { say: 'how can I tell', does: 'how to find the answer out on site or by asking' },
      { say: 'back', does: 'the question before' },
      {
        say: 'change framing',
        does: 'any question by its name; "change budget to 28" at once; "the budget is wrong" does the same',
      },
      {
        say: 'not right',
        does: 'takes back what I understood from your last line; asks when it was not the last',
      },
      { say: 'show', does: 'your answers so far' },
      { say: 'impression', does: 'what I think of the wall so far' },
      { say: 'done', does: 'no more questions: assume the rest and answer' },
    ],
  },
  {
    title: 'About the answer',
    rows: [
      { say: 'what if …', does: 'tries another answer, as in "what if the budget were $24 a foot"' },
      { say: 'why not …', does: 'what is against a cladding, an insulation or a thickness' },
      { say: 'compare 1 and 2', does: 'two of the ranked walls side by side, and what differs' },
      { say: 'drawing', does: 'the wall in section; also "temperatures", "condensate", "scores"' },
      { say: 'show the fastening', does: 'a sketch of the fasteners; "show the buck" for the window' },
      { say: 'numbers', does: 'every figure with its method and source; "numbers 2" for the second' },
      { say: 'cautions', does: 'everything to beware of' },
      { say: 'how firm is that', does: 'what ties with it, and what would put another wall first' },
      {
        say: 'is it safe',
        does: 'in short; so are "will it rot", "will it crack", "how long does it last", "can I do it myself"',
      },
      { say: 'how many screws', does: 'which fasteners, how long, how far apart and how many' },
      { say: 'what should I do next', does: 'the steps that follow from the answer' },
      { say: 'why does nothing pass', does: 'what comes closest, and which rules are against it' },
      { say: 'find out first', does: 'what to settle before ordering, and how' },
      { say: 'is it sane', does: 'what the rules say of it, its weak points, who must answer for it' },
      { say: 'is it affordable', does: 'dollars for the whole wall, and what is not in them' },
      { say: 'too expensive', does: 'what passes for less, what costs most, and how to change the budget' },
      { say: 'what should I ask a contractor', does: 'questions that follow from the first choice' },
      { say: 'show the answer', does: 'the answer again; "whole answer" with every reason and figure' },
    ],
  },
  {
    title: 'Words and readers',
    rows: [
      { say: 'what is a buck', does: 'explains a word of the trade' },
      { say: 'what does that mean', does: 'explains the words of what was said last' },
      { say: 'glossary', does: 'the words that I can explain' },
      { say: 'plain words', does: 'speak to a homeowner: plain words and cautions first' },
      { say: 'figures first', does: 'speak to a professional: figures and citations first' },
    ],
  },
  {
    title: 'Keeping and leaving',
    rows: [
      { say: 'call it …', does: 'names the wall; the talk is then kept under that name' },
      { say: 'projects', does: 'the talks that are kept; "open …" goes to one, "new project" begins one' },
      { say: 'save', does: 'save the decision record, once there is an answer; "save as …" names it' },
      { say: 'start over', does: 'forget all answers and begin again' },
      { say: 'quit', does: 'leave; your answers are kept for next time' },
    ],
  },
];
