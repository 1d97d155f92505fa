import { listed } from '../../base/listed.ts';
import type { Finding } from '../answers.ts';
import { FIELD_IDS } from '../answers.ts';
import { takesValue } from '../answers-schema.ts';
import type { Choice } from '../questions.ts';
import { type WindowAspect, type WindowReading, withUnknownAspects } from '../windows.ts';
import { readBoardWish } from './board-wishes.ts';
import { corrected } from './corrections.ts';
import { settleSmallBudget, takeBareBudget } from './dollars.ts';
import { leftOpenBy, readDontKnow } from './dont-know.ts';
import { withoutFillers } from './left-words.ts';
import { Clause, normaliseLine, splitClauses, straighten } from './line-text.ts';
import { type Mark, matterOf, takeAsides, turnAway } from './other-matters.ts';
import { fieldsForNumber, hasRange, readFigures } from './read-figures.ts';
import { isLumberBesideWindows, isStudTalk, isWindowTalk, readFraming } from './read-framing.ts';
import {
  readArea,
  readBudget,
  readCrew,
  readEdition,
  readFinish,
  readOpenings,
  readProject,
  readThickness,
} from './read-job.ts';
import { placeWords, readPlace } from './read-place.ts';
import { readPriorities, readSurroundings, readWind } from './read-site.ts';
import { readCavity, readRetarder, readSheathing } from './read-wall.ts';
import { readBareFigure, readWindows } from './read-windows.ts';
import { type Context, Gathering, NOTHING_SAID, type Reader, type Reading } from './reading.ts';
import { isSaid, settleAge, settleFraming, settleOwnHands, settleVague, withoutClashes } from './settle.ts';
import { settleMetricSizes } from './standard-sizes.ts';
import { readOldCladding, readUnframed, settleStandingWall } from './standing-walls.ts';
import { readFill, readLining } from './vague-answers.ts';

/** Readers in the order they may take words: the ones with the surest signs first. */
const READERS: readonly Reader[] = [
  readEdition,
  readBudget,
  readArea,
  readWind,
  readThickness,
  readFraming,
  readSurroundings,
  readRetarder,
  readCavity,
  readFill,
  // Before the lining: "gypsum sheathing" is no gypsum board inside.
  readSheathing,
  readLining,
  readProject,
  readOpenings,
  readCrew,
  readFinish,
];

/** Those whose words leave no doubt where windows are asked and any figure may tell how many. */
const NO_WINDOWS_FOR_SURE: readonly Reader[] = [readThickness, readSurroundings, readProject, readOpenings];

/** A line that asks about something is no answer, though it names it: "do I need poly", "is 2x6 better?". */
const ASKS =
  /^(?:how (?:much|many|thick|deep|big|do|does|is|are|would|can|should)\b|(?:is|are) (?:it|they|there|this|that|these) (?:ok|okay|fine|better|good|enough|allowed|needed|necessary|worth|possible|legal|best)\b|do (?:i|we|you|they)\b(?! not)|does (?:it|this|that|one)\b|does (?:\S+ ){1,2}(?:matter|work|count|help|make)\b|should (?:i|we|it|they)\b|(?:is|are|do|does|can|could|would|should|will)\b.*\?$)/;

/** Reads one line of the user's, in which a slip may be mended: "2x4, sorry 2x6". */
export function understand(said: string, context: Context): Reading {
  const found = corrected(said, (line) => readLine(line, context));
  if (!found) return readLine(said, context);
  const reading = readLine(found.line, context);
  return found.note === null ? reading : { ...reading, notes: [...reading.notes, found.note] };
}

/**
 * Reads one line of the user's against what is being asked. Nothing is guessed: a word that no reader takes, a range,
 * an "or", a negation and a number that may mean two things all come back as unclear or to choose from.
 */
