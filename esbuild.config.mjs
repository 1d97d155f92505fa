// Bundles the program into one entry. Ink and React land in chunks of their own, loaded by the terminal UI only.
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

rmSync('dist', { recursive: true, force: true });

await build({
  entryPoints: { cladwright: 'src/cli/main.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'chunks/[name]-[hash]',
  // Without this, React loads its development build and Ink its developer tools: start-up more than doubles.
  define: { 'process.env.NODE_ENV': '"production"' },
  alias: { 'react-devtools-core': './src/terminal/no-devtools.ts' },
  // Some bundled packages still call require().
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as createBundleRequire } from 'node:module';const require = createBundleRequire(import.meta.url);",
  },
  legalComments: 'none',
  logLevel: 'warning',
});
