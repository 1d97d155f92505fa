import { ended } from '../base/first-letter.ts';
import type { ScenarioWindow } from '../brief/scenario.ts';
import { choicesFor, nextQuestion, openFields, position, relevantParts } from './agenda.ts';
import { takenBackItems } from './changed-answers.ts';
import { describeAnswer, describeFinding, describeWindow, FIELD_LABELS } from './describe.ts';
import { doesMatter } from './matter.ts';
import type { Choice, Question } from './questions.ts';
import type { Aside, ConversationState, PlaceMatch, Prompt } from './state.ts';
import type { Context, UnframedWall } from './understanding/reading.ts';
import { missingAspects, type WindowAspect } from './windows.ts';

/** What is asked now; null while something is being worked out, and at the end. */
export function promptOf(state: ConversationState): Prompt | null {
  if (state.stage !== 'asking' && state.stage !== 'told') return null;
  const [aside] = state.asides;
  if (aside) return asidePrompt(aside, state);
  if (state.stage === 'told') return endPrompt(state);
  const question = nextQuestion(state);
  return question ? questionPrompt(question, state) : null;
}

/** What a line is read against while no aside is open. */
export function contextOf(state: ConversationState): Context {
  const question = state.stage === 'asking' ? nextQuestion(state) : null;
  const phase = question?.id === 'windows' ? windowsPhase(state) : null;
  return {
    question: question?.id ?? null,
    open: question ? openFields(question, state) : [],
    answers: state.answers,
    choices: question ? choicesNow(question, state) : [],
    windowsPhase: phase,
    isHomeowner: state.reader === 'homeowner',
    windowsMissing: phase === 'details' ? missingAspects(kindInDetail(state)?.window ?? {}) : [],
  };
}

function choicesNow(question: Question, state: ConversationState): readonly Choice[] {
  const phase = question.id === 'windows' ? windowsPhase(state) : null;
  if (phase === 'details') return [];
  if (phase === 'more') return [NO_MORE];
  return choicesFor(question, openFields(question, state), state.answers);
}

const NO_MORE: Choice = { label: 'No more windows', sets: {} };

/** Where the windows question stands: the first list, details of one kind, or whether there are more. */
export function windowsPhase(state: ConversationState): 'kinds' | 'details' | 'more' {
  const { windows } = state.answers;
  if (state.reopened === 'windows' || !Array.isArray(windows) || windows.length === 0) return 'kinds';
  return kindInDetail(state) ? 'details' : 'more';
}

/** The kind of window whose details are asked for, and its index. */
export function kindInDetail(
  state: ConversationState,
): { readonly window: ScenarioWindow; readonly index: number } | null {
  const { windows } = state.answers;
  if (!Array.isArray(windows)) return null;
  const index = windows.findIndex((window) => missingAspects(window).length > 0);
  const window = windows[index];
  return window ? { window, index } : null;
}

function questionPrompt(question: Question, state: ConversationState): Prompt {
  const { number, of } = position(question, state);
  const open = openFields(question, state);
  const parts = question.parts.filter((part) => open.includes(part.field));
  const isPartly = parts.length < relevantParts(question, state.answers).length;
  const base = {
    label: question.label,
    aside: `${number} of ${of}`,
    why: whyAsked(question, state),
    choices: choicesNow(question, state).map((choice) => choice.label),
    example: question.example,
    accepts: parts.map((part) => part.accepts).join('; '),
  };
  if (question.id === 'windows' && windowsPhase(state) !== 'kinds') return windowsPrompt(base, state);
  if (isPartly) {
    return {
      ...base,
      key: `${question.id}:${parts.map((part) => part.field).join(',')}`,
      title: `Still open: ${parts.map((part) => part.open).join('; ')}.`,
      why: null,
      // With parts answered, a whole example would only repeat them.
      example: null,
    };
  }
  const isNew = state.answers.project === 'new';
  const title = (isNew ? question.titleWhenNew : undefined) ?? question.title;
  const isReopened = state.reopened === question.id;
  return {
    ...base,
    key: isReopened ? `${question.id}:again` : question.id,
    title: isReopened ? `${title}${saidBefore(question, state)}` : title,
  };
}

/** The reason, and that it may decide the first choice where that has been tried. */
export function whyAsked(question: Question, { guide }: ConversationState): string {
  return doesMatter(question, guide) ? `${question.why} It may still change the first choice.` : question.why;
}

function saidBefore(question: Question, state: ConversationState): string {
  const before = question.parts.flatMap(({ field }) => {
    const value = state.answers[field];
    return value === undefined ? [] : [describeAnswer(field, value)];
  });
  return before.length > 0 ? ` So far: ${ended(before.join(', '))} Say "keep" to leave it so.` : '';
}

const ASPECT_WORDS: Readonly<Record<WindowAspect, string>> = {
  count: 'how many',
  width_in: 'the width',
  height_in: 'the height',
  operation: 'the kind (fixed, casement, awning, hung, sliding or door)',
  glazing: 'double or triple glazing',
  mounting: 'flanged or flangeless',
  weight_lb: 'the weight of one, or "work it out"',
};

