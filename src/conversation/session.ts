import type { Advice } from '../advice/advice-schema.ts';
import type { Impression } from '../advice/first-impression.ts';
import type { WhyNot } from '../advice/why-not-schema.ts';
import { describeIssue, Refusal } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import { nearestNames } from '../rulebook/nearest-name.ts';
import type { DraftStore } from './draft.ts';
import { opened } from './opening.ts';
import { watchOutlook } from './outlook-watch.ts';
import {
  type ConversationEvent,
  type ConversationOptions,
  type ConversationState,
  type Effect,
  initialState,
  type PlaceMatch,
} from './state.ts';
import { isStopped, orStopped } from './stopping.ts';

/** How far a long piece of work has come. */
export type Progress = { readonly walls: number; readonly times: number };

/** For work that takes a while: whether anybody still waits for it, and whom to tell how far it is. */
export type HowToWork = {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
};

/** What the conversation needs done for it. `signal` says that nobody waits for the result any more. */
export type Services = {
  advise(scenario: Scenario, how?: HowToWork): Promise<Advice>;
  /** A quick look at all walls by what is known so far. */
  firstImpression(scenario: Scenario, signal?: AbortSignal): Promise<Impression>;
  /** Open fields whose other readings would change the first choice, most telling first. */
  fieldsThatMatter(scenario: Scenario, signal?: AbortSignal): Promise<readonly string[]>;
  /** Why a wall that the user names is not the first choice, found by judging again. */
  whyNot(scenario: Scenario, words: string, how?: HowToWork): Promise<WhyNot>;
  /** Best first, at most six. */
  findPlaces(text: string): Promise<readonly PlaceMatch[]>;
  saveRecord(scenario: Scenario, advice: Advice): Promise<{ readonly paths: readonly string[] }>;
};

export type Session = {
  state(): ConversationState;
  /** Of the work under way; null while there is none, or nothing is known of it. */
  progress(): Progress | null;
  /** Calls back after each change. Returns a function that ends the subscription. */
  subscribe(listener: (state: ConversationState) => void): () => void;
  /** Takes an event in, after all earlier ones; resolves when everything it set off is done. Rejects on a fault. */
  tell(event: ConversationEvent): Promise<void>;
  /** Stops the work under way: the talk goes on at once. False when there is none to stop. */
  stop(): boolean;
  /** Resolves when nothing is under way any more. */
  idle(): Promise<void>;
  /** Loads the kept draft, if any, and begins. */
  begin(): Promise<void>;
  /** Loads what understands answers, so that the first one need not wait for it. */
  getReady(): Promise<void>;
};

export type SessionPorts = {
  readonly services: Services;
  /** Null: nothing is kept between runs. */
  readonly draftStore: DraftStore | null;
  readonly now?: () => Date;
  /** Keeps a running first impression beside the questions; a fault in working it out is handed to this. */
  readonly watchOutlook?: { readonly onFault: (error: unknown) => void };
};

/**
 * Runs a conversation: takes events one at a time, does what the core asks for and feeds the results back. The draft
 * is written before the state that follows from it is shown. Shared by every front end.
 */
