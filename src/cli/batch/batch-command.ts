import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import type { Knowledge } from '../../advice/judge-walls.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import { basisOf } from '../../record/basis.ts';
import { canonicalJson } from '../../record/canonical-json.ts';
import { readPacks } from '../../rulebook/load-rulebook.ts';
import { EXIT, type ExitCode } from '../exit-codes.ts';
import { takingInterrupts } from '../interrupts.ts';
import { loadKnowledge } from '../knowledge.ts';
import { passedOverText } from '../passed-over.ts';
import { readEdition } from '../read-axes.ts';
import { readTop, readWholeNumber } from '../read-number.ts';
import { SOURCE_DIGEST, TOOL_VERSION } from '../version.ts';
import type { BatchItem, BatchMeans } from './batch-item.ts';
import { BatchOutlet } from './batch-outlet.ts';
import { earlierState, OutFile, refuseNoFile, refuseOtherInput } from './out-file.ts';
import { lockOut } from './out-lock.ts';
import { type BatchSource, findSources, readItems } from './read-items.ts';
import { type BatchState, freshState, withItem } from './resume-state.ts';
import { runLines, StopSign } from './run-lines.ts';
import { openPool } from './worker-pool.ts';

const MOST_JOBS = 256;
/** Items under way for each thread: enough that none waits for the next, few enough that little is held. */
const AHEAD = 3;

export type BatchFlags = {
  readonly jobs?: string;
  readonly top: string;
  readonly edition?: string;
  readonly houseRules?: readonly string[];
  readonly short?: true;
  readonly out?: string;
  readonly firstLine: string;
};

/**
 * `batch PATH…`: a scenario in, a line out, in the order of the input. A scenario that can't be answered gets a line
 * that says why, in its place.
 *
 * @returns 1 when a line failed, 70 when the program failed at one
 * @throws Refusal for bad flags, paths that aren't there, house rules with an error, an output file of something else
 */
export async function runBatch(paths: readonly string[], flags: BatchFlags): Promise<ExitCode> {
  const jobs = readJobs(flags.jobs);
  const means: BatchMeans = {
    housePacks: await readPacks(flags.houseRules ?? []),
    top: readTop(flags.top),
    edition: flags.edition === undefined ? null : readEdition(flags.edition, '--edition'),
    isShort: flags.short ?? false,
  };
  const first_line = readWholeNumber(flags.firstLine, '--first-line', 1, 1_000_000_000_000, 1001);
  const outPath = readOut(flags.out);
  const sources = await findSources(paths, outPath);
  // Also tells of house rules with an error before any thread is started.
  const knowledge = await loadKnowledge({ housePacks: means.housePacks });
  const digest = meansDigest(means, first_line, knowledge);
  const run = { jobs, means, digest, first_line, sources, outPath };
  if (outPath === undefined) return answerAll(run);
  await refuseNoFile(outPath);
  const unlock = await lockOut(outPath);
  try {
    return await answerAll(run);
  } finally {
    await unlock();
  }
}

type BatchRun = {
  readonly jobs: number;
  readonly means: BatchMeans;
  readonly digest: string;
  readonly first_line: number;
  readonly sources: readonly BatchSource[];
  readonly outPath: string | undefined;
};

async function answerAll({ jobs, means, digest, first_line, sources, outPath }: BatchRun): Promise<ExitCode> {
  const earlier = outPath === undefined ? freshState(digest) : await earlierState(outPath, digest);
  const passedOver: string[] = [];
  const items = readItems(sources, first_line, (path) => passedOver.push(path));
  const skipped_bytes = await skipDone(items, earlier, outPath);
  const outlet = new BatchOutlet({
    earlier,
    file: outPath === undefined ? null : await OutFile.open(outPath, earlier),
    input_bytes: inputBytes(sources),
    skipped_bytes,
  });
  const pool = openPool(jobs, means);
  const stop = new StopSign();
  const onInterrupt = () => stop.set();
  process.on('SIGINT', onInterrupt);
  try {
    const end = await takingInterrupts(() =>
      runLines({ items, answer: pool.answer, most: AHEAD * jobs, sink: outlet, stop }),
    );
    await outlet.finish();
    process.stderr.write(passedOverText(passedOver) + outlet.lastWords(end, outPath !== undefined));
    return end === 'stopped' ? EXIT.interrupted : exitOf(outlet.tally);
  } finally {
    process.off('SIGINT', onInterrupt);
    await outlet.close();
    await pool.close();
  }
}

function exitOf({ failed, faults }: { readonly failed: number; readonly faults: number }): ExitCode {
  if (faults > 0) return EXIT.fault;
  return failed > 0 ? EXIT.answerIsNo : EXIT.done;
}

function readJobs(text: string | undefined): number {
  if (text === undefined) return availableParallelism();
  return readWholeNumber(text, '--jobs', 1, MOST_JOBS, 4);
}

function readOut(text: string | undefined): string | undefined {
  if (text !== '' && text !== '-') return text;
  throw new Refusal({
    field: '--out',
    value: showValue(text),
    accepted: 'Give the name of a file, for example answers.ndjson; without it lines go to standard output.',
  });
}

/** Changes with anything that could make another line of the same scenario. */
function meansDigest(
  { top, edition, isShort }: BatchMeans,
  first_line: number,
  knowledge: Knowledge,
): string {
  const packs = knowledge.rulebook.packs.map(({ name, sha256 }) => [name, sha256]);
  const all = { top, edition, isShort, first_line, packs, tool: TOOL_VERSION };
  return createHash('sha256')
    .update(canonicalJson({ ...all, basis: basisOf(knowledge, SOURCE_DIGEST) }))
    .digest('hex');
}

/**
 * Reads past what an earlier run has answered.
 *
 * @returns its size in bytes
 * @throws Refusal when it is not what was answered then
 */
async function skipDone(
  items: AsyncGenerator<BatchItem, void, void>,
  earlier: BatchState,
  outPath: string | undefined,
): Promise<number> {
  let input = '';
  let bytes = 0;
  for (let i = 0; i < earlier.lines; i++) {
    const next = await items.next();
    if (next.done) break;
    input = withItem(input, next.value);
    bytes += next.value.size_bytes;
  }
  if (outPath !== undefined && input !== earlier.input) refuseOtherInput(outPath, earlier);
  return bytes;
}

function inputBytes(sources: readonly BatchSource[]): number | null {
  return sources.reduce<number | null>(
    (sum, { size_bytes }) => (sum === null || size_bytes === null ? null : sum + size_bytes),
    0,
  );
}