function readLine(said: string, context: Context): Reading {
  const text = context.question === 'budget' ? said.replace(SPACED_THOUSANDS, '$1') : said;
  const label = choiceByLabel(text, context.choices);
  if (label) return readChoice(label, context);
  if (context.question === 'place' && ZIP_ALONE.test(text)) {
    return { ...NOTHING_SAID, unclear: [{ words: straighten(text), hint: ZIP_HINT }] };
  }
  if (ASKS.test(normaliseLine(text))) {
    const hint = 'That asks, so I took nothing from it. Say what the wall has, or "don\'t know".';
    return { ...NOTHING_SAID, unclear: [{ words: straighten(text), hint }] };
  }
  const numbers = readNumbersOnly(text, context);
  if (numbers) return numbers;

  const place = readPlace(straighten(text), context.question === 'place');
  const gathering = new Gathering(context);
  if (place.zone) {
    gathering.findings.push({ field: 'place', value: place.zone.place, words: place.zone.words });
  }
  if (place.halfZone) {
    gathering.puzzle(
      place.halfZone.words,
      place.halfZone.offered.length > 0
        ? `A is moist, B dry, C marine. Which one is it: ${listed(place.halfZone.offered, 'or')}?`
        : 'There is no such zone.',
    );
  }
  const line = normaliseLine(place.rest);
  gathering.isOneOfSeveral = SEVERAL_WALLS.test(line);
  const afterPriorities = readPriorities(line, gathering);
  const lines = readClauses(splitClauses(afterPriorities ?? line).flatMap(withoutWindowsApart), gathering);
  settleFraming(gathering);
  settleMetricSizes(gathering);
  settleAge(gathering);
  const unframed = settleStandingWall(
    gathering,
    isNewWall(gathering),
    isSaid('sheathing', gathering.findings, lines.unknowns),
  );
  settleOwnHands(gathering);
  settleVague(gathering, lines.unknowns);
  settleSmallBudget(gathering);
  const { findings, clashes } = withoutClashes(gathering.findings);

  const asksPlace = context.question === 'place';
  const leftover = lines.leftovers.join(', ');
  const isNewPlace = place.lookUp === null && asksPlace && !place.zone && leftover !== '';
  // A place may hold any word, so what was left over while the place is asked is looked up rather than puzzled over.
  const lookUp = isNewPlace
    ? findings.length === 0 && gathering.unclear.length === 0
      ? placeWords(straighten(text))
      : placeWords(leftover)
    : place.lookUp;
  const reading: Reading = {
    findings,
    unknowns: lines.unknowns,
    windows: lines.windows,
    windowsComplete: lines.windowsComplete,
    windowDetailsUnknown: lines.windowDetailsUnknown,
    place: lookUp,
    either: gathering.either,
    unclear: [
      ...gathering.unclear,
      ...clashes,
      ...(isNewPlace ? [] : lines.leftovers.map((words) => ({ words, hint: '' }))),
    ],
    budgetTotal: gathering.budgetTotal,
    notes: gathering.notes,
    early: gathering.early.filter(({ field }) => !isSaid(field, findings, lines.unknowns)),
    cautions: gathering.cautions,
    unframed,
  };
  // "Maybe" is made of words that carry nothing: not understood either.
  return isSilent(reading) ? { ...reading, unclear: [{ words: straighten(text), hint: '' }] } : reading;
}

/** What a line that answers nothing leaves of the question asked. */
export function leavingOpen(context: Context): Reading {
  return understand("don't know", context);
}

/** A size beside it is that of one wall. */
const SEVERAL_WALLS =
  /\b(?:[2-9]|two|three|four|five|six|several|both|all) (?:\w+ )?(?:walls|sides)\b|\b(?:ft|feet|foot) each\b/;

/** Said in this line, or before it. */
function isNewWall({ findings, context }: Gathering): boolean {
  const said = findings.find(({ field }) => field === 'project')?.value;
  return (said ?? context.answers.project) === 'new';
}

function isSilent(reading: Reading): boolean {
  const { findings, unknowns, windows, unclear, early, place, windowsComplete, windowDetailsUnknown } =
    reading;
  if (reading.budgetTotal || reading.either || reading.unframed) return false;
  const isListed = [findings, unknowns, windows, unclear, early, reading.notes].some(
    (list) => list.length > 0,
  );
  return !isListed && place === null && !windowsComplete && !windowDetailsUnknown;
}

function choiceByLabel(text: string, choices: readonly Choice[]): Choice | null {
  const said = plainLabel(text);
  return choices.find((choice) => plainLabel(choice.label) === said) ?? null;
}

function plainLabel(text: string): string {
  return normaliseLine(text).replace(/[.!]+$/, '');
}

