import type { Block } from './blocks.ts';
import type { ConversationState, Turn } from './state.ts';

type NewTurn = Turn extends infer T ? (T extends Turn ? Omit<T, 'id'> : never) : never;

/** The state with a turn added; turns are never changed or taken away. */
export function withTurn(state: ConversationState, turn: NewTurn): ConversationState {
  return { ...state, turns: [...state.turns, { ...turn, id: state.turns.length }] };
}

/** The state with what was not understood of the line that is being heard; of no matter where it can be said again. */
export function withMissedWords(state: ConversationState, words: readonly string[]): ConversationState {
  if (!state.asksOnce) return state;
  const missed = { line: state.linesHeard, words, leftOpen: null };
  return { ...state, missed: [...state.missed, missed] };
}

/** The state with a remark of the advisor's added; nothing when there is nothing to say. */
export function remark(state: ConversationState, ...blocks: readonly Block[]): ConversationState {
  return blocks.length === 0 ? state : withTurn(state, { kind: 'remark', blocks });
}
