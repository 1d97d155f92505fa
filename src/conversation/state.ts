import type { Advice } from '../advice/advice-schema.ts';
import type { Impression } from '../advice/first-impression.ts';
import type { WhyNot } from '../advice/why-not-schema.ts';
import type { Issue } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import type { Answers, Finding } from './answers.ts';
import type { Block } from './blocks.ts';
import type { Draft } from './draft.ts';
import type { ProjectEntry } from './projects.ts';
import type { QuestionId } from './questions.ts';
import type { Reader } from './reader.ts';
import type { HeardEarly, UnframedWall } from './understanding/reading.ts';

/** A county that a place name may mean. */
export type PlaceMatch = {
  readonly state: string;
  readonly county: string;
  /** What the county is called, with its kind: a town may share its name with another county. */
  readonly title: string;
  readonly zone: string;
  /** "exact" when the name itself was found; anything else is put to the user. */
  readonly match?: 'exact' | 'town' | 'close' | 'weak';
  /** The town that it was found by, where that was how. */
  readonly town?: string;
};

/** One question as it is put on the screen. */
export type Prompt = {
  /** Changes whenever what is asked changes. */
  readonly key: string;
  /** Short name for the ruled title. */
  readonly label: string;
  /** Right end of the ruled title: "3 of 15". */
  readonly aside: string | null;
  readonly title: string;
  /** Why it is asked; null where it explains itself. */
  readonly why: string | null;
  readonly choices: readonly string[];
  readonly example: string | null;
  /** Completes "I take …". */
  readonly accepts: string;
};

/** How much of an answer is told at once. */
export type Extent = 'brief' | 'whole';

/** A finished turn of the talk. Turns are only ever added. */
export type Turn =
  | { readonly id: number; readonly kind: 'question'; readonly prompt: Prompt }
  | { readonly id: number; readonly kind: 'answer'; readonly text: string }
  | { readonly id: number; readonly kind: 'remark'; readonly blocks: readonly Block[] }
  /** The answer, as it was told. */
  | {
      readonly id: number;
      readonly kind: 'advice';
      readonly reader: Reader;
      readonly extent: Extent;
      readonly blocks: readonly Block[];
    };

/** Something to settle before the questions go on. */
export type Aside =
  | { readonly kind: 'resume'; readonly draft: Draft }
  | { readonly kind: 'which-place'; readonly text: string; readonly places: readonly PlaceMatch[] }
  | {
      readonly kind: 'which-number';
      /** Number of the line that said it. */
      readonly line: number;
      readonly words: string;
      readonly findings: readonly Finding[];
      /** Where the first is an estimate: how it is put. */
      readonly asks?: string;
    }
  | { readonly kind: 'contradiction'; readonly findings: readonly Finding[] }
  /** The wall that was spoken of does not stand on studs: whether there is another one to speak of. */
  | { readonly kind: 'unframed'; readonly wall: UnframedWall }
  | { readonly kind: 'start-over' }
  /** "Not right" was said after other lines: whether this one is meant. */
  | { readonly kind: 'take-back'; readonly before: Before }
  /** A trial answer that was worked out: keep it or leave everything as it was. */
  | { readonly kind: 'trial'; readonly trial: Trial }
  /** Nothing still open would change the first choice. */
  | { readonly kind: 'enough'; readonly first: string | null };

/** Answers that are tried out, not given. */
export type Trial = {
  readonly answers: Answers;
  readonly changes: readonly Finding[];
};

/** What is thought of the wall while questions are still open. */
export type Outlook = {
  /** The answers it rests on. */
  readonly answers: Answers;
  readonly impression: Impression;
  /** Fields still open whose other readings would change the first choice, most telling first; null until tried. */
  readonly matters: readonly string[] | null;
};

