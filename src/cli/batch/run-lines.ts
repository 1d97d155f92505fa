import type { BatchAnswer, BatchItem } from './batch-item.ts';
import { inOrder } from './in-order.ts';

/** Where lines go. */
export type BatchSink = {
  /** @returns false when nobody reads any more */
  readonly write: (text: string, item: BatchItem, answer: BatchAnswer) => Promise<boolean>;
};

export type BatchRun = {
  readonly items: AsyncIterable<BatchItem>;
  readonly answer: (item: BatchItem) => Promise<BatchAnswer>;
  /** How many items may be under way at a time. */
  readonly most: number;
  readonly sink: BatchSink;
  readonly stop: StopSign;
};

export type BatchEnd = 'all' | 'stopped' | 'nobody-reads';

/** Ends waiting from outside; one wait at a time. */
export class StopSign {
  #isSet = false;
  #wake: (() => void) | null = null;

  get isSet(): boolean {
    return this.#isSet;
  }

  set(): void {
    this.#isSet = true;
    this.#wake?.();
  }

  /** What is waited for, or null as soon as the sign is set. Leaves nothing behind on the sign, however often it is asked. */
  before<T>(awaited: Promise<T>): Promise<T | null> {
    if (this.#isSet) return Promise.resolve(null);
    return new Promise((resolve, reject) => {
      this.#wake = () => resolve(null);
      awaited.then(resolve, reject);
    });
  }
}

/**
 * Answers items and writes a line for each, in their order and one after the other: while a line is not out, no more
 * is read than `most` items. A stop takes effect between two lines.
 */
export async function runLines({ items, answer, most, sink, stop }: BatchRun): Promise<BatchEnd> {
  const answers = inOrder(items, answer, most);
  for (;;) {
    const awaited = answers.next();
    const next = await stop.before(awaited);
    if (next === null) {
      // Answers that nobody waits for any more end with the threads.
      awaited.catch(() => {});
      return 'stopped';
    }
    if (next.done) return 'all';
    const [item, answered] = next.value;
    if (!(await sink.write(`${answered.text}\n`, item, answered))) {
      answers.return().catch(() => {});
      return 'nobody-reads';
    }
  }
}
