import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Refusal, showValue } from '../../src/base/refusal.ts';
import { readRecord } from '../../src/record/read-record.ts';
import { recordHtml } from '../../src/record/record-html.ts';
import { recordMarkdown } from '../../src/record/record-markdown.ts';
import { saveRecord } from '../../src/record/save-record.ts';
import { CREATED, EMPTY_ADVICE, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';
import { HOSTILE_NAMES } from './hostile-names.ts';

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'cladwright-save-'));
});
afterEach(async () => {
  await rm(root, { recursive: true, force: true });
});

const input = { scenario: SCENARIO, advice: FULL_ADVICE, created: CREATED };
const BASE = 'quarry-lane-duplex-north-wall';
const sixFiles = (base: string) => [
  `${base}.build-sheet.html`,
  `${base}.build-sheet.md`,
  `${base}.html`,
  `${base}.json`,
  `${base}.md`,
  `${base}.take-off.csv`,
];

async function refusalOf(dir: string): Promise<Refusal> {
  const error: unknown = await saveRecord({ ...input, dir }).catch((reason: unknown) => reason);
  if (!(error instanceof Refusal)) throw new Error(`not refused: ${String(error)}`);
  return error;
}

describe('saveRecord', () => {
  it('writes the record as JSON, Markdown and HTML and makes the folder', async () => {
    const dir = join(root, 'records', '2026');
    const { paths, record } = await saveRecord({ ...input, dir });
    expect(paths.slice(0, 3)).toEqual(['json', 'md', 'html'].map((end) => join(dir, `${BASE}.${end}`)));
    expect((await readdir(dir)).sort()).toEqual(sixFiles(BASE));
    expect(await readRecord(join(dir, `${BASE}.json`))).toMatchObject({ record, isAltered: false });
    expect(await readFile(join(dir, `${BASE}.md`), 'utf8')).toBe(recordMarkdown(record));
    expect(await readFile(join(dir, `${BASE}.html`), 'utf8')).toBe(recordHtml(record));
  });

  it('saves an answer in which nothing passes too', async () => {
    const { record } = await saveRecord({ ...input, advice: EMPTY_ADVICE, dir: root });
    expect(record.advice.ranked).toEqual([]);
  });

  it('makes a new revision of a name that is taken and leaves the old files alone', async () => {
    await saveRecord({ ...input, dir: root });
    const before = await Promise.all(sixFiles(BASE).map((file) => readFile(join(root, file), 'utf8')));
    const later = new Date('2026-04-01T00:00:00.000Z');
    const second = await saveRecord({ ...input, dir: root, created: later });
    const third = await saveRecord({ ...input, dir: root, created: later });
    expect([second.record.revision, third.record.revision]).toEqual([2, 3]);
    expect(second.paths[0]).toBe(join(root, `${BASE}-r2.json`));
    expect((await readdir(root)).sort()).toEqual(
      [...sixFiles(`${BASE}-r2`), ...sixFiles(`${BASE}-r3`), ...sixFiles(BASE)].sort(),
    );
    expect(await Promise.all(sixFiles(BASE).map((file) => readFile(join(root, file), 'utf8')))).toEqual(
      before,
    );
  });

  it('passes a revision over when any of its names is taken, and never fills a gap', async () => {
    await writeFile(join(root, `${BASE}.md`), 'my own notes');
    expect((await saveRecord({ ...input, dir: root })).record.revision).toBe(2);
    await writeFile(join(root, `${BASE}-r5.take-off.csv`), 'kept');
    await writeFile(join(root, `${BASE}-r7.build-sheet.html`), 'kept');
    expect((await saveRecord({ ...input, dir: root })).record.revision).toBe(8);
    expect(await readFile(join(root, `${BASE}.md`), 'utf8')).toBe('my own notes');
    expect(await readFile(join(root, `${BASE}-r7.build-sheet.html`), 'utf8')).toBe('kept');
  });

  it('keeps projects apart whose names look like revisions of each other', async () => {
    const named = (name: string) => saveRecord({ ...input, scenario: { ...SCENARIO, name }, dir: root });
    expect((await named('Quarry')).paths[0]).toBe(join(root, 'quarry.json'));
    expect((await named('Quarry r2')).paths[0]).toBe(join(root, 'quarry-r2-wall.json'));
    expect((await named('Quarry')).paths[0]).toBe(join(root, 'quarry-r2.json'));
  });

  it.each(HOSTILE_NAMES)('writes plain files into the folder and nothing elsewhere: %j', async (name) => {
    const dir = join(root, 'a', 'b', 'c');
    const { paths } = await saveRecord({ ...input, scenario: { ...SCENARIO, name }, dir });
    expect(await readdir(root)).toEqual(['a']);
    const files = await readdir(dir);
    expect(files).toHaveLength(6);
    for (const file of files) {
      expect(file).toMatch(/^[a-z0-9-]{1,60}\.(json|md|html|build-sheet\.(md|html)|take-off\.csv)$/);
    }
    expect((await readRecord(paths[0] ?? '')).isAltered).toBe(false);
  });

  it('gives each of many saves at once a revision of its own', async () => {
    const saves = await Promise.all(Array.from({ length: 8 }, () => saveRecord({ ...input, dir: root })));
    expect(saves.map(({ record }) => record.revision).sort()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(await readdir(root)).toHaveLength(48);
    for (const { paths, record } of saves) {
      expect((await readRecord(paths[0] ?? '')).record.revision).toBe(record.revision);
    }
  });

  it('gives two programs that save at once different revisions', async () => {
    const script = join(root, 'save-five.mjs');
    const here = import.meta.dirname;
    await build({
      stdin: {
        contents: `
          import { saveRecord } from ${JSON.stringify(join(here, '../../src/record/save-record.ts'))};
          import { CREATED, FULL_ADVICE, SCENARIO } from ${JSON.stringify(join(here, 'fixture-advice.ts'))};
          for (let i = 0; i < 5; i++) {
            await saveRecord({ scenario: SCENARIO, advice: FULL_ADVICE, created: CREATED, dir: process.argv[2] });
          }`,
        resolveDir: here,
        loader: 'ts',
      },
      bundle: true,
      format: 'esm',
      platform: 'node',
      outfile: script,
      define: { __filename: '"save-five.mjs"' },
      banner: {
        js: "import { createRequire } from 'node:module';const require = createRequire(import.meta.url);",
      },
      logLevel: 'error',
    });
    const dir = join(root, 'shared');
    const run = () =>
      new Promise<number | null>((done) => {
        spawn(process.execPath, [script, dir], { stdio: 'inherit' }).on('exit', done);
      });
    expect(await Promise.all([run(), run()])).toEqual([0, 0]);
    const files = await readdir(dir);
    expect(files.filter((file) => file.endsWith('.json'))).toHaveLength(10);
    expect(files).toHaveLength(60);
    for (const file of files.filter((name) => name.endsWith('.json'))) {
      const { record, isAltered } = await readRecord(join(dir, file));
      expect(isAltered).toBe(false);
      expect(file).toBe(record.revision === 1 ? `${BASE}.json` : `${BASE}-r${record.revision}.json`);
    }
  });
});

describe('saveRecord where it cannot', () => {
  it('refuses a path that is a file, and leaves the file alone', async () => {
    const path = join(root, 'taken');
    await writeFile(path, 'kept');
    const refusal = await refusalOf(path);
    expect(refusal.issues[0]).toMatchObject({ field: '--save', value: showValue(path) });
    expect(refusal.issues[0]?.value).toContain('taken"');
    expect(refusal.message).toContain('There is a file where a folder is needed');
    expect(await readFile(path, 'utf8')).toBe('kept');
  });

  it('refuses a folder below a file', async () => {
    await writeFile(join(root, 'taken'), 'kept');
    expect((await refusalOf(join(root, 'taken', 'below', 'further'))).message).toContain('There is a file');
    expect(await readdir(root)).toEqual(['taken']);
  });

  it('refuses no path, an impossible path and one that is too long', async () => {
    expect((await refusalOf('')).message).toContain('Give the path of a folder');
    expect((await refusalOf('a\0b')).message).toContain('Give the path of a folder');
    expect((await refusalOf(join(root, 'x'.repeat(300)))).message).toContain('too long');
    expect(await readdir(root)).toEqual([]);
  });

  it('does not take a fault of the program for the user’s, and takes back the folder it made', async () => {
    const advice = structuredClone(FULL_ADVICE);
    const first = advice.ranked[0];
    if (first) first.r_effective = Number.NaN;
    const error: unknown = await saveRecord({ ...input, advice, dir: join(root, 'a', 'b') }).catch(
      (reason: unknown) => reason,
    );
    expect(error).toBeInstanceOf(Error);
    expect(error).not.toBeInstanceOf(Refusal);
    expect(await readdir(root)).toEqual([]);
  });

  it('leaves folders that were there before', async () => {
    await mkdir(join(root, 'a'));
    const advice = structuredClone(FULL_ADVICE);
    advice.considered.admitted = Number.NaN;
    await saveRecord({ ...input, advice, dir: join(root, 'a', 'b', 'c') }).catch(() => {});
    expect(await readdir(root)).toEqual(['a']);
    expect(await readdir(join(root, 'a'))).toEqual([]);
  });
});
