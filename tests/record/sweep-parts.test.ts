import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, readdir, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { publishFiles } from '../../src/record/publish-files.ts';

const MINUTE_MS = 60_000;

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'cladwright-parts-'));
});
afterEach(async () => {
  await rm(root, { recursive: true, force: true });
});

async function old(name: string, minutes: number): Promise<string> {
  await writeFile(join(root, name), 'half a rec');
  await age(name, minutes);
  return name;
}

async function age(name: string, minutes: number): Promise<void> {
  const then = new Date(Date.now() - minutes * MINUTE_MS);
  await utimes(join(root, name), then, then);
}

const save = () => publishFiles(root, [{ name: 'a.json', text: '{}' }]);

describe('a save', () => {
  it('removes what an earlier one left that was killed, whole or half written', async () => {
    await old(`.${randomUUID()}.part`, 61);
    await old(`.${randomUUID()}.part.3912847`, 61);
    expect(await save()).toBe(true);
    expect(await readdir(root)).toEqual(['a.json']);
  });

  it('leaves alone what another may still be writing', async () => {
    const part = await old(`.${randomUUID()}.part`, 59);
    await save();
    expect((await readdir(root)).sort()).toEqual([part, 'a.json'].sort());
  });

  it('leaves alone what is not its own', async () => {
    const uuid = randomUUID();
    const others = [
      `${uuid}.part`,
      `.${uuid}.part.gz`,
      `.${uuid}.json`,
      `x.${uuid}.part`,
      `.${uuid.toUpperCase()}.part`,
      '.film.part',
    ];
    for (const name of others) await old(name, 1000);
    const folder = `.${randomUUID()}.part`;
    await mkdir(join(root, folder));
    await age(folder, 1000);
    await save();
    expect((await readdir(root)).sort()).toEqual([...others, folder, 'a.json'].sort());
  });

  it.skipIf(process.platform === 'win32')('follows no link', async () => {
    const kept = await old('kept', 1000);
    const link = `.${randomUUID()}.part`;
    await symlink(join(root, kept), join(root, link));
    await save();
    expect((await readdir(root)).sort()).toEqual([link, 'a.json', kept].sort());
  });

  it('that fails removes nothing', async () => {
    const part = await old(`.${randomUUID()}.part`, 1000);
    await writeFile(join(root, 'a.json'), 'kept');
    expect(await save()).toBe(false);
    expect((await readdir(root)).sort()).toEqual([part, 'a.json'].sort());
  });
});
