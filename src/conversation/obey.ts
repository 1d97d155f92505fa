import { applyReading } from './apply-reading.ts';
import type { Command } from './command.ts';
import { leave, named, proceedFrom, save } from './outcome.ts';
import { contextOf } from './prompt.ts';
import { questionOf } from './questions.ts';
import { type ConversationState, initialState, type Step } from './state.ts';
import {
  answersBlocks,
  helpBlocks,
  note,
  placeNeededBlocks,
  remark,
  warning,
  whyBlock,
  withAccepts,
} from './talk.ts';
import { understand } from './understanding/understand.ts';

/** Does what the user told the advisor to do. */
export function obey(state: ConversationState, command: Command): Step {
  const same = (next: ConversationState): Step => ({ state: next, effects: [] });
  switch (command.kind) {
    case 'why':
      return same(remark(state, whyBlock(state)));
    case 'help':
      return same(remark(state, ...helpBlocks(state)));
    case 'show':
      return same(remark(state, ...answersBlocks(state)));
    case 'back':
      return goBack(state);
    case 'keep':
      return proceedFrom(same({ ...remark(state, note('Kept as it was.')), reopened: null }));
    case 'done':
      return proceedFrom(same(assumeRest(state)));
    case 'save':
      return save(state, command.name);
    case 'quit':
      return leave(state);
    case 'start-over':
      return same({ ...state, asides: [{ kind: 'start-over' }, ...state.asides] });
    case 'change':
      return change(state, command);
    case 'name':
      return same(remark(named(state, command.name), note(`Noted. Name: ${command.name}.`)));
  }
}

export function change(state: ConversationState, command: Extract<Command, { kind: 'change' }>): Step {
  if (!command.question) {
    const near =
      command.near.length > 0 ? ` Did you mean ${command.near.map((n) => `"${n}"`).join(' or ')}?` : '';
    return {
      state: remark(
        state,
        warning(`Not understood: no question goes by that name.${near} "show" lists your answers.`),
      ),
      effects: [],
    };
  }
  const reopened: ConversationState = {
    ...state,
    stage: 'asking',
    asides: [],
    reopened: command.question,
  };
  if (command.then === null) return { state: reopened, effects: [] };
  return proceedFrom(applyReading(reopened, understand(command.then, contextOf(reopened))));
}

export function goBack(state: ConversationState): Step {
  if (state.asides.length > 0) {
    const [aside] = state.asides;
    if (aside?.kind === 'resume')
      return { state: withAccepts(state, 'There is nothing before this.'), effects: [] };
    return {
      state: remark({ ...state, asides: state.asides.slice(1) }, note('Left as it was.')),
      effects: [],
    };
  }
  const last = state.history.at(-1);
  if (state.stage !== 'asking' && state.stage !== 'told') return { state, effects: [] };
  if (!last) return { state: remark(state, note('This is the first question.')), effects: [] };
  return {
    state: {
      ...remark(state, note(`Back to: ${questionOf(last).label}.`)),
      stage: 'asking',
      history: state.history.slice(0, -1),
      reopened: last,
    },
    effects: [],
  };
}

export function assumeRest(state: ConversationState): ConversationState {
  const assumed: ConversationState = { ...state, assumeRest: true, reopened: null, asides: [] };
  if (state.answers.place !== undefined)
    return remark(assumed, note('I assume the rest and list what I assumed.'));
  return remark(assumed, ...placeNeededBlocks());
}

export function startOver(state: ConversationState): Step {
  const fresh: ConversationState = {
    ...initialState({ saveWhenTold: state.saveWhenTold }),
    turns: state.turns,
    stage: 'asking',
  };
  return {
    state: remark(fresh, note('Starting over: your answers are forgotten.')),
    effects: [{ kind: 'drop-draft' }],
  };
}