function readChoice(choice: Choice, context: Context): Reading {
  const findings = findingsOf(choice);
  if (findings.length > 0) return { ...NOTHING_SAID, findings };
  return understand(choice.label, { ...context, choices: [] });
}

function findingsOf(choice: Choice): Finding[] {
  return FIELD_IDS.flatMap((field) => {
    const value = choice.sets[field];
    return value === undefined ? [] : [{ field, value, words: choice.label }];
  });
}

const ZIP_ALONE = /^\s*(?:(?:my |the |our )?zip(?: ?code)?(?: is|:)? )?\d{5}(?:-\d{4})?[\s.!]*$/i;
const ZIP_HINT =
  'I know no ZIP codes. Give the county and the state, or the town and the state, such as "Boulder County, Colorado".';

/** "25 000": thousands set apart by a space, where a sum is asked. */
const SPACED_THOUSANDS = /(?<![\d.])(\d{1,3}) (?=\d{3}(?!\d))/g;
const NUMBERS_ONLY = /^(?:(choice|number|option|no\.?|#)\s*)?(\d+(?:\s*(?:,|;|and|\s)\s*\d+)*)\.?\)?$/;

/** A line of bare numbers: numbered choices, or figures for what is asked; put to the user when it may be either. */
function readNumbersOnly(text: string, context: Context): Reading | null {
  const match = NUMBERS_ONLY.exec(normaliseLine(text));
  if (!match) return null;
  const saysChoice = match[1] !== undefined;
  const numbers = (match[2] ?? '').split(/\D+/).map(Number);
  // Of windows any figure that is no choice tells how many; none at all too.
  const isOfWindows = context.question === 'windows';
  if (isOfWindows && (context.choices.length < Math.max(...numbers) || numbers.includes(0))) return null;
  const gathering = new Gathering(context);
  for (const number of numbers) {
    const words = String(number);
    const choice = context.choices[number - 1];
    if (!saysChoice && takeBareBudget(gathering, number, words)) continue;
    const fields = saysChoice ? [] : fieldsForNumber(gathering, number);
    const asFigures = fields
      .map((field) => ({ field, value: number, words }))
      // Beside a choice, a figure that the field can't take is no second reading.
      .filter(({ field, value }) => !choice || takesValue(field, value));
    const asChoice = choice ? findingsOf(choice) : [];
    if (choice && asFigures.length > 0 && asChoice.length > 0) {
      return { ...NOTHING_SAID, either: { words, findings: [...asChoice, ...asFigures] } };
    }
    if (choice) {
      if (asChoice.length === 0) return readChoice(choice, context);
      gathering.findings.push(...asChoice);
    } else if (asFigures.length > 1) {
      return { ...NOTHING_SAID, either: { words, findings: asFigures } };
    } else if (asFigures[0]) {
      gathering.findings.push(asFigures[0]);
    } else {
      gathering.puzzle(
        words,
        context.choices.length > 0 ? `The choices are 1 to ${context.choices.length}.` : '',
      );
    }
  }
  settleSmallBudget(gathering);
  const { findings, clashes } = withoutClashes(gathering.findings);
  const { budgetTotal, either } = gathering;
  return { ...NOTHING_SAID, findings, unclear: [...gathering.unclear, ...clashes], budgetTotal, either };
}

type ClauseReadings = {
  readonly leftovers: string[];
  readonly unknowns: Finding['field'][];
  readonly windows: WindowReading[];
  windowsComplete: boolean;
  windowDetailsUnknown: boolean;
};

const NONE =
  "(?:(?:no|without|zero|(?<![\\d.])0|there (?:is|are)(?:n'?t| not)|(?:has|have)(?:n'?t| not)|(?:does|do)(?:n'?t| not) have)(?: any| a)?)";
const IN_IT = '(?: (?:at all|there|in (?:it|(?:this|the|that) wall)|on (?:this|the|that) (?:side|wall)))*';
/** What is missing may be a part of the window alone. */
const NO_PART =
  '(?![\\w-]| (?:flanges?|fins?|frames?|trims?|sills?|weights?|sizes?|bucks?|changes?|replacements?)\\b)';
const NO_WINDOWS = new RegExp(
  `\\b${NONE} (?:windows?(?: n?or doors?)?|doors? n?or windows?)${NO_PART}${IN_IT}|\\bwindowless\\b|\\bblank (?:wall|side)\\b`,
);
/** "2x6 24oc no windows": what is said of the wall is not said of a window. */
function withoutWindowsApart(clause: string): string[] {
  const [none] = NO_WINDOWS.exec(clause) ?? [];
  if (none === undefined) return [clause];
  const rest = clause.replace(none, ' ').replace(/\s+/g, ' ').trim();
  return rest === '' ? [clause] : [rest, none.trim()];
}

/** Where the windows are asked; elsewhere "no openings" may be which of them can be changed. */
const NONE_HERE = new RegExp(
  `^(?:${NONE} openings?|(?:there (?:are|is) )?none|no|0|zero|nothing|not any)${IN_IT}$`,
);
/** Adds nothing to a wall without windows. */
const NO_DOORS = new RegExp(`^${NONE} doors?${IN_IT}$`);
const NO_MORE_WINDOWS =
  /\b(?:no|nothing) (?:more(?! than)|other|others|else)(?: kinds?)?(?: of)?(?: windows?)?(?: or doors?)?\b|\bthat(?:'?s| is) all(?: the windows)?\b|\bonly (?:those|these|that)\b/;
const NONE_LEFT = /^(?:no|none|nope|done|that(?:'?s| is) it)$/;

/** Said behind a window it is its weight that is to be worked out. */
const WORK_IT_OUT = /^work /;

function readClauses(clauses: readonly string[], gathering: Gathering): ClauseReadings {
  const { context } = gathering;
  const out: ClauseReadings = {
    leftovers: [],
    unknowns: [],
    windows: [],
    windowsComplete: false,
    windowDetailsUnknown: false,
  };
  const inWindows = context.question === 'windows';
  const aspects: WindowAspect[] = [];
  let isRestUnknown = false;
  for (const [i, words] of clauses.entries()) {
    const open = leftOpenBy(words, context.question);
    if (open) {
      out.unknowns.push(open);
      continue;
    }
    const dontKnow = readDontKnow(words, inWindows);
    if (dontKnow) {
      aspects.push(...dontKnow.windowAspects);
      out.unknowns.push(...dontKnow.fields);
      if (dontKnow.fields.length > 0 || dontKnow.windowAspects.length > 0) continue;
      if (context.windowsPhase === 'kinds' && out.windows.length > 0 && WORK_IT_OUT.test(words))
        aspects.push('weight_lb');
      else isRestUnknown = true;
      continue;
    }
    if (hasRange(words)) {
      gathering.puzzle(words, 'One figure, please, not a range.');
      continue;
    }
    readOneClause(new Clause(words), gathering, out, clauses.slice(0, i));
  }
  if (isRestUnknown) leaveOpen(gathering, out, clauses);
  if (aspects.length > 0) {
    const unknowns = Object.fromEntries(aspects.map((aspect) => [aspect, 'unknown' as const]));
    foldWindow(out.windows, { window: unknowns, isForAll: false });
  }
  return out;
}

/** "Don't know" about the question as a whole, or about what the line leaves of it. */
function leaveOpen({ context, findings }: Gathering, out: ClauseReadings, clauses: readonly string[]): void {
  // Beside windows alone "the rest" is theirs, whatever is asked.
  const isOfWindows =
    context.windowsPhase === 'kinds' ||
    (context.question !== 'windows' && findings.length === 0 && clauses.some((one) => /\brest\b/.test(one)));
  if (isOfWindows && out.windows.length > 0) {
    // "Four windows, the rest I don't know": nothing more is known of them, nor of any others.
    out.windows.forEach((reading, i) => {
      out.windows[i] = { ...reading, window: withUnknownAspects(reading.window) };
    });
    out.windowsComplete = true;
  } else if (context.windowsPhase === 'details') out.windowDetailsUnknown = true;
  else if (context.windowsPhase === 'more') out.windowsComplete = true;
  else out.unknowns.push(...context.open);
}

/** What another house has says nothing of this one. */
const SOMEBODY_ELSES =
  /\b(?:my|our|the|a) (?:neighbou?rs?|friends?|brothers?|sisters?|parents?|in-?laws|cousins?|uncles?|co-?workers?)(?:'s?)? (?:ha(?:s|ve|d)|did|does|used?|uses|got|built|chose|(?:house|wall|place|home) (?:ha(?:s|d)|is|was))\b/;

const UNSURE = /\b(?:or|either|unless|versus|vs|if|depends|except|but)\b/;
/** Beside what was understood these may turn it round: "the poly was removed", "I doubt there is poly". */
const DENIED =
  /\b(?:not|never|doubt|used to|removed|ripped out|torn out|taken out|tore out|took out|pulled out|gone|isn'?t|aren'?t|wasn'?t|don'?t|doesn'?t|didn'?t|won'?t|can'?t)\b/;
/** "Or" that leaves no doubt about the figure before it. */
const ROUNDING = /\b(?:or (?:so|thereabouts)|more or less|give or take|at (?:least|most)|or (?:more|less))\b/;

/** A "not" whose word has been asked about. */
const SPENT =
  /^(?:(?:i|we|it|they|this|that|you)(?:'?m|'?re|'?s| am| are| is)? )*(?:really |still )?(?:no|not|without|never|isn'?t|aren'?t|wasn'?t|don'?t|doesn'?t|won'?t|can'?t|hates?|dislikes?|avoid)(?: (?:an?|the|be|have|want|like|use|going|planning|to|do|doing|need))*$|^(?:is|are)(?:n't| not)(?: (?:for|what|an?|the|us|me|we|i|want|going|to|be|issue|problem|concern))*$/;

function readOneClause(
  clause: Clause,
  gathering: Gathering,
  out: ClauseReadings,
  before: readonly string[],
): void {
  const { context } = gathering;
  const mark: Mark = {
    findings: gathering.findings.length,
    early: gathering.early.length,
    budgetTotal: gathering.budgetTotal,
    either: gathering.either,
  };
  const unclear = gathering.unclear.length;
  if (SOMEBODY_ELSES.test(clause.text)) {
    gathering.puzzle(
      clause.text,
      'That is somebody else’s wall, so I took nothing from it. What does yours have?',
    );
    return;
  }
  takeAsides(clause, gathering);
  const asked = gathering.unclear.length;
  // "Nothing else" closes the list of windows only where they are what is talked about.
  const isAboutWindows =
    context.question === 'windows' || out.windows.length > 0 || /\b(?:windows?|doors?)\b/.test(clause.text);
  const closing = !isAboutWindows
    ? null
    : (clause.take(NO_MORE_WINDOWS) ?? (context.windowsPhase === 'more' ? clause.take(NONE_LEFT) : null));
  if (closing) out.windowsComplete = true;
  const none = clause.take(NO_WINDOWS) ?? (context.windowsPhase === 'kinds' ? clause.take(NONE_HERE) : null);
  if (none) gathering.findings.push({ field: 'windows', value: [], words: none.words });
  if (gathering.findings.some(({ field, value }) => field === 'windows' && Array.isArray(value))) {
    clause.take(NO_DOORS);
  }

  // Before everything that takes "wood", "boards" or "stucco" for something else.
  readOldCladding(clause, gathering);
  readUnframed(clause, gathering);
  readBoardWish(clause, gathering);
  // Money, areas and wind speeds are not windows, whatever the question is.
  for (const reader of READERS.slice(0, 4)) reader(clause, gathering);
  if (context.question === 'windows' && !isWindowTalk(clause.text)) {
    for (const reader of NO_WINDOWS_FOR_SURE) reader(clause, gathering);
    if (isStudTalk(clause.text)) readFraming(clause, gathering);
  }
  if (isLumberBesideWindows(clause.text)) readFraming(clause, gathering);
  const told = readWindows(clause, gathering, out.windows.length > 0);
  for (const reader of READERS.slice(4)) reader(clause, gathering);
  const window = turnAway(clause, gathering, mark, told, before);
  clause.takeAll(ROUNDING);
  keepMoneyToItself(clause, gathering, mark);
  const figure =
    context.question === 'windows'
      ? readBareFigure(clause, gathering, window)
      : readFiguresOf(clause, gathering, mark);

  const leftover = withoutFillers(clause.leftover());
  const isAsked = gathering.unclear.length > asked;
  const isDenied = !isAsked && gathering.findings.length > mark.findings && DENIED.test(leftover);
  if (isDenied || UNSURE.test(leftover)) {
    gathering.findings.length = mark.findings;
    gathering.early.length = mark.early;
    gathering.unclear.length = unclear;
    gathering.budgetTotal = mark.budgetTotal;
    gathering.either = mark.either;
    gathering.puzzle(
      clause.text,
      isDenied
        ? 'That may mean the opposite. Say what there is, or "don\'t know".'
        : 'That leaves it open. Say one of them, or "don\'t know".',
    );
    return;
  }
  const reading = figure ?? window;
  if (reading) foldWindow(out.windows, reading);
  const isSpent = SPENT.test(leftover) && isAsked;
  if (/[\p{L}\p{N}]/u.test(leftover) && !isSpent) out.leftovers.push(leftover);
}

/** Words beside a sum that say nothing of what it is for. */
const MONEY_WORDS =
  /\b(?:stay(?:ing)?|under|below|keep it|saved(?: up)?|set aside|ballpark|tops|ideally|available|limit(?:ed)?|siding|cladding|exterior|outside)\b/;
const IS_PER_FOOT = /\b(?:foot|ft2?|sf|sqft|feet|metre|meter|m2)\b/;

/** A sum beside words that nobody understands may be the price of something else. */
function keepMoneyToItself(clause: Clause, gathering: Gathering, mark: Mark): void {
  const sum = gathering.findings.slice(mark.findings).find(({ field }) => field === 'budget_usd_per_ft2');
  const isEither =
    gathering.either !== mark.either &&
    gathering.either?.findings.some(({ field }) => field === 'budget_usd_per_ft2');
  const isTotal = isEither || gathering.budgetTotal !== mark.budgetTotal;
  if (!isTotal && !sum) return;
  clause.takeAll(MONEY_WORDS);
  if (!isTotal && sum && IS_PER_FOOT.test(sum.words)) return;
  const leftover = withoutFillers(clause.leftover());
  if (leftover === '' || UNSURE.test(leftover)) return;
  if (sum) gathering.findings.splice(gathering.findings.indexOf(sum), 1);
  gathering.budgetTotal = mark.budgetTotal;
  if (isEither) gathering.either = mark.either;
  gathering.puzzle(
    clause.text,
    'If that is what the outside of the wall may cost, say "budget" and the sum, such as "budget 40k".',
  );
  clause.takeAll(/[^\u0001]+/);
}

/** A figure beside words that nobody understands may be theirs. */
function readFiguresOf(clause: Clause, gathering: Gathering, mark: Mark): null {
  const { budgetTotal, either } = gathering;
  const before = gathering.findings.length;
  readFigures(clause, gathering);
  const isTaken =
    gathering.findings.length > before ||
    gathering.budgetTotal !== budgetTotal ||
    gathering.either !== either;
  // What the clause says of another question may be what its figure is of: "mineral wool 3 inches".
  const isOfOther =
    gathering.early.length > mark.early ||
    gathering.findings.slice(mark.findings, before).some(({ field }) => !gathering.isOpen(field));
  const isAlone = withoutFillers(clause.leftover()) === '' && !isOfOther;
  if (!isTaken || isAlone || UNSURE.test(clause.leftover())) return null;
  gathering.findings.length = before;
  gathering.budgetTotal = budgetTotal;
  gathering.either = either;
  gathering.puzzle(
    clause.text,
    matterOf(clause.text, gathering.context) ?? 'Say what that number is, with its unit.',
  );
  clause.takeAll(/[^\u0001]+/);
  return null;
}

/** Loose aspects belong to the kind named last in the line; a second size, number or sort begins another kind. */
function foldWindow(windows: WindowReading[], next: WindowReading): void {
  const last = windows.at(-1);
  const startsAnother =
    !last ||
    next.isForAll ||
    last.isForAll ||
    (['width_in', 'count', 'operation'] as const).some(
      (aspect) => next.window[aspect] !== undefined && last.window[aspect] !== undefined,
    );
  if (startsAnother) windows.push(next);
  else windows[windows.length - 1] = { window: { ...last.window, ...next.window }, isForAll: false };
}
