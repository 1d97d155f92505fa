import { nextQuestion, openFields, relevantParts } from './agenda.ts';
import { resumed } from './answer-aside.ts';
import { isEmpty } from './answers.ts';
import { toScenario, withAnswer } from './answers-schema.ts';
import type { Draft } from './draft.ts';
import { withHeardEarly } from './heard-early.ts';
import { tellMissed } from './missed-lines.ts';
import { note, warning } from './notes.ts';
import { type Question, questionForField, questionOf } from './questions.ts';
import type { ConversationEvent, ConversationState, Effect, Step } from './state.ts';
import { issueBlocks } from './talk.ts';
import { withAdviceTold } from './told.ts';
import { remark } from './turns.ts';
import {
  askedAgain,
  assumedEarlier,
  keptContradictions,
  leftUnsettled,
  openContradictions,
} from './unsettled.ts';

type EventOf<K extends ConversationEvent['kind']> = Extract<ConversationEvent, { kind: K }>;

/** Goes on after a line has been taken in: to the next question, or to the answer when nothing is left to ask. */
export function proceedFrom({ state, effects }: Step): Step {
  if (state.stage === 'looking-up' || state.stage === 'left' || state.asides.length > 0) {
    return { state, effects };
  }
  return goOn({ state: { ...state, guide: state.outlook?.matters ?? state.guide }, effects });
}

function goOn({ state, effects }: Step): Step {
  const hasPlace = state.answers.place !== undefined;
  if (state.inputEnded && !hasPlace) return { state: refusedForPlace(state), effects };
  const isEnough = state.assumeRest && hasPlace && state.reopened === null;
  const next = isEnough ? null : nextQuestion(state);
  if (next && isWeighedFirst(state, next)) {
    const scenario = toScenario(state.answers);
    return {
      state: { ...state, stage: 'weighing', returnTo: 'asking' },
      effects: [...effects, { kind: 'look-ahead', answers: state.answers, scenario }],
    };
  }
  if (next) return { state: withHeardEarly({ ...state, stage: 'asking' }), effects };
  if (state.advice && state.answers === state.advisedAnswers) {
    return { state: { ...state, stage: 'told' }, effects };
  }
  const settled = isEnough || state.asksOnce ? assumedEarlier(state) : askedAgain(state);
  if (settled.asides.length > 0) return { state: settled, effects };
  return {
    state: { ...settled, stage: 'advising' },
    effects: [...effects, { kind: 'advise', scenario: toScenario(state.answers) }],
  };
}

/**
 * A question that is half answered is finished before anything is weighed anew; and before it is known whether the wall
 * stands there are four times as many walls to weigh, for a question that comes first anyway.
 */
function isWeighedFirst(state: ConversationState, next: Question): boolean {
  const { answers, looksAhead, reopened, outlook } = state;
  const isBegun = answers.place !== undefined && answers.project !== undefined;
  if (!looksAhead || !isBegun || reopened !== null) return false;
  return (
    outlook?.answers !== answers && openFields(next, state).length === relevantParts(next, answers).length
  );
}

export function refusedForPlace(state: ConversationState): ConversationState {
  const accepted = 'Give a county and state such as "Boulder, CO", or a climate zone such as "5B".';
  return {
    ...tellMissed(state),
    stage: 'left',
    exitCode: 2,
    refused: [{ field: 'place', value: '(nothing)', accepted }],
  };
}

export function adviceReady(state: ConversationState, { advice }: EventOf<'advice-ready'>): Step {
  const told: ConversationState = {
    ...withAdviceTold(state, advice),
    stage: 'told',
    advice,
    advisedAnswers: state.answers,
    savedPaths: [],
    hasEarlierRecord: state.hasEarlierRecord || state.savedPaths.length > 0,
    recordedPrompt: null,
  };
  if (told.saveWhenTold) return save(told, null);
  return told.inputEnded ? leave(told) : { state: told, effects: [] };
}

export function adviceRefused(state: ConversationState, { issues }: EventOf<'advice-refused'>): Step {
  if (state.inputEnded) {
    return { state: { ...tellMissed(state), stage: 'left', exitCode: 2, refused: issues }, effects: [] };
  }
  const question = questionForField(issues[0]?.field ?? 'place') ?? questionOf('place');
  return {
    state: {
      ...remark(state, ...issueBlocks(issues)),
      stage: 'asking',
      reopened: question.id,
      recordedPrompt: null,
    },
    effects: [],
  };
}

export function save(state: ConversationState, name: string | null): Step {
  const ready = name === null ? state : named(state, name);
  if (!ready.advice || ready.stage !== 'told') {
    const words =
      'Your answers are kept as you go. The record can be saved once there is an answer: say "done" and I assume the rest.';
    return { state: remark(ready, note(words)), effects: [] };
  }
  if (ready.answers !== ready.advisedAnswers) {
    const words =
      'The answer that you saw is not of what you say now, so there is nothing to save yet. "work it out" first.';
    return { state: remark(ready, note(words)), effects: [] };
  }
  return {
    state: { ...assumedEarlier(ready), stage: 'saving' },
    effects: [{ kind: 'save-record', scenario: toScenario(ready.answers), advice: ready.advice }],
  };
}

