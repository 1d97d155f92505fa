import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, describe, expect, it } from 'vitest';
import { changesSchema } from '../../src/firm/changes-schema.ts';
import { builtEntry } from './built-program.ts';
import { SCENARIO } from './example-inputs.ts';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-changes-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FULL = { ...SCENARIO, interior_vapour_retarder: 'class-ii' };

/** A folder below the test's own with these files in it. */
function projects(name: string, files: Readonly<Record<string, object | string>>): string {
  for (const [file, content] of Object.entries(files)) {
    const path = join(folder, name, file);
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  }
  return name;
}

const changes = (...args: string[]) => runProgram(['changes', ...args], { cwd: folder });
const TWO = projects('two', {
  'b.json': { ...FULL, name: 'Second' },
  'below/a.json': { ...FULL, name: 'First', finish: 'any' },
  'notes.txt': 'not a project',
  '.hidden.json': 'not a project either',
});

describe('changes', () => {
  it('ends with 0 where nothing changes, with every project below the folder in the order of its path', async () => {
    const { code, stdout, stderr } = await changes(
      TWO,
      '--from-edition',
      '2021',
      '--to-edition',
      '2021',
      '--json',
    );
    expect(code).toBe(0);
    expect(stderr).toMatch(/^(?:\d+ of 4 judgements, about .* left\n)*$/);
    const report = changesSchema.parse(JSON.parse(stdout));
    expect(report.projects.map(({ file, outcome }) => [file, outcome])).toEqual([
      [join('two', 'b.json'), 'same'],
      [join('two', 'below', 'a.json'), 'same'],
    ]);
    expect(report.decisions_changed).toBe(0);
  });

  it('ends with 1 where a house rule changes a decision, and names the rule', async () => {
    const rules = projects('rules', {
      'foam.rules.json': {
        schema: 'cladwright-rules/1',
        pack: 'house-no-foam',
        version: '2.0.0',
        concern: 'buildability',
        rules: [
          {
            id: 'house.no-foam',
            title: 'The firm takes no foam',
            editions: ['2018', '2021', '2024'],
            conditions: { all: [{ fact: 'insulation.is_foam_plastic', operator: 'equal', value: true }] },
            verdict: 'forbid',
            reason: 'The firm takes no foam any more.',
            remedy: 'Mineral wool.',
            citation: { text: 'invented for a test', provenance: 'proposal' },
            examples: {
              fires: [{ name: 'foam', facts: { 'insulation.is_foam_plastic': true } }],
              silent: [{ name: 'wool', facts: { 'insulation.is_foam_plastic': false } }],
            },
          },
        ],
      },
    });
    const file = join(rules, 'foam.rules.json');
    const { code, stdout } = await changes(join(TWO, 'b.json'), '--as', 'csv', '--to-house', file);
    expect(code).toBe(1);
    const [row] = parse(stdout, { columns: true }) as Record<string, string>[];
    expect(row).toMatchObject({
      name: 'Second',
      outcome: 'other-wall',
      rules: expect.stringContaining('house.no-foam'),
    });
    const both = await changes(join(TWO, 'b.json'), '--to-edition', '2021', '--house-rules', file, '--json');
    expect(both.code).toBe(0);
    const report = changesSchema.parse(JSON.parse(both.stdout));
    for (const side of [report.from, report.to]) expect(side.label).toContain('house-no-foam 2.0.0');
  });
});

describe('a folder of changes', () => {
  it('may hold house rules and hidden folders beside its projects', async () => {
    const beside = projects('beside', {
      'a.json': { ...FULL, name: 'Alone' },
      'house.rules.json': { schema: 'cladwright-rules/1' },
      '.kept-back/b.json': '{',
    });
    const { code, stdout, stderr } = await changes(beside, '--to-edition', '2021', '--json');
    const report = changesSchema.parse(JSON.parse(stdout));
    expect({ code, names: report.projects.map(({ name }) => name) }).toEqual({ code: 0, names: ['Alone'] });
    expect(stderr).toContain(`Passed over, no scenarios: ${join('beside', 'house.rules.json')}.`);
  });
});

