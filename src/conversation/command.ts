import { nearestNames } from '../rulebook/nearest-name.ts';
import { QUESTIONS, type QuestionId } from './questions.ts';
import { normaliseLine } from './understanding/line-text.ts';

/** Something said to the advisor rather than about the wall. */
export type Command =
  | { readonly kind: 'back' | 'why' | 'help' | 'show' | 'done' | 'quit' | 'start-over' | 'keep' }
  | { readonly kind: 'save'; readonly name: string | null }
  /** `question` is null when no question goes by that name; `near` says what may have been meant, `then` the new answer. */
  | {
      readonly kind: 'change';
      readonly question: QuestionId | null;
      readonly near: readonly string[];
      readonly then: string | null;
    }
  | { readonly kind: 'name'; readonly name: string };

const PHRASES: readonly {
  readonly kind: Exclude<Command['kind'], 'change' | 'name' | 'save'>;
  readonly pattern: RegExp;
}[] = [
  {
    kind: 'why',
    pattern:
      /^why(?: (?:do you ask|ask|is (?:that|this) asked|that|this)(?: that| this)?)?\??$|^what for\??$/,
  },
  { kind: 'help', pattern: /^(?:help|h|commands?|what can i (?:say|do|type)|how does this work)\??$/ },
  { kind: 'back', pattern: /^(?:go )?back$|^previous(?: question)?$|^(?:the )?last question$|^undo$/ },
  {
    kind: 'show',
    pattern:
      /^(?:show|list)(?: me)?(?: (?:my|the|all))*(?: answers?)?(?: so far)?$|^(?:my )?answers$|^summary$|^so far$|^what have i said(?: so far)?\??$/,
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
];

const CHANGE =
  /^(?:change|edit|correct|fix|redo|revise|go back to)(?: (?:the|my|our))*(?: answers? (?:to|on|about))?\s+(.+?)\.?$/;
const NAME =
  /^(?:call (?:it|this|the (?:project|wall|record))|name (?:it|this)|(?:project )?name(?: is|:)|title(?: is|:))\s+(.+)$/i;
const SAVE = /^(?:please )?save(?: (?:it|that|this|the record|record|my answers))*(?: as (.+))?$/i;
const LONGEST_NAME = 120;

/** The command that a line is, as a whole; null for an answer. */
export function readCommand(text: string): Command | null {
  const line = normaliseLine(text).replace(/[.!]+$/, '');
  const phrase = PHRASES.find(({ pattern }) => pattern.test(line));
  if (phrase) return { kind: phrase.kind };
  const save = SAVE.exec(text.trim().replace(/[.!]+$/, ''));
  if (save) return { kind: 'save', name: save[1]?.trim().slice(0, LONGEST_NAME) ?? null };
  const name = NAME.exec(text.trim());
  if (name?.[1]) return { kind: 'name', name: name[1].trim().slice(0, LONGEST_NAME) };
  const change = CHANGE.exec(line);
  return change?.[1] ? changeOf(change[1]) : null;
}

function changeOf(wanted: string): Command {
  const names = QUESTIONS.flatMap((question) =>
    [question.label.toLowerCase(), question.id, ...question.aliases].map((name) => ({
      name,
      id: question.id,
    })),
  );
  const find = (said: string) => names.find(({ name }) => name === said)?.id ?? null;
  const whole = find(wanted);
  if (whole) return { kind: 'change', question: whole, near: [], then: null };
  const [subject = '', value] = wanted.split(/ to (.+)/);
  const question = find(subject);
  if (question && value) return { kind: 'change', question, near: [], then: value };
  const near = nearestNames(
    subject,
    QUESTIONS.map((q) => q.label.toLowerCase()),
  );
  return { kind: 'change', question: null, near, then: null };
}

/** What can be said at any time; shown by "help". */
export const COMMAND_HELP: readonly { readonly say: string; readonly does: string }[] = [
  { say: "don't know", does: 'leave it open; I assume something, say what, and say so in the answer' },
  { say: 'why', does: 'why the question is asked' },
  { say: 'back', does: 'the question before' },
  { say: 'change framing', does: 'any question by its name' },
  { say: 'show', does: 'your answers so far' },
  { say: 'call it …', does: 'name the wall or the project' },
  { say: 'done', does: 'no more questions: assume the rest and answer' },
  { say: 'save', does: 'save the decision record, once there is an answer; "save as …" names it' },
  { say: 'start over', does: 'forget all answers and begin again' },
  { say: 'quit', does: 'leave; your answers are kept for next time' },
];
