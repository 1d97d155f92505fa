import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import { lockOut } from '../../../src/cli/batch/out-lock.ts';
import { isRunning, processNumbering, processStart } from '../../../src/cli/batch/process-mark.ts';

let folder = '';
let out = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'out-lock-'));
  out = join(folder, 'answers.ndjson');
});
afterEach(() => rmSync(folder, { recursive: true }));

/** The number of a process that was there and is gone. */
async function gonePid(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '0']);
  await new Promise((resolve) => child.on('close', resolve));
  return child.pid ?? 0;
}

/** A lock as another process would have left it. */
async function left(change: object = {}, path = `${out}.lock`, id = 'a0'): Promise<void> {
  const lock = {
    schema: 'cladwright-batch-lock/1',
    id,
    host: hostname(),
    pid: process.pid,
    numbering: await processNumbering(),
    started: await processStart(process.pid),
    ...change,
  };
  writeFileSync(path, JSON.stringify(lock));
}

describe('the lock of an output file', () => {
  it('keeps another run off until it is given back, and leaves nothing behind', async () => {
    const unlock = await lockOut(out);
    expect(readdirSync(folder)).toEqual(['answers.ndjson.lock']);
    const second = lockOut(out);
    await expect(second).rejects.toThrow(Refusal);
    await expect(second).rejects.toThrow(
      `--out: "${out}" is not accepted. Another run writes into this file (process ${process.pid}). Wait for its end, or give another name.`,
    );
    await unlock();
    expect(readdirSync(folder)).toEqual([]);
    await (await lockOut(out))();
  });

  it('holds by whatever way the file is named', async () => {
    writeFileSync(out, '');
    symlinkSync(out, join(folder, 'link.ndjson'));
    const unlock = await lockOut(out);
    await expect(lockOut(join(folder, 'link.ndjson'))).rejects.toThrow(/Another run writes/);
    await unlock();
  });

  it('is taken over when its process is gone', async () => {
    await left({ pid: await gonePid() });
    const unlock = await lockOut(out);
    expect(JSON.parse(readFileSync(`${out}.lock`, 'utf8'))).toMatchObject({ pid: process.pid });
    await unlock();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is taken over when another process has the number by now', async () => {
    await left({ started: 'before the power cut' });
    await (await lockOut(out))();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is taken over when the process died that was about to take it over', async () => {
    const pid = await gonePid();
    await left({ pid });
    await left({ pid }, `${out}.lock.a0`, 'b1');
    await (await lockOut(out))();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('goes to one alone of many that find it left', async () => {
    await left({ pid: await gonePid() });
    const all = await Promise.allSettled(Array.from({ length: 12 }, () => lockOut(out)));
    const won = all.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    expect(won).toHaveLength(1);
    for (const one of all) if (one.status === 'rejected') expect(one.reason).toBeInstanceOf(Refusal);
    await won[0]?.();
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each([
    [
      'another machine',
      { host: 'elsewhere', pid: 1 },
      /on "elsewhere".*If that run is over, remove .*\.lock/,
    ],
    ['another container', { numbering: 'pid:[1]', pid: 1 }, /Another run writes/],
  ])('stands where nobody can say whether its process is gone: %s', async (_, change, message) => {
    await left(change);
    await expect(lockOut(out)).rejects.toThrow(message);
    expect(existsSync(`${out}.lock`)).toBe(true);
  });

  it('leaves a file of somebody else alone', async () => {
    for (const text of ['my notes', '{"schema":"cladwright-batch-lock/2"}']) {
      writeFileSync(`${out}.lock`, text);
      await expect(lockOut(out)).rejects.toThrow(/somebody else has a file of that name/);
      expect(readFileSync(`${out}.lock`, 'utf8')).toBe(text);
    }
  });
});

describe('a process', () => {
  it('is known by its start, the same whenever asked, and nothing is known of one that is gone', async () => {
    expect(isRunning(process.pid)).toBe(true);
    expect(await processStart(process.pid)).toBe(await processStart(process.pid));
    expect(await processStart(process.pid)).not.toBeNull();
    const pid = await gonePid();
    expect(isRunning(pid)).toBe(false);
    expect(await processStart(pid)).toBeNull();
  });
});
