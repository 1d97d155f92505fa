import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { builtEntry } from './built-program.ts';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

export type Ended = {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
};

export type How = {
  readonly stdin?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
};

/** Runs the built program with pipes on all three streams and waits until it has ended. */
export async function runProgram(args: readonly string[], how: How = {}): Promise<Ended> {
  const entry = await builtEntry();
  const child = spawn(process.execPath, [entry, ...args], {
    cwd: how.cwd ?? ROOT,
    env: { ...process.env, CLADWRIGHT_DEBUG: '', ...how.env },
  });
  const out: Buffer[] = [];
  const err: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
  child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
  // The program may end without reading what it is given.
  child.stdin.on('error', () => {});
  child.stdin.end(how.stdin ?? '');
  const code = await new Promise<number | null>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', resolve);
  });
  return { code, stdout: Buffer.concat(out).toString('utf8'), stderr: Buffer.concat(err).toString('utf8') };
}
