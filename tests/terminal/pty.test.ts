import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type IPty, spawn } from '@lydell/node-pty';
import { build } from 'esbuild';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { draftSchema } from '../../src/conversation/draft-schema.ts';
import { until } from './screen.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const BANNER =
  "import { createRequire as bundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = bundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);";

let folder: string;
let entry: string;
let home: string;
let homes = 0;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'cladwright-pty-'));
  entry = join(folder, 'entry.mjs');
  await build({
    entryPoints: [join(ROOT, 'tests/terminal/pty-entry.ts')],
    outfile: entry,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    define: { 'process.env.NODE_ENV': '"production"', __filename: 'bundleFilename' },
    alias: { 'react-devtools-core': join(ROOT, 'src/terminal/no-devtools.ts') },
    banner: { js: BANNER },
    logLevel: 'error',
  });
});
afterAll(() => rm(folder, { recursive: true, force: true }));
beforeEach(() => {
  homes += 1;
  home = join(folder, `home-${homes}`);
});

/** The program in a pseudo-terminal of 80 by 24. */
class PtyTalk {
  readonly #pty: IPty;
  readonly ended: Promise<{ exitCode: number; signal?: number | undefined }>;
  written = '';

  constructor(env: Readonly<Record<string, string>> = {}) {
    this.#pty = spawn(process.execPath, [entry], {
      cols: 80,
      rows: 24,
      cwd: folder,
      // Build machines set CI; people's shells may too. It must make no difference.
      env: { PATH: process.env.PATH, TERM: 'xterm-256color', CLADWRIGHT_HOME: home, CI: 'true', ...env },
    });
    this.#pty.onData((text) => {
      this.written += text;
    });
    this.ended = new Promise((resolve) => this.#pty.onExit(resolve));
  }

  press(keys: string): void {
    this.#pty.write(keys);
  }

  resize(columns: number, rows: number): void {
    this.#pty.resize(columns, rows);
  }

  kill(signal: string): void {
    this.#pty.kill(signal);
  }

  async sees(words: string): Promise<void> {
    try {
      await until(`the terminal shows "${words}"`, () => this.written.includes(words));
    } catch (error) {
      throw new Error(`${error}; it got ${JSON.stringify(this.written.slice(-600))}`);
    }
  }
}

async function keptDraft() {
  return draftSchema.parse(JSON.parse(await readFile(join(home, 'draft.json'), 'utf8')));
}