export type Stage =
  | 'opening'
  | 'asking'
  /** A place is being looked up. */
  | 'looking-up'
  /** The wall is being worked out. */
  | 'advising'
  /** A trial answer, or what is against a wall, is being worked out. */
  | 'trying'
  /** What still matters is being weighed before the next question. */
  | 'weighing'
  /** Another talk is being fetched. */
  | 'fetching'
  /** The answer has been told. */
  | 'told'
  | 'saving'
  | 'left';

export type ConversationState = {
  readonly turns: readonly Turn[];
  readonly stage: Stage;
  readonly answers: Answers;
  /** Whether the user said that no other window follows. */
  readonly windowsComplete: boolean;
  /** Questions answered, oldest first; "back" goes to the last. */
  readonly history: readonly QuestionId[];
  readonly reopened: QuestionId | null;
  /** The answers before the last line that changed them: what "not right" goes back to. */
  readonly before: Before | null;
  readonly asides: readonly Aside[];
  /** Second answers that contradict a first one and were put off: the first ones stand meanwhile. */
  readonly unsettled: readonly Finding[];
  /** What was said of a question before it was asked and does not answer it: taken up when it is asked. */
  readonly early: readonly HeardEarly[];
  /** The budget was told as so much for the whole wall: divided anew when the area becomes another. */
  readonly budgetTotal_usd: number | null;
  /** "Done" was said: everything still open but the place is assumed. */
  readonly assumeRest: boolean;
  /** No further line will come. */
  readonly inputEnded: boolean;
  /** Save the record as soon as the answer is told. */
  readonly saveWhenTold: boolean;
  /** The prompt already written into the turns. */
  readonly recordedPrompt: string | null;
  readonly reader: Reader;
  /** The reader was named when the program was started: a kept talk doesn't change it. */
  readonly isReaderGiven: boolean;
  readonly extent: Extent;
  readonly looksAhead: boolean;
  readonly asksOnce: boolean;
  /** Lines heard so far, empty ones too. */
  readonly linesHeard: number;
  /** Lines written beforehand of which something was not understood, in their order. */
  readonly missed: readonly Missed[];
  readonly outlook: Outlook | null;
  /** Of an outlook: what guides the order of questions. Taken over between two questions, never under the user's hands. */
  readonly guide: readonly string[] | null;
  /** Said that nothing open would change the answer, and the user wants to go on all the same. */
  readonly wantsAll: boolean;
  /** Where the talk goes on after a trial or a fetched talk. */
  readonly returnTo: 'asking' | 'told';
  readonly advice: Advice | null;
  /** The answers that the advice rests on. */
  readonly advisedAnswers: Answers | null;
  readonly savedPaths: readonly string[];
  /** A record was saved in this talk before the answer that is told now. */
  readonly hasEarlierRecord: boolean;
  readonly exitCode: number | null;
  /** Why nothing can be answered: the front end reports it and leaves with 2. */
  readonly refused: readonly Issue[];
};

/** What was not understood of a line, and the question that was left open for it, if one was. */
export type Missed = {
  readonly line: number;
  readonly words: readonly string[];
  readonly leftOpen: QuestionId | null;
};

/** What of a state is put back when a line is taken back. */
export type Before = Pick<
  ConversationState,
  'answers' | 'windowsComplete' | 'history' | 'unsettled' | 'early' | 'budgetTotal_usd'
> & {
  /** The line that changed them. */
  readonly line: string;
  /** Id of its turn. */
  readonly turn: number;
};

