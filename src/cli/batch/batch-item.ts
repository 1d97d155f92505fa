import type { Issue } from '../../base/refusal.ts';
import type { CODE_EDITIONS } from '../../brief/scenario.ts';
import type { ReadPack } from '../../rulebook/load-rulebook.ts';

/** One scenario of a batch as it came in, not yet looked at. */
export type BatchItem = {
  /** Its place among all that came in, from 1 on; the same as that of its answer. */
  readonly line: number;
  /** How messages call where it came from. */
  readonly source: string;
  /** Its line there: of standard input, or of a file of lines; null for a file that is a scenario by itself. */
  readonly source_line: number | null;
  /** The text's bytes, or why they can't be had. */
  readonly content: Uint8Array | Issue;
  /** SHA-256 of what came in. */
  readonly digest: string;
  readonly size_bytes: number;
};

/** What a worker is asked: an item and how it is to be answered. */
export type BatchTask = Pick<BatchItem, 'line' | 'source' | 'source_line' | 'content'> & {
  readonly means: BatchMeans;
};

/** The same for all items of a batch. */
export type BatchMeans = {
  /** As they stood when the batch began: its threads start later. */
  readonly housePacks: readonly ReadPack[];
  readonly top: number;
  /** Null: each scenario's own. */
  readonly edition: (typeof CODE_EDITIONS)[number] | null;
  /** The first choice with its main figures in place of the whole answer. */
  readonly isShort: boolean;
};

/** The line that goes out for an item. */
export type BatchAnswer = {
  /** JSON without line ends. */
  readonly text: string;
  readonly outcome: 'answered' | 'nothing-passes' | 'failed' | 'fault';
  /** What is wrong, in words; for lines that failed. */
  readonly message?: string;
};
