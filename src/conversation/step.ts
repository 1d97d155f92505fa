import { nextQuestion, openQuestions } from './agenda.ts';
import { answerAside, choosePlace, resumed } from './answer-aside.ts';
import { isEmpty } from './answers.ts';
import { applyReading } from './apply-reading.ts';
import { askedInside } from './asked-inside.ts';
import { type Command, readCommand } from './command.ts';
import { FIELD_LABELS } from './describe.ts';
import { withHeardEarly } from './heard-early.ts';
import { doesMatter } from './matter.ts';
import { withPassedBy, withQuestionPassed } from './missed-lines.ts';
import { note, warning } from './notes.ts';
import { goBack, obey, startOver } from './obey.ts';
import { opened } from './opening.ts';
import {
  adviceReady,
  adviceRefused,
  draftOf,
  inputEnded,
  keeping,
  leave,
  proceedFrom,
  recordFailed,
  recordSaved,
  save,
  stopped,
  workOut,
} from './outcome.ts';
import { outlookBlocks } from './outlook.ts';
import { projectBlocks } from './projects.ts';
import { contextOf, LABELS, promptOf } from './prompt.ts';
import type { Aside, ConversationEvent, ConversationState, Outlook, PlaceMatch, Step } from './state.ts';
import {
  acceptsBlock,
  answersBlocks,
  issueBlocks,
  noSuchWallBlocks,
  quoted,
  widePlaceBlocks,
  withAccepts,
} from './talk.ts';
import { whyNotBlocks } from './tell-why-not.ts';
import { trialBlocks } from './trial.ts';
import { remark, withMissedWords, withTurn } from './turns.ts';
import { normaliseLine } from './understanding/line-text.ts';
import { understand } from './understanding/understand.ts';
import { type WidePlace, widePlace } from './understanding/wide-places.ts';
import { keptContradictions, putOff } from './unsettled.ts';

/**
 * The conversation: what a state becomes by an event, and what the front end must do about it.
 * Pure: no clock, file, terminal or service.
 */
export function step(state: ConversationState, event: ConversationEvent): Step {
  if (state.stage === 'left') return { state, effects: [] };
  switch (event.kind) {
    case 'begin':
      return { state: opened(state, event.draft, event.setAside), effects: [] };
    case 'said':
      return said(state, event.text);
    case 'back':
      return keptAfter(state, goBack(recordPrompt(state)));
    case 'places-found':
      return keptAfter(state, proceedFrom(placesFound(state, event)));
    case 'advice-ready':
      return adviceReady(state, event);
    case 'advice-refused':
      return adviceRefused(state, event);
    case 'record-saved':
      return recordSaved(state, event);
    case 'record-failed':
      return recordFailed(state, event);
    case 'draft-failed':
      return {
        state: remark(
          state,
          warning(`Caution: your answers cannot be kept for next time. ${event.message} The talk goes on.`),
        ),
        effects: [],
      };
    case 'input-ended':
      return inputEnded(state);
    case 'stopped':
      return isAtWork(state) ? stopped(state) : { state, effects: [] };
    case 'outlook-found':
      return { state: enoughAsked({ ...state, outlook: event.outlook }), effects: [] };
    case 'looked': {
      const looked: ConversationState = { ...state, stage: state.returnTo, outlook: event.outlook };
      return { state: remark(looked, ...outlookBlocks(looked)), effects: [] };
    }
    case 'looked-ahead':
      return { state: lookedAhead(state, event.outlook), effects: [] };
    case 'tried':
      return tried(state, event);
    case 'try-refused':
      return {
        state: remark({ ...state, stage: state.returnTo }, ...issueBlocks(event.issues)),
        effects: [],
      };
    case 'why-not-found':
      return {
        state: remark({ ...state, stage: state.returnTo }, ...whyNotBlocks(event.told, state.reader)),
        effects: [],
      };
    case 'why-not-refused':
      return {
        state: remark({ ...state, stage: state.returnTo }, ...noSuchWallBlocks(event.issues)),
        effects: [],
      };
    case 'projects-listed':
      return {
        state: remark({ ...state, stage: state.returnTo }, ...projectBlocks(event.projects)),
        effects: [],
      };
    case 'project-opened':
      return projectOpened(state, event);
  }
}

type EventOf<K extends ConversationEvent['kind']> = Extract<ConversationEvent, { kind: K }>;

