import type { Block } from './blocks.ts';
import { changedFields, takenBackItems } from './changed-answers.ts';
import { note } from './notes.ts';
import { proceedFrom } from './outcome.ts';
import { questionForField } from './questions.ts';
import type { Before, ConversationState, Step } from './state.ts';
import { remark } from './turns.ts';

/**
 * "Not right". Said right after a line it is about that line: what the line changed is put back, and said. Said of a
 * question that came back, it settles that one. Said later it could be about anything, so it is asked what is meant.
 */
export function takeBack(state: ConversationState): Step {
  const { before } = state;
  const isOfLastLine = before !== null && isJustSaid(state, before);
  const [aside] = state.asides;
  if (aside && !isOfLastLine) {
    const left: ConversationState = { ...state, asides: state.asides.slice(1) };
    return proceedFrom({ state: remark(left, note('Left as it was.')), effects: [] });
  }
  if (!before || changedFields(state, before).length === 0) return nothingToTakeBack(state);
  if (isOfLastLine) return putBack(state, before);
  return { state: { ...state, asides: [{ kind: 'take-back', before }] }, effects: [] };
}

/** Whether a line is the one before the line that is being heard, with no answer told in between. */
function isJustSaid({ turns }: ConversationState, { turn }: Before): boolean {
  const isTold = turns.some(({ kind, id }) => kind === 'advice' && id > turn);
  return !isTold && turns.filter(({ kind }) => kind === 'answer').at(-2)?.id === turn;
}

function nothingToTakeBack(state: ConversationState): Step {
  const words = 'There is nothing to take back. "change …" with the name of a question mends an answer.';
  return { state: remark(state, note(words)), effects: [] };
}

/** The answers as they were before a line; what it alone had answered is asked again, also where the rest is assumed. */
export function putBack(state: ConversationState, before: Before): Step {
  const items = takenBackItems(state, before);
  const { answers, windowsComplete, history, unsettled, early, budgetTotal_usd } = before;
  const [again] = changedFields(state, before).filter((field) => answers[field] === undefined);
  const back: ConversationState = {
    ...state,
    answers,
    windowsComplete,
    history,
    unsettled,
    early,
    budgetTotal_usd,
    before: null,
    asides: [],
    reopened: again === undefined ? null : (questionForField(again)?.id ?? null),
    assumeRest: again === undefined && state.assumeRest,
    stage: 'asking',
  };
  const said: Block[] = [
    { kind: 'chips', lead: 'Taken back', items },
    ...(again === undefined ? [] : [note('Say it another way, or "don\'t know".')]),
  ];
  return proceedFrom({ state: remark(back, ...said), effects: [] });
}
