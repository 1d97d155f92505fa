import { chmod, mkdir, mkdtemp, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/base/refusal.ts';
import { findRecords } from '../../../src/record/check/find-records.ts';
import { readRecord } from '../../../src/record/read-record.ts';
import { recordMarkdown } from '../../../src/record/record-markdown.ts';
import { saveRecord } from '../../../src/record/save-record.ts';
import { type AcceptInput, acceptRecord } from '../../../src/record/status/accept-record.ts';
import { supersedeRecord } from '../../../src/record/status/supersede-record.ts';
import { CREATED, EMPTY_ADVICE, FULL_ADVICE, SCENARIO } from '../fixture-advice.ts';

const LATER = new Date('2026-04-01T08:00:00.000Z');
const ALL = { owner: 'O. Sample', builder: 'B. <b>Sample</b>', designer: 'D. Sample, PE' };

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'cladwright-status-'));
});
afterEach(async () => {
  await chmod(dir, 0o700);
  await rm(dir, { recursive: true, force: true });
});

async function saved(name = 'Mill wall', advice = FULL_ADVICE): Promise<string> {
  const { paths } = await saveRecord({ dir, scenario: { ...SCENARIO, name }, advice, created: CREATED });
  return paths[0] ?? '';
}

const accept = (path: string, names: AcceptInput['names']) =>
  acceptRecord({ path, names, date: '2026-04-01', created: LATER, toolVersion: '0.1.0' });
const supersede = (oldPath: string, newPath: string) =>
  supersedeRecord({ oldPath, newPath, created: LATER, toolVersion: '0.1.0' });

async function refusalOf(work: Promise<unknown>): Promise<Refusal> {
  const error: unknown = await work.catch((reason: unknown) => reason);
  if (!(error instanceof Refusal)) throw new Error(`not refused: ${String(error)}`);
  return error;
}

