import { QUESTIONS, type Question } from './questions.ts';

/**
 * Whether the answer to a question could still change the first choice; null while that is not known.
 *
 * @param guide  paths of open fields that could
 */
export function doesMatter(question: Question, guide: readonly string[] | null): boolean | null {
  return guide && rankIn(question, guide) >= 0;
}

/** Where in a guide a question first stands; -1 when it does not. */
export function rankIn({ parts }: Question, guide: readonly string[]): number {
  return guide.findIndex((path) => parts.some(({ field }) => isWithin(path, field)));
}

/** `windows[0].weight_lb` is within `windows`. */
function isWithin(path: string, field: string): boolean {
  return path === field || path.startsWith(`${field}[`) || path.startsWith(`${field}.`);
}

/** Whether the conversation asks about a field of a scenario: only those are worth trying. */
export function isAskedAbout(path: string): boolean {
  return QUESTIONS.some(({ parts }) => parts.some(({ field }) => isWithin(path, field)));
}
