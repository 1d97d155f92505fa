import { QUESTIONS, type Question } from './questions.ts';

/**
 * Whether the answer to a question could still change the first choice; null while that is not known.
 *
 * @param guide  paths of open fields that could
 */
export function doesMatter(question: Question, guide: readonly string[] | null): boolean | null {
  if (!guide) return null;
  return question.parts.some(({ field }) => guide.some((path) => isWithin(path, field)));
}

/** `windows[0].weight_lb` is within `windows`. */
function isWithin(path: string, field: string): boolean {
  return path === field || path.startsWith(`${field}[`) || path.startsWith(`${field}.`);
}

/** Whether the conversation asks about a field of a scenario: only those are worth trying. */
export function isAskedAbout(path: string): boolean {
  return QUESTIONS.some(({ parts }) => parts.some(({ field }) => isWithin(path, field)));
}
