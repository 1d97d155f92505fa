import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import stringWidth from 'string-width';
import { afterAll, describe, expect, it } from 'vitest';
import { matrixSchema } from '../../src/firm/matrix-schema.ts';
import { checkHtml } from '../record/html-check.ts';
import { SCENARIO } from './example-inputs.ts';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-matrix-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FULL = JSON.stringify({ ...SCENARIO, interior_vapour_retarder: 'class-ii' });
const SMALL = ['--zones', '4c,6A', '--framings', 'wood-5.5-16'];

function matrix(...args: string[]) {
  return runProgram(['matrix', '-', ...args], { stdin: FULL, cwd: folder });
}

describe('matrix', () => {
  it('answers as text of at most 80 columns, with 0 and nothing on standard error but progress', async () => {
    const { code, stdout, stderr } = await matrix(...SMALL);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^(?:\d+ of 2 cells, about .* left\n)*$/);
    expect(Math.max(...stdout.split('\n').map((line) => stringWidth(line)))).toBeLessThanOrEqual(80);
    expect(stdout).toMatch(/(?:One|Two) assembl(?:y|ies) covers? 2 of 2 cells \(100 %\)\./);
    expect(stdout).toContain('Proved smallest');
  });

  it('gives the same as JSON, CSV and page, and saves all four without touching standard output', async () => {
    const dir = join(folder, 'reports');
    const [json, csv] = await Promise.all([
      matrix(...SMALL, '--json', '--save', dir),
      matrix(...SMALL, '--as', 'csv'),
    ]);
    expect([json.code, csv.code]).toEqual([0, 0]);
    const report = matrixSchema.parse(JSON.parse(json.stdout));
    expect(report.cells.map(({ place }) => place)).toEqual(['4C', '6A']);
    const rows: Record<string, string>[] = parse(csv.stdout, { columns: true });
    expect(rows.map(({ standard_letter }) => standard_letter)).toEqual(
      report.cells.map(({ standard }) => standard?.assembly),
    );
    const names = ['csv', 'html', 'json', 'md'].map((end) => `quarry-lane-duplex-north-wall-matrix.${end}`);
    expect(readdirSync(dir).sort()).toEqual(names);
    expect(json.stderr).toContain(`saved ${join(dir, names[2] ?? '')}`);
    expect(readFileSync(join(dir, names[2] ?? ''), 'utf8')).toBe(json.stdout);
    expect(readFileSync(join(dir, names[0] ?? ''), 'utf8')).toBe(csv.stdout);
    expect(checkHtml(readFileSync(join(dir, names[1] ?? ''), 'utf8')).length).toBeGreaterThan(50);
  });

  it('ends with 1 when there is a cell where nothing passes, and says what comes closest', async () => {
    const { code, stdout } = await matrix('--zones', '5B', '--budgets', '1,none', '--as', 'markdown');
    expect(code).toBe(1);
    expect(stdout).toContain('In 1 cell nothing passes.');
    expect(stdout).toMatch(/## Where nothing passes[\s\S]*Closest: [\s\S]*budget\.over-at-the-low-end/);
  });

  it('keeps to ASCII when asked to', async () => {
    const { stdout, code } = await matrix('--ascii');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^[\n -~]+$/);
  });
});

describe('matrix refuses', () => {
  it.each([
    ['no file', [], /FILE: \(nothing\)/],
    ['a missing file', ['none.json'], /FILE: "none\.json".*no such file/],
    ['an unknown zone', ['-', '--zones', '4C,9X'], /--zones: "9X".*Give any of 0A, 0B/],
    ['an empty zone', ['-', '--zones', '4C,'], /--zones: "4C,".*none empty/],
    ['the same zone twice', ['-', '--zones', '4C,4c'], /--zones: "4C".*stands twice/],
    ['a zone that there is not, without a guess', ['-', '--zones', '9Z'], /--zones: "9Z"[^?]*$/],
    ['an unknown framing', ['-', '--framings', 'straw-5.5-16'], /--framings: "straw-5\.5-16".*wood-5\.5-16/],
    ['steel that is not tabulated', ['-', '--framings', 'steel-5-16'], /cell .*steel 5 at 16.*depth/],
    [
      'an unknown finish',
      ['-', '--finishes', 'stuco-look'],
      /--finishes: "stuco-look".*Did you mean "stucco-look"\?/,
    ],
    ['a budget in words', ['-', '--budgets', 'cheap'], /--budgets: "cheap".*1 to 1000/],
    ['a negative budget', ['-', '--budgets=-5'], /--budgets: "-5"/],
    ['a reach above the scale', ['-', '--within', '0.6'], /--within: 0\.6.*0 to 0\.5/],
    ['an unknown edition', ['-', '--edition', '2015'], /--edition: "2015".*2018, 2021, 2024/],
    ['an unknown form', ['-', '--as', 'pdf'], /--as: "pdf".*text, markdown, csv, html, json/],
    ['two forms', ['-', '--as', 'csv', '--json'], /--as: "csv".*not both/],
    ['an empty folder name', ['-', '--save', ''], /--save: ""/],
    ['two files', ['-', 'b.json'], /"b\.json"/],
    ['missing house rules', ['-', '--house-rules', 'none.rules.json'], /none\.rules\.json/],
  ])('%s', async (_, args, message) => {
    const ended = await runProgram(['matrix', ...args], { stdin: FULL, cwd: folder });
    expect(ended.stderr).toMatch(message);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
  });

  it.each([
    ['broken JSON', '{"schema": "cladwright-firm/1",', /firm\.json, line 1, column \d+/],
    ['another schema', '{"schema": "cladwright-firm/2"}', /firm\.json: schema: "cladwright-firm\/2"/],
    [
      'a firm without places',
      '{"schema": "cladwright-firm/1", "name": "x"}',
      /firm\.json: places: \(nothing\)/,
    ],
  ])('a file with %s, and writes nothing', async (_, content, message) => {
    writeFileSync(join(folder, 'firm.json'), content);
    const ended = await runProgram(['matrix', 'firm.json', '--save', 'never'], { cwd: folder });
    expect(ended.stderr).toMatch(message);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(readdirSync(folder)).not.toContain('never');
  });
});
