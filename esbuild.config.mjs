// Bundles the program into one entry. Ink and React land in chunks of their own, loaded by the terminal UI only.
import { rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { build } from 'esbuild';

const outdir = process.argv[2] ?? 'dist';
rmSync(outdir, { recursive: true, force: true });

/** The bundler can drop what nobody uses of a namespace import, but not of a namespace that is itself imported by name. */
const wholeNamespaceOfZod = {
  name: 'whole-namespace-of-zod',
  setup(build) {
    build.onLoad({ filter: /[\\/]src[\\/].*\.tsx?$/ }, async ({ path }) => ({
      contents: (await readFile(path, 'utf8')).replace(
        /^import \{ z \} from 'zod';$/m,
        "import * as z from 'zod';",
      ),
      loader: path.endsWith('x') ? 'tsx' : 'ts',
    }));
  },
};

await build({
  entryPoints: { cladwright: 'src/cli/main.ts' },
  outdir,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'chunks/[name]-[hash]',
  // Without this, React loads its development build and Ink its developer tools: start-up more than doubles.
  define: { 'process.env.NODE_ENV': '"production"', __filename: 'bundleFilename' },
  plugins: [wholeNamespaceOfZod],
  alias: { 'react-devtools-core': './src/terminal/no-devtools.ts' },
  // Some bundled packages still call require() or read __filename.
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as createBundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = createBundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);",
  },
  legalComments: 'none',
  logLevel: 'warning',
});
