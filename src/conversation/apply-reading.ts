import { ended } from '../base/first-letter.ts';
import { Refusal } from '../base/refusal.ts';
import { dollarsAFoot, fieldWords } from '../brief/field-words.ts';
import { type Answers, type FieldId, type Finding, sameAnswer } from './answers.ts';
import { withAnswer, withoutAnswers } from './answers-schema.ts';
import type { Block } from './blocks.ts';
import { dividedTotal, withTotalDivided } from './budget-total.ts';
import { describeWindow, dollarsInAll } from './describe.ts';
import { earlyBlocks, withEarly } from './heard-early.ts';
import { note, warning } from './notes.ts';
import { contextOf, kindInDetail } from './prompt.ts';
import { questionOf } from './questions.ts';
import type { Aside, ConversationState, Effect, Step } from './state.ts';
import {
  acceptsBlock,
  leftOpenBlock,
  notedBlock,
  placeNeededBlocks,
  takeBackHint,
  unclearBlocks,
} from './talk.ts';
import { remark, withMissedWords } from './turns.ts';
import { NOTHING_SAID, type Reading, type Unclear } from './understanding/reading.ts';
import { withoutFields } from './unsettled.ts';
import { mergeWindows, withUnknownAspects } from './windows.ts';

type Applied = {
  answers: Answers;
  windowsComplete: boolean;
  readonly noted: Finding[];
  readonly leftOpen: FieldId[];
  readonly contradictions: Finding[];
  readonly unclear: Unclear[];
  readonly notes: string[];
  budgetTotal_usd: number | null;
};

/**
 * Takes what a line said into the answers: new answers are noted, a second answer to the same thing is put to the
 * user with both values, impossible values are refused with what would be accepted.
 */
export function applyReading(state: ConversationState, heard: Reading): Step {
  const reading = withTotalDivided(heard, state.answers);
  const context = contextOf(state);
  const applied: Applied = {
    answers: state.answers,
    windowsComplete: state.windowsComplete || reading.windowsComplete,
    noted: [],
    leftOpen: [],
    contradictions: [],
    unclear: [...reading.unclear],
    notes: [...reading.notes],
    budgetTotal_usd: state.budgetTotal_usd,
  };
  const reopened: readonly FieldId[] = state.reopened
    ? questionOf(state.reopened).parts.map((part) => part.field)
    : [];
  for (const finding of reading.findings) applyFinding(applied, finding, reopened);
  applyWindows(applied, reading, state);
  for (const field of reading.unknowns) {
    // "No wildfire, the rest I don't know": what was said in the same line is not of the rest.
    const isSaid = reading.findings.some((finding) => finding.field === field);
    if (field !== 'place' && !isSaid) applyFinding(applied, { field, value: 'unknown', words: '' }, reopened);
  }

  divideAnew(applied);

  const touched = [...applied.noted.map(({ field }) => field), ...applied.leftOpen];
  if (reading.windowsComplete || reading.windowDetailsUnknown) touched.push('windows');
  const isAnswered = context.open.some((field) => touched.includes(field));
  const { question } = context;
  const history =
    isAnswered && question && state.history.at(-1) !== question
      ? [...state.history, question]
      : state.history;
  const next: ConversationState = {
    ...state,
    answers: applied.answers,
    windowsComplete: applied.windowsComplete,
    reopened: isAnswered ? null : state.reopened,
    history,
    asides: [...state.asides, ...asidesOf(applied, reading, state.linesHeard)],
    budgetTotal_usd: applied.budgetTotal_usd,
    unsettled: withoutFields(state.unsettled, [...applied.noted, ...applied.contradictions]),
    early: withEarly(state, reading.early, applied.answers),
    stage: reading.place === null ? state.stage : 'looking-up',
  };
  const effects: Effect[] = reading.place === null ? [] : [{ kind: 'find-places', text: reading.place }];
  const told = remark(next, ...blocksFor(applied, reading, next));
  const words = applied.unclear.map((unclear) => unclear.words);
  return { state: words.length === 0 ? told : withMissedWords(told, words), effects };
}

/** Takes one finding in, as an answer to a question that was not asked of it alone: a place looked up, a choice made. */
export function applyFindings(state: ConversationState, findings: readonly Finding[]): Step {
  return applyReading(state, { ...NOTHING_SAID, findings });
}

function applyFinding(applied: Applied, finding: Finding, reopened: readonly FieldId[]): void {
  const { field, value } = finding;
  const before = applied.answers[field];
  const isKnown = before !== undefined && before !== 'unknown';
  let answers: Answers;
  try {
    answers = withAnswer(applied.answers, field, value);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    applied.unclear.push({ words: finding.words, hint: error.issues[0]?.accepted ?? '' });
    return;
  }
  if (isKnown && !reopened.includes(field) && !sameAnswer(before, value)) {
    applied.contradictions.push(finding);
    return;
  }
  applied.answers = answers;
  if (field === 'budget_usd_per_ft2') applied.budgetTotal_usd = finding.total_usd ?? null;
  if (field === 'windows') applied.windowsComplete = !Array.isArray(value) || value.length === 0;
  if (value === 'unknown') applied.leftOpen.push(field);
  else applied.noted.push(finding);
}