describe('in a real pseudo-terminal', () => {
  it('Ctrl-C restores the terminal, keeps the answers and exits with 130', async () => {
    const talk = new PtyTalk();
    await talk.sees('Where does the wall stand?');
    talk.press('Boulder, CO\r');
    await talk.sees('Is this a new wall');
    talk.press('retro');
    await talk.sees('retro');
    talk.press('\u0003');
    expect(await talk.ended).toMatchObject({ exitCode: 130 });
    expect((await keptDraft()).answers).toEqual({ place: { state: 'CO', county: 'Boulder' } });
    expect(talk.written.lastIndexOf('\u001b[?25h')).toBeGreaterThan(talk.written.lastIndexOf('\u001b[?25l'));
    expect(talk.written.lastIndexOf('\u001b[?2004l')).toBeGreaterThan(
      talk.written.lastIndexOf('\u001b[?2004h'),
    );
  });

  it('honours NO_COLOR, which the drawing libraries do not', async () => {
    const talk = new PtyTalk({ NO_COLOR: '1', FORCE_COLOR: '3' });
    await talk.sees('Where does the wall stand?');
    talk.press('zone 5B\r');
    await talk.sees('Is this a new wall');
    talk.press('\u0003');
    await talk.ended;
    expect(talk.written).not.toMatch(/\u001b\[[0-9;]*m/);
  });

  it('has colour where the terminal has it', async () => {
    const talk = new PtyTalk();
    await talk.sees('Where does the wall stand?');
    talk.press('\u0003');
    await talk.ended;
    expect(talk.written).toMatch(/\u001b\[33m/);
  });

  it('loses no accepted answer to kill -9, and goes on from there', async () => {
    const killed = new PtyTalk();
    await killed.sees('Where does the wall stand?');
    killed.press('zone 6A\r');
    await killed.sees('Is this a new wall');
    killed.press('new\r');
    await killed.sees('What are the studs');
    killed.kill('SIGKILL');
    await killed.ended;
    expect((await keptDraft()).answers).toEqual({ place: { climate_zone: '6A' }, project: 'new' });

    const next = new PtyTalk();
    await next.sees('was not finished');
    next.press('1\r');
    await next.sees('What are the studs');
    next.press('\u0003');
    expect(await next.ended).toMatchObject({ exitCode: 130 });
  });

  it('rubs out a whole character of several bytes, and takes a bracketed paste as text', async () => {
    const talk = new PtyTalk({ NO_COLOR: '1' });
    await talk.sees('Where does the wall stand?');
    talk.press('zoné');
    await talk.sees('zoné');
    talk.press('\u007f');
    talk.press('\u001b[200~e 5B\r\nnew\r\n\u001b[201~');
    await talk.sees('zone 5B; new');
    talk.press('\r');
    await talk.sees('What are the studs');
    talk.press('\u0003');
    await talk.ended;
  });

  it('goes on after keys that nobody knows, and takes coloured text for text', async () => {
    const talk = new PtyTalk({ NO_COLOR: '1' });
    await talk.sees('Where does the wall stand?');
    for (const key of ['\u001b[1;5P', '\u001b[1;5R', '\u001b[15;5~']) talk.press(key);
    talk.press('\u001b[31mzone\u001b[0m 5B');
    await talk.sees('zone 5B');
    talk.press('\r');
    await talk.sees('climate zone 5B');
    talk.press('\u0003');
    expect((await talk.ended).exitCode).toBe(130);
  });

  it('clears nothing while the window shrinks below the question', async () => {
    const talk = new PtyTalk();
    await talk.sees('Where does the wall stand?');
    talk.press('zone 5B, new, 2x6 at 16\r');
    await talk.sees('6  No sheathing');
    for (const [columns, rows] of [
      [80, 10],
      [70, 5],
      [100, 30],
    ] as const) {
      talk.resize(columns, rows);
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
    talk.press('osb\r');
    await talk.sees('Noted [Sheathing: OSB]');
    talk.press('\u0003');
    await talk.ended;
    expect(talk.written).not.toMatch(/\u001b\[[23]J|\u001bc|\u001b\[\?1049h/);
  });

  it('sleeps on Ctrl-Z with the terminal in order, and goes on where it was when the shell wakes it', async () => {
    const shell = spawn('bash', ['--norc', '--noprofile', '-i'], {
      cols: 80,
      rows: 24,
      cwd: folder,
      env: { PATH: process.env.PATH ?? '', TERM: 'xterm-256color', PS1: '$ ', CLADWRIGHT_HOME: home },
    });
    let written = '';
    shell.onData((text) => {
      written += text;
    });
    const sees = (words: string | RegExp) =>
      until(`the shell shows ${words}; it got ${JSON.stringify(written.slice(-400))}`, () =>
        typeof words === 'string' ? written.includes(words) : words.test(written),
      );
    shell.write(`${process.execPath} ${entry}\r`);
    await sees('Where does the wall stand?');
    shell.write('zone 5');
    await sees(/zone 5/);
    shell.write('\u001a');
    await sees('Stopped');
    written = '';
    shell.write('stty -a\r');
    await sees(/(?<!-)\bicanon\b/);
    expect(written).toMatch(/(?<!-)\becho\b/);
    written = '';
    shell.write('fg\r');
    await sees('zone 5');
    shell.write('B\r');
    await sees('Is this a new wall');
    shell.write('\u0003');
    await sees('Your answers are kept');
    written = '';
    shell.write('echo "ended with $?"\r');
    await sees('ended with 130');
    shell.kill('SIGKILL');
  });

  it('ends with 143 when it is told to stop, with the terminal restored', async () => {
    const talk = new PtyTalk();
    await talk.sees('Where does the wall stand?');
    talk.kill('SIGTERM');
    expect(await talk.ended).toMatchObject({ exitCode: 143 });
    expect(talk.written.lastIndexOf('\u001b[?25h')).toBeGreaterThan(talk.written.lastIndexOf('\u001b[?25l'));
  });
});
