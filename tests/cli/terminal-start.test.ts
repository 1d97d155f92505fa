import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { afterAll, describe, expect, it } from 'vitest';
import { until } from '../terminal/screen.ts';
import { builtEntry } from './built-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-pty-'));
afterAll(() => rmSync(folder, { recursive: true }));

const CTRL_C = '\u0003';
/** Colours, foreground and background, as terminals are told them. */
const COLOUR = /\u001b\[(?:3[0-7]|4[0-7]|9[0-7]|38|48)[;0-9]*m/;
/** What only the terminal UI asks of a terminal: to mark what is pasted. */
const PASTE_MARKS = '\u001b[?2004h';

/** Starts the program in a pseudo-terminal, waits for its first question, interrupts it. */
async function askedAndInterrupted(args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const kept = Object.fromEntries(
    Object.entries(process.env).filter(([key]) => !['NO_COLOR', 'FORCE_COLOR', 'CI'].includes(key)),
  );
  const pty = spawn(process.execPath, [await builtEntry(), ...args], {
    cols: 90,
    rows: 40,
    cwd: folder,
    env: { ...kept, TERM: 'xterm-256color', CLADWRIGHT_HOME: join(folder, 'home'), ...env },
  });
  let shown = '';
  let isInterrupted = false;
  pty.onData((text) => {
    shown += text;
    if (isInterrupted || !shown.includes('Where does the wall stand?')) return;
    isInterrupted = true;
    // After the frame that has the question, so that the program listens.
    setTimeout(() => pty.write(CTRL_C), 200);
  });
  const exitCode = await new Promise<number>((resolve) => {
    pty.onExit((exit) => resolve(exit.exitCode));
  });
  return { shown, exitCode };
}

describe('the program without a command, in a terminal', () => {
  it('draws the terminal UI in colour and ends with 130 on Ctrl-C', async () => {
    const { shown, exitCode } = await askedAndInterrupted([]);
    expect(shown).toContain(PASTE_MARKS);
    expect(shown).toMatch(COLOUR);
    expect(exitCode).toBe(130);
  });

  it.each([
    ['--no-colour', ['--no-colour'], {}],
    ['--no-color', ['--no-color'], {}],
    ['NO_COLOR', [], { NO_COLOR: '1' }],
    ['--no-colour against FORCE_COLOR', ['--no-colour'], { FORCE_COLOR: '3' }],
  ])('draws it without colour under %s', async (_, args, env) => {
    const { shown } = await askedAndInterrupted(args, env);
    expect(shown).toContain(PASTE_MARKS);
    expect(shown).not.toMatch(COLOUR);
  });

  it.each([
    ['--plain', ['--plain'], {}],
    ['a terminal that can draw nothing', [], { TERM: 'dumb' }],
  ])('keeps to plain lines under %s, and ends with 130 on Ctrl-C', async (_, args, env) => {
    const { shown, exitCode } = await askedAndInterrupted(args, env);
    expect(shown).not.toContain('\u001b');
    expect(exitCode).toBe(130);
  });
});

describe('plain lines at a keyboard', () => {
  it('weigh what to ask next, stop long work on Ctrl-C and leave on the next one', {
    timeout: 120_000,
  }, async () => {
    const { CI: _, ...env } = process.env;
    const pty = spawn(process.execPath, [await builtEntry(), '--plain'], {
      cols: 90,
      rows: 40,
      cwd: folder,
      env: { ...env, TERM: 'xterm-256color', CLADWRIGHT_HOME: join(folder, 'plain-home') },
    });
    let shown = '';
    pty.onData((text) => {
      shown += text;
    });
    const ended = new Promise<number>((resolve) => pty.onExit(({ exitCode }) => resolve(exitCode)));
    const sees = (words: string) => until(`the terminal shows ${words}`, () => shown.includes(words), 60_000);
    await sees('Where does the wall stand?');
    pty.write('zone 6B, new\r');
    await sees('It may still change the first choice.');
    pty.write('done\r');
    await sees('Ctrl-C stops it.');
    pty.write(CTRL_C);
    await sees('Stopped. Nothing is lost');
    pty.write(CTRL_C);
    expect(await ended).toBe(130);
  });
});
