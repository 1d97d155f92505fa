import type { Answers, FieldId } from './answers.ts';
import { rankIn } from './matter.ts';
import {
  type Choice,
  type Part,
  QUESTIONS,
  type Question,
  type QuestionId,
  questionOf,
} from './questions.ts';
import { isWindowComplete } from './windows.ts';

/** What the agenda looks at: the answers, and whether the list of windows was said to be complete. */
export type Progress = {
  readonly answers: Answers;
  readonly windowsComplete: boolean;
  /** A question that the user went back to: open again although it has an answer. */
  readonly reopened: QuestionId | null;
  /** Open fields that could change the first choice, most telling first; null while that is not known. */
  readonly guide: readonly string[] | null;
  /** Questions answered, oldest first. */
  readonly history: readonly QuestionId[];
};

/** Fields of a question that are still to be said. All of them while the question is reopened. */
export function openFields(question: Question, progress: Progress): FieldId[] {
  const fields = relevantParts(question, progress.answers).map((part) => part.field);
  if (progress.reopened === question.id) return fields;
  return fields.filter((field) => isOpen(field, progress));
}

/** Parts that mean something with what has been said so far. */
export function relevantParts({ parts }: Question, answers: Answers): readonly Part[] {
  return parts.filter((part) => part.isAsked?.(answers) ?? true);
}

function isOpen(field: FieldId, { answers, windowsComplete }: Progress): boolean {
  const value = answers[field];
  if (field !== 'windows' || !Array.isArray(value)) return value === undefined;
  return !windowsComplete || !value.every(isWindowComplete);
}

export function isSettled(question: Question, progress: Progress): boolean {
  return openFields(question, progress).length === 0;
}

function isRelevant(question: Question, answers: Answers): boolean {
  return question.isAsked?.(answers) ?? true;
}

/**
 * The question to ask now: the reopened one, else the place, else the one just begun, else the one whose answer tells most about the first
 * choice, else the next of the list that is relevant and not settled; null when none is left.
 */
export function nextQuestion(progress: Progress): Question | null {
  if (progress.reopened) return questionOf(progress.reopened);
  const left = openQuestions(progress);
  // Whoever said a part of an answer expects to be asked for the rest of it, and answers with that alone.
  const begun = left.find(({ id }) => id === progress.history.at(-1));
  const place = left.find(({ id }) => id === 'place');
  return place ?? begun ?? mostTelling(left, progress.guide) ?? left[0] ?? null;
}

/** Of the questions that may change the first choice the one that the guide names first. */
function mostTelling(left: readonly Question[], guide: readonly string[] | null): Question | null {
  if (!guide) return null;
  const ranked = left
    .map((question) => ({ question, rank: rankIn(question, guide) }))
    .filter(({ rank }) => rank >= 0)
    .sort((a, b) => a.rank - b.rank);
  return ranked[0]?.question ?? null;
}

/** Questions still to be asked, in the order of the list. */
export function openQuestions(progress: Progress): Question[] {
  return QUESTIONS.filter((q) => isRelevant(q, progress.answers) && !isSettled(q, progress));
}

/** How many questions are behind, this one counted, for "3 of 15". */
export function position(question: Question, progress: Progress): { number: number; of: number } {
  const asked = QUESTIONS.filter((q) => isRelevant(q, progress.answers) || q.id === question.id);
  const behind = asked.filter((q) => q.id !== question.id && isSettled(q, progress));
  return { number: behind.length + 1, of: asked.length };
}

/** The choices that fit what is still open: whole answers at first, single parts once some are known. */
export function choicesFor(
  question: Question,
  open: readonly FieldId[],
  answers: Answers = {},
): readonly Choice[] {
  const isWhole = question.parts.every(({ field, isAsked }) => isAsked !== undefined || open.includes(field));
  const offered = isWhole ? question.choices : (question.partChoices ?? question.choices);
  return offered.filter(
    ({ sets, isOffered }) =>
      (isOffered?.(answers) ?? true) && Object.keys(sets).every((field) => open.some((o) => o === field)),
  );
}
