/** Says that work was stopped because nobody waits for it any more. */
export class Stopped extends Error {
  constructor() {
    super('stopped');
    this.name = 'Stopped';
  }
}

export function isStopped(error: unknown): boolean {
  return error instanceof Stopped;
}

/** What the work comes to, or {@link Stopped} as soon as the signal says so; the work itself may still be winding down. */
export function orStopped<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  return new Promise((resolve, reject) => {
    const stop = () => reject(new Stopped());
    if (signal.aborted) stop();
    signal.addEventListener('abort', stop, { once: true });
    work.then(resolve, reject).finally(() => signal.removeEventListener('abort', stop));
  });
}
