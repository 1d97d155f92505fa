import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { errorCode } from '../base/error-code.ts';
import { pathText } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';

const MOST_BYTES = 1_000_000;
/** Deeper than any valid file; guards the recursive schemas behind it. */
const DEEPEST = 40;
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

export type DataFile = {
  /**
   * What it holds.
   * @throws Refusal for what is no JSON, nests too deeply, or carries a key that could reach an object's prototype
   */
  readonly data: () => unknown;
  /** Of the bytes as they stand in the file, lower-case hexadecimal. */
  readonly sha256: string;
};

/**
 * Reads one JSON file of rules, facts or tables.
 *
 * @param path  where it stands
 * @param name  how messages call it
 * @throws Refusal for a file that can't be read or is over 1 MB
 */
export async function readDataFile(path: string, name: string): Promise<DataFile> {
  return dataFileOf(await readBounded(path, name), name);
}

/** The same of what was read before. */
export function dataFileOf(bytes: Uint8Array, name: string): DataFile {
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return { data: () => dataOf(bytes, name), sha256 };
}

function dataOf(bytes: Uint8Array, name: string): unknown {
  let data: unknown;
  try {
    data = JSON.parse(
      Buffer.from(bytes)
        .toString('utf8')
        .replace(/^\ufeff/, ''),
    );
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Refusal({ field: name, value: 'this file', accepted: `Give valid JSON (${why}).` });
  }
  refuseUnsafeShape(data, name);
  return data;
}

/**
 * What stands in a file.
 *
 * @throws Refusal for a file that can't be read or is over 1 MB
 */
export async function readBounded(path: string, name: string): Promise<Uint8Array> {
  try {
    // Looked at before it is opened: opening a pipe would wait for a writer.
    const about = await stat(path);
    if (!about.isFile()) {
      throw new Refusal({ field: name, value: showValue(path), accepted: 'Give a plain file.' });
    }
    refuseOversize(about.size, name);
    const bytes = await readFile(path);
    refuseOversize(bytes.length, name);
    return bytes;
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const code = errorCode(error) ?? 'unknown error';
    throw new Refusal({
      field: name,
      value: showValue(path),
      accepted: `Give a file that can be read (${code === 'ENOENT' ? 'there is no such file' : code}).`,
    });
  }
}

function refuseOversize(bytes: number, name: string): void {
  if (bytes > MOST_BYTES) {
    throw new Refusal({ field: name, value: `a file of ${bytes} bytes`, accepted: 'Give at most 1 MB.' });
  }
}

/** Walks without recursion, so that no nesting can exhaust the stack. */
function refuseUnsafeShape(data: unknown, name: string): void {
  const open: { value: unknown; path: readonly PropertyKey[] }[] = [{ value: data, path: [] }];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { value, path } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (path.length > DEEPEST) {
      throw new Refusal({
        field: pathText(path.slice(0, 8), name),
        value: 'nesting this deep',
        accepted: `Nest at most ${DEEPEST} levels in a file.`,
      });
    }
    const isList = Array.isArray(value);
    for (const [key, inner] of Object.entries(value)) {
      const here = [...path, isList ? Number(key) : key];
      if (!isList && FORBIDDEN_KEYS.has(key)) {
        throw new Refusal({
          field: pathText(here, name),
          value: `the key "${key}"`,
          accepted: 'Leave this key out; it is never allowed.',
        });
      }
      open.push({ value: inner, path: here });
    }
  }
}