function isAtWork({ stage }: ConversationState): boolean {
  return stage === 'advising' || stage === 'trying' || stage === 'weighing' || stage === 'fetching';
}

/** Once nothing that is still open would change the first choice, that is said, and the user decides. */
function enoughAsked(state: ConversationState): ConversationState {
  const { outlook } = state;
  const isSettledTalk = state.stage === 'asking' && state.asides.length === 0 && state.reopened === null;
  if (!isSettledTalk || state.wantsAll || state.assumeRest || outlook?.answers !== state.answers)
    return state;
  const open = openQuestions(state);
  if (open.length === 0 || !outlook.matters) return state;
  if (open.some((question) => doesMatter(question, outlook.matters) !== false)) return state;
  return { ...state, asides: [{ kind: 'enough', first: outlook.impression.first?.title ?? null }] };
}

function lookedAhead(state: ConversationState, outlook: Outlook | null): ConversationState {
  const asking: ConversationState = { ...state, stage: 'asking' };
  const looked = outlook ? enoughAsked({ ...asking, outlook, guide: outlook.matters }) : asking;
  return looked.asides.length > 0 ? looked : withHeardEarly(looked);
}

function tried(state: ConversationState, { trial, now, then }: EventOf<'tried'>): Step {
  const told = remark({ ...state, stage: state.returnTo }, ...trialBlocks(trial, state.answers, now, then));
  return { state: { ...told, asides: [{ kind: 'trial', trial }, ...told.asides] }, effects: [] };
}

/** Goes on with another kept talk; its answers take the place of the ones in hand, which are kept. */
function projectOpened(state: ConversationState, { name, draft, near }: EventOf<'project-opened'>): Step {
  const back: ConversationState = { ...state, stage: state.returnTo };
  if (!draft) {
    const meant = near.length > 0 ? ` Did you mean ${near.map((one) => `"${one}"`).join(' or ')}?` : '';
    const words = warning(`No kept talk is called "${name}".${meant} "projects" lists them.`);
    return { state: remark(back, words), effects: [] };
  }
  const opened: ConversationState = {
    ...resumed(back, { kind: 'resume', draft }),
    stage: 'asking',
    reopened: null,
    before: null,
    asides: [],
    assumeRest: false,
    outlook: null,
    guide: null,
    wantsAll: false,
    advice: null,
    advisedAnswers: null,
    savedPaths: [],
    hasEarlierRecord: false,
  };
  const told = remark(opened, note(`Going on with "${name}".`), ...answersBlocks(opened));
  // Kept anew, so that it is this one that is offered next time; a finished one stays finished.
  const kept = { ...draftOf(told), ...(draft.finished ? { finished: true } : {}) };
  // A finished talk is not answered again unasked.
  const stage = nextQuestion(told) ? 'asking' : 'told';
  return { state: { ...told, stage }, effects: [{ kind: 'keep-draft', draft: kept }] };
}

const LONGEST_LINE = 2000;

function said(heardBefore: ConversationState, text: string): Step {
  const state: ConversationState = { ...heardBefore, linesHeard: heardBefore.linesHeard + 1 };
  const prompt = promptOf(state);
  if (!prompt) return { state, effects: [] };
  const line = text.slice(0, LONGEST_LINE).trim();
  if (line === '') {
    return { state: remark(state, note('Nothing was said. "don\'t know" leaves it open.')), effects: [] };
  }
  const recorded = withTurn(recordPrompt(state), { kind: 'answer', text: line });
  return keptAfter(state, remembering(recorded, withSameOrder(recorded, hear(recorded, line))));
}

/** A line that answered nothing leaves the order of questions as it is, so that the same question is asked again. */
function withSameOrder(before: ConversationState, { state, effects }: Step): Step {
  const isAnswered =
    state.answers !== before.answers ||
    state.windowsComplete !== before.windowsComplete ||
    state.history !== before.history ||
    state.reopened !== before.reopened;
  return { state: isAnswered ? state : { ...state, guide: before.guide }, effects };
}