describe('changes refuses', () => {
  const COMPARE = ['--from-edition', '2018', '--to-edition', '2024'];

  it.each([
    ['no path', COMPARE, /PATH: \(nothing\)/],
    ['nothing to compare', [TWO], /changes: \(nothing\).*--from-edition 2018/],
    ['an unknown edition', [TWO, '--from-edition', '2015'], /--from-edition: "2015"/],
    ['a missing folder', ['none', ...COMPARE], /PATH: "none".*no such file/],
    ['a missing rules file', [TWO, '--to-house', 'none.json'], /none\.json.*no such file/],
    ['an unknown form', [TWO, ...COMPARE, '--as', 'xml'], /--as: "xml"/],
  ])('%s', async (_, args, message) => {
    const ended = await changes(...args);
    expect(ended.stderr).toMatch(message);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
  });

  it('an empty folder', async () => {
    mkdirSync(join(folder, 'empty'));
    const ended = await changes('empty', ...COMPARE);
    expect(ended.stderr).toMatch(/PATH: "empty".*has none/);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
  });

  it('a folder of other things, and a named file of house rules', async () => {
    const others = projects('others', { 'house.rules.json': { schema: 'cladwright-rules/1' } });
    for (const path of [others, join(others, 'house.rules.json')]) {
      expect(await changes(path, ...COMPARE)).toMatchObject({ code: 2, stdout: '' });
    }
  });

  it('every file that is no scenario, each by its name, and writes nothing', async () => {
    const broken = projects('broken', {
      'a.json': FULL,
      'b.json': '{"schema": ',
      'c.json': { ...FULL, name: 'Later', schema: 'cladwright-scenario/2' },
      'd.json': { ...FULL, name: 'Odd', wall_area_ft2: -1 },
    });
    const ended = await changes(broken, ...COMPARE, '--save', 'never');
    expect(ended.stderr).toMatch(/broken[/\\]b\.json, line 1/);
    expect(ended.stderr).toMatch(/broken[/\\]c\.json: schema: "cladwright-scenario\/2"/);
    expect(ended.stderr).toMatch(/broken[/\\]d\.json: wall_area_ft2: -1/);
    expect(ended.stderr).not.toContain('a.json');
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(readdirSync(folder)).not.toContain('never');
  });

  it('the same project twice: by name, by content, by another way to the same file', async () => {
    const { name: _, ...nameless } = FULL;
    const twice = projects('twice', {
      'a.json': { ...FULL, name: 'Mill wall' },
      'b.json': { ...FULL, name: ' mill WALL', finish: 'any' },
      'c.json': nameless,
      'd.json': nameless,
      'e.json': { ...FULL, name: 'Own' },
    });
    symlinkSync(join(folder, twice, 'e.json'), join(folder, twice, 'f.json'));
    const ended = await changes(twice, ...COMPARE);
    for (const [second, first] of ['ba', 'dc', 'fe'].map((pair) => [...pair]))
      expect(ended.stderr).toMatch(
        new RegExp(`twice.${second}\\.json: .*the same project as .*twice.${first}\\.json`),
      );
    expect(ended.code).toBe(2);
  });
});

describe('an interrupt', () => {
  it('ends the work with 130 and leaves nothing behind', async () => {
    const entry = await builtEntry();
    const dir = join(folder, 'interrupted');
    const child = spawn(
      process.execPath,
      // Some hundred cells: the first word of progress comes long before the end.
      [
        ...[entry, 'matrix', '-', '--zones', '2A,2B,3A,3B,3C,4A,4B,4C,5A,5B,6A,6B'],
        ...['--framings', 'wood-3.5-16,wood-5.5-16,wood-5.5-24,steel-6-16', '--finishes', 'stucco-look,any'],
        ...['--budgets', '10,20,30,40', '--save', dir],
      ],
      { cwd: folder },
    );
    let out = '';
    child.stdout.on('data', (chunk) => {
      out += String(chunk);
    });
    child.stderr.once('data', () => child.kill('SIGINT'));
    child.stdin.end(JSON.stringify(FULL));
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect({ code, out }).toEqual({ code: 130, out: '' });
    expect(readdirSync(folder)).not.toContain('interrupted');
  });
});
