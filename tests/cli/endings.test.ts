import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { builtEntry, builtFolder } from './built-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-endings-'));
afterAll(() => rmSync(folder, { recursive: true }));

type Ended = { code: number | null; signal: NodeJS.Signals | null; stdout: string; stderr: string };
type Child = ReturnType<typeof start>;

function start(entry: string, args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const child = spawn(process.execPath, [entry, ...args], {
    env: { ...process.env, CLADWRIGHT_DEBUG: '', CLADWRIGHT_HOME: folder, ...env },
  });
  child.stdin.on('error', () => {});
  return child;
}

function ended(child: Child): Promise<Ended> {
  let stdout = '';
  let stderr = '';
  child.stdout.on('data', (chunk) => {
    stdout += String(chunk);
  });
  child.stderr.on('data', (chunk) => {
    stderr += String(chunk);
  });
  return new Promise((resolve) => {
    child.on('close', (code, signal) => resolve({ code, signal, stdout, stderr }));
  });
}

function firstOutput(child: Child): Promise<void> {
  return new Promise((resolve) => {
    child.stdout.once('data', () => resolve());
  });
}

describe('interrupted', () => {
  it('ends with 130 in the plain conversation', async () => {
    const child = start(await builtEntry(), ['--plain']);
    const end = ended(child);
    await firstOutput(child);
    child.kill('SIGINT');
    const { code, signal, stderr } = await end;
    expect({ code, signal, stderr }).toEqual({ code: 130, signal: null, stderr: '' });
  });
});

describe('a reader that goes away', () => {
  it.each([[['rules', 'list']], [['--help']]])('is no fault for %j', async (args) => {
    const child = start(await builtEntry(), args);
    child.stdout.destroy();
    const { code, stderr } = await ended(child);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });

  it('does not hide that bad input was refused', async () => {
    const child = start(await builtEntry(), ['calc', 'wind']);
    child.stdout.destroy();
    child.stdin.end('{}');
    expect((await ended(child)).code).toBe(2);
  });
});

describe('a result that finds no room', () => {
  /** Runs a command line of bash that has the program as "$0" "$1", lines of an answer as standard input and "$2". */
  async function inBash(script: string, path: string) {
    const child = spawn('bash', ['-c', script, process.execPath, await builtEntry(), path], {
      stdio: ['pipe', 'ignore', 'pipe'],
      env: { ...process.env, CLADWRIGHT_DEBUG: '' },
    });
    let stderr = '';
    child.stderr.on('data', (chunk) => {
      stderr += String(chunk);
    });
    child.stdin.on('error', () => {});
    child.stdin.end('zone 5B\nquit\n');
    const code = await new Promise((resolve) => child.on('close', resolve));
    return { code, stderr };
  }

  it('ends with 2 in the plain conversation, also where only its last word found no room', async () => {
    const path = join(folder, 'talk.txt');
    expect((await inBash('exec "$0" "$1" --plain > "$2"', path)).code).toBe(0);
    // The limit goes by whole kilobytes: what is in the file before makes it fall into the last word, "Done.".
    const cut = statSync(path).size - 3;
    const before = 1024 - (cut % 1024);
    writeFileSync(path, ' '.repeat(before));
    const kb = (before + cut) / 1024;
    const short = await inBash(`ulimit -f ${kb}; exec "$0" "$1" --plain >> "$2"`, path);
    expect(readFileSync(path, 'utf8')).toMatch(/Don$/);
    expect(short.stderr).toMatch(/^cladwright: standard output: .*no file of this size.*\n$/);
    expect(short.code).toBe(2);
    // A file of this kind refuses every byte.
    const full = await inBash('exec "$0" "$1" --plain > /dev/full', path);
    expect(full.stderr).toMatch(/^cladwright: standard output: .*disc is full.*\n$/);
    expect(full.code).toBe(2);
  }, 60_000);

  it('ends with 2 and says so, though a part of it could be written', async () => {
    const path = join(folder, 'short.json');
    const script = 'ulimit -f 8; exec "$0" "$1" rules list --json > "$2"';
    const child = spawn('bash', ['-c', script, process.execPath, await builtEntry(), path], {
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let stderr = '';
    child.stderr.on('data', (chunk) => {
      stderr += String(chunk);
    });
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect(statSync(path).size).toBe(8 * 1024);
    expect(stderr).toMatch(/^cladwright: standard output: .*no file of this size.*\n$/);
    expect(code).toBe(2);
  });
});

describe('an internal fault', () => {
  /** A copy of the bundle with no rules anywhere above it. */
  async function incomplete(): Promise<string> {
    const copy = join(folder, 'copy');
    cpSync(await builtFolder(), copy, { recursive: true });
    return join(copy, 'cladwright.js');
  }

  it('ends with 70, one line on standard error that says how to see more, and no output', async () => {
    const child = start(await incomplete(), ['rules', 'list']);
    const { code, stdout, stderr } = await ended(child);
    expect({ code, stdout }).toEqual({ code: 70, stdout: '' });
    expect(stderr).toMatch(/^cladwright: internal fault: .*facts\.json.*CLADWRIGHT_DEBUG=1.*\n$/);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });

  it('shows where under CLADWRIGHT_DEBUG=1', async () => {
    const { code, stderr } = await ended(
      start(await incomplete(), ['rules', 'list'], { CLADWRIGHT_DEBUG: '1' }),
    );
    expect(code).toBe(70);
    expect(stderr).toMatch(/\n +at findRulesDir/);
  });
});
