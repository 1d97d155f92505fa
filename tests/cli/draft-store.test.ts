import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dataFolder, draftStoreIn } from '../../src/cli/draft-store.ts';
import type { Draft } from '../../src/conversation/draft.ts';

const DRAFT: Draft = {
  schema: 'cladwright-draft/1',
  saved_at: '2024-05-06T07:08:09.000Z',
  answers: {
    place: { state: 'CO', county: 'Boulder' },
    'framing.depth_in': 5.5,
    'framing.spacing_in': 'unknown',
    windows: [{ count: 6, width_in: 36 }],
  },
  windows_complete: false,
  history: ['place', 'framing'],
};

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'cladwright-draft-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('the kept draft', () => {
  it('comes back as it was kept', async () => {
    const home = join(folder, 'not', 'there', 'yet');
    await draftStoreIn(home).save(DRAFT);
    expect(await draftStoreIn(home).load()).toEqual({ draft: DRAFT, setAside: null });
    expect(await readdir(home)).toEqual(['draft.json']);
  });

  it('is none where nothing was kept, and none after it is cleared', async () => {
    const store = draftStoreIn(folder);
    expect(await store.load()).toEqual({ draft: null, setAside: null });
    await store.clear();
    await store.save(DRAFT);
    await store.clear();
    expect(await store.load()).toEqual({ draft: null, setAside: null });
  });

  it('is the last one when many are kept in a row', async () => {
    const store = draftStoreIn(folder);
    for (let depth_in = 2; depth_in < 12; depth_in += 1) {
      await store.save({ ...DRAFT, answers: { 'framing.depth_in': depth_in } });
    }
    expect((await store.load()).draft?.answers).toEqual({ 'framing.depth_in': 11 });
  });

  it.each([
    ['half a file', JSON.stringify(DRAFT).slice(0, 60)],
    ['an empty file', ''],
    ['another kind of file', '{"schema":"something-else/1"}'],
    ['a draft of a later version', JSON.stringify({ ...DRAFT, schema: 'cladwright-draft/2' })],
    ['an impossible answer', JSON.stringify({ ...DRAFT, answers: { 'framing.depth_in': -2 } })],
    ['a key that is not known', JSON.stringify({ ...DRAFT, answers: { __proto__x: 1 } })],
    ['a file far too large', `${JSON.stringify(DRAFT)}${' '.repeat(1_100_000)}`],
  ])('that is %s is set aside under its own name, unchanged', async (_what, text) => {
    const path = join(folder, 'draft.json');
    await writeFile(path, text);
    const aside = `${path}.corrupt-1`;
    expect(await draftStoreIn(folder).load()).toEqual({ draft: null, setAside: aside });
    expect(await readFile(aside, 'utf8')).toBe(text);
    expect(await draftStoreIn(folder).load()).toEqual({ draft: null, setAside: null });
  });

  it('never overwrites a draft that was set aside before', async () => {
    const path = join(folder, 'draft.json');
    for (const n of [1, 2, 3]) {
      await writeFile(path, `bad ${n}`);
      expect((await draftStoreIn(folder).load()).setAside).toBe(`${path}.corrupt-${n}`);
    }
    expect(await readFile(`${path}.corrupt-1`, 'utf8')).toBe('bad 1');
  });

  it('reports a folder that can not be written', async () => {
    await writeFile(join(folder, 'taken'), '');
    await expect(draftStoreIn(join(folder, 'taken')).save(DRAFT)).rejects.toThrow();
  });

  it('reports a file that can not be read, instead of taking it for none', async () => {
    await mkdir(join(folder, 'draft.json'));
    await expect(draftStoreIn(folder).load()).rejects.toThrow();
  });
});

describe('several kept talks', () => {
  const named = (name: string, saved_at = DRAFT.saved_at): Draft => ({
    ...DRAFT,
    saved_at,
    answers: { ...DRAFT.answers, name },
  });

  it('have a file each, under a safe name', async () => {
    const store = draftStoreIn(folder);
    await store.save(named('Pine Street, north wall'));
    store.putAway();
    await store.save(named('../../etc/passwd'));
    store.putAway();
    await store.save(named('CON'));
    expect((await readdir(join(folder, 'projects'))).sort()).toEqual([
      'con-wall.json',
      'etc-passwd.json',
      'pine-street-north-wall.json',
    ]);
    expect(await readdir(folder)).toEqual(['projects']);
  });

  it('move to another file when they are given another name, and never over another talk', async () => {
    const store = draftStoreIn(folder);
    await store.save(named('Barn'));
    store.putAway();
    await store.save(DRAFT);
    await store.save(named('Barn'));
    expect((await readdir(join(folder, 'projects'))).sort()).toEqual(['barn-2.json', 'barn.json']);
    expect(await readdir(folder)).toEqual(['projects']);
    await store.save(named('Shed'));
    expect((await readdir(join(folder, 'projects'))).sort()).toEqual(['barn.json', 'shed.json']);
  });

  it('are listed and opened by name, in any case; the last one kept is offered', async () => {
    const store = draftStoreIn(folder);
    await store.save(named('Barn', '2024-05-06T07:08:09.000Z'));
    store.putAway();
    await store.save(named('Shed', '2024-05-08T07:08:09.000Z'));
    const next = draftStoreIn(folder);
    expect((await next.load()).draft?.answers.name).toBe('Shed');
    expect((await next.list()).map(({ name, answered }) => [name, answered])).toEqual([
      ['Shed', 4],
      ['Barn', 4],
    ]);
    expect((await next.open('barn'))?.answers.name).toBe('Barn');
    expect(await next.open('Hut')).toBeNull();
    await next.save(named('Barn', '2024-05-09T07:08:09.000Z'));
    expect((await draftStoreIn(folder).load()).draft?.answers.name).toBe('Barn');
  });

  it('are not offered once their record is saved, but kept', async () => {
    await draftStoreIn(folder).save({ ...named('Barn'), finished: true });
    const store = draftStoreIn(folder);
    expect(await store.load()).toEqual({ draft: null, setAside: null });
    expect(await store.list()).toMatchObject([{ name: 'Barn', finished: true }]);
  });

  it('one that can not be read is set aside, the others are not touched', async () => {
    await draftStoreIn(folder).save(named('Barn'));
    const bad = join(folder, 'projects', 'shed.json');
    await writeFile(bad, '{');
    const loaded = await draftStoreIn(folder).load();
    expect(loaded).toMatchObject({ draft: { answers: { name: 'Barn' } }, setAside: `${bad}.corrupt-1` });
  });

  it('a talk begun after one was put away does not take its file, named or not', async () => {
    await draftStoreIn(folder).save(DRAFT);
    const store = draftStoreIn(folder);
    await store.load();
    store.putAway();
    await store.save({ ...DRAFT, answers: { 'framing.depth_in': 3.5 } });
    expect((await readdir(folder)).sort()).toEqual(['draft-2.json', 'draft.json']);
  });
});

describe('the data folder', () => {
  it('is the one named by the environment, else one of the user, called after the program', () => {
    expect(dataFolder({ CLADWRIGHT_HOME: '/somewhere' })).toBe('/somewhere');
    expect(dataFolder({})).toMatch(/cladwright/);
    expect(dataFolder({ CLADWRIGHT_HOME: '' })).toBe(dataFolder({}));
  });
});
