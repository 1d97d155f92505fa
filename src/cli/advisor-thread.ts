import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { Advice } from '../advice/advice-schema.ts';
import type { Impression } from '../advice/first-impression.ts';
import type { WhyNot } from '../advice/why-not-schema.ts';
import { Refusal } from '../base/refusal.ts';
import { Stopped } from '../conversation/stopping.ts';
import type { Basis } from '../record/record-schema.ts';
import type { ReadyAdvisor, WorkOptions } from './advisor.ts';
import type { Job, Reply, Request } from './advisor-messages.ts';

type Waiting = {
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: unknown) => void;
  readonly options: WorkOptions;
};

/**
 * The advisor in a thread of its own, started with the first piece of work. Work that is stopped gives way to the next
 * at the end of the judgement it is in.
 */
export function advisorInThread(housePacks: readonly string[]): ReadyAdvisor {
  let worker: Worker | null = null;
  let lastId = 0;
  const waiting = new Map<number, Waiting>();

  function started(): Worker {
    if (worker) return worker;
    const thread = new Worker(workerFile(), { workerData: [...housePacks] });
    thread.on('message', take);
    thread.on('error', (error) => {
      for (const { reject } of waiting.values()) reject(error);
      waiting.clear();
    });
    thread.unref();
    worker = thread;
    return thread;
  }

  function take(reply: Reply): void {
    const one = waiting.get(reply.id);
    if (!one) return;
    if (reply.kind === 'progress') {
      one.options.onProgress?.(reply.progress);
      return;
    }
    waiting.delete(reply.id);
    if (waiting.size === 0) worker?.unref();
    if (reply.kind === 'done') one.resolve(reply.result);
    else one.reject(failureOf(reply));
  }

  /** What the thread sends back is of the type that the same method has in this thread: both are our own. */
  function ask<T>(job: Job, options: WorkOptions = {}): Promise<T> {
    const thread = started();
    lastId += 1;
    const id = lastId;
    const send = (request: Request) => thread.postMessage(request);
    // While somebody waits, the program stays; an idle thread doesn't keep it.
    thread.ref();
    return new Promise<T>((resolve, reject) => {
      waiting.set(id, { resolve: (result) => resolve(result as T), reject, options });
      options.signal?.addEventListener('abort', () => send({ id, job: null }), { once: true });
      send({ id, job });
    });
  }

  return {
    load: () => ask<void>({ kind: 'load' }),
    advise: (scenario, options) => ask<Advice>({ kind: 'advise', scenario }, options),
    firstImpression: (scenario, options) => ask<Impression>({ kind: 'firstImpression', scenario }, options),
    fieldsThatMatter: (scenario, options) => ask<string[]>({ kind: 'fieldsThatMatter', scenario }, options),
    whyNot: (scenario, words, options) => ask<WhyNot>({ kind: 'whyNot', scenario, words }, options),
    basis: () => ask<Basis>({ kind: 'basis' }),
    async close() {
      await worker?.terminate();
    },
  };
}

function failureOf(reply: Exclude<Reply, { kind: 'done' | 'progress' }>): Error {
  switch (reply.kind) {
    case 'refused':
      return new Refusal(reply.issues);
    case 'stopped':
      return new Stopped();
    case 'fault': {
      const fault = new Error(reply.message);
      fault.stack = reply.stack;
      return fault;
    }
  }
}

/** Beside the program's entry: this code itself may have been bundled into a folder below it. */
function workerFile(): URL {
  const beside = new URL('./advisor-worker.js', import.meta.url);
  return existsSync(beside) ? beside : new URL('../advisor-worker.js', import.meta.url);
}
