// The advisor's own thread: the talk goes on beside it, and a key never waits for a calculation.
import { parentPort, workerData } from 'node:worker_threads';
import { Refusal } from '../base/refusal.ts';
import { isStopped } from '../conversation/stopping.ts';
import { advisorHere, type WorkOptions } from './advisor.ts';
import type { Job, Reply, Request } from './advisor-messages.ts';

const port = parentPort;
if (!port) throw new Error('the advisor is started in a thread of its own');

const advisor = advisorHere(Array.isArray(workerData) ? workerData.map(String) : []);
const stops = new Map<number, AbortController>();
let queue: Promise<void> = Promise.resolve();

port.on('message', ({ id, job }: Request) => {
  if (job === null) {
    stops.get(id)?.abort();
    return;
  }
  const controller = new AbortController();
  stops.set(id, controller);
  queue = queue.then(() => work(id, job, controller));
});

async function work(id: number, job: Job, { signal }: AbortController): Promise<void> {
  const reply = (message: Reply) => port?.postMessage(message);
  const options: WorkOptions = {
    signal,
    onProgress: (progress) => reply({ id, kind: 'progress', progress }),
  };
  try {
    if (signal.aborted) reply({ id, kind: 'stopped' });
    else reply({ id, kind: 'done', result: await resultOf(job, options) });
  } catch (error) {
    reply(failure(id, error));
  } finally {
    stops.delete(id);
  }
}

function resultOf(job: Job, options: WorkOptions): Promise<unknown> {
  switch (job.kind) {
    case 'load':
      return advisor.load();
    case 'basis':
      return advisor.basis();
    case 'whyNot':
      return advisor.whyNot(job.scenario, job.words, options);
    default:
      return advisor[job.kind](job.scenario, options);
  }
}

function failure(id: number, error: unknown): Reply {
  if (isStopped(error)) return { id, kind: 'stopped' };
  if (error instanceof Refusal) return { id, kind: 'refused', issues: error.issues };
  const fault = error instanceof Error ? error : new Error(String(error));
  return { id, kind: 'fault', message: fault.message, stack: fault.stack ?? '' };
}
