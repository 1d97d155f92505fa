import { mkdir, mkdtemp, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeFolder } from '../../src/record/make-folder.ts';

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'cladwright-folder-'));
});
afterEach(async () => {
  await rm(root, { recursive: true, force: true });
});

const isFolder = async (path: string) => (await stat(path)).isDirectory();

describe('makeFolder', () => {
  it('makes a folder with those above it, and takes back no more than it made', async () => {
    await mkdir(join(root, 'there'));
    const dir = join(root, 'there', 'a', 'b');
    const undo = await makeFolder(dir);
    expect(await isFolder(dir)).toBe(true);
    await undo();
    expect(await readdir(root)).toEqual(['there']);
    expect(await readdir(join(root, 'there'))).toEqual([]);
  });

  it('leaves a folder that was there alone, and one that holds something by now', async () => {
    await (await makeFolder(root))();
    expect(await isFolder(root)).toBe(true);
    const undo = await makeFolder(join(root, 'a', 'b'));
    await writeFile(join(root, 'a', 'kept'), '');
    await undo();
    expect(await readdir(join(root, 'a'))).toEqual(['kept']);
  });

  it('gets along with others that make the same folder at the same time', async () => {
    const dir = join(root, 'a', 'b', 'c', 'd');
    await Promise.all(Array.from({ length: 16 }, () => makeFolder(dir)));
    expect(await isFolder(dir)).toBe(true);
  });

  it('refuses a file in the way, at the end and on the way', async () => {
    const file = join(root, 'file');
    await writeFile(file, '');
    await expect(makeFolder(file)).rejects.toMatchObject({ code: 'ENOTDIR' });
    await expect(makeFolder(join(file, 'a', 'b'))).rejects.toMatchObject({ code: 'ENOTDIR' });
  });

  it('leaves nothing behind when a level fails', async () => {
    const tooLong = 'x'.repeat(300);
    await expect(makeFolder(join(root, 'a', tooLong))).rejects.toMatchObject({ code: 'ENAMETOOLONG' });
    await expect(makeFolder(join(root, 'a', 'b\0c'))).rejects.toThrow();
    expect(await readdir(root)).toEqual([]);
  });

  it.runIf(process.platform === 'linux')(
    'ends where the file system makes no folder and says that there is none',
    async () => {
      await expect(makeFolder('/proc/nope')).rejects.toMatchObject({ code: 'ENOENT' });
      await expect(makeFolder('/proc/nope/a/b')).rejects.toMatchObject({ code: 'ENOENT' });
    },
  );
});
