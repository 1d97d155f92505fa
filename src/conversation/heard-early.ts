import { nextQuestion, openFields, openQuestions } from './agenda.ts';
import type { Answers, FieldId } from './answers.ts';
import type { Block } from './blocks.ts';
import { describeAnswer, FIELD_LABELS } from './describe.ts';
import { note } from './notes.ts';
import { contextOf } from './prompt.ts';
import { questionForField } from './questions.ts';
import type { Aside, ConversationState } from './state.ts';
import { unclearBlocks } from './talk.ts';
import { remark } from './turns.ts';
import { type HeardEarly, MOST_EARLY } from './understanding/reading.ts';
import { understand } from './understanding/understand.ts';

/** What is kept for its own question, with what a line adds; nothing of what is answered by now. */
export function withEarly(
  { early }: ConversationState,
  said: readonly HeardEarly[],
  answers: Answers,
): readonly HeardEarly[] {
  const isOpen = ({ field }: HeardEarly) => answers[field] === undefined;
  if (said.length === 0 && early.every(isOpen)) return early;
  const isSaidAnew = ({ field }: HeardEarly) => said.some((one) => one.field === field);
  return [...early.filter((one) => !isSaidAnew(one)), ...said].filter(isOpen).slice(-MOST_EARLY);
}

/** Says of each thing that belongs to another question what becomes of it. */
export function earlyBlocks(state: ConversationState, said: readonly HeardEarly[]): Block[] {
  return said.map(({ field, words }) => note(`"${words}" ${whatBecomes(state, field)}`));
}

function whatBecomes(state: ConversationState, field: FieldId): string {
  const label = FIELD_LABELS[field].toLowerCase();
  const answer = state.answers[field];
  if (answer !== undefined && answer !== 'unknown') {
    return `adds nothing to what you said of this (${label}: ${describeAnswer(field, answer)}).`;
  }
  const isComing =
    !state.assumeRest && openQuestions(state).some(({ parts }) => parts.some((part) => part.field === field));
  if (!isComing) {
    const name = questionForField(field)?.label.toLowerCase();
    return `is about this: ${label}. It does not settle it; "change ${name}" opens that question.`;
  }
  // Lines that were written beforehand are answers to what is asked, and nothing else.
  return state.asksOnce
    ? `is about this: ${label}. It does not settle it; a line to that question does.`
    : `is about this: ${label}. Noted for later: I take it up when I ask about that.`;
}

/** Takes up what was said earlier of the question that is asked now, as if it were said now. */
export function withHeardEarly(state: ConversationState): ConversationState {
  const question = nextQuestion(state);
  if (!question || state.asksOnce || state.early.length === 0) return state;
  const open = openFields(question, state);
  const due = state.early.filter(({ field }) => open.includes(field));
  if (due.length === 0) return state;
  const rest: ConversationState = { ...state, early: state.early.filter((one) => !due.includes(one)) };
  const readings = due.map(({ words }) => understand(words, contextOf(rest)));
  const asides = readings.flatMap(({ either }): Aside[] =>
    either === null ? [] : [{ kind: 'which-number', line: rest.linesHeard, ...either }],
  );
  const unclear = readings.flatMap((reading) => reading.unclear);
  return remark({ ...rest, asides: [...asides, ...rest.asides] }, ...unclearBlocks(unclear, rest));
}
