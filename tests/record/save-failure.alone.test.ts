import type * as FileSystem from 'node:fs/promises';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { saveRecord } from '../../src/record/save-record.ts';
import { CREATED, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';

/** Faults of the disc, set by each test: what fails, at which call, and how. */
const fault = vi.hoisted(() => ({ call: '', at: 0, code: '', seen: 0 }));

function strike(call: string): void {
  if (fault.call !== call) return;
  fault.seen += 1;
  if (fault.seen === fault.at) throw Object.assign(new Error(`${fault.code}: struck`), { code: fault.code });
}

vi.mock('write-file-atomic', async () => {
  const real = await vi.importActual<{ default: (path: string, text: string) => Promise<void> }>(
    'write-file-atomic',
  );
  return {
    default: async (path: string, text: string) => {
      strike('write');
      const isShort = fault.call === 'short' && ++fault.seen === fault.at;
      await real.default(path, isShort ? text.slice(0, 4096) : text);
    },
  };
});

vi.mock('node:fs/promises', async () => {
  const real = await vi.importActual<typeof FileSystem>('node:fs/promises');
  return {
    ...real,
    link: async (from: string, to: string) => {
      strike('link');
      if (fault.call === 'no links') throw Object.assign(new Error('no links'), { code: 'EPERM' });
      await real.link(from, to);
    },
    mkdir: async (...given: Parameters<typeof real.mkdir>) => {
      strike('mkdir');
      return real.mkdir(...given);
    },
  };
});

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'cladwright-fault-'));
});
afterEach(async () => {
  Object.assign(fault, { call: '', at: 0, code: '', seen: 0 });
  await rm(root, { recursive: true, force: true });
});

const save = (dir: string) => saveRecord({ scenario: SCENARIO, advice: FULL_ADVICE, created: CREATED, dir });

async function refusalOf(dir: string): Promise<string> {
  const error: unknown = await save(dir).catch((reason: unknown) => reason);
  if (!(error instanceof Refusal)) throw new Error(`not refused: ${String(error)}`);
  expect(error.issues[0]?.field).toBe('--save');
  return error.message;
}

describe('saveRecord on a failing disc', () => {
  it.each([
    ['the first file', 'write', 1],
    ['the last file', 'write', 6],
    ['a file that comes out short', 'short', 2],
    ['the first name', 'link', 1],
    ['the last name', 'link', 6],
  ])('leaves nothing behind when the disc is full at %s', async (_, call, at) => {
    Object.assign(fault, { call, at, code: 'ENOSPC' });
    expect(await refusalOf(join(root, 'new', 'folder'))).toContain('The disc is full');
    expect(await readdir(root)).toEqual([]);
  });

  it('keeps the record that was there when a later save fails', async () => {
    const { paths } = await save(root);
    const before = await Promise.all(paths.map((path) => readFile(path, 'utf8')));
    Object.assign(fault, { call: 'link', at: 2, code: 'ENOSPC' });
    await refusalOf(root);
    expect(await readdir(root)).toHaveLength(6);
    expect(await Promise.all(paths.map((path) => readFile(path, 'utf8')))).toEqual(before);
  });

  it.each([
    ['EACCES', 'Writing there is not allowed'],
    ['EROFS', 'can only be read'],
    ['EDQUOT', 'used up'],
    ['EBUSY', 'could not be written (EBUSY)'],
  ])('says what to do about %s', async (code, expected) => {
    Object.assign(fault, { call: 'write', at: 1, code });
    expect(await refusalOf(root)).toContain(expected);
    Object.assign(fault, { call: 'mkdir', at: 1, code, seen: 0 });
    expect(await refusalOf(join(root, 'x'))).toContain(expected);
  });

  it('goes on to the next revision when another program takes a name in between', async () => {
    Object.assign(fault, { call: 'link', at: 2, code: 'EEXIST' });
    const { paths, record } = await save(root);
    expect(record.revision).toBe(2);
    expect((await readdir(root)).sort()).toEqual(paths.map((path) => path.slice(root.length + 1)).sort());
  });

  it('saves where the file system has no links, and never over a file', async () => {
    Object.assign(fault, { call: 'no links' });
    await writeFile(join(root, 'quarry-lane-duplex-north-wall.json'), 'kept');
    expect((await save(root)).record.revision).toBe(2);
    expect((await save(root)).record.revision).toBe(3);
    expect(await readFile(join(root, 'quarry-lane-duplex-north-wall.json'), 'utf8')).toBe('kept');
    expect(await readdir(root)).toHaveLength(13);
  });
});
