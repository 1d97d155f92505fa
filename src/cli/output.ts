import type { Writable } from 'node:stream';

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
export function writeResult(text: string, stream: Writable = process.stdout): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text.endsWith('\n') ? text : `${text}\n`, (error) => {
      if (!error || isBrokenPipe(error)) resolve();
      else reject(error);
    });
  });
}

/** Waits until everything written so far is out. */
export function flush(stream: Writable): Promise<void> {
  return new Promise((resolve) => {
    stream.write('', () => resolve());
  });
}

/** Whether an error only says that nobody reads any more. */
export function isBrokenPipe(error: unknown): boolean {
  return (
    error instanceof Error &&
    'code' in error &&
    (error.code === 'EPIPE' || error.code === 'ERR_STREAM_DESTROYED')
  );
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
