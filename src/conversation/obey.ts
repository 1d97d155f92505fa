import { isEmpty } from './answers.ts';
import { applyReading } from './apply-reading.ts';
import type { Command } from './command.ts';
import { note, warning } from './notes.ts';
import { leave, named, proceedFrom, save } from './outcome.ts';
import { contextOf } from './prompt.ts';
import { questionOf } from './questions.ts';
import { type ConversationState, initialState, type Step } from './state.ts';
import { takeBack } from './take-back.ts';
import { answersBlocks, assumeRest, helpBlocks, whyBlocks, withAccepts } from './talk.ts';
import { isAskingBack, returning, talkBack } from './talk-back.ts';
import { remark, withMissedWords } from './turns.ts';
import { understand } from './understanding/understand.ts';
import { putOff } from './unsettled.ts';

/** Does what the user told the advisor to do. */
export function obey(state: ConversationState, command: Command): Step {
  const same = (next: ConversationState): Step => ({ state: next, effects: [] });
  if (isAskingBack(command)) return talkBack(state, command);
  switch (command.kind) {
    case 'why':
      return same(remark(state, ...whyBlocks(state)));
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
    case 'take-back':
      return takeBack(state);
    case 'projects':
      return {
        state: { ...state, stage: 'fetching', returnTo: returning(state) },
        effects: [{ kind: 'list-projects' }],
      };
    case 'open-project':
      return {
        state: { ...state, stage: 'fetching', returnTo: returning(state) },
        effects: [{ kind: 'open-project', name: command.name }],
      };
    case 'new-project':
      return newProject(state, command.name);
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
    const words = `Not understood: no question goes by that name.${near} "show" lists your answers.`;
    return { state: withMissedWords(remark(state, warning(words)), [lineHeard(state)]), effects: [] };
  }
  const reopened: ConversationState = {
    ...putOff(state),
    stage: 'asking',
    asides: [],
    reopened: command.question,
  };
  if (command.then === null) return { state: reopened, effects: [] };
  return proceedFrom(applyReading(reopened, understand(command.then, contextOf(reopened))));
}

function lineHeard({ turns }: ConversationState): string {
  const said = turns.at(-1);
  return said?.kind === 'answer' ? said.text : '';
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

/** A talk with nothing said yet, below the turns of the one before. */
function freshAfter(state: ConversationState): ConversationState {
  return {
    ...initialState({ saveWhenTold: state.saveWhenTold }),
    reader: state.reader,
    isReaderGiven: state.isReaderGiven,
    extent: state.extent,
    looksAhead: state.looksAhead,
    asksOnce: state.asksOnce,
    linesHeard: state.linesHeard,
    missed: state.missed,
    turns: state.turns,
    stage: 'asking',
  };
}

export function startOver(state: ConversationState): Step {
  return {
    state: remark(freshAfter(state), note('Starting over: your answers are forgotten.')),
    effects: [{ kind: 'drop-draft' }],
  };
}

/** Puts the talk in hand away, kept, and begins another. */
function newProject(state: ConversationState, name: string | null): Step {
  if (state.answers.name === undefined && !isEmpty(state.answers)) {
    const words =
      'This talk has no name yet: "call it …" first, so that you find it again; or "start over" forgets it.';
    return { state: remark(state, warning(words)), effects: [] };
  }
  const fresh = remark(freshAfter(state), note('A new talk. The one before is kept.'));
  return { state: name === null ? fresh : named(fresh, name), effects: [{ kind: 'put-away' }] };
}