/** Notes what a line changed, so that it can be taken back. A place still being looked up belongs to its line. */
function remembering(before: ConversationState, { state, effects }: Step): Step {
  const isTakenBack = state.before === null && before.before !== null;
  // A kept talk that is taken up, or an answer forgotten with all others, is no line's doing.
  const isOther = before.asides.some(({ kind }) => kind === 'resume') || isEmpty(state.answers);
  const isChanged = state.answers !== before.answers || state.stage === 'looking-up';
  if (!isChanged || isTakenBack || (isOther && state.stage !== 'looking-up')) return { state, effects };
  const said = before.turns.at(-1);
  if (said?.kind !== 'answer') return { state, effects };
  const { answers, windowsComplete, history, unsettled, early, budgetTotal_usd } = before;
  const put = { answers, windowsComplete, history, unsettled, early, budgetTotal_usd };
  const taken = { ...put, line: said.text, turn: said.id };
  return { state: { ...state, before: taken }, effects };
}

/** The question on the screen becomes part of the talk so far once it has been responded to. */
function recordPrompt(state: ConversationState): ConversationState {
  const prompt = promptOf(state);
  if (!prompt || state.recordedPrompt === prompt.key) return state;
  return { ...withTurn(state, { kind: 'question', prompt }), recordedPrompt: prompt.key };
}

function hear(state: ConversationState, line: string): Step {
  const command = readCommand(line);
  const [aside] = state.asides;
  if (aside && isForAside(aside, command, line.trim().toLowerCase())) {
    const outcome = answerAside(state, aside, line);
    if (outcome.kind === 'settled') return proceedFrom(outcome.step);
    if (outcome.kind === 'start-over') return startOver(state);
    if (outcome.kind === 'leave') return leave(state);
    if (outcome.kind === 'elsewhere') {
      return offeredMeanwhile(aside, hear(withPassedBy(outcome.state, aside), outcome.line ?? line));
    }
    if (isPassedBy(state, aside, line)) return hear(passed(state), line);
    return { state: withAccepts(state, `Not understood: "${quoted(line)}".`), effects: [] };
  }
  const ended = state.stage === 'told' ? hearAtEnd(state, line) : null;
  if (ended) return ended;
  if (command && isObeyed(command, state)) return obey(state, command);
  const inside = askedInside(line);
  if (!inside) return proceedFrom(answered(state, line));
  // Asked of the question that the line answers, not of the next one.
  return proceedFrom(answered(obey(state, inside.command).state, inside.rest));
}

/** Takes a line for an answer to what is asked. */
function answered(state: ConversationState, line: string): Step {
  return withQuestionPassed(state, applyReading(state, understand(line, contextOf(state))));
}

/** A county that was offered stays so until what was said instead has been found. */
function offeredMeanwhile(aside: Aside, { state, effects }: Step): Step {
  const isLookedUp = aside.kind === 'which-place' && state.stage === 'looking-up';
  return { state: isLookedUp ? { ...state, asides: [aside, ...state.asides] } : state, effects };
}

/**
 * Whether a line that settles nothing goes past the aside to the question behind it. Lines that were written beforehand
 * do, since nobody can answer what they did not foresee; else only what is understood as an answer to something else.
 */
function isPassedBy(state: ConversationState, aside: Aside, line: string): boolean {
  if (aside.kind === 'resume') return false;
  if (state.asksOnce) return true;
  if (aside.kind !== 'contradiction' || /^\d+$/.test(line)) return false;
  const { findings, windows, unknowns, early } = understand(line, contextOf(passed(state)));
  return [findings, windows, unknowns, early].some((said) => said.length > 0);
}

/** The state without the aside on top; a contradiction is put off, anything else stays as it was. */
function passed(state: ConversationState): ConversationState {
  const [aside, ...asides] = state.asides;
  if (aside?.kind === 'start-over') {
    return remark({ ...state, asides }, note('Not started over: your answers stand.'));
  }
  if (aside?.kind !== 'contradiction') return { ...state, asides };
  const labels = aside.findings.map(({ field }) => FIELD_LABELS[field]).join(', ');
  return remark(putOff(state), note(`${labels}: not settled, the first answer stands meanwhile.`));
}

