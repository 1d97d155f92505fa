import { type Finding, sameAnswer } from './answers.ts';
import { withAnswer, withoutAnswers } from './answers-schema.ts';
import { applyFindings, applyReading } from './apply-reading.ts';
import { note } from './notes.ts';
import { contextOf, countyWords, LABELS, placeChoices, placeLabel } from './prompt.ts';
import type { Aside, ConversationState, PlaceMatch, Step, Trial } from './state.ts';
import { putBack } from './take-back.ts';
import { answersBlocks, assumeRest, notedBlock, zoneBlock } from './talk.ts';
import { remark } from './turns.ts';
import { readDontKnow } from './understanding/dont-know.ts';
import { normaliseLine } from './understanding/line-text.ts';
import { NOTHING_SAID } from './understanding/reading.ts';
import { understand } from './understanding/understand.ts';
import { assumedEarlier, contradictionsKept, withoutFields } from './unsettled.ts';

/** What came of a line said to an aside: settled, or not meant for it and to be read as an ordinary line. */
export type AsideOutcome =
  | { readonly kind: 'settled'; readonly step: Step }
  | { readonly kind: 'start-over' }
  | { readonly kind: 'leave' }
  | { readonly kind: 'elsewhere'; readonly state: ConversationState; readonly line?: string }
  | { readonly kind: 'puzzled' };

/** Settles the aside on top with the user's line. */
export function answerAside(state: ConversationState, aside: Aside, text: string): AsideOutcome {
  const line = normaliseLine(text).replace(/[.!]+$/, '');
  const rest: ConversationState = { ...state, asides: state.asides.slice(1) };
  switch (aside.kind) {
    case 'resume':
      return answerResume(rest, aside, line);
    case 'which-place': {
      const [only] = aside.places;
      const labels = placeChoices(aside.places);
      const chosen = aside.places.find((_, i) => isPick(line, i, labels[i] ?? ''));
      if (chosen) return settled(choosePlace(rest, chosen));
      if (isPick(line, aside.places.length, LABELS.noneOfThese) || NOT_THERE.test(line)) {
        return settled({
          state: remark(
            rest,
            note('Say the county and the state another way, or give the climate zone, such as "5B".'),
          ),
          effects: [],
        });
      }
      if (only && aside.places.length === 1 && THERE.test(line)) return settled(choosePlace(rest, only));
      return isNumber(line) ? { kind: 'puzzled' } : (answerBesides(state, text) ?? elsewhere(rest, text));
    }
    case 'which-number': {
      const number = line.replace(/^choice /, '');
      const named = () =>
        aside.asks === undefined ? namedSum(aside.findings, line) : yesOrNo(aside.findings, line);
      const chosen = isNumber(number) ? aside.findings[Number(number) - 1] : named();
      if (chosen) return settled(takeChosen(rest, chosen));
      // Of an estimate any other figure is the answer itself.
      if (aside.asks !== undefined) return elsewhere(rest, text);
      return isNumber(number) ? { kind: 'puzzled' } : { kind: 'elsewhere', state: rest };
    }
    case 'contradiction':
      if (isPick(line, 0, LABELS.keepEarlier) || EARLIER.test(line)) {
        return settled({ state: remark(rest, note('Kept as you said before.')), effects: [] });
      }
      if (isPick(line, 1, LABELS.takeNew) || LATER.test(line)) return settled(takeLater(rest, aside));
      if (readDontKnow(line, false)) {
        return settled({ state: assumedEarlier({ ...rest, unsettled: aside.findings }), effects: [] });
      }
      return takeRepeated(rest, aside, text) ?? { kind: 'puzzled' };
    case 'unframed':
      if (isPick(line, 0, LABELS.framedWall) || FRAMED.test(line)) {
        return settled({ state: remark(rest, note('Then of a wall that stands on studs.')), effects: [] });
      }
      if (isPick(line, 1, LABELS.leaveNow) || NO_STUDS.test(line)) return { kind: 'leave' };
      return isNumber(line) ? { kind: 'puzzled' } : { kind: 'elsewhere', state: rest };
    case 'trial':
      if (isPick(line, 0, LABELS.keepTrial) || TAKE_TRIAL.test(line))
        return settled(takeTrial(rest, aside.trial));
      if (isPick(line, 1, LABELS.leaveTrial) || DROP_TRIAL.test(line)) {
        return settled({ state: remark(rest, note('Left as it was.')), effects: [] });
      }
      return isNumber(line) ? { kind: 'puzzled' } : { kind: 'elsewhere', state: rest };
    case 'enough':
      if (isPick(line, 0, LABELS.hearAnswer) || HEAR.test(line)) {
        return settled({ state: assumeRest(rest), effects: [] });
      }
      if (isPick(line, 1, LABELS.askOn) || GO_ON.test(line)) {
        return settled({ state: { ...rest, wantsAll: true }, effects: [] });
      }
      // Nobody answers a question with it that is not on the screen.
      if (readDontKnow(line, false)?.fields.length === 0) return settled(remindOfEnough(state));
      return { kind: 'elsewhere', state: { ...rest, wantsAll: true } };
    case 'take-back':
      if (isPick(line, 0, LABELS.takeItBack) || TAKE_BACK.test(line)) {
        return settled(putBack(rest, aside.before));
      }
      if (isPick(line, 1, LABELS.leaveIt) || DROP_TRIAL.test(line)) {
        return settled({ state: remark(rest, note('Left as it is.')), effects: [] });
      }
      return isNumber(line) ? { kind: 'puzzled' } : { kind: 'elsewhere', state: rest };
    case 'start-over':
      if (isPick(line, 0, LABELS.yesForget) || YES.test(line)) return { kind: 'start-over' };
      if (isPick(line, 1, LABELS.noGoOn) || NO.test(line)) return settled({ state: rest, effects: [] });
      return { kind: 'puzzled' };
  }
}