type Base = Omit<Prompt, 'key' | 'title'>;

function windowsPrompt(base: Base, state: ConversationState): Prompt {
  const kind = kindInDetail(state);
  if (!kind) {
    const count = Array.isArray(state.answers.windows) ? state.answers.windows.length : 0;
    return {
      ...base,
      key: `windows:more:${count}`,
      title: 'Is there another kind of window or door in the wall?',
      why: null,
      example: 'two 72x80 in. sliding doors, double, flanged',
      accepts: 'another kind of window, or "no more"',
    };
  }
  const missing = missingAspects(kind.window);
  const open = missing.map((aspect) => ASPECT_WORDS[aspect]);
  return {
    ...base,
    key: `windows:${kind.index}:${missing.join(',')}`,
    title: `For the ${describeWindow(kind.window)}, still open: ${sizeAsOne(open).join('; ')}.`,
    why: null,
    example: exampleFor(missing),
    accepts: `${sizeAsOne(open).join('; ')}; "don't know" for what is left`,
  };
}

function sizeAsOne(open: readonly string[]): string[] {
  const hasBoth = open.includes(ASPECT_WORDS.width_in) && open.includes(ASPECT_WORDS.height_in);
  return open.flatMap((words) => {
    if (!hasBoth) return [words];
    if (words === ASPECT_WORDS.height_in) return [];
    return [words === ASPECT_WORDS.width_in ? 'width and height' : words];
  });
}

function exampleFor(missing: readonly WindowAspect[]): string {
  const words: Readonly<Record<WindowAspect, string>> = {
    count: 'six',
    width_in: '36x60 in.',
    height_in: '',
    operation: 'casement',
    glazing: 'triple',
    mounting: 'flanged',
    weight_lb: '130 lb',
  };
  return missing
    .map((aspect) => words[aspect])
    .filter((word) => word !== '')
    .join(', ');
}

/** Labels of the choices that do not belong to a question. */
export const LABELS = {
  goOn: 'Go on with it',
  startFresh: 'Start fresh',
  noneOfThese: 'None of these',
  keepEarlier: 'Keep what I said before',
  takeNew: 'Take the new answer',
  yesForget: 'Yes, forget my answers and start over',
  noGoOn: 'No, go on',
  saveIt: 'Save the record',
  finish: 'Finish',
  workOut: 'Work it out',
  keepTrial: 'Keep this change',
  leaveTrial: 'Leave it as it was',
  hearAnswer: 'Hear the answer now',
  askOn: 'Go on with the questions',
  framedWall: 'Go on: the wall I ask about stands on studs',
  leaveNow: 'Leave',
  takeItBack: 'Take it back',
  leaveIt: 'Leave it as it is',
} as const;

function isTown(places: readonly PlaceMatch[]): boolean {
  return places.every(({ match }) => match === 'town');
}

/** "St. Louis County, MN" */
export function countyWords({ title, state }: PlaceMatch): string {
  return `${title}, ${state}`;
}

export function placeLabel(place: PlaceMatch): string {
  return `${countyWords(place)} (zone ${place.zone})`;
}

/** Counties to choose from; beside others, one that was found by a town in it says so. */
export function placeChoices(places: readonly PlaceMatch[]): string[] {
  return places.map((place) =>
    places.length > 1 && place.town !== undefined
      ? `${placeLabel(place)}, with the town of ${place.town}`
      : placeLabel(place),
  );
}

