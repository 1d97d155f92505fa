import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readCodeTable } from '../../src/rulebook/code-table.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { refusalOf, rulesFolder } from './invented-rules.ts';

describe('the rules folder', () => {
  it('is found from the sources, from the bundle and from its chunks', async () => {
    const root = await mkdtemp(join(tmpdir(), 'package-'));
    await mkdir(join(root, 'rules'));
    await writeFile(join(root, 'rules', 'facts.json'), '{}');
    for (const module of ['src/rulebook/rules-dir.ts', 'dist/cladwright.js', 'dist/chunks/rules-AB12.js']) {
      expect(findRulesDir(pathToFileURL(join(root, module)).href)).toBe(join(root, 'rules'));
    }
    expect(findRulesDir()).toBe(join(process.cwd(), 'rules'));
  });

  it('is missed with an error, not guessed', () => {
    expect(() => findRulesDir(pathToFileURL(join(tmpdir(), 'nowhere', 'x.js')).href)).toThrow(
      'rules/facts.json',
    );
  });
});

describe('a code table', () => {
  const schema = z.strictObject({ rows: z.array(z.strictObject({ limit_in: z.number('Give inches.') })) });

  it('is read and checked by its own schema', async () => {
    const dir = await rulesFolder({ 'structure/x.table.json': { rows: [{ limit_in: 2 }] } });
    expect(await readCodeTable(dir, 'structure/x.table.json', schema)).toEqual({ rows: [{ limit_in: 2 }] });
  });

  it('is refused with file and path', async () => {
    const dir = await rulesFolder({ 'x.table.json': { rows: [{ limit_in: '2' }] } });
    expect(await refusalOf(readCodeTable(dir, 'x.table.json', schema))).toBe(
      'x.table.json: rows[0].limit_in: "2" is not accepted. Give inches.',
    );
  });

  it.each(['../x.table.json', '/etc/x.table.json', 'facts.json', 'a/../../x.table.json'])(
    'is not read from %s',
    async (path) => {
      const dir = await rulesFolder({});
      expect(await refusalOf(readCodeTable(dir, path, schema))).toMatch(/^table: /);
    },
  );
});
