import { randomUUID } from 'node:crypto';
import { readFile, realpath, rename, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { z } from 'zod';
import { errorCode } from '../../base/error-code.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import { discRefusal } from '../../record/disc-refusal.ts';
import { publishFiles } from '../../record/publish-files.ts';
import { isRunning, processNumbering, processStart } from './process-mark.ts';

const FIELD = '--out';
/** Lets a holder that is just ending go, and gives up where locks come and go for ever. */
const MOST_TRIES = 20;

/** Who writes into an output file; stands beside it as long as somebody does. */
const holderSchema = z.strictObject({
  schema: z.literal('cladwright-batch-lock/1'),
  id: z.string().regex(/^[0-9a-f-]{1,64}$/),
  host: z.string(),
  pid: z.number().int().positive(),
  numbering: z.string().nullable(),
  started: z.string().nullable(),
});
type Holder = z.output<typeof holderSchema>;

/**
 * Keeps every other run off an output file until the returned function is called. A lock whose process is gone on this
 * machine, killed or fallen with the power, is taken over.
 *
 * @throws Refusal naming the file where another run writes into it
 */
export async function lockOut(outPath: string): Promise<() => Promise<void>> {
  const path = `${await realPath(outPath)}.lock`;
  const holder: Holder = {
    schema: 'cladwright-batch-lock/1',
    id: randomUUID(),
    host: hostname(),
    pid: process.pid,
    numbering: await processNumbering(),
    started: await processStart(process.pid),
  };
  await take(path, holder, outPath).catch((error: unknown) => {
    throw discRefusal(error, FIELD, outPath);
  });
  return async () => {
    // One that stays is taken over by the next run: this process will be gone.
    if (await isHeldBy(path, holder).catch(() => false)) await rm(path, { force: true }).catch(() => {});
  };
}

/** The same for every way to a file; one that isn't there yet has the folder's. */
async function realPath(path: string): Promise<string> {
  const whole = await realpath(path).catch(() => null);
  if (whole !== null) return whole;
  const folder = await realpath(dirname(path)).catch(() => dirname(path));
  return join(folder, basename(path));
}

/**
 * Only who holds the lock named after a dead holder may put another in its place, and looks first whether it is still
 * there: of two that find the same dead lock, one takes it over and the other finds it taken. Should that one die on
 * the way, its lock is a dead one like any other.
 */
async function take(path: string, own: Holder, outPath: string): Promise<void> {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    if (await create(path, own)) return;
    const other = await holderOf(path);
    if (other === 'gone') continue;
    if (other === null) throw notOurs(path, outPath);
    if (!(await isDead(other, own))) throw inUse(path, other, outPath);
    const claim = `${path}.${other.id}`;
    await take(claim, own, outPath);
    if (await isHeldBy(path, other)) {
      await rename(claim, path);
      return;
    }
    await rm(claim, { force: true });
  }
  throw new Refusal({
    field: FIELD,
    value: showValue(outPath),
    accepted: `Other runs keep taking ${path}. Give another name, or try again when they have ended.`,
  });
}

function create(path: string, own: Holder): Promise<boolean> {
  return publishFiles(dirname(path), [{ name: basename(path), text: `${JSON.stringify(own)}\n` }]);
}

async function isHeldBy(path: string, { id }: Holder): Promise<boolean> {
  const now = await holderOf(path);
  return now !== null && now !== 'gone' && now.id === id;
}

/** Null: a file that is no lock of ours. */
async function holderOf(path: string): Promise<Holder | null | 'gone'> {
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  });
  if (text === null) return 'gone';
  try {
    return holderSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    // No JSON.
    return null;
  }
}

/** Nobody can say that of a process of another machine or container. */
async function isDead({ host, pid, numbering, started }: Holder, own: Holder): Promise<boolean> {
  if (host !== own.host || numbering !== own.numbering) return false;
  if (!isRunning(pid)) return true;
  const now = await processStart(pid);
  // A later process with the same number.
  return started !== null && now !== null && started !== now;
}

function inUse(path: string, { host, pid }: Holder, outPath: string): Refusal {
  const isHere = host === hostname();
  return new Refusal({
    field: FIELD,
    value: showValue(outPath),
    accepted: `Another run writes into this file (process ${pid}${isHere ? '' : ` on ${showValue(host)}`}). Wait for its end, or give another name.${isHere ? '' : ` If that run is over, remove ${path}.`}`,
  });
}

function notOurs(path: string, outPath: string): Refusal {
  return new Refusal({
    field: FIELD,
    value: showValue(outPath),
    accepted: `${path} is needed to keep other runs off, and somebody else has a file of that name. Give another name, or remove it.`,
  });
}
