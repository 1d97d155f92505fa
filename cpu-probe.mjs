import { mkdirSync, readFileSync } from 'node:fs';
import { spawn } from '@lydell/node-pty';
import { build } from 'esbuild';

mkdirSync('node_modules/.cache/p', { recursive: true });
await build({
  entryPoints: ['tests/cli/bare-ink.tsx'],
  outfile: 'node_modules/.cache/p/bare.mjs',
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  jsx: 'automatic',
  define: { 'process.env.NODE_ENV': '"production"', __filename: 'bundleFilename' },
  alias: { 'react-devtools-core': './src/terminal/no-devtools.ts' },
  banner: {
    js: "import { createRequire as bundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = bundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);",
  },
  logLevel: 'error',
});
const run = (args, words) =>
  new Promise((res) => {
    const { CI: _, ...env } = process.env;
    const t0 = performance.now();
    const pty = spawn(process.execPath, args, {
      cols: 80,
      rows: 24,
      env: { ...env, TERM: 'xterm-256color', CLADWRIGHT_HOME: '/tmp/claude-talk/nohome' },
    });
    let s = '',
      done = false;
    pty.onData((d) => {
      s += d;
      if (!done && s.includes(words)) {
        done = true;
        const wall = performance.now() - t0;
        let cpu = 0;
        try {
          cpu = Number(readFileSync(`/proc/${pty.pid}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
        } catch {}
        pty.kill('SIGKILL');
        res({ wall, cpu });
      }
    });
    pty.onExit(() => {
      if (!done) {
        console.log(s.slice(0, 500));
        res({ wall: 1e9, cpu: 1e9 });
      }
    });
  });
const variants = {
  bare: [['node_modules/.cache/p/bare.mjs'], 'ready'],
  own: [['dist/cladwright.js'], 'Where does the wall stand?'],
};
for (const extra of process.argv.slice(2)) variants[extra] = [[extra], 'Where does the wall stand?'];
const best = {};
for (let i = 0; i < 10; i++)
  for (const [n, [a, w]] of Object.entries(variants)) {
    const r = await run(a, w);
    best[n] ??= { wall: 1e9, cpu: 1e9 };
    best[n].wall = Math.min(best[n].wall, r.wall);
    best[n].cpu = Math.min(best[n].cpu, r.cpu);
  }
for (const [n, b] of Object.entries(best))
  console.log(
    n,
    'wall',
    b.wall.toFixed(0),
    (b.wall / best.bare.wall).toFixed(2),
    'main-thread cpu',
    b.cpu.toFixed(0),
    (b.cpu / best.bare.cpu).toFixed(2),
  );
process.exit();
