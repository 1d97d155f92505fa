// Bundles the program into one entry, the thread that works answers out, and a script with its code for one answer. Ink and React land in chunks of their own, loaded by the terminal UI only.
import { execFileSync } from 'node:child_process';
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
function checksOfTheBuild(checks) {
  // Parsed from a text: quicker than the same as source.
  const contents = `export const BUILT_CHECKS = JSON.parse(${JSON.stringify(JSON.stringify(checks))});`;
  return {
    name: 'checks-of-the-build',
    setup(build) {
      build.onLoad({ filter: /[\\/]rulebook[\\/]built-checks\.ts$/ }, () => ({ contents }));
    },
  };
}

/** Other commands than `advise` never run in the script of one answer. */
const adviseAlone = {
  name: 'advise-alone',
  setup(build) {
    build.onResolve({ filter: /-commands?\.ts$/ }, ({ kind, path }) =>
      kind === 'dynamic-import' && path !== './advise-command.ts' ? { path, external: true } : undefined,
    );
  },
};

const common = {
  bundle: true,
  platform: 'node',
  target: 'node20',
  legalComments: 'none',
  logLevel: 'warning',
};

const define = {
  // Without this, React loads its development build and Ink its developer tools: start-up more than doubles.
  'process.env.NODE_ENV': '"production"',
  'process.env.CLADWRIGHT_SOURCE_DIGEST': JSON.stringify(sourceDigest()),
  // The program asks nobody on a network. Ink's layout engine would load all of the runtime's network code to fetch a
  // data address of its own; without `fetch` it decodes it in place.
  fetch: 'undefined',
};

const plugins = [checksOfTheBuild(await checksOfShippedFiles()), wholeNamespaceOfZod];

await build({
  ...common,
  entryPoints: {
    cladwright: 'src/cli/start.ts',
    'advisor-worker': 'src/cli/advisor-worker.ts',
    // Worker threads of a batch are files of their own, found beside the chunk that starts them.
    'chunks/batch-worker': 'src/cli/batch/batch-worker.ts',
    'chunks/entry/worker': 'node_modules/tinypool/dist/entry/worker.js',
  },
  outdir,
  splitting: true,
  format: 'esm',
  chunkNames: 'chunks/[name]-[hash]',
  define: { ...define, __filename: 'bundleFilename' },
  plugins,
  alias: { 'react-devtools-core': './src/terminal/no-devtools.ts' },
  // Some bundled packages still call require() or read __filename.
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as createBundleRequire } from 'node:module';import { fileURLToPath as bundleFileUrl } from 'node:url';const require = createBundleRequire(import.meta.url);const bundleFilename = bundleFileUrl(import.meta.url);",
  },
});

await build({
  ...common,
  entryPoints: { answer: 'src/cli/main.ts' },
  outdir,
  outExtension: { '.js': '.cjs' },
  format: 'cjs',
  // A script has require() only.
  supported: { 'dynamic-import': false },
  define: { ...define, 'import.meta.url': 'bundleUrl' },
  plugins: [adviseAlone, ...plugins],
  banner: { js: "const bundleUrl = require('node:url').pathToFileURL(__filename).href;" },
});
await keepCode('scenarios/cold-retrofit.json');

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

/** The text of a bundle that only the build runs. */
async function bundled(entry, options) {
  const { outputFiles } = await build({ ...common, entryPoints: [entry], write: false, ...options });
  return outputFiles[0].text;
}

/** By the program's own loader. A file with an error is left for the program to refuse, so that it says what is wrong. */
async function checksOfShippedFiles() {
  // The address of the module is only for a default that is not used here.
  const text = await bundled('src/rulebook/check-shipped.ts', {
    format: 'cjs',
    define: { 'import.meta.url': '""' },
  });
  const loader = { exports: {} };
  new Function('require', 'module', text)(createRequire(import.meta.url), loader);
  try {
    return await loader.exports.checkShipped('rules');
  } catch (error) {
    if (error.name !== 'Refusal') throw error;
    process.stderr.write(`rules/ has errors, so that nothing in it counts as checked:\n${error.message}\n`);
    return {};
  }
}

/** `EXIT.fault` of src/cli/exit-codes.ts. */
const FAULT = 70;

/** Without the code the program only starts slower, as it does where rules/ has an error and there is no answer. */
async function keepCode(scenario) {
  const text = await bundled('src/cli/keep-code.ts', { format: 'esm' });
  const words = ['advise', scenario, '--json'];
  try {
    execFileSync(
      process.execPath,
      ['--input-type=module', '--eval', text, '--', resolve(outdir), '', ...words],
      {
        stdio: ['ignore', 'ignore', 'inherit'],
      },
    );
  } catch (error) {
    // A fault of the program, not a file that it refuses: no answer would come either.
    if (error.status === FAULT) throw new Error('the answer that the build asks for ended with a fault');
    process.stderr.write('one answer failed, so that no code is kept for the next\n');
  }
}