export type ConversationEvent =
  | { readonly kind: 'begin'; readonly draft: Draft | null; readonly setAside: string | null }
  /** A line of the user's. */
  | { readonly kind: 'said'; readonly text: string }
  | { readonly kind: 'back' }
  | { readonly kind: 'places-found'; readonly text: string; readonly places: readonly PlaceMatch[] }
  | { readonly kind: 'advice-ready'; readonly advice: Advice }
  /** The scenario was refused: what is wrong with which field. */
  | { readonly kind: 'advice-refused'; readonly issues: readonly Issue[] }
  /** The user stopped the work. */
  | { readonly kind: 'stopped' }
  | { readonly kind: 'outlook-found'; readonly outlook: Outlook }
  /** The impression that was asked for. */
  | { readonly kind: 'looked'; readonly outlook: Outlook }
  /** What was weighed before the next question; null for answers that no method covers. */
  | { readonly kind: 'looked-ahead'; readonly outlook: Outlook | null }
  | {
      readonly kind: 'tried';
      readonly trial: Trial;
      readonly now: Impression;
      readonly then: Impression;
    }
  | { readonly kind: 'try-refused'; readonly issues: readonly Issue[] }
  | { readonly kind: 'why-not-found'; readonly told: WhyNot }
  | { readonly kind: 'why-not-refused'; readonly issues: readonly Issue[] }
  | { readonly kind: 'projects-listed'; readonly projects: readonly ProjectEntry[] }
  /** Null: no talk goes by that name; `near` says which do. */
  | {
      readonly kind: 'project-opened';
      readonly name: string;
      readonly draft: Draft | null;
      readonly near: readonly string[];
    }
  | { readonly kind: 'record-saved'; readonly paths: readonly string[] }
  /** `issues` where the folder or the name was refused: what would be accepted. */
  | { readonly kind: 'record-failed'; readonly message: string; readonly issues: readonly Issue[] }
  | { readonly kind: 'draft-failed'; readonly message: string }
  | { readonly kind: 'input-ended' };

/** What a front end must do; the result comes back as an event. */
export type Effect =
  /** Before the next question is shown, so that no accepted answer can be lost. */
  | { readonly kind: 'keep-draft'; readonly draft: Omit<Draft, 'saved_at'> }
  | { readonly kind: 'drop-draft' }
  /** Keeps the talk in hand as it is; the next one kept is another. */
  | { readonly kind: 'put-away' }
  | { readonly kind: 'list-projects' }
  | { readonly kind: 'open-project'; readonly name: string }
  | { readonly kind: 'look' | 'look-ahead'; readonly answers: Answers; readonly scenario: Scenario }
  | { readonly kind: 'try'; readonly trial: Trial; readonly now: Scenario; readonly then: Scenario }
  | { readonly kind: 'why-not'; readonly scenario: Scenario; readonly words: string }
  | { readonly kind: 'find-places'; readonly text: string }
  | { readonly kind: 'advise'; readonly scenario: Scenario }
  | { readonly kind: 'save-record'; readonly scenario: Scenario; readonly advice: Advice };

export type Step = { readonly state: ConversationState; readonly effects: readonly Effect[] };

export type ConversationOptions = {
  readonly saveWhenTold?: boolean;
  readonly reader?: Reader;
  /** How much of the answer is told unasked; left out, briefly. */
  readonly extent?: Extent;
  /**
   * Weighs what still matters between two questions, and waits for it: where nothing can change beside the question
   * while it is asked.
   */
  readonly looksAhead?: boolean;
  /** The lines were written beforehand: what none of them answers is asked once and does not wait for an answer. */
  readonly asksOnce?: boolean;
};

export function initialState(options: ConversationOptions = {}): ConversationState {
  return {
    turns: [],
    stage: 'opening',
    answers: {},
    windowsComplete: false,
    history: [],
    reopened: null,
    before: null,
    asides: [],
    unsettled: [],
    early: [],
    budgetTotal_usd: null,
    assumeRest: false,
    inputEnded: false,
    saveWhenTold: options.saveWhenTold ?? false,
    recordedPrompt: null,
    reader: options.reader ?? 'professional',
    isReaderGiven: options.reader !== undefined,
    extent: options.extent ?? 'brief',
    looksAhead: options.looksAhead ?? false,
    asksOnce: options.asksOnce ?? false,
    linesHeard: 0,
    missed: [],
    outlook: null,
    guide: null,
    returnTo: 'asking',
    wantsAll: false,
    advice: null,
    advisedAnswers: null,
    savedPaths: [],
    hasEarlierRecord: false,
    exitCode: null,
    refused: [],
  };
}