function asidePrompt(aside: Aside, state: ConversationState): Prompt {
  const base = { aside: null, why: null, example: null };
  switch (aside.kind) {
    case 'resume':
      return {
        ...base,
        key: 'resume',
        label: 'An unfinished talk',
        title: `${talkName(aside.draft)} from ${aside.draft.saved_at.slice(0, 10)} was not finished. Go on with it, or start fresh?`,
        choices: [LABELS.goOn, LABELS.startFresh],
        accepts:
          '"go on", which takes it up ("done" then answers at once); "start fresh"; "quit", which keeps it for later; "projects" lists other kept talks',
      };
    case 'which-place':
      return {
        ...base,
        key: `which-place:${aside.text}`,
        label: 'Place',
        title:
          aside.places.length === 1
            ? isTown(aside.places)
              ? `Is this the county that "${aside.text}" lies in?`
              : `Is this the place meant by "${aside.text}"?`
            : `Which place is meant by "${aside.text}"?`,
        choices: [...placeChoices(aside.places), LABELS.noneOfThese],
        accepts: 'one of the choices by number, or another place',
      };
    case 'which-number':
      return {
        ...base,
        key: `which-number:${aside.words}`,
        label: aside.asks === undefined ? 'Which one' : 'An estimate',
        title: aside.asks ?? `"${aside.words}" may mean two things. Which one?`,
        choices: aside.findings.map(
          (finding) => `${FIELD_LABELS[finding.field]}: ${describeFinding(finding)}`,
        ),
        accepts:
          aside.asks === undefined ? 'one of the choices by number' : '"yes", "no" or the figure itself',
      };
    case 'contradiction':
      return {
        ...base,
        key: `contradiction:${aside.findings.map(({ field, value }) => `${field}=${JSON.stringify(value)}`).join(',')}`,
        label: 'Two answers',
        title: aside.findings
          .map(({ field, value }) => {
            const before = state.answers[field];
            const old = before === undefined ? '' : describeAnswer(field, before);
            return ended(
              `${FIELD_LABELS[field]}: before you said ${old}; now ${describeAnswer(field, value)}`,
            );
          })
          .concat('Which holds?')
          .join(' '),
        choices: [LABELS.keepEarlier, LABELS.takeNew],
        accepts: '"keep", "take the new one" or "don\'t know"',
      };
    case 'unframed':
      return {
        ...base,
        key: `unframed:${aside.wall.words}`,
        label: 'Not a wall that I know',
        title: unframedWords(aside.wall),
        choices: [LABELS.framedWall, LABELS.leaveNow],
        accepts: '"go on" for a wall that stands on studs, or "leave"',
      };
    case 'trial':
      return {
        ...base,
        key: `trial:${JSON.stringify(aside.trial.changes.map(({ field, value }) => [field, value]))}`,
        label: 'A trial',
        title: 'Nothing is changed yet. Keep this change, or leave everything as it was?',
        choices: [LABELS.keepTrial, LABELS.leaveTrial],
        accepts: '"keep" or "leave"',
      };
    case 'enough':
      return {
        ...base,
        key: 'enough',
        label: 'Enough asked',
        title: `${firstWords(aside.first)} None of the readings I tried of what is still open changes that. Hear the answer now, or go on with the questions?`,
        choices: [LABELS.hearAnswer, LABELS.askOn],
        accepts: '"hear the answer" or "go on", or an answer to any question',
      };
    case 'take-back':
      return {
        ...base,
        key: `take-back:${aside.before.turn}`,
        label: 'What is not right?',
        title: `The last line that changed an answer is "${aside.before.line}". ${ended(takenBackItems(state, aside.before).join('; '))} Take that back?`,
        choices: [LABELS.takeItBack, LABELS.leaveIt],
        accepts: '"take it back" or "leave it"; or "change …" with the name of a question',
      };
    case 'start-over':
      return {
        ...base,
        key: 'start-over',
        label: 'Start over',
        title: 'Forget all answers and begin again?',
        choices: [LABELS.yesForget, LABELS.noGoOn],
        accepts: '"yes" or "no"',
      };
  }
}

/** Said of the wall itself, not of the talk: nothing that follows would be true of it. */
function unframedWords({ name, words, mayHaveStuds }: UnframedWall): string {
  const what = mayHaveStuds
    ? `"${words}" may be ${name} through and through, or only the skin of a wall on studs.`
    : `"${words}" is ${name}, not one on studs.`;
  return `${what} Whatever I draw up is screwed to studs of wood or steel: of a wall without them my advice does not hold, and somebody licensed who knows such walls has to be asked. An addition or another side may be framed. Is there a wall on studs to go on with?`;
}

function talkName({ answers }: { readonly answers: ConversationState['answers'] }): string {
  return answers.name === undefined ? 'A talk' : `The talk "${answers.name}"`;
}

function firstWords(first: string | null): string {
  return first === null ? 'No wall passes by what you have said.' : `The first choice is settled: ${first}.`;
}

/** After the work was stopped, with nothing left to ask. */
const STOPPED_PROMPT: Prompt = {
  key: 'end:stopped',
  label: 'Stopped',
  aside: null,
  title: 'The answer was not worked out. Work it out after all, change an answer, or finish?',
  why: null,
  choices: [LABELS.workOut, LABELS.finish],
  example: 'change budget',
  accepts: '"work it out", "change …" with the name of a question, "show" or "finish"',
};

const ABOUT_WALLS = '"what if …", "why not …", "compare 1 and 2", "drawing", "numbers"';
/** Nothing is ranked that could be drawn or compared. */
const ABOUT_NONE = '"why does nothing pass", "what if …", "why not …"';

function endPrompt(state: ConversationState): Prompt {
  if (!state.advice || state.answers !== state.advisedAnswers) return STOPPED_PROMPT;
  const isSaved = state.savedPaths.length > 0;
  const about = state.advice.ranked.length > 0 ? ABOUT_WALLS : ABOUT_NONE;
  return {
    key: `end:${isSaved ? 'saved' : 'open'}`,
    label: isSaved ? 'What next' : 'Decision record',
    aside: null,
    title: isSaved
      ? 'The record is saved. Change an answer and hear the answer again, or finish?'
      : state.hasEarlierRecord
        ? 'Save the decision record anew? The one saved before is of your earlier answers.'
        : 'Save the decision record? It says what was decided, why, and what was assumed.',
    why: null,
    choices: isSaved ? [LABELS.finish] : [LABELS.saveIt, LABELS.finish],
    example: isSaved ? 'change budget' : 'save',
    accepts: `"save", ${about}, "change …" with the name of a question, or "finish"`,
  };
}