function remindOfEnough(state: ConversationState): Step {
  const words =
    'Either will do. "hear the answer" assumes what is still open, and lists it; "go on" asks for it, and the answer rests on less that is assumed.';
  return { state: remark(state, note(words)), effects: [] };
}

const THERE =
  /^(?:(?:yes|y|yeah|yep|yup|sure|ok|okay),? ?)?(?:(?:that'?s|that is|it'?s|it is) (?:it|right|correct|the one|there)|it is|(?:(?:that|it) )?(?:sounds|looks|seems) (?:about |quite )?(?:right|good|fine|ok(?:ay)?)|(?:that'?s |it'?s )?(?:about|quite|roughly) (?:right|it)|right|correct|exactly)?(?:,? i (?:think|believe|guess|suppose)(?: so)?)?$/;
const NOT_THERE =
  /^(?:(?:no|nope|n|none|neither)(?: of (?:these|those|them))?,? ?)?(?:(?:it'?s|it is|that'?s|that is) (?:not(?: (?:it|there|right|that(?: one)?|the (?:place|one)))?|wrong|another(?: one| place)?)|(?:it |that )?isn'?t(?: it| right)?|not (?:there|that one|right)|wrong(?: (?:place|county|one))?)?$/;
/** "No, Bozeman": what follows is meant. */
const BUT_NO = /^(?:no|nope)[,.;:]?\s+(?:(?:it'?s|it is|i meant?|rather|in)\s+)*(?=\S)/i;

function elsewhere(state: ConversationState, text: string): AsideOutcome {
  return { kind: 'elsewhere', state, line: text.replace(BUT_NO, '') };
}

/** An answer to another question is taken, and the place asked about again; null for anything else. */
function answerBesides(state: ConversationState, text: string): AsideOutcome | null {
  // As if the place were not asked: only what names one for sure is taken for one.
  const reading = understand(text, { ...contextOf(state), question: null, open: [], choices: [] });
  const { findings, windows, unknowns, early, place } = reading;
  const isOfPlace = place !== null || findings.some(({ field }) => field === 'place');
  const isAnswer = [findings, windows, unknowns, early].some((said) => said.length > 0);
  return isAnswer && !isOfPlace ? settled(applyReading(state, reading)) : null;
}

const TAKE_BACK = /^(?:take (?:it|that) back|yes|y|not right|that(?:'s| is) (?:it|not right|wrong)|undo|ok)$/;
const TAKE_TRIAL = /^(?:keep(?: it| this| that)?(?: change)?|yes|y|take (?:it|this)|ok|okay)$/;
const DROP_TRIAL = /^(?:leave(?: it)?(?: as it was)?|drop (?:it|that)|no|n|as it was|as before|forget it)$/;
const HEAR = /^(?:hear(?: it| the answer)?(?: now)?|yes|y|done|answer|ok|okay|the answer)$/;
const GO_ON = /^(?:go on|continue|on|no|n|ask on|more questions|carry on)(?: with the questions)?$/;
const FRAMED =
  /^(?:(?:yes|y|yeah|yep|sure|ok|okay),? ?)?(?:go on|continue|carry on|(?:it|that|the wall) (?:has|stands on|is on) studs|there (?:are|is)(?: (?:studs|one|a framed wall))?|(?:it'?s |it is )?(?:framed|a veneer|veneer|only (?:the |a )?skin))?$/;
const YES = /^(?:start over|yes|y|yeah|yep|sure|ok|okay)$/;
const NO = /^(?:no|n|nope|go on|cancel)$/;
const NO_STUDS = /^(?:no|n|nope|no studs|there (?:is|are) (?:none|no studs)|leave(?: it)?)$/;
const EARLIER =
  /^(?:(?:the )?(?:earlier|old|first|previous|before|former)(?: (?:one|answer))?|keep(?: .*)?|as before|no)$/;
const LATER =
  /^(?:(?:the )?(?:new|later|second|latest|last|latter)(?: (?:one|answer))?|take (?:the )?(?:new|later|second)(?: (?:one|answer))?|change(?: it)?|now)$/;

function answerResume(
  rest: ConversationState,
  aside: Extract<Aside, { kind: 'resume' }>,
  line: string,
): AsideOutcome {
  if (isPick(line, 0, LABELS.goOn) || /^(?:go on|continue|resume|yes|y|carry on|on)$/.test(line)) {
    const going = resumed(rest, aside);
    return settled({ state: remark(going, ...answersBlocks(going)), effects: [] });
  }
  if (isPick(line, 1, LABELS.startFresh) || /^(?:(?:start )?(?:fresh|over|again|new)|no|n)$/.test(line)) {
    // A talk with a name is one of several projects and stays kept.
    const effect = aside.draft.answers.name === undefined ? 'drop-draft' : 'put-away';
    return settled({ state: remark(rest, note('A fresh start.')), effects: [{ kind: effect }] });
  }
  return { kind: 'puzzled' };
}

/** The state with a kept draft taken up again. */
export function resumed(
  state: ConversationState,
  aside: Extract<Aside, { kind: 'resume' }>,
): ConversationState {
  return {
    ...state,
    answers: aside.draft.answers,
    windowsComplete: aside.draft.windows_complete,
    history: aside.draft.history,
    budgetTotal_usd: aside.draft.budget_total_usd ?? null,
    unsettled: contradictionsKept(aside.draft),
    early: aside.draft.early ?? [],
    reader: state.isReaderGiven ? state.reader : (aside.draft.reader ?? state.reader),
  };
}

/** Takes a county that was found or picked as the place. */
export function choosePlace(state: ConversationState, place: PlaceMatch): Step {
  const step = applyFindings(state, [
    {
      field: 'place',
      value: { state: place.state, county: place.county },
      words: placeLabel(place),
      title: countyWords(place),
    },
  ]);
  const isTaken = step.state.answers.place !== state.answers.place;
  return isTaken ? { ...step, state: remark(step.state, zoneBlock(place)) } : step;
}

const SUM_IN_ALL =
  /^(?:(?:it'?s |that'?s )?(?:the )?(?:in (?:all|total)|total|altogether|all in)|(?:it'?s |that'?s )?(?:for )?the whole(?: (?:thing|wall|job|house|side))?|(?:for )?all of it)$/;
const SUM_A_FOOT = /^(?:it'?s |that'?s )?(?:(?:a|per|by the) )?(?:sq(?:uare)?\.? ?)?(?:foot|ft)$/;

/** Of an estimate, the first, and what is left open instead. */
function yesOrNo([estimate, open]: readonly Finding[], line: string): Finding | undefined {
  if (THERE.test(line) || TAKE_TRIAL.test(line)) return estimate;
  return NO.test(line) || readDontKnow(line, false) ? open : undefined;
}

/** "In all" or "a foot", said of a sum that may be either. */
function namedSum(findings: readonly Finding[], line: string): Finding | undefined {
  const sums = findings.filter(({ field }) => field === 'budget_usd_per_ft2');
  if (SUM_IN_ALL.test(line)) return sums.find(({ total_usd }) => total_usd !== undefined);
  if (SUM_A_FOOT.test(line)) return sums.find(({ total_usd }) => total_usd === undefined);
  return undefined;
}

/** A total is taken as if it had been said as one, so that it is told what it is divided by. */
function takeChosen(state: ConversationState, chosen: Finding): Step {
  const { total_usd, words } = chosen;
  if (total_usd === undefined) return applyFindings(state, [chosen]);
  return applyReading(state, { ...NOTHING_SAID, budgetTotal: { usd: total_usd, words } });
}

/** Takes a trial over: its answers hold from here on. */
function takeTrial(state: ConversationState, trial: Trial): Step {
  const answers = trial.changes.reduce(
    (taken, { field, value }) => withAnswer(taken, field, value),
    state.answers,
  );
  const hasWindows = trial.changes.some(({ field }) => field === 'windows');
  const noted = notedBlock(trial.changes.filter(({ value }) => value !== 'unknown'));
  const budget = trial.changes.find(({ field }) => field === 'budget_usd_per_ft2');
  const taken: ConversationState = {
    ...state,
    answers,
    budgetTotal_usd: budget ? (budget.total_usd ?? null) : state.budgetTotal_usd,
    windowsComplete: state.windowsComplete || hasWindows,
  };
  return { state: noted ? remark(taken, noted) : taken, effects: [] };
}

function takeLater(state: ConversationState, aside: Extract<Aside, { kind: 'contradiction' }>): Step {
  const fields = aside.findings.map(({ field }) => field);
  const cleared: ConversationState = {
    ...state,
    answers: withoutAnswers(state.answers, fields),
  };
  return applyFindings(cleared, aside.findings);
}

/** One of the two answers said once more is the one that holds. */
function takeRepeated(
  rest: ConversationState,
  aside: Extract<Aside, { kind: 'contradiction' }>,
  text: string,
): AsideOutcome | null {
  const reading = understand(text, contextOf(rest));
  const isRepeated = ({ field, value }: Finding) => {
    const before = rest.answers[field];
    return reading.findings.some(
      (said) =>
        said.field === field &&
        (sameAnswer(said.value, value) || (before !== undefined && sameAnswer(said.value, before))),
    );
  };
  const repeated = aside.findings.filter(isRepeated);
  if (repeated.length === 0) return null;
  const left = withoutFields(aside.findings, repeated);
  const asides: Aside[] = left.length > 0 ? [{ kind: 'contradiction', findings: left }] : [];
  const answers = withoutAnswers(
    rest.answers,
    repeated.map(({ field }) => field),
  );
  return settled(applyReading({ ...rest, answers, asides: [...asides, ...rest.asides] }, reading));
}

function settled(step: Step): AsideOutcome {
  return { kind: 'settled', step };
}

function isNumber(line: string): boolean {
  return /^\d+$/.test(line);
}

function isPick(line: string, index: number, label: string): boolean {
  return line === String(index + 1) || line === `choice ${index + 1}` || line === normaliseLine(label);
}
