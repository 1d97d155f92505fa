import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import writeFileAtomic from 'write-file-atomic';
import { z } from 'zod';
import type { BatchItem } from './batch-item.ts';

const STATE_SCHEMA = 'cladwright-batch-state/1';

const count = z.number().int().nonnegative();

/** How far a batch has come; stands in a small file beside its output. */
export const batchStateSchema = z.strictObject({
  schema: z.literal(STATE_SCHEMA),
  /** Digest of program, rules, prices and options: of all that decides an answer but the scenario. */
  means: z.string(),
  /** Digest over what came in so far, each item on the one before. */
  input: z.string(),
  lines: count,
  /** Length of the output that these lines take up. */
  bytes: count,
  nothing_passes: count,
  failed: count,
  faults: count,
});
export type BatchState = z.output<typeof batchStateSchema>;

export function freshState(means: string): BatchState {
  return {
    schema: STATE_SCHEMA,
    means,
    input: '',
    lines: 0,
    bytes: 0,
    nothing_passes: 0,
    failed: 0,
    faults: 0,
  };
}

/** The digest over all items up to this one. */
export function withItem(input: string, { source, digest }: Pick<BatchItem, 'source' | 'digest'>): string {
  return createHash('sha256').update(`${input}\n${source}\n${digest}`).digest('hex');
}

/** Beside the output file. */
export function statePath(outPath: string): string {
  return `${outPath}.state`;
}

/** @returns null where there is none, or what stands there is no state of ours */
export async function readState(outPath: string): Promise<BatchState | null> {
  try {
    const data: unknown = JSON.parse(await readFile(statePath(outPath), 'utf8'));
    return batchStateSchema.safeParse(data).data ?? null;
  } catch {
    // Missing or torn: the output then counts as somebody else's.
    return null;
  }
}

/** Writes it whole or not at all, through to the disc. */
export async function writeState(outPath: string, state: BatchState): Promise<void> {
  await writeFileAtomic(statePath(outPath), `${JSON.stringify(state)}\n`, { encoding: 'utf8' });
}
