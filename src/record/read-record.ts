import { readFile, stat } from 'node:fs/promises';
import { adviceSchema } from '../advice/advice-schema.ts';
import { errorCode } from '../base/error-code.ts';
import { schemaKind } from '../base/other-schema.ts';
import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { recordDigest } from './build-record.ts';
import { parseOlder } from './fill-missing.ts';
import { type DecisionRecord, RECORD_VERSION, recordSchema } from './record-schema.ts';
import { upgradeAdvice } from './upgrade-advice.ts';

export type ReadRecord = {
  readonly record: DecisionRecord;
  /** True when the content doesn't fit its digest: somebody changed the file after it was saved. It can still be shown. */
  readonly isAltered: boolean;
  /** As it stands in the file, with keys that this program doesn't know. */
  readonly data: object;
};

const WHAT_IS_READ = 'Give the .json file that --save wrote.';

/** Far above any real record; keeps a file of something else from filling the memory. */
const LARGEST_BYTES = 64 * 1024 * 1024;

/**
 * Reads a saved decision record. What a later program writes into an answer and an older record can't have is read
 * as not known.
 *
 * @throws Refusal when the file isn't there, can't be read, is cut off, isn't a record, or is of a newer version
 */
export async function readRecord(path: string): Promise<ReadRecord> {
  return asRecord(await readJsonFile(path), path);
}

/**
 * Takes parsed JSON for a record.
 *
 * @param path  where it was read, for messages
 * @throws Refusal as {@link readRecord}
 */
export function asRecord(data: unknown, path: string): ReadRecord {
  refuseOtherFormats(data, path);
  const digest = recordDigest(data);
  const advice: unknown = 'advice' in data ? upgradeAdvice(data.advice) : undefined;
  const record = parseOlder(adviceSchema, advice, (filled) =>
    parseInput(recordSchema, { ...data, advice: filled }, showValue(path)),
  );
  return { record, isAltered: digest !== record.digest, data };
}

/** @throws Refusal for a file that isn't there, can't be read, is empty, cut off or no JSON */
export async function readJsonFile(path: string): Promise<unknown> {
  return parseJson(await fileText(path), path);
}

/** What a JSON document says it is; null when it doesn't. */
export function schemaName(data: unknown): string | null {
  const name =
    typeof data === 'object' && data !== null && 'schema' in data && Object.hasOwn(data, 'schema')
      ? data.schema
      : null;
  return typeof name === 'string' ? name : null;
}

async function fileText(path: string): Promise<string> {
  try {
    if (path.includes('\0')) throw refusal(path, WHAT_IS_READ);
    const file = await stat(path);
    if (!file.isFile()) throw refusal(path, `That is not a file. ${WHAT_IS_READ}`);
    if (file.size > LARGEST_BYTES)
      throw refusal(path, `That file is too large to be a record. ${WHAT_IS_READ}`);
    return (await readFile(path, 'utf8')).replace(/^\ufeff/, '');
  } catch (error) {
    const code = errorCode(error);
    if (code === null) throw error;
    if (code === 'ENOENT' || code === 'ENOTDIR')
      throw refusal(path, `There is no such file. ${WHAT_IS_READ}`);
    if (code === 'EACCES' || code === 'EPERM')
      throw refusal(path, 'Reading that file is not allowed. Ask its owner.');
    throw refusal(path, `The file could not be read (${code}). ${WHAT_IS_READ}`);
  }
}

function parseJson(text: string, path: string): unknown {
  if (text.trim() === '') throw refusal(path, `The file is empty. ${WHAT_IS_READ}`);
  try {
    return JSON.parse(text);
  } catch {
    // The parser's own message quotes the file; ours says what to do.
    const isCutOff = text.trimStart().startsWith('{') && !text.trimEnd().endsWith('}');
    const what = isCutOff ? 'The file is cut off: its end is missing.' : 'The file is not JSON.';
    throw refusal(path, `${what} ${WHAT_IS_READ}`);
  }
}

function refuseOtherFormats(data: unknown, path: string): asserts data is object {
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    throw refusal(path, `That is no record. ${WHAT_IS_READ}`);
  const { schema, schema_version, tool_version } = data as Readonly<Record<string, unknown>>;
  const named = typeof schema === 'string' ? /^cladwright-record\/([1-9]\d*)$/.exec(schema) : null;
  if (!named) {
    const other =
      typeof schema === 'string' && schemaKind(schema)
        ? `It holds ${showValue(schema)}: ${schemaKind(schema)}. `
        : '';
    throw refusal(path, `That is no record. ${other}${WHAT_IS_READ}`);
  }
  const version = Math.max(Number(named[1]), typeof schema_version === 'number' ? schema_version : 0);
  if (version > RECORD_VERSION) {
    const writer = typeof tool_version === 'string' ? ` by version ${showValue(tool_version)}` : '';
    throw refusal(
      path,
      `The record was written${writer} in format ${version}; this program reads format ${RECORD_VERSION}. Read it with that version or a later one; the file is unchanged.`,
    );
  }
}

function refusal(path: string, accepted: string): Refusal {
  return new Refusal({ field: 'record', value: showValue(path), accepted });
}
