import { fstatSync, writeSync } from 'node:fs';
import type { Writable } from 'node:stream';
import { errorCode } from '../base/error-code.ts';
import { Refusal } from '../base/refusal.ts';

const USUAL_COLUMNS = 80;
/** Longer lines are hard to read, however wide the window is. */
const MOST_COLUMNS = 100;

/** Columns for text on standard output: those of the terminal up to 100; 80 where it is none. */
export function textWidth(stream: { readonly columns?: number | undefined } = process.stdout): number {
  return Math.min(stream.columns ?? USUAL_COLUMNS, MOST_COLUMNS);
}

/**
 * Writes the result and waits until it is out. A reader that has had enough and closes the pipe (`… | head`) is no
 * fault: the rest is dropped and the command goes on to its own exit code.
 */
export async function writeResult(text: string, stream: Writable = process.stdout): Promise<void> {
  await writeOut(text.endsWith('\n') ? text : `${text}\n`, stream);
}

/**
 * Writes text as it is and waits until it is out.
 *
 * @returns false when the pipe is closed
 * @throws Error where there is no room for all of it
 */
export async function writeOut(text: string, stream: Writable = process.stdout): Promise<boolean> {
  if (stream === process.stdout && fstatSync(process.stdout.fd).isFile()) {
    writeWhole(process.stdout.fd, Buffer.from(text, 'utf8'));
    return true;
  }
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      if (!error) resolve(true);
      else if (isBrokenPipe(error)) resolve(false);
      else reject(error);
    });
  });
}

/** The runtime's own stream takes a write that a full disc cut short for a whole one. */
function writeWhole(fd: number, bytes: Uint8Array): void {
  for (let done = 0; done < bytes.length; ) done += writeSync(fd, bytes, done);
}

/** Waits until everything written so far is out. */
export function flush(stream: Writable): Promise<void> {
  return new Promise((resolve) => {
    stream.write('', () => resolve());
  });
}

/** Whether an error only says that nobody reads any more. */
export function isBrokenPipe(error: unknown): boolean {
  const code = errorCode(error);
  return code === 'EPIPE' || code === 'ERR_STREAM_DESTROYED';
}

const UNWRITTEN: Readonly<Record<string, string>> = {
  ENOSPC: 'The disc is full: free some room, or write to another disc.',
  EDQUOT: 'Your share of the disc is used up: free some room, or write to another disc.',
  EFBIG: 'The file system takes no file of this size: write to another disc.',
  EIO: 'The disc reports a fault: write to another disc.',
};

/** A result that found no room where standard output leads is the user's to mend; any other error comes back as it is. */
export function outputRefusal(error: unknown): unknown {
  if (!(error instanceof Error && 'syscall' in error && error.syscall === 'write' && 'code' in error)) {
    return error;
  }
  const accepted = UNWRITTEN[String(error.code)];
  return accepted === undefined
    ? error
    : new Refusal({ field: 'standard output', value: 'the result', accepted });
}

/**
 * A result as one JSON document.
 *
 * @throws Error for a number that is not finite: JSON would turn it into null, which means "does not apply" here
 */
export function jsonDocument(value: unknown): string {
  return JSON.stringify(value, finiteOnly, 2);
}

/**
 * The same as one line, as NDJSON wants it. Marks that some readers take for line ends are escaped; what the JSON says
 * stays the same.
 */
export function jsonLine(value: unknown): string {
  return JSON.stringify(value, finiteOnly).replace(
    /[\u0085\u2028\u2029]/g,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

function finiteOnly(key: string, inner: unknown): unknown {
  if (typeof inner === 'number' && !Number.isFinite(inner)) {
    throw new Error(`the result has ${inner} at "${key}"`);
  }
  return inner;
}
