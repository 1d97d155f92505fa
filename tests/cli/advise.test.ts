import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import stringWidth from 'string-width';
import { afterAll, describe, expect, it } from 'vitest';
import { adviceSchema } from '../../src/advice/advice-schema.ts';
import { SCENARIO } from './example-inputs.ts';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-advise-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Nothing is left to assume, which makes the answer quick. */
const FULL = { ...SCENARIO, interior_vapour_retarder: 'class-ii' };

function advise(scenario: object, ...args: string[]) {
  return runProgram(['advise', '-', ...args], { stdin: JSON.stringify(scenario) });
}

function file(name: string, content: object | string): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

describe('advise', () => {
  it('answers a scenario file as one JSON document of its own schema, with 0', async () => {
    const { code, stdout, stderr } = await runProgram(['advise', file('quarry.json', FULL), '--json']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const advice = adviceSchema.parse(JSON.parse(stdout));
    expect(advice.site.climate_zone).toBe('5B');
    expect(advice.name).toBe(FULL.name);
    expect(advice.ranked.map(({ rank }) => rank)).toEqual([1, 2, 3]);
  });

  it('says the same as text, in lines of at most 80 columns without control characters', async () => {
    const [asText, asJson] = await Promise.all([advise(FULL), advise(FULL, '--json')]);
    expect(asText.code).toBe(0);
    const [first] = adviceSchema.parse(JSON.parse(asJson.stdout)).ranked;
    const lines = asText.stdout.split('\n');
    expect(asText.stdout.replaceAll(/\s+/g, ' ')).toContain(first?.title);
    expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeLessThanOrEqual(80);
    expect(asText.stdout.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });

  it('keeps to ASCII when asked to', async () => {
    const { stdout, code } = await advise(FULL, '--ascii');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^[\n -~]+$/);
  });

  it('ends with 1 and an empty ranking when no wall passes', async () => {
    const { code, stdout, stderr } = await advise({ ...FULL, budget_usd_per_ft2: 1 }, '--json');
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
    const advice = adviceSchema.parse(JSON.parse(stdout));
    expect(advice.ranked).toEqual([]);
    expect(advice.excluded.length).toBeGreaterThan(0);
  });

  it('ranks as many as --top says, by the edition of --edition', async () => {
    const [flag, inFile] = await Promise.all([
      advise(FULL, '--json', '--top', '1', '--edition', '2018'),
      advise({ ...FULL, code_edition: '2018' }, '--json', '--top', '1'),
    ]);
    const advice = adviceSchema.parse(JSON.parse(flag.stdout));
    expect(advice.code_edition).toBe('2018');
    expect(advice.ranked).toHaveLength(1);
    expect(flag.stdout).toBe(inFile.stdout);
  });

  it('lets house rules rule out what the shipped rules admit', async () => {
    const pack = {
      schema: 'cladwright-rules/1',
      pack: 'house-no-plaster',
      version: '1.0.0',
      concern: 'buildability',
      rules: [
        {
          id: 'house.no-plaster',
          title: 'The firm has no plasterer',
          editions: ['2018', '2021', '2024'],
          conditions: { all: [{ fact: 'cladding.is_cement_stucco', operator: 'equal', value: true }] },
          verdict: 'forbid',
          reason: 'The firm has no plasterer just now.',
          remedy: 'Hire a plasterer.',
          citation: { text: 'invented for a test', provenance: 'proposal' },
          examples: {
            fires: [{ name: 'plaster', facts: { 'cladding.is_cement_stucco': true } }],
            silent: [{ name: 'siding', facts: { 'cladding.is_cement_stucco': false } }],
          },
        },
      ],
    };
    const { code, stdout, stderr } = await advise(FULL, '--json', '--house-rules', file('house.json', pack));
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
    const advice = adviceSchema.parse(JSON.parse(stdout));
    expect(advice.rules.packs.map(({ name }) => name)).toContain('house-no-plaster');
    const reasons = advice.excluded.flatMap(({ because }) => because.map(({ rule }) => rule));
    expect(reasons).toContain('house.no-plaster');
  });

  it('saves its files without touching standard output, and a new revision the next time', async () => {
    const dir = join(folder, 'records');
    const first = await advise({ ...FULL, name: 'Mill wall' }, '--json', '--save', dir);
    const before = readFileSync(join(dir, 'mill-wall.json'), 'utf8');
    const second = await advise({ ...FULL, name: 'Mill wall' }, '--json', '--save', dir);
    expect([first.code, second.code]).toEqual([0, 0]);
    expect(first.stdout).toBe(second.stdout);
    expect(first.stderr.trim().split('\n')).toEqual(
      ['json', 'md', 'html', 'build-sheet.md', 'build-sheet.html', 'take-off.csv'].map(
        (end) => `saved ${join(dir, `mill-wall.${end}`)}`,
      ),
    );
    expect(readdirSync(dir)).toHaveLength(12);
    expect(readFileSync(join(dir, 'mill-wall.json'), 'utf8')).toBe(before);
    const shown = await runProgram(['record', 'show', join(dir, 'mill-wall.json')]);
    expect({ code: shown.code, stderr: shown.stderr }).toEqual({ code: 0, stderr: '' });
    expect(shown.stdout).toContain('Decision record: Mill wall');
  });
});

describe('advise refuses', () => {
  it.each([
    ['no scenario', [], /SCENARIO: \(nothing\)/],
    ['a missing file', ['missing.json'], /SCENARIO: "missing\.json".*no such file/],
    ['--top 0', ['-', '--top', '0'], /--top: "0" is not accepted.*1 to 20/],
    ['--top 21', ['-', '--top', '21'], /--top: "21"/],
    ['--top -1', ['-', '--top', '-1'], /--top: "-1"/],
    ['--top 2.5', ['-', '--top', '2.5'], /--top: "2\.5"/],
    ['--top 1e1', ['-', '--top', '1e1'], /--top: "1e1"/],
    ['--top without a number', ['-', '--top'], /--top: \(nothing\)/],
    ['an edition it has no rules for', ['-', '--edition', '2015'], /--edition: "2015".*2018, 2021, 2024/],
    ['an empty folder name', ['-', '--save', ''], /--save: ""/],
    ['an unknown option', ['-', '--jsn'], /option: "--jsn".*Did you mean "--json"\?/],
    ['two scenarios', ['-', 'b.json'], /"b\.json"/],
    ['a missing rules file', ['-', '--house-rules', 'none.json'], /none\.json/],
  ])('%s', async (_, args, message) => {
    const ended = await runProgram(['advise', ...args], { stdin: JSON.stringify(FULL), cwd: folder });
    expect(ended.stderr).toMatch(message);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
  });

  it.each([
    ['another schema', { ...FULL, schema: 'cladwright-scenario/2' }, /schema: "cladwright-scenario\/2"/],
    ['an unknown key', { ...FULL, colour: 'red' }, /colour: "red" is not accepted/],
    ['a number out of range', { ...FULL, wall_area_ft2: -1 }, /wall_area_ft2: -1 .*10 to 1000000/],
    ['a number as text', { ...FULL, mean_roof_height_ft: '22' }, /mean_roof_height_ft: "22"/],
    [
      'an unknown county',
      { ...FULL, place: { state: 'CO', county: 'Bolder' } },
      /place\.county: "Bolder".*Boulder/,
    ],
    ['a fault deep inside', { ...FULL, windows: [{ weight_lb: '18O' }] }, /windows\[0\]\.weight_lb: "18O"/],
    ['a list', [FULL], /is not accepted/],
  ])('%s, and writes nothing', async (_, scenario, message) => {
    const dir = join(folder, 'never');
    const ended = await advise(scenario, '--json', '--save', dir);
    expect(ended.stderr).toMatch(message);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(readdirSync(folder)).not.toContain('never');
  });

  it('a folder that is a file, and leaves it as it was', async () => {
    const taken = file('taken', 'mine');
    const ended = await advise(FULL, '--save', taken);
    expect(ended.stderr).toMatch(/--save: .*There is a file/);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(readFileSync(taken, 'utf8')).toBe('mine');
  });

  it('more than twenty faults with a count of the rest', async () => {
    const ended = await advise({ ...FULL, windows: Array(50).fill({ count: 0 }) });
    expect(ended.stderr.trim().split('\n')).toHaveLength(21);
    expect(ended.stderr).toContain('and 30 more');
  });
});
