// Bundles the program into one entry, and the thread that works answers out. Ink and React land in chunks of their own, loaded by the terminal UI only.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
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
        `import ${JSON.stringify(resolve('src/base/zod-without-compiler.ts'))};import * as z from 'zod';`,
      ),
      loader: path.endsWith('x') ? 'tsx' : 'ts',
    }));
  },
};

/** What the full check made of the shipped rules and tables, with the digests of the files: the program checks any other file itself. */
const checksOfTheBuild = {
  name: 'checks-of-the-build',
  setup(build) {
    build.onLoad({ filter: /[\\/]rulebook[\\/]built-checks\.ts$/ }, async () => ({
      // Parsed from a text: quicker than the same as source.
      contents: `export const BUILT_CHECKS = JSON.parse(${JSON.stringify(JSON.stringify(await checksOfShippedFiles()))});`,
    }));
  },
};

await build({
  entryPoints: {
    cladwright: 'src/cli/main.ts',
    'advisor-worker': 'src/cli/advisor-worker.ts',
    // Worker threads of a batch are files of their own, found beside the chunk that starts them.
    'chunks/batch-worker': 'src/cli/batch/batch-worker.ts',
    'chunks/entry/worker': 'node_modules/tinypool/dist/entry/worker.js',
  },
  outdir,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  chunkNames: 'chunks/[name]-[hash]',
  // Without this, React loads its development build and Ink its developer tools: start-up more than doubles.
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.CLADWRIGHT_SOURCE_DIGEST': JSON.stringify(sourceDigest()),
    __filename: 'bundleFilename',
    // The program asks nobody on a network. Ink's layout engine would load all of the runtime's network code to fetch a
    // data address of its own; without `fetch` it decodes it in place.
    fetch: 'undefined',
  },
  plugins: [checksOfTheBuild, wholeNamespaceOfZod],
  alias: { 'react-devtools-core': './src/terminal/no-devtools.ts' },
  // Some bundled packages still call require() or read __filename.
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as createBundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = createBundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);",
  },
  legalComments: 'none',
  logLevel: 'warning',
});

/** Of every file in src, by name and content: a record keeps it, so that a later check can tell whether the program changed. */
function sourceDigest() {
  const hash = createHash('sha256');
  const files = readdirSync('src', { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/'))
    .sort();
  for (const file of files) hash.update(`${file}\0`).update(readFileSync(file)).update('\0');
  return hash.digest('hex');
}

/** By the program's own loader. A file with an error is left for the program to refuse, so that it says what is wrong. */
async function checksOfShippedFiles() {
  const { outputFiles } = await build({
    entryPoints: ['src/rulebook/check-shipped.ts'],
    write: false,
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    // Only for a default that is not used here.
    define: { 'import.meta.url': '""' },
  });
  const loader = { exports: {} };
  new Function('require', 'module', outputFiles[0].text)(createRequire(import.meta.url), loader);
  try {
    return await loader.exports.checkShipped('rules');
  } catch (error) {
    if (error.name !== 'Refusal') throw error;
    process.stderr.write(`rules/ has errors, so that nothing in it counts as checked:\n${error.message}\n`);
    return {};
  }
}