export function startSession(ports: SessionPorts, options: ConversationOptions = {}): Session {
  let state = initialState(options);
  const listeners = new Set<(state: ConversationState) => void>();
  let queue: Promise<void> = Promise.resolve();
  let hasDraftFailed = false;
  let working: AbortController | null = null;
  let progress: Progress | null = null;
  const watch = ports.watchOutlook
    ? watchOutlook(ports.services, (outlook) => tell({ kind: 'outlook-found', outlook }), ports.watchOutlook)
    : null;

  function publish(next: ConversationState): void {
    state = next;
    for (const listener of listeners) listener(state);
    watch?.look(state);
  }

  async function take(event: ConversationEvent): Promise<void> {
    // What understands answers is loaded with the first of them: the first question is there before.
    const { step } = await import('./step.ts');
    const next = step(state, event);
    const failure = await keepDraft(next.effects);
    publish(next.state);
    if (failure !== null && !hasDraftFailed) {
      hasDraftFailed = true;
      await take({ kind: 'draft-failed', message: failure });
    }
    for (const effect of next.effects) {
      const result = await perform(effect);
      if (result) await take(result);
    }
  }

  async function keepDraft(effects: readonly Effect[]): Promise<string | null> {
    const { draftStore } = ports;
    if (!draftStore) return null;
    try {
      for (const effect of effects) {
        if (effect.kind === 'keep-draft') {
          await draftStore.save({ ...effect.draft, saved_at: (ports.now?.() ?? new Date()).toISOString() });
        }
        if (effect.kind === 'drop-draft') await draftStore.clear();
        if (effect.kind === 'put-away') draftStore.putAway();
      }
      return null;
    } catch (error) {
      return messageOf(error);
    }
  }

  /** Work that the user may stop; what comes of it, or the word that it was stopped. */
  async function stoppable(
    work: (signal: AbortSignal) => Promise<ConversationEvent>,
    refused: (refusal: Refusal) => ConversationEvent,
  ): Promise<ConversationEvent> {
    const controller = new AbortController();
    working = controller;
    await breathe();
    try {
      return await orStopped(work(controller.signal), controller.signal);
    } catch (error) {
      if (isStopped(error)) return { kind: 'stopped' };
      if (error instanceof Refusal) return refused(error);
      throw error;
    } finally {
      working = null;
      progress = null;
    }
  }

  function onProgress(next: Progress): void {
    progress = next;
    for (const listener of listeners) listener(state);
  }

  async function perform(effect: Effect): Promise<ConversationEvent | null> {
    const { services, draftStore } = ports;
    switch (effect.kind) {
      case 'keep-draft':
      case 'drop-draft':
      case 'put-away':
        return null;
      case 'find-places':
        return { kind: 'places-found', text: effect.text, places: await services.findPlaces(effect.text) };
      case 'advise':
        return stoppable(
          async (signal) => ({
            kind: 'advice-ready',
            advice: await services.advise(effect.scenario, { signal, onProgress }),
          }),
          ({ issues }) => ({ kind: 'advice-refused', issues }),
        );
      case 'look':
        return stoppable(
          async (signal) => ({
            kind: 'looked',
            outlook: {
              answers: effect.answers,
              impression: await services.firstImpression(effect.scenario, signal),
              matters: null,
            },
          }),
          ({ issues }) => ({ kind: 'try-refused', issues }),
        );
      case 'look-ahead':
        return stoppable(
          async (signal) => ({
            kind: 'looked-ahead',
            outlook: {
              answers: effect.answers,
              impression: await services.firstImpression(effect.scenario, signal),
              matters: await services.fieldsThatMatter(effect.scenario, signal),
            },
          }),
          () => ({ kind: 'looked-ahead', outlook: null }),
        );
      case 'try':
        return stoppable(
          async (signal) => ({
            kind: 'tried',
            trial: effect.trial,
            now: await services.firstImpression(effect.now, signal),
            then: await services.firstImpression(effect.then, signal),
          }),
          ({ issues }) => ({ kind: 'try-refused', issues }),
        );
      case 'why-not':
        return stoppable(
          async (signal) => ({
            kind: 'why-not-found',
            told: await services.whyNot(effect.scenario, effect.words, { signal, onProgress }),
          }),
          ({ issues }) => ({ kind: 'why-not-refused', issues }),
        );
      case 'list-projects':
        return { kind: 'projects-listed', projects: (await draftStore?.list()) ?? [] };
      case 'open-project':
        return openProject(effect.name, draftStore);
      case 'save-record':
        try {
          const { paths } = await services.saveRecord(effect.scenario, effect.advice);
          return { kind: 'record-saved', paths };
        } catch (error) {
          const issues = error instanceof Refusal ? error.issues : [];
          return { kind: 'record-failed', message: messageOf(error), issues };
        }
    }
  }

  function tell(event: ConversationEvent): Promise<void> {
    const done = queue.then(() => take(event));
    // A fault is reported to whoever told the event; the queue itself goes on.
    queue = done.catch(() => undefined);
    return done;
  }

  return {
    state: () => state,
    progress: () => progress,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    tell,
    stop() {
      working?.abort();
      return working !== null;
    },
    idle: () => queue,
    async getReady() {
      await import('./step.ts');
    },
    async begin() {
      try {
        const loaded = await ports.draftStore?.load();
        publish(opened(state, loaded?.draft ?? null, loaded?.setAside ?? null));
      } catch (error) {
        // A data folder that can't be read must not keep anybody from an answer.
        publish(opened(state, null, null));
        await tell({ kind: 'draft-failed', message: messageOf(error) });
        hasDraftFailed = true;
      }
    },
  };
}

async function openProject(name: string, store: DraftStore | null): Promise<ConversationEvent> {
  const draft = (await store?.open(name)) ?? null;
  if (draft) return { kind: 'project-opened', name, draft, near: [] };
  const names = ((await store?.list()) ?? []).flatMap((entry) => (entry.name === null ? [] : [entry.name]));
  return { kind: 'project-opened', name, draft: null, near: nearestNames(name, names) };
}

/** Lets the front end draw "working it out" before a long calculation takes the thread. */
function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 30));
}

function messageOf(error: unknown): string {
  if (error instanceof Refusal) return error.issues.map(describeIssue).join(' ');
  return error instanceof Error ? error.message : String(error);
}
