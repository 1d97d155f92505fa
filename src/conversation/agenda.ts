import type { Answers, FieldId } from './answers.ts';
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

/** The question to ask now: the reopened one, else the first that is relevant and not settled; null when none is. */
export function nextQuestion(progress: Progress): Question | null {
  if (progress.reopened) return questionOf(progress.reopened);
  return QUESTIONS.find((q) => isRelevant(q, progress.answers) && !isSettled(q, progress)) ?? null;
}

/** Place of a question among the ones that will be asked, for "3 of 15". */
export function position(question: Question, answers: Answers): { number: number; of: number } {
  const asked = QUESTIONS.filter((q) => isRelevant(q, answers) || q.id === question.id);
  return { number: asked.indexOf(question) + 1, of: asked.length };
}

/** The choices that fit what is still open: whole answers at first, single parts once some are known. */
export function choicesFor(question: Question, open: readonly FieldId[]): readonly Choice[] {
  const isWhole = question.parts.every(({ field, isAsked }) => isAsked !== undefined || open.includes(field));
  const offered = isWhole ? question.choices : (question.partChoices ?? question.choices);
  return offered.filter((choice) => Object.keys(choice.sets).every((field) => open.some((o) => o === field)));
}
