import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { saveReport } from '../../src/firm/save-report.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-report-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FILES = (['json', 'md', 'csv', 'html'] as const).map((end) => ({ end, text: `${end} text\n` }));

describe('saveReport', () => {
  it('writes every form under one safe name, and a new revision the next time', async () => {
    const dir = join(folder, 'deep', 'reports');
    const first = await saveReport(dir, '../Quoin & Söhne', 'matrix', FILES);
    expect(first).toEqual(['json', 'md', 'csv', 'html'].map((end) => join(dir, `quoin-sohne-matrix.${end}`)));
    const second = await saveReport(dir, '../Quoin & Söhne', 'matrix', FILES.slice(0, 1));
    expect(second).toEqual([join(dir, 'quoin-sohne-matrix-r2.json')]);
    expect(readdirSync(dir)).toHaveLength(5);
    expect(readFileSync(join(dir, 'quoin-sohne-matrix.csv'), 'utf8')).toBe('csv text\n');
  });

  it('refuses a folder that is a file, and leaves nothing behind', async () => {
    const file = join(folder, 'taken');
    writeFileSync(file, 'mine');
    await expect(saveReport(file, 'x', 'matrix', FILES)).rejects.toThrow(
      /--save: .*taken.*file where a folder/,
    );
    await expect(saveReport(join(file, 'below'), 'x', 'matrix', FILES)).rejects.toThrow(/--save/);
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });
});
