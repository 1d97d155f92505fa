import type { Advice } from '../advice/advice-schema.ts';
import type { Issue } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import type { Answers, Finding } from './answers.ts';
import type { Block } from './blocks.ts';
import type { Draft } from './draft.ts';
import type { QuestionId } from './questions.ts';

/** A county that a place name may mean. */
export type PlaceMatch = {
  readonly state: string;
  readonly county: string;
  readonly zone: string;
  /** "exact" when the name itself was found; anything else is put to the user. */
  readonly match?: 'exact' | 'town' | 'close' | 'weak';
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

/** A finished turn of the talk. Turns are only ever added. */
export type Turn =
  | { readonly id: number; readonly kind: 'question'; readonly prompt: Prompt }
  | { readonly id: number; readonly kind: 'answer'; readonly text: string }
  | { readonly id: number; readonly kind: 'remark'; readonly blocks: readonly Block[] }
  | { readonly id: number; readonly kind: 'advice'; readonly advice: Advice };

/** Something to settle before the questions go on. */
export type Aside =
  | { readonly kind: 'resume'; readonly draft: Draft }
  | { readonly kind: 'which-place'; readonly text: string; readonly places: readonly PlaceMatch[] }
  | { readonly kind: 'which-number'; readonly words: string; readonly findings: readonly Finding[] }
  | { readonly kind: 'contradiction'; readonly findings: readonly Finding[] }
  | { readonly kind: 'start-over' };

export type Stage =
  | 'opening'
  | 'asking'
  /** A place is being looked up. */
  | 'looking-up'
  /** The wall is being worked out. */
  | 'advising'
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
  readonly asides: readonly Aside[];
  /** "Done" was said: everything still open but the place is assumed. */
  readonly assumeRest: boolean;
  /** No further line will come. */
  readonly inputEnded: boolean;
  /** Save the record as soon as the answer is told. */
  readonly saveWhenTold: boolean;
  /** The prompt already written into the turns. */
  readonly recordedPrompt: string | null;
  readonly advice: Advice | null;
  /** The answers that the advice rests on. */
  readonly advisedAnswers: Answers | null;
  readonly savedPaths: readonly string[];
  readonly exitCode: number | null;
  /** Why nothing can be answered: the front end reports it and leaves with 2. */
  readonly refused: readonly Issue[];
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
  | { readonly kind: 'record-saved'; readonly paths: readonly string[] }
  | { readonly kind: 'record-failed'; readonly message: string }
  | { readonly kind: 'draft-failed'; readonly message: string }
  | { readonly kind: 'input-ended' };

/** What a front end must do; the result comes back as an event. */
export type Effect =
  /** Before the next question is shown, so that no accepted answer can be lost. */
  | { readonly kind: 'keep-draft'; readonly draft: Omit<Draft, 'saved_at'> }
  | { readonly kind: 'drop-draft' }
  | { readonly kind: 'find-places'; readonly text: string }
  | { readonly kind: 'advise'; readonly scenario: Scenario }
  | { readonly kind: 'save-record'; readonly scenario: Scenario; readonly advice: Advice };

export type Step = { readonly state: ConversationState; readonly effects: readonly Effect[] };

export type ConversationOptions = { readonly saveWhenTold?: boolean };

export function initialState(options: ConversationOptions = {}): ConversationState {
  return {
    turns: [],
    stage: 'opening',
    answers: {},
    windowsComplete: false,
    history: [],
    reopened: null,
    asides: [],
    assumeRest: false,
    inputEnded: false,
    saveWhenTold: options.saveWhenTold ?? false,
    recordedPrompt: null,
    advice: null,
    advisedAnswers: null,
    savedPaths: [],
    exitCode: null,
    refused: [],
  };
}
