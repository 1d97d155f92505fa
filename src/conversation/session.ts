import type { Advice } from '../advice/advice-schema.ts';
import { describeIssue, Refusal } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import type { DraftStore } from './draft.ts';
import {
  type ConversationEvent,
  type ConversationOptions,
  type ConversationState,
  type Effect,
  initialState,
  type PlaceMatch,
} from './state.ts';
import { step } from './step.ts';

/** What the conversation needs done for it. */
export type Services = {
  advise(scenario: Scenario): Promise<Advice>;
  /** Best first, at most six. */
  findPlaces(text: string): Promise<readonly PlaceMatch[]>;
  saveRecord(scenario: Scenario, advice: Advice): Promise<{ readonly paths: readonly string[] }>;
};

export type Session = {
  state(): ConversationState;
  /** Calls back after each change. Returns a function that ends the subscription. */
  subscribe(listener: (state: ConversationState) => void): () => void;
  /** Takes an event in, after all earlier ones; resolves when everything it set off is done. Rejects on a fault. */
  tell(event: ConversationEvent): Promise<void>;
  /** Resolves when nothing is under way any more. */
  idle(): Promise<void>;
  /** Loads the kept draft, if any, and begins. */
  begin(): Promise<void>;
};

export type SessionPorts = {
  readonly services: Services;
  /** Null: nothing is kept between runs. */
  readonly draftStore: DraftStore | null;
  readonly now?: () => Date;
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

  function publish(next: ConversationState): void {
    state = next;
    for (const listener of listeners) listener(state);
  }

  async function take(event: ConversationEvent): Promise<void> {
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
      }
      return null;
    } catch (error) {
      return messageOf(error);
    }
  }

  async function perform(effect: Effect): Promise<ConversationEvent | null> {
    switch (effect.kind) {
      case 'keep-draft':
      case 'drop-draft':
        return null;
      case 'find-places':
        return {
          kind: 'places-found',
          text: effect.text,
          places: await ports.services.findPlaces(effect.text),
        };
      case 'advise':
        await breathe();
        try {
          return { kind: 'advice-ready', advice: await ports.services.advise(effect.scenario) };
        } catch (error) {
          if (error instanceof Refusal) return { kind: 'advice-refused', issues: error.issues };
          throw error;
        }
      case 'save-record':
        try {
          const { paths } = await ports.services.saveRecord(effect.scenario, effect.advice);
          return { kind: 'record-saved', paths };
        } catch (error) {
          return { kind: 'record-failed', message: messageOf(error) };
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
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    tell,
    idle: () => queue,
    async begin() {
      try {
        const loaded = await ports.draftStore?.load();
        await tell({ kind: 'begin', draft: loaded?.draft ?? null, setAside: loaded?.setAside ?? null });
      } catch (error) {
        // A data folder that can't be read must not keep anybody from an answer.
        await tell({ kind: 'begin', draft: null, setAside: null });
        await tell({ kind: 'draft-failed', message: messageOf(error) });
        hasDraftFailed = true;
      }
    },
  };
}

/** Lets the front end draw "working it out" before a long calculation takes the thread. */
function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 30));
}

function messageOf(error: unknown): string {
  if (error instanceof Refusal) return error.issues.map(describeIssue).join(' ');
  return error instanceof Error ? error.message : String(error);
}
