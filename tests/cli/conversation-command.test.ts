import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { adviceSchema } from '../../src/advice/advice-schema.ts';
import { readRecord } from '../../src/record/read-record.ts';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-talk-'));
afterAll(() => rmSync(folder, { recursive: true }));

const talk = (lines: readonly string[], ...args: string[]) =>
  runProgram(args, {
    stdin: lines.map((line) => `${line}\n`).join(''),
    cwd: folder,
    env: { CLADWRIGHT_HOME: join(folder, 'home') },
  });

// Nearly everything is left to assume here, and each assumption is tried the other way round.
describe('the program without a command, on pipes', { timeout: 60_000 }, () => {
  it('hold the plain conversation, and come to the same answer as a scenario file', async () => {
    const { code, stdout, stderr } = await talk(['5B', 'cement stucco'], '--save', 'records');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const asked = stdout.indexOf('Where does the wall stand?');
    expect(asked).toBeGreaterThan(-1);
    expect(stdout.indexOf('climate zone 5B')).toBeGreaterThan(asked);
    expect(stdout).toContain('First choice');
    // Neither erase codes nor colour: the drawing library was not at work.
    expect(stdout).not.toContain('\u001b');
    // A script leaves no draft behind.
    expect(readdirSync(folder)).not.toContain('home');

    const [json = ''] = readdirSync(join(folder, 'records')).filter((name) => name.endsWith('.json'));
    const { record } = await readRecord(join(folder, 'records', json));
    expect(record.scenario.place).toEqual({ climate_zone: '5B' });
    expect(record.scenario.finish).toBe('cement-stucco');
    const advised = await runProgram(['advise', '-', '--json'], { stdin: JSON.stringify(record.scenario) });
    expect(adviceSchema.parse(JSON.parse(advised.stdout))).toEqual(record.advice);
  });

  it('ends with 1 when no wall passes', async () => {
    const { code, stdout } = await talk(['5B', 'budget is $10 a square foot']);
    expect(stdout).toContain('No wall passes');
    expect(code).toBe(1);
  });

  it('ends with 2 when the input ends without a place, with --plain as without', async () => {
    const [bare, plain] = await Promise.all([talk([]), talk([], '--plain')]);
    expect(bare.code).toBe(2);
    expect(bare.stderr).toMatch(/^cladwright: place: \(nothing\) is not accepted\. Give a county/);
    expect(plain).toEqual(bare);
  });

  it('keeps to ASCII with --ascii', async () => {
    const [plain, ascii] = await Promise.all([talk([]), talk([], '--ascii', '--no-colour')]);
    expect(plain.stdout).toMatch(/[^\n -~]/);
    expect(ascii.stdout).toMatch(/^[\n -~]+$/);
  });

  it('looks at house rules before the first question', async () => {
    const { code, stdout, stderr } = await talk(['5B'], '--house-rules', 'none.json');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('none.json');
  });
});