/** Whether a line said while an aside is open goes to it; commands go past it, but none may push a kept talk aside. */
function isForAside(aside: Aside, command: Command | null, line: string): boolean {
  if (command === null || command.kind === 'keep') return true;
  if (aside.kind === 'resume') {
    return !['help', 'why', 'quit', 'projects', 'open-project', 'reader'].includes(command.kind);
  }
  if (aside.kind === 'take-back' && command.kind === 'take-back') return true;
  // The choice is called so; to break the talk off there are other words.
  if (aside.kind === 'trial' && command.kind === 'quit') return line === 'leave';
  // "Not right" and "that's it" are said of the place that is offered.
  if (aside.kind === 'which-place') return command.kind === 'take-back' || command.kind === 'done';
  if (aside.kind === 'enough') return command.kind === 'done';
  return aside.kind === 'start-over' && command.kind === 'start-over';
}

function isObeyed(command: Command, state: ConversationState): boolean {
  // "Keep" is an answer to a question gone back to; "that's all" closes the list of windows.
  if (command.kind === 'keep') return state.reopened !== null;
  if (command.kind === 'done') return contextOf(state).windowsPhase !== 'more';
  return true;
}

function hearAtEnd(state: ConversationState, line: string): Step | null {
  const plain = normaliseLine(line).replace(/[.!]+$/, '');
  const choices = promptOf(state)?.choices ?? [];
  const picked = choices.find((label, i) => plain === String(i + 1) || plain === normaliseLine(label));
  if (
    picked === LABELS.saveIt ||
    (choices.includes(LABELS.saveIt) && /^(?:yes|y|yes please|ok)$/.test(plain))
  ) {
    return save(state, null);
  }
  if (!state.advice || state.answers !== state.advisedAnswers) {
    if (picked === LABELS.workOut || /^(?:work it out|go on|continue|yes|y|answer)$/.test(plain)) {
      return workOut(state);
    }
  }
  if (
    picked === LABELS.finish ||
    /^(?:no|n|no thanks|nothing|done|finish(?:ed)?|that'?s (?:all|it)|enough)$/.test(plain)
  ) {
    return leave(state);
  }
  return null;
}

function placesFound(state: ConversationState, { text, places }: EventOf<'places-found'>): Step {
  const asking: ConversationState = { ...state, stage: 'asking' };
  const wide = widePlace(text);
  if (wide) return tooWide(asking, wide, text, places);
  const [first] = places;
  if (!first) {
    const words = `Not understood: no county or town I know is called "${quoted(text)}". I know those of the United States.`;
    const next = remark(asking, warning(words));
    const accepts = acceptsBlock(next);
    return { state: withMissedWords(accepts ? remark(next, accepts) : next, [text]), effects: [] };
  }
  const asides = asking.asides.filter(({ kind }) => kind !== 'which-place');
  if (places.length === 1 && first.match === 'exact') {
    return choosePlace({ ...asking, asides }, first);
  }
  const shown: readonly PlaceMatch[] = places.slice(0, 6);
  return {
    state: { ...asking, asides: [...asides, { kind: 'which-place', text, places: shown }] },
    effects: [],
  };
}

/** More counties of one name than this are no help. */
const MOST_OF_THE_NAME = 3;

/** A whole state, a region or another country: said so, and what is called the same is offered. */
function tooWide(
  asking: ConversationState,
  wide: WidePlace,
  text: string,
  found: readonly PlaceMatch[],
): Step {
  const told = remark(asking, ...widePlaceBlocks(wide));
  const same = found.filter(({ match }) => match === 'exact' || match === 'town');
  if (same.length === 0 || same.length > MOST_OF_THE_NAME) return { state: told, effects: [] };
  const asides = told.asides.filter(({ kind }) => kind !== 'which-place');
  return {
    state: { ...told, asides: [...asides, { kind: 'which-place', text, places: same }] },
    effects: [],
  };
}

/** Adds the draft to keep when the answers have changed. Kept first, before anything else is done. */
function keptAfter(before: ConversationState, { state, effects }: Step): Step {
  const isChanged =
    state.answers !== before.answers ||
    state.windowsComplete !== before.windowsComplete ||
    state.reader !== before.reader ||
    state.early !== before.early ||
    JSON.stringify(keptContradictions(state)) !== JSON.stringify(keptContradictions(before)) ||
    state.history !== before.history;
  const isDropped = effects.some((effect) => effect.kind === 'drop-draft');
  if (!isChanged || isDropped || isEmpty(state.answers)) return { state, effects };
  const keep = keeping(state);
  // Another talk in hand is kept only after the one before has been put away.
  const isOther = effects.some((effect) => effect.kind === 'put-away');
  return { state, effects: isOther ? [...effects, keep] : [keep, ...effects] };
}
