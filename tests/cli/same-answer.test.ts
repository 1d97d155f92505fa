import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { afterAll, describe, expect, it } from 'vitest';
import { adviceSchema } from '../../src/advice/advice-schema.ts';
import { readRecord } from '../../src/record/read-record.ts';
import { until } from '../terminal/screen.ts';
import { builtEntry } from './built-program.ts';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-same-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FACTS = [
  'zone 6B, retrofit, 2x6 at 24, OSB, R-19, kraft, one 36x60 in. fixed triple, flanged, 150 lb and nothing else',
  'openings are fixed, true stucco, $30 a foot, stucco crew, exposure B, 115 mph, 20 ft to the roof',
  'call it Two Ends',
];

async function recordIn(dir: string) {
  const [json = ''] = readdirSync(dir).filter((name) => name.endsWith('.json'));
  return (await readRecord(join(dir, json))).record;
}

/** The facts typed into the terminal UI, the record saved. */
async function throughTheTerminal(dir: string): Promise<number> {
  const { CI: _, ...env } = process.env;
  const pty = spawn(process.execPath, [await builtEntry(), '--save', dir], {
    cols: 120,
    rows: 40,
    cwd: folder,
    env: { ...env, NO_COLOR: '1', TERM: 'xterm-256color', CLADWRIGHT_HOME: join(folder, 'home') },
  });
  let shown = '';
  pty.onData((text) => {
    shown += text;
  });
  const ended = new Promise<number>((resolve) => pty.onExit(({ exitCode }) => resolve(exitCode)));
  const sees = (words: string) => until(`the terminal shows ${words}`, () => shown.includes(words), 60_000);
  await sees('Where does the wall stand?');
  for (const [i, line] of FACTS.entries()) {
    shown = '';
    pty.write(line);
    await sees(line.slice(-8));
    pty.write('\r');
    await sees(i === 2 ? 'Noted. Name: Two Ends.' : 'Noted [');
  }
  pty.write('done\r');
  await sees('The record is saved.');
  pty.write('finish\r');
  return ended;
}

describe('the same facts', () => {
  it('come to the same record through the terminal, through a pipe, and through advise', {
    timeout: 180_000,
  }, async () => {
    const ended = await throughTheTerminal(join(folder, 'terminal'));
    const piped = await runProgram(['--save', join(folder, 'pipe')], {
      stdin: FACTS.map((line) => `${line}\n`).join(''),
      cwd: folder,
    });
    expect({ ended, piped: piped.code }).toEqual({ ended: 0, piped: 0 });
    const [terminal, pipe] = [await recordIn(join(folder, 'terminal')), await recordIn(join(folder, 'pipe'))];
    expect(terminal.scenario).toEqual(pipe.scenario);
    expect(terminal.scenario).toMatchObject({
      name: 'Two Ends',
      place: { climate_zone: '6B' },
      framing: { material: 'wood', depth_in: 5.5, spacing_in: 24 },
      windows: [{ count: 1, glazing: 'triple', weight_lb: 150 }],
      crew_skill: 'stucco-experienced',
    });
    expect(terminal.advice).toEqual(pipe.advice);
    const advised = await runProgram(['advise', '-', '--json'], { stdin: JSON.stringify(pipe.scenario) });
    expect(adviceSchema.parse(JSON.parse(advised.stdout))).toEqual(pipe.advice);
  });
});