/** A budget for the whole wall comes to something else a square foot once the area is another. */
function divideAnew(applied: Applied): void {
  const { budgetTotal_usd, answers } = applied;
  if (budgetTotal_usd === null) return;
  const { usd_per_ft2, words } = dividedTotal(budgetTotal_usd, answers);
  if (usd_per_ft2 === answers.budget_usd_per_ft2) return;
  try {
    applied.answers = withAnswer(answers, 'budget_usd_per_ft2', usd_per_ft2);
    applied.notes.push(words);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    applied.answers = withoutAnswers(answers, ['budget_usd_per_ft2']);
    applied.budgetTotal_usd = null;
    applied.unclear.push({
      words: `${dollarsInAll(budgetTotal_usd)} in all`,
      hint: `That would be ${dollarsAFoot(usd_per_ft2)} a square foot. ${error.issues[0]?.accepted ?? ''}`,
    });
  }
}

function applyWindows(applied: Applied, reading: Reading, state: ConversationState): void {
  const { windows } = applied.answers;
  const isReopened = state.reopened === 'windows';
  const known = Array.isArray(windows) && !isReopened ? windows : [];
  const detail = kindInDetail(state);
  if (reading.windows.length > 0) {
    const isSettled = Array.isArray(windows) && state.windowsComplete && !detail && !isReopened;
    const merge = mergeWindows(isSettled ? [] : known, reading.windows);
    const words = merge.windows.map(describeWindow).join('; ');
    const list = [...merge.windows];
    if (isSettled) {
      if (!sameAnswer(windows, list)) {
        applied.contradictions.push({ field: 'windows', value: list, words });
      }
      return;
    }
    for (const { index } of merge.clashes) {
      const window = known[index];
      applied.unclear.push({
        words: reading.windows.map((said) => describeWindow(said.window)).join('; '),
        hint: `Before you said ${window ? ended(describeWindow(window)) : 'something else.'} I keep that; say "change windows" to give the list anew.`,
      });
    }
    const [readingWindow] = reading.windows;
    takeWindows(applied, list, readingWindow ? words : '');
    applied.windowsComplete = reading.windowsComplete;
  }
  if (reading.windowDetailsUnknown && detail) {
    const now = applied.answers.windows;
    const list = (Array.isArray(now) ? now : known).map((window, i) =>
      i === detail.index ? withUnknownAspects(window) : window,
    );
    takeWindows(applied, list, list.map(describeWindow).join('; '));
  }
}

function takeWindows(applied: Applied, list: NonNullable<Answers['windows']>, words: string): void {
  try {
    applied.answers = withAnswer(applied.answers, 'windows', list);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    for (const issue of error.issues) {
      applied.unclear.push({ words: `${fieldWords(issue.field)} ${issue.value}`, hint: issue.accepted });
    }
    return;
  }
  const earlier = applied.noted.findIndex(({ field }) => field === 'windows');
  if (earlier >= 0) applied.noted.splice(earlier, 1);
  applied.noted.push({ field: 'windows', value: list, words });
}

function asidesOf(applied: Applied, reading: Reading, line: number): Aside[] {
  const asides: Aside[] = reading.unframed ? [{ kind: 'unframed', wall: reading.unframed }] : [];
  if (reading.either) asides.push({ kind: 'which-number', line, ...reading.either });
  if (applied.contradictions.length > 0) {
    asides.push({ kind: 'contradiction', findings: applied.contradictions });
  }
  return asides;
}

function blocksFor(applied: Applied, reading: Reading, state: ConversationState): Block[] {
  const asksPlace = reading.unknowns.includes('place');
  const unclear = unclearBlocks(applied.unclear, state);
  const isStillAsked = applied.noted.length === 0 && applied.leftOpen.length === 0;
  const accepts =
    unclear.length > 0 && isStillAsked && reading.place === null && state.asides.length === 0
      ? acceptsBlock(state)
      : null;
  const saysNoMore = reading.windowsComplete && !applied.noted.some(({ field }) => field === 'windows');
  return [
    notedBlock(applied.noted),
    ...applied.notes.map(note),
    ...reading.cautions.map(warning),
    ...earlyBlocks(state, reading.early),
    takeBackHint(applied.noted),
    saysNoMore ? note('Noted. No other windows.') : null,
    leftOpenBlock(applied.leftOpen),
    ...unclear,
    accepts,
    ...(asksPlace ? placeNeededBlocks() : []),
  ].filter((block) => block !== null);
}