describe('acceptRecord', () => {
  it('writes a signed revision that goes on from the old file and leaves that as it is', async () => {
    const path = await saved();
    const before = await readFile(path, 'utf8');
    const { paths, record } = await accept(path, ALL);
    expect(paths[0]).toBe(join(dir, 'mill-wall-r2.json'));
    const { record: old } = await readRecord(path);
    expect(record).toMatchObject({
      status: 'accepted',
      revision: 2,
      created: LATER.toISOString(),
      continues: { file: 'mill-wall.json', digest: old.digest },
      sign_off: { designer: { name: 'D. Sample, PE', date: '2026-04-01' } },
    });
    expect(record.advice).toEqual(old.advice);
    expect(await readFile(path, 'utf8')).toBe(before);
    expect((await readRecord(paths[0] ?? '')).isAltered).toBe(false);
    expect(recordMarkdown(record)).toContain('B. &lt;b&gt;Sample&lt;/b&gt;');
  });

  it('refuses while somebody who must sign has not, and writes nothing', async () => {
    const path = await saved();
    const refusal = await refusalOf(accept(path, { owner: 'O. Sample' }));
    expect(refusal.issues.map(({ field }) => field)).toEqual(['--builder', '--designer']);
    expect(refusal.message).toContain('what carries the windows');
    expect(await readdir(dir)).toHaveLength(6);
  });

  it('keeps signatures that stand already', async () => {
    const first = await accept(await saved(), ALL);
    const again = await accept(first.paths[0] ?? '', { owner: 'New Owner' });
    expect(again.record).toMatchObject({
      revision: 3,
      sign_off: { owner: { name: 'New Owner' }, builder: { name: 'B. <b>Sample</b>' } },
    });
  });

  it('refuses a record that was accepted already, names its last revision, and writes nothing', async () => {
    const path = await saved();
    const second = (await accept(path, ALL)).paths[0] ?? '';
    const third = (await accept(second, { owner: 'New Owner' })).paths[0] ?? '';
    const before = await readdir(dir);
    for (const earlier of [path, second]) {
      const { message } = await refusalOf(accept(earlier, { ...ALL, owner: 'Another' }));
      expect(message).toContain(earlier.slice(dir.length + 1));
      expect(message).toContain('later revision in the same folder. Give the last one, "mill-wall-r3.json".');
    }
    expect(await readdir(dir)).toEqual(before);
    expect((await accept(third, { builder: 'New Builder' })).record.revision).toBe(4);
  });

  it('knows revisions by their digests, whatever the files are called', async () => {
    const path = await saved();
    const { paths } = await accept(path, ALL);
    await rename(path, join(dir, 'the first.json'));
    await rename(paths[0] ?? '', join(dir, 'signed.json'));
    const { message } = await refusalOf(accept(join(dir, 'the first.json'), ALL));
    expect(message).toContain('"signed.json"');
  });

  it('lets one of two who sign at once go on from a file', async () => {
    const path = await saved();
    const both = await Promise.allSettled([accept(path, ALL), accept(path, { ...ALL, owner: 'Another' })]);
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect((await readdir(dir)).filter((name) => name.endsWith('.json'))).toHaveLength(2);
  });

  it('minds no other files in the folder, and reads the links of a record of a later format', async () => {
    const path = await saved();
    const { record } = await readRecord(path);
    await writeFile(join(dir, 'cut.json'), '{"schema":"cladwright-record/2",');
    await writeFile(join(dir, 'empty.json'), '');
    await writeFile(join(dir, 'list.json'), '[1, null, "x"]');
    await writeFile(join(dir, 'odd.json'), '{"schema":"cladwright-record/2","continues":7}');
    await writeFile(join(dir, 'foreign.json'), `{"schema":"else/1","continues":"${record.digest}"}`);
    await mkdir(join(dir, 'folder.json'));
    await symlink(join(dir, 'nowhere'), join(dir, 'dangling.json'));
    await writeFile(join(dir, 'shut.json'), '{}');
    await chmod(join(dir, 'shut.json'), 0);
    const { paths } = await accept(path, ALL);
    const second: unknown = JSON.parse(await readFile(paths[0] ?? '', 'utf8'));
    const later = { ...(second as object), schema: 'cladwright-record/9', schema_version: 9, advice: 'x' };
    await writeFile(paths[0] ?? '', JSON.stringify(later));
    expect((await refusalOf(accept(path, ALL))).message).toContain('Give the last one, "mill-wall-r2.json"');
  });

  it('keeps what a later program wrote into the answer', async () => {
    const { record } = await readRecord(await saved());
    const path = join(dir, 'other.json');
    const later = { ...record, advice: { ...record.advice, noise_db: 52 } };
    const { recordDigest } = await import('../../../src/record/build-record.ts');
    await writeFile(path, JSON.stringify({ ...later, digest: recordDigest(later) }));
    const { paths } = await accept(path, ALL);
    expect(paths[0]).toBe(join(dir, 'other-r2.json'));
    expect(JSON.parse(await readFile(paths[0] ?? '', 'utf8')).advice.noise_db).toBe(52);
  });

  it('refuses a file that was changed after it was saved, and one in which nothing passes', async () => {
    const path = await saved();
    await writeFile(path, (await readFile(path, 'utf8')).replace('"weight_psf": 12.1', '"weight_psf": 2.1'));
    expect((await refusalOf(accept(path, ALL))).message).toContain('changed after it was saved');
    const none = await saved('Nothing passes', EMPTY_ADVICE);
    expect((await refusalOf(accept(none, ALL))).message).toContain('nothing to accept');
  });

  it.skipIf(process.getuid?.() === 0)('says so when the folder can only be read', async () => {
    const path = await saved();
    await chmod(dir, 0o500);
    expect((await refusalOf(accept(path, ALL))).message).toContain('Writing there is not allowed');
    expect(await readdir(dir)).toHaveLength(6);
  });
});

