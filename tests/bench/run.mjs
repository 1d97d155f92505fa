// Builds the program and the benchmark, and runs the benchmark: `npm run bench`.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
// Below the root, so that the bundle finds `rules/` by walking upward.
const outdir = join(root, 'dist', 'bench');

run(join(root, 'esbuild.config.mjs'));
await build({
  entryPoints: {
    bench: join(root, 'tests/bench/bench.ts'),
    'bare-ink': join(root, 'tests/cli/bare-ink.tsx'),
  },
  outdir,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  jsx: 'automatic',
  // As the program itself is bundled.
  define: { 'process.env.NODE_ENV': '"production"', __filename: 'bundleFilename' },
  alias: { 'react-devtools-core': join(root, 'src/terminal/no-devtools.ts') },
  external: ['@lydell/node-pty'],
  banner: {
    js: "import { createRequire as createBundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = createBundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);",
  },
  logLevel: 'warning',
});
run(join(outdir, 'bench.js'), ...process.argv.slice(2));

function run(script, ...args) {
  const { status } = spawnSync(process.execPath, [script, ...args], { cwd: root, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}
