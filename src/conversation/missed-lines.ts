import { applyReading } from './apply-reading.ts';
import { note, titledList } from './notes.ts';
import { contextOf } from './prompt.ts';
import { questionOf } from './questions.ts';
import type { Aside, ConversationState, Step } from './state.ts';
import { remark } from './turns.ts';
import { leavingOpen } from './understanding/understand.ts';

/**
 * Of lines that were written beforehand each answers one question. One that was not understood has been its answer all
 * the same: the question is left open, so that the next line meets the next question and none is taken for another's.
 *
 * @param before  the state in which the line was heard
 */
export function withQuestionPassed(before: ConversationState, step: Step): Step {
  const { state } = step;
  const last = state.missed.at(-1);
  const isMissed = last !== undefined && state.missed.length > before.missed.length;
  if (!isMissed || !isUntouched(before, state)) return step;
  const { question } = contextOf(before);
  const left = leftUnanswered(state, before.linesHeard);
  return { ...step, state: { ...left, missed: [...before.missed, { ...last, leftOpen: question }] } };
}

/** Whether the question that a line met stands as it did; the place can't be left open. */
function isUntouched(before: ConversationState, after: ConversationState): boolean {
  const { question, open } = contextOf(before);
  if (question === null || question === 'place' || after.stage !== 'asking') return false;
  return (
    after.asides.length === before.asides.length &&
    after.windowsComplete === before.windowsComplete &&
    open.every((field) => after.answers[field] === before.answers[field])
  );
}

/** The question asked, left open; one that was gone back to keeps its answer. */
function leftUnanswered(state: ConversationState, line: number): ConversationState {
  const words = `Line ${line} was the answer to this question, so the next line meets the next one.`;
  if (state.reopened !== null) return { ...remark(state, note(`${words} Kept as it was.`)), reopened: null };
  const context = contextOf(state);
  return applyReading(remark(state, note(words)), leavingOpen(context)).state;
}

/** A number that may mean two things and was not settled by the line behind it: its question is left open too. */
export function withPassedBy(state: ConversationState, aside: Aside): ConversationState {
  if (!state.asksOnce || aside.kind !== 'which-number') return state;
  const { question, open } = contextOf(state);
  if (question === null || !aside.findings.some(({ field }) => open.includes(field))) return state;
  const { line, words } = aside;
  const left = leftUnanswered(state, line);
  return { ...left, missed: [...left.missed, { line, words: [words], leftOpen: question }] };
}

/** Says at the end which lines were not understood. */
export function tellMissed(state: ConversationState): ConversationState {
  const items = state.missed.map(({ line, words, leftOpen }) => {
    const what = leftOpen === null ? '' : `; ${questionOf(leftOpen).label.toLowerCase()} left open`;
    return `Line ${line}: "${words.join('", "')}"${what}`;
  });
  return remark(
    { ...state, missed: [] },
    ...titledList('Lines that I did not understand, or not wholly', items),
  );
}
