import { Tinypool } from 'tinypool';
import { failedLine, faultIssue } from './answer-line.ts';
import type { BatchAnswer, BatchItem, BatchMeans } from './batch-item.ts';

/** An idle thread waits for more: a slow pipe must not cost a new start for every line. */
const IDLE_MS = 600_000;

/**
 * An answer makes much that is soon thrown away: with room for it, it is gone before it is moved about. Twice the room
 * makes no batch quicker. The other limit is some six times what a thread keeps; without one the collector lets several
 * times as much pile up.
 */
const MEMORY = { maxYoungGenerationSizeMb: 96, maxOldGenerationSizeMb: 768 };

export type WorkerPool = {
  /** Never rejects but when the pool is closed: a thread that breaks down is a fault of its one item. */
  readonly answer: (item: BatchItem) => Promise<BatchAnswer>;
  readonly close: () => Promise<void>;
};

/** Threads that answer scenarios; they are started as work comes in. Runs in the bundle only. */
export function openPool(jobs: number, means: BatchMeans): WorkerPool {
  const pool = new Tinypool({
    // The bundler puts the worker beside the chunk that this ends up in.
    filename: new URL('./batch-worker.js', import.meta.url).href,
    minThreads: 0,
    maxThreads: jobs,
    idleTimeout: IDLE_MS,
    resourceLimits: MEMORY,
  });
  let isClosed = false;
  return {
    async answer({ line, source, source_line, content }) {
      try {
        const answer: BatchAnswer = await pool.run({ line, source, source_line, content, means });
        return answer;
      } catch (error) {
        if (isClosed) throw error;
        return failedLine({ line, source, source_line }, [faultIssue(error)], 'fault');
      }
    },
    async close() {
      isClosed = true;
      await pool.destroy();
    },
  };
}
