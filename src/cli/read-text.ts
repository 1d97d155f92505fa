import { createReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import { errorCode } from '../base/error-code.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';

/** Of one JSON document. */
export const MOST_BYTES = 1_000_000;

/** What stands for standard input where a path is asked for. */
export const STANDARD_INPUT = '-';

/** How messages call what was read. */
export function sourceName(path: string): string {
  return path === STANDARD_INPUT ? 'standard input' : path;
}

/**
 * Reads a text file, or standard input for `-`.
 *
 * @param path   a path, or `-`
 * @param field  what the argument is called on the command line, for example `SCENARIO`
 * @throws Refusal for what can't be read, is over 1 MB, or is not UTF-8
 */
export async function readText(path: string, field: string): Promise<string> {
  return decodeText(await readBytes(path, field), sourceName(path));
}

/**
 * The same without looking at the bytes.
 *
 * @throws Refusal for what can't be read or is over 1 MB
 */
export function readBytes(path: string, field: string): Promise<Buffer> {
  if (path === STANDARD_INPUT && process.stdin.isTTY) {
    process.stderr.write('Reading JSON from the terminal; end it with Ctrl-D.\n');
  }
  return collect(path === STANDARD_INPUT ? process.stdin : createReadStream(path), path, field);
}

/**
 * @param name  how messages call it
 * @throws Refusal for bytes that are no UTF-8
 */
export function decodeText(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // The decoder says nothing but that it failed.
    throw new Refusal({
      field: name,
      value: 'this text',
      accepted: 'Give UTF-8 text; some of these bytes are no UTF-8.',
    });
  }
}

/** For text over the limit. */
export function tooLong(name: string): Issue {
  return { field: name, value: 'over 1 MB', accepted: 'Give at most 1 MB of JSON.' };
}

async function collect(stream: Readable, path: string, field: string): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const chunk of stream) {
      const part = Buffer.from(chunk);
      bytes += part.length;
      if (bytes > MOST_BYTES) {
        throw new Refusal(tooLong(sourceName(path)));
      }
      chunks.push(part);
    }
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal({
      field,
      value: showValue(path),
      accepted: `Give the path of a JSON file, or "-" for standard input; this can't be read (${reasonUnread(error)}).`,
    });
  }
  return Buffer.concat(chunks);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'no permission',
  ENOTDIR: 'a part of the path is no folder',
  ENAMETOOLONG: 'the path is too long',
};

/** Why a path can't be read, in words. */
export function reasonUnread(error: unknown): string {
  const code = errorCode(error) ?? 'unknown error';
  return REASONS[code] ?? code;
}