describe('supersedeRecord', () => {
  it('writes a revision of each that names the other, and leaves both files as they are', async () => {
    const [oldPath, newPath] = [await saved('Old wall'), await saved('New wall')];
    const before = await Promise.all([oldPath, newPath].map((path) => readFile(path, 'utf8')));
    const { old, successor } = await supersede(oldPath, newPath);
    const digest = (await readRecord(oldPath)).record.digest;
    expect(successor.record.supersedes).toEqual({ file: 'old-wall.json', digest });
    expect(old.record).toMatchObject({
      status: 'superseded',
      superseded_by: { file: 'new-wall-r2.json', digest: successor.record.digest },
    });
    expect(recordMarkdown(old.record)).toContain('superseded by new-wall-r2.json');
    expect(await Promise.all([oldPath, newPath].map((path) => readFile(path, 'utf8')))).toEqual(before);
  });

  it('numbers on when both are revisions of one name', async () => {
    const [oldPath, newPath] = [await saved(), await saved()];
    const { old, successor } = await supersede(oldPath, newPath);
    expect([successor.record.revision, old.record.revision]).toEqual([3, 4]);
  });

  it('refuses a record for itself and one whose place is taken', async () => {
    const [oldPath, newPath] = [await saved('Old wall'), await saved('New wall')];
    expect((await refusalOf(supersede(oldPath, oldPath))).message).toContain('its own place');
    const { old } = await supersede(oldPath, newPath);
    const refusal = await refusalOf(supersede(old.paths[0] ?? '', newPath));
    expect(refusal.message).toContain('superseded by "new-wall-r2.json"');
    expect((await refusalOf(accept(old.paths[0] ?? '', ALL))).message).toContain('superseded');
  });

  it('refuses, on either side, a record that has a later revision, and writes nothing', async () => {
    const [oldPath, newPath] = [await saved('Old wall'), await saved('New wall')];
    const accepted = (await accept(oldPath, ALL)).paths[0] ?? '';
    const before = await readdir(dir);
    for (const [one, other] of [
      [oldPath, newPath],
      [newPath, oldPath],
      [oldPath, accepted],
    ] as const) {
      expect((await refusalOf(supersede(one, other))).message).toMatch(
        /old-wall\.json" is not accepted\. That record has a later revision .* "old-wall-r2\.json"/,
      );
    }
    expect(await readdir(dir)).toEqual(before);
    const { old } = await supersede(accepted, newPath);
    expect(old.record).toMatchObject({ revision: 3, continues: { file: 'old-wall-r2.json' } });
  });

  it('names for every earlier file the last revision of what took its place', async () => {
    const [oldPath, newPath] = [await saved('Old wall'), await saved('New wall')];
    const accepted = (await accept(oldPath, ALL)).paths[0] ?? '';
    const { successor } = await supersede(accepted, newPath);
    await accept(successor.paths[0] ?? '', ALL);
    for (const earlier of [oldPath, accepted, join(dir, 'old-wall-r3.json')]) {
      expect((await refusalOf(accept(earlier, ALL))).message).toContain(
        'superseded by "new-wall-r3.json". Take the one that took its place',
      );
    }
    await rm(join(dir, 'old-wall-r3.json'));
    expect((await refusalOf(accept(accepted, ALL))).message).toContain('superseded by "new-wall-r3.json"');
  });

  it('names the file that took its place in another folder', async () => {
    const other = join(dir, 'other');
    const { paths } = await saveRecord({
      dir: other,
      scenario: SCENARIO,
      advice: FULL_ADVICE,
      created: CREATED,
    });
    const oldPath = await saved('Old wall');
    const { old, successor } = await supersede(oldPath, paths[0] ?? '');
    const file = (successor.paths[0] ?? '').slice(dir.length + 1);
    for (const path of [oldPath, old.paths[0] ?? ''])
      expect((await refusalOf(accept(path, ALL))).message).toContain(`superseded by "${file}"`);
  });

  it('leaves only what stands to be checked in a folder', async () => {
    const [oldPath, newPath] = [await saved('Old wall'), await saved('New wall')];
    await supersede(oldPath, newPath);
    await writeFile(join(dir, 'scenario.json'), JSON.stringify(SCENARIO));
    await writeFile(join(dir, 'broken.json'), '{"schema":"cladwright-record/2",');
    const { found, passed_over } = await findRecords([dir]);
    expect(found.map(({ file }) => file.slice(dir.length + 1))).toEqual(['broken.json', 'new-wall-r2.json']);
    expect(found[0]).toHaveProperty('refusal');
    expect(passed_over.map(({ file }) => file.slice(dir.length + 1)).sort()).toEqual([
      'new-wall.json',
      'old-wall-r2.json',
      'old-wall.json',
      'scenario.json',
    ]);
  });

  it('checks one revision of a decision that earlier versions let be gone on from twice', async () => {
    const [path, newPath] = [await saved('Old wall'), await saved('New wall')];
    const aside = await mkdtemp(join(tmpdir(), 'cladwright-aside-'));
    const accepted = join(dir, 'old-wall-r2.json');
    // Out of sight while the first file is gone on from once more: this is how such folders came to be.
    await accept(path, ALL);
    await rename(accepted, join(aside, 'r2.json'));
    await supersede(path, newPath);
    await rename(join(aside, 'r2.json'), accepted);
    await rm(aside, { recursive: true });
    const standing = async () =>
      (await findRecords([dir])).found.map(({ file }) => file.slice(dir.length + 1)).sort();
    expect(await standing()).toEqual(['new-wall-r2.json']);
    expect((await refusalOf(accept(accepted, ALL))).message).toContain('superseded by "new-wall-r2.json"');
  });

  it('keeps a record in the check that somebody marked as superseded by hand', async () => {
    const path = await saved();
    const whole = await readFile(path, 'utf8');
    await writeFile(path, whole.replace('"status": "proposed"', '"status": "superseded"'));
    const { found } = await findRecords([dir]);
    expect(found).toMatchObject([{ file: path, read: { isAltered: true } }]);
  });
});
