import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtEntry } from './built-program.ts';
import { ROOT } from './run-program.ts';

const BANNER =
  "import { createRequire as bundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = bundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);";

/** Below node_modules, where nothing else looks. */
const cache = join(ROOT, 'node_modules', '.cache');
mkdirSync(cache, { recursive: true });
const folder = mkdtempSync(join(cache, 'cladwright-start-'));
const bare = join(folder, 'bare.mjs');
beforeAll(() =>
  build({
    entryPoints: [join(ROOT, 'tests/cli/bare-ink.tsx')],
    outfile: bare,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"', __filename: 'bundleFilename' },
    alias: { 'react-devtools-core': join(ROOT, 'src/terminal/no-devtools.ts') },
    banner: { js: BANNER },
    logLevel: 'error',
  }),
);
afterAll(() => rmSync(folder, { recursive: true }));

/** Milliseconds from the start of a program in a pseudo-terminal until it shows some words. */
function shownAfter_ms(entry: string, words: string): Promise<number> {
  const start = performance.now();
  const { CI: _, ...env } = process.env;
  const pty = spawn(process.execPath, [entry], {
    cols: 80,
    rows: 24,
    cwd: folder,
    env: { ...env, TERM: 'xterm-256color', CLADWRIGHT_HOME: join(folder, 'home') },
  });
  return new Promise((resolve, reject) => {
    let shown = '';
    let at_ms: number | null = null;
    pty.onData((text) => {
      shown += text;
      if (at_ms !== null || !shown.includes(words)) return;
      at_ms = performance.now() - start;
      pty.kill('SIGKILL');
    });
    pty.onExit(() => {
      if (at_ms === null) reject(new Error(`${entry} ended without "${words}": ${shown.slice(0, 300)}`));
      else resolve(at_ms);
    });
  });
}

const RUNS = 5;
/** A busy machine makes single runs slow; the fastest of several is what the program itself needs. */
async function ratioOfBest(entry: string): Promise<number> {
  let own_ms = Number.POSITIVE_INFINITY;
  let bare_ms = Number.POSITIVE_INFINITY;
  for (let run = 0; run < RUNS; run += 1) {
    bare_ms = Math.min(bare_ms, await shownAfter_ms(bare, 'ready'));
    own_ms = Math.min(own_ms, await shownAfter_ms(entry, 'Where does the wall stand?'));
  }
  return own_ms / bare_ms;
}

describe('the first question', () => {
  it('is there within 1.3 times what a bare bundled Ink program takes on the same machine', {
    timeout: 120_000,
    retry: 3,
  }, async () => {
    expect(await ratioOfBest(await builtEntry())).toBeLessThanOrEqual(1.3);
  });
});