export function recordSaved(state: ConversationState, { paths }: EventOf<'record-saved'>): Step {
  const saved: ConversationState = {
    ...remark(state, { kind: 'heading', text: 'Saved' }, { kind: 'list', items: paths }),
    stage: 'told',
    savedPaths: paths,
    hasEarlierRecord: false,
  };
  const effects: Effect[] = [keeping(saved)];
  if (!saved.inputEnded) return { state: saved, effects };
  const left = leave(saved);
  return { state: left.state, effects: [...effects, ...left.effects] };
}

export function recordFailed(state: ConversationState, { message, issues }: EventOf<'record-failed'>): Step {
  const why =
    issues.length > 0 ? issues.map((issue) => `${issue.value}: ${issue.accepted}`).join(' ') : message;
  const failed = remark(state, warning(`The record was not saved. ${why}`));
  if (!state.inputEnded) return { state: { ...failed, stage: 'told', saveWhenTold: false }, effects: [] };
  return {
    state: {
      ...failed,
      stage: 'left',
      exitCode: 2,
      refused:
        issues.length > 0
          ? issues
          : [{ field: '--save', value: 'the record', accepted: `It could not be written: ${message}` }],
    },
    effects: [],
  };
}

const RECORD_IS_EARLIER =
  'The record that was saved is of your earlier answers: what you changed since stands in no record.';

export function leave(left: ConversationState): Step {
  const isOffered = left.asides.some((aside) => aside.kind === 'resume');
  // A record that was saved rests on other answers as soon as one of them is in doubt.
  const isSaved = left.savedPaths.length > 0;
  const isChanged = isSaved && left.answers !== left.advisedAnswers;
  const isUnfinished = !isSaved || isChanged || openContradictions(left).length > 0;
  // Lines that were written beforehand are kept by whoever wrote them.
  const isKept = !left.asksOnce && isUnfinished && (isOffered || !isEmpty(left.answers));
  const state = tellMissed(isKept ? leftUnsettled(left) : assumedEarlier(left));
  const earlier = isChanged || left.hasEarlierRecord ? `${RECORD_IS_EARLIER} ` : '';
  const words = isKept ? `${earlier}Your answers are kept; next time I offer to go on with them.` : 'Done.';
  const isNo = state.stage === 'told' && state.advice?.ranked.length === 0;
  return {
    state: {
      ...(state.inputEnded ? state : remark(state, note(words))),
      stage: 'left',
      exitCode: isNo ? 1 : 0,
    },
    effects: [],
  };
}

/** The state with the wall's name; an answer that was told already takes the name too. */
export function named(state: ConversationState, name: string): ConversationState {
  const answers = withAnswer(state.answers, 'name', name);
  const isTold = state.advice !== null && state.answers === state.advisedAnswers;
  return {
    ...state,
    answers,
    advice: state.advice && isTold ? { ...state.advice, name } : state.advice,
    advisedAnswers: isTold ? answers : state.advisedAnswers,
  };
}

export function inputEnded(state: ConversationState): Step {
  const ended = assumedEarlier({ ...state, inputEnded: true });
  if (state.stage === 'told') return leave(ended);
  const [aside] = state.asides;
  // A kept draft that was only offered is taken up: the end of input means "assume the rest", not "forget it".
  const taken = aside?.kind === 'resume' ? resumed(ended, aside) : ended;
  return proceedFrom({ state: { ...taken, assumeRest: true, reopened: null, asides: [] }, effects: [] });
}

/** What is kept of a state. */
export function draftOf(state: ConversationState): Omit<Draft, 'saved_at'> {
  return {
    schema: 'cladwright-draft/1',
    answers: state.answers,
    windows_complete: state.windowsComplete,
    history: [...state.history],
    reader: state.reader,
    ...(state.budgetTotal_usd === null ? {} : { budget_total_usd: state.budgetTotal_usd }),
    ...(state.early.length === 0 ? {} : { early: [...state.early] }),
    ...keptContradictions(state),
  };
}

/** Keeps the talk; of one whose record holds what was said, only a talk with a name. */
export function keeping(state: ConversationState): Effect {
  const isSaved = state.savedPaths.length > 0 && state.answers === state.advisedAnswers;
  if (!isSaved || openContradictions(state).length > 0) return { kind: 'keep-draft', draft: draftOf(state) };
  // A talk with a name is one of several projects and stays; one without has served its turn.
  return state.answers.name === undefined
    ? { kind: 'drop-draft' }
    : { kind: 'keep-draft', draft: { ...draftOf(state), finished: true } };
}

/** The work was stopped by the user: back to the talk, with nothing lost. */
export function stopped(state: ConversationState): Step {
  const words = note('Stopped. Nothing is lost; the talk goes on.');
  if (state.stage !== 'advising') {
    return { state: remark({ ...state, stage: state.returnTo }, words), effects: [] };
  }
  const back: ConversationState = { ...state, assumeRest: false };
  const stage = nextQuestion(back) ? 'asking' : 'told';
  return { state: remark({ ...back, stage }, words), effects: [] };
}

/** Works the answer out after all; what a kept talk left unsettled is asked first. */
export function workOut(state: ConversationState): Step {
  const asked = askedAgain(state);
  if (asked.asides.length > 0) return { state: asked, effects: [] };
  return {
    state: { ...state, stage: 'advising' },
    effects: [{ kind: 'advise', scenario: toScenario(state.answers) }],
  };
}
