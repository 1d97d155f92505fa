import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { buildRecord, recordDigest } from '../../src/record/build-record.ts';
import { readRecord } from '../../src/record/read-record.ts';
import { CREATED, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';

const record = buildRecord({ scenario: SCENARIO, advice: FULL_ADVICE, created: CREATED, revision: 1 });

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'cladwright-read-'));
});
afterEach(async () => {
  await rm(dir, { recursive: true, force: true });
});

async function saved(content: unknown): Promise<string> {
  const path = join(dir, 'record.json');
  await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

async function refusalOf(path: string): Promise<string> {
  const error: unknown = await readRecord(path).catch((reason: unknown) => reason);
  expect(error).toBeInstanceOf(Refusal);
  return error instanceof Refusal ? error.message : '';
}

describe('readRecord', () => {
  it('gives back what was saved', async () => {
    expect(await readRecord(await saved(record))).toEqual({ record, isAltered: false, data: record });
  });

  it('does not mind the order of keys, white space or a byte order mark', async () => {
    const reversed = Object.fromEntries(Object.entries(record).reverse());
    const read = await readRecord(await saved(`\ufeff${JSON.stringify(reversed, null, 4)}\n`));
    expect(read).toMatchObject({ record, isAltered: false });
  });

  it('passes over keys that a later advice brought, and counts them in the digest', async () => {
    const { digest: _, ...content } = record;
    const later = { ...content, advice: { ...record.advice, noise_db: 52 } };
    const read = await readRecord(await saved({ ...later, digest: recordDigest(later) }));
    expect(read.isAltered).toBe(false);
    expect(read.record.advice).toEqual(record.advice);
    expect((await readRecord(await saved({ ...later, digest: record.digest }))).isAltered).toBe(true);
  });

  it.each([
    ['a figure', { advice: { ...record.advice, code_edition: '2018' } }],
    ['the date', { created: '2020-01-01T00:00:00.000Z' }],
    ['a signature', { sign_off: { ...record.sign_off, owner: { name: 'A. Sample', date: '2026-03-16' } } }],
    ['the digest', { digest: '0'.repeat(64) }],
  ])('notices that %s was changed, and still shows the record', async (_, change) => {
    const read = await readRecord(await saved({ ...record, ...change }));
    expect(read.isAltered).toBe(true);
    expect(read.record.title).toBe(record.title);
  });

  it.each([
    ['a file that is cut off', JSON.stringify(record).slice(0, 900), /cut off/],
    ['an empty file', '', /empty/],
    ['something else than JSON', '# Decision record', /not JSON/],
    ['a list', '[]', /no record/],
    ['a number', '7', /no record/],
    ['an object of something else', '{"schema":"other/1"}', /no record/],
    [
      'an answer instead of a record',
      JSON.stringify(FULL_ADVICE),
      /no record\. It holds "cladwright-advice\/1"/,
    ],
    ['another key of ours', JSON.stringify({ ...record, colour: 'red' }), /colour: "red"/],
    ['a missing part', JSON.stringify({ ...record, sign_off: undefined }), /sign_off/],
    ['a wrong status', JSON.stringify({ ...record, status: 'maybe' }), /status: "maybe"/],
  ])('refuses %s and says what would do', async (_, content, expected) => {
    expect(await refusalOf(await saved(content))).toMatch(expected);
  });

  it.each([
    ['by its name', { schema: 'cladwright-record/3', tool_version: '0.9.0' }],
    ['by its version', { schema_version: 3, tool_version: '0.9.0' }],
  ])('refuses a newer format politely: %s', async (_, change) => {
    const message = await refusalOf(await saved({ ...record, ...change, unheard_of: {} }));
    expect(message).toContain('format 3; this program reads format 2');
    expect(message).toContain('"0.9.0"');
    expect(message).toContain('the file is unchanged');
  });

  it('refuses a path without a file, a folder and an impossible path', async () => {
    expect(await refusalOf(join(dir, 'none.json'))).toMatch(/no such file/);
    expect(await refusalOf(join(await saved('x'), 'below.json'))).toMatch(/no such file/);
    await mkdir(join(dir, 'folder.json'));
    expect(await refusalOf(join(dir, 'folder.json'))).toMatch(/not a file/);
    expect(await refusalOf('a\0b')).toMatch(/--save wrote/);
  });

  it('names the file without obeying escape codes in its name', async () => {
    const message = await refusalOf(join(dir, '\u001b[2J.json'));
    expect(message).toContain('\\u001b[2J');
    expect(message).not.toContain('\u001b');
  });

  it('survives a file nested without end', async () => {
    const deep = `${'['.repeat(5000)}${']'.repeat(5000)}`;
    const content = JSON.stringify({ ...record, advice: { ...record.advice, deep: 0 } });
    expect(await refusalOf(await saved(content.replace('"deep":0', `"deep":${deep}`)))).toMatch(/nested/);
  });
});
