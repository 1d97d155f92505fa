import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ROOT, runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-rules-'));
afterAll(() => rmSync(folder, { recursive: true }));

function housePack(changes: object): string {
  const path = join(folder, 'house.json');
  const rule = {
    id: 'house.windy',
    title: 'Windy site',
    editions: ['2021'],
    conditions: { all: [{ fact: 'site.exposure', operator: 'equal', value: 'D' }] },
    verdict: 'caution',
    reason: 'The site lies by open water.',
    remedy: 'Ask the firm.',
    citation: { text: 'invented for a test', provenance: 'proposal' },
    examples: {
      fires: [{ name: 'open water', facts: { 'site.exposure': 'D' } }],
      silent: [{ name: 'wooded', facts: { 'site.exposure': 'B' } }],
    },
    ...changes,
  };
  writeFileSync(
    path,
    JSON.stringify({
      schema: 'cladwright-rules/1',
      pack: 'house-test',
      version: '1.0.0',
      concern: 'structure',
      rules: [rule],
    }),
  );
  return path;
}

const rowsSchema = z.array(
  z.strictObject({
    id: z.string(),
    title: z.string(),
    concern: z.string(),
    pack: z.string(),
    house: z.boolean(),
    verdict: z.string(),
    editions: z.array(z.string()).min(1),
    citation: z.string().min(3),
    provenance: z.string(),
  }),
);

describe('rules check', () => {
  it('counts the shipped rules and finds no problem', async () => {
    const { code, stdout, stderr } = await runProgram(['rules', 'check']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^\d+ packs, \d+ rules over \d+ facts, \d+ examples: no problem found\.\n$/);
  });

  it('counts a house pack with the shipped ones', async () => {
    const plain = await runProgram(['rules', 'check']);
    const house = await runProgram(['rules', 'check', '--house-rules', housePack({})]);
    const rules = (text: string) => Number(/(\d+) rules/.exec(text)?.[1]);
    expect(rules(house.stdout)).toBe(rules(plain.stdout) + 1);
  });

  it('ends with 2 on a pack that does not load, naming file, rule and place', async () => {
    const path = housePack({
      conditions: { all: [{ fact: 'site.exposur', operator: 'equal', value: 'D' }] },
    });
    const ended = await runProgram(['rules', 'check', '--house-rules', path]);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(ended.stderr).toContain(path);
    expect(ended.stderr).toMatch(/house\.windy.*site\.exposur.*site\.exposure/);
  });

  it('ends with 2 on a rule that its own example contradicts', async () => {
    const path = housePack({
      examples: {
        fires: [{ name: 'open water', facts: { 'site.exposure': 'D' } }],
        silent: [{ name: 'D too', facts: { 'site.exposure': 'D' } }],
      },
    });
    const ended = await runProgram(['rules', 'check', '--house-rules', path]);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(ended.stderr).toMatch(/house\.windy.*"D too" stands under "silent", but it fires/);
  });
});

describe('rules list', () => {
  it('lists every rule of the packs as JSON, sorted by id', async () => {
    const { code, stdout } = await runProgram(['rules', 'list', '--json']);
    expect(code).toBe(0);
    const ids = rowsSchema.parse(JSON.parse(stdout)).map(({ id }) => id);
    expect(ids).toEqual([...ids].sort());
    const shipped = readFileSync(join(ROOT, 'rules/budget/cost.rules.json'), 'utf8');
    for (const [, id] of shipped.matchAll(/"id": "([^"]+)"/g)) expect(ids).toContain(id);
  });

  it('lists the same rules as a table whose columns line up', async () => {
    const [table, json] = await Promise.all([
      runProgram(['rules', 'list']),
      runProgram(['rules', 'list', '--json']),
    ]);
    const rows = rowsSchema.parse(JSON.parse(json.stdout));
    const [head = '', ...lines] = table.stdout.trimEnd().split('\n');
    expect(head).toMatch(/^rule +verdict +editions +provenance +citation$/);
    expect(lines).toHaveLength(rows.length);
    lines.forEach((line, i) => {
      expect(line.startsWith(`${rows[i]?.id} `)).toBe(true);
      expect(line.slice(head.indexOf('verdict')).startsWith(`${rows[i]?.verdict} `)).toBe(true);
      expect(line.slice(head.indexOf('citation'))).toBe(rows[i]?.citation);
    });
  });
});

describe('rules explain', () => {
  it('explains a rule', async () => {
    const { code, stdout } = await runProgram(['rules', 'explain', 'budget.likely-over']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^budget\.likely-over: /);
    expect(stdout).toContain('common practice, no source');
    expect(stdout).toContain('What to do');
  });

  it('refuses an unknown id with near ones, and none', async () => {
    const unknown = await runProgram(['rules', 'explain', 'budget.likly-over']);
    expect({ code: unknown.code, stdout: unknown.stdout }).toEqual({ code: 2, stdout: '' });
    expect(unknown.stderr).toContain('Did you mean "budget.likely-over"');
    const none = await runProgram(['rules', 'explain']);
    expect({ code: none.code, stdout: none.stdout }).toEqual({ code: 2, stdout: '' });
    expect(none.stderr).toContain('ID: (nothing)');
  });
});
