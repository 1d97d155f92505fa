import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-records-'));
const records = join(folder, 'records');
const check = (...args: string[]) => runProgram(['record', 'check', ...args]);

beforeAll(async () => {
  await runProgram(['advise', 'scenarios/marine-new.json', '--save', records]);
  const whole = readFileSync(join(records, 'tideflat-duplex.json'), 'utf8');
  writeFileSync(join(records, 'altered.json'), whole.replace('"u_factor": 0.0', '"u_factor": 0.1'));
  writeFileSync(join(records, 'cut.json'), whole.slice(0, 2000));
  writeFileSync(join(records, 'notes.json'), '{}');
  mkdirSync(join(records, '.kept-back'));
  writeFileSync(join(records, '.kept-back', 'torn.json'), '{');
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true }));

describe('record check of a folder', () => {
  it('lists by what came of it what holds, what was altered and what can’t be read, within 80 columns', async () => {
    const { code, stdout } = await check(records);
    const lines = stdout.split('\n');
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
    const place = (text: string) => lines.findIndex((line) => line.startsWith(text));
    const places = ['Altered', 'Can’t be read (1)', 'Still the same decision (1)', '3 records: '].map(place);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
    expect(stdout).toContain('1 file passed over');
    expect(stdout).not.toContain('digest and all');
    expect(code).toBe(1);
  }, 60_000);

  it('counts every record once, an altered one as altered only', async () => {
    const { stdout } = await check(records);
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      '3 records: 1 the same, 0 with changed figures, 0 decided differently today, 1 altered, 1 unreadable.',
    );
    const { summary } = JSON.parse((await check(records, '--json')).stdout);
    expect(summary).toEqual({
      records: 3,
      hold: 1,
      same: 1,
      figures_changed: 0,
      different_decision: 0,
      altered: 1,
      unreadable: 1,
      passed_over: 1,
    });
  }, 60_000);

  it('takes a named file that is not there for a slip, whatever else is named', async () => {
    const ended = await check(records, join(folder, 'none.json'));
    expect(ended).toMatchObject({ code: 2, stdout: '' });
    expect(ended.stderr).toMatch(/none\.json.*no such file/);
  });
});
