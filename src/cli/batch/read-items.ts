import { createHash } from 'node:crypto';
import { createReadStream, fstatSync, type Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { namesOtherSchema } from '../../base/other-schema.ts';
import { type Issue, Refusal, showValue } from '../../base/refusal.ts';
import { filesBelow } from '../../record/files-below.ts';
import { MOST_BYTES, readBytes, reasonUnread, STANDARD_INPUT, sourceName, tooLong } from '../read-text.ts';
import { LINE_NAME } from './answer-line.ts';
import type { BatchItem } from './batch-item.ts';
import { splitLines } from './split-lines.ts';

/** Where scenarios come from: a file that is one, or a stream of lines that are one each. */
export type BatchSource = {
  readonly path: string;
  readonly kind: 'document' | 'lines';
  /** Found in a folder, not named: what is plainly something else of ours is passed over. */
  readonly isFound: boolean;
  /** Null for a pipe. */
  readonly size_bytes: number | null;
};

const LINES = /\.(?:ndjson|jsonl)$/;
const FOUND = /\.(?:json|ndjson|jsonl)$/;

/**
 * Looks at the paths before any work begins: `-` and `.ndjson` or `.jsonl` files and pipes hold a scenario on each
 * line, any other file is one; a folder stands for the files in it and below, in the order of their names, without hidden
 * ones and the file that the answers go into.
 *
 * @param outPath  the file of `--out`
 * @throws Refusal for a path that isn't there, a folder without scenarios, answers that would come in again
 */
export async function findSources(
  paths: readonly string[],
  outPath: string | undefined,
): Promise<BatchSource[]> {
  if (paths.length === 0) {
    throw new Refusal({
      field: 'PATH',
      value: showValue(undefined),
      accepted:
        'Give scenario files, folders of them, .ndjson files, or "-" for NDJSON on standard input. After "--house-rules" every word counts as a rules file: put the paths first.',
    });
  }
  if (paths.filter((path) => path === STANDARD_INPUT).length > 1) {
    throw new Refusal({ field: 'PATH', value: '"-"', accepted: 'Standard input can be read once only.' });
  }
  const isOutput = await outputTest(outPath);
  return (await Promise.all(paths.map((path) => sourcesAt(path, isOutput)))).flat();
}

type OutputTest = (about: Stats) => boolean;

/** Knows the files that answers are written into, by whatever path: read as input, they would never end. */
async function outputTest(outPath: string | undefined): Promise<OutputTest> {
  const out = outPath === undefined ? null : await stat(outPath).catch(() => null);
  const outputs = [fstatSync(1), ...(out ? [out] : [])].filter((about) => about.isFile());
  return ({ dev, ino }) => outputs.some((output) => output.dev === dev && output.ino === ino);
}

async function sourcesAt(path: string, isOutput: OutputTest): Promise<BatchSource[]> {
  const about = path === STANDARD_INPUT ? fstatSync(0) : await lookAt(path);
  if (isOutput(about)) {
    throw new Refusal({
      field: 'PATH',
      value: showValue(path),
      accepted: 'The answers go into this file; give another one to read, or another one to write.',
    });
  }
  if (path === STANDARD_INPUT) {
    return [{ path, kind: 'lines', isFound: false, size_bytes: about.isFile() ? about.size : null }];
  }
  if (about.isDirectory()) return sourcesIn(path, isOutput);
  const isLines = LINES.test(path) || !about.isFile();
  return [
    {
      path,
      kind: isLines ? 'lines' : 'document',
      isFound: false,
      size_bytes: about.isFile() ? about.size : null,
    },
  ];
}

async function lookAt(path: string) {
  try {
    return await stat(path);
  } catch (error) {
    throw unreadable(path, error);
  }
}

async function sourcesIn(folder: string, isOutput: OutputTest): Promise<BatchSource[]> {
  const paths = await filesBelow(folder, (entry) => FOUND.test(entry.name) && !entry.isDirectory()).catch(
    (error: unknown) => {
      throw unreadable(folder, error);
    },
  );
  const sources: BatchSource[] = [];
  for (const path of paths) {
    // A link that leads nowhere is told in its place.
    const about = await stat(path).catch(() => null);
    if (about && isOutput(about)) continue;
    sources.push({
      path,
      kind: LINES.test(path) ? 'lines' : 'document',
      isFound: true,
      size_bytes: about?.size ?? 0,
    });
  }
  if (sources.length > 0) return sources;
  throw new Refusal({
    field: 'PATH',
    value: showValue(folder),
    accepted: 'Give a folder with at least one scenario, a .json or .ndjson file; this one has none.',
  });
}

function unreadable(path: string, error: unknown): Refusal {
  return new Refusal({
    field: 'PATH',
    value: showValue(path),
    accepted: `Give a file or folder that is there and can be read: ${reasonUnread(error)}.`,
  });
}

/**
 * Reads scenarios one by one, none before it is asked for. What can't be read becomes an item that says so.
 *
 * @param first_line    number of the first
 * @param onPassedOver  told of files in folders that are plainly something else
 */
export async function* readItems(
  sources: readonly BatchSource[],
  first_line: number,
  onPassedOver: (path: string) => void,
): AsyncGenerator<BatchItem, void, void> {
  let line = first_line;
  for (const source of sources) {
    const items = source.kind === 'lines' ? linesOf(source, onPassedOver) : documentOf(source, onPassedOver);
    for await (const item of items) {
      yield { ...item, line };
      line++;
    }
  }
}

type UnplacedItem = Omit<BatchItem, 'line'>;

async function* linesOf(
  { path, isFound }: BatchSource,
  onPassedOver: (path: string) => void,
): AsyncGenerator<UnplacedItem, void, void> {
  const source = sourceName(path);
  const stream: Readable = path === STANDARD_INPUT ? process.stdin : createReadStream(path);
  let source_line = 1;
  try {
    for await (const { bytes, size_bytes, digest } of splitLines(stream, MOST_BYTES)) {
      // The answers of an earlier batch.
      if (isFound && source_line === 1 && bytes && isSomethingElse(bytes)) {
        onPassedOver(path);
        return;
      }
      yield { source, source_line, content: bytes ?? tooLong(LINE_NAME), digest, size_bytes };
      source_line++;
    }
  } catch (error) {
    // Standard input that breaks off would pass for its end.
    if (path === STANDARD_INPUT) throw error;
    yield unreadItem(source, source_line, `The rest of this file can't be read (${reasonUnread(error)}).`);
  }
}

async function* documentOf(
  { path, isFound }: BatchSource,
  onPassedOver: (path: string) => void,
): AsyncGenerator<UnplacedItem, void, void> {
  const source = sourceName(path);
  try {
    const content = await readBytes(path, 'PATH');
    if (isFound && isSomethingElse(content)) {
      onPassedOver(path);
      return;
    }
    const digest = createHash('sha256').update(content).digest('hex');
    yield { source, source_line: null, content, digest, size_bytes: content.length };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const [issue] = error.issues;
    yield unreadItem(source, null, issue?.accepted ?? error.message, issue);
  }
}

function unreadItem(
  source: string,
  source_line: number | null,
  accepted: string,
  issue?: Issue,
): UnplacedItem {
  const content = issue ?? { field: source, value: 'this file', accepted };
  const digest = createHash('sha256').update(accepted).digest('hex');
  return { source, source_line, content, digest, size_bytes: 0 };
}

/** House rules, a firm's file, a record: JSON that names another schema of this program. */
function isSomethingElse(content: Buffer): boolean {
  try {
    return namesOtherSchema(JSON.parse(content.toString('utf8')));
  } catch {
    // No JSON: it is told in its place.
    return false;
  }
}
