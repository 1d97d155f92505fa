import { execFile } from 'node:child_process';
import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { CODE_FILE } from '../../src/cli/answer-script.ts';
import { builtFolder } from './built-program.ts';
import { ROOT } from './run-program.ts';

const SCENARIO = join(ROOT, 'scenarios/cold-retrofit.json');

const ASKS_WHETHER_REFUSED = `
  import { answerScript } from './answer-script.ts';
  import { compileLater } from './compile-later.ts';
  compileLater();
  console.log(answerScript(process.argv[1] ?? '').script.cachedDataRejected);
`;

type Ended = { readonly code: number | null; readonly stdout: string; readonly stderr: string };

function run(args: readonly string[]): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(process.execPath, args, { maxBuffer: 1e8, cwd: ROOT }, (_, stdout, stderr) =>
      resolve({ code: child.exitCode, stdout, stderr }),
    );
  });
}

/** The answer by the bundle in a folder, from the script with its code. */
const answer = (folder: string) => run([join(folder, 'cladwright.js'), 'advise', SCENARIO, '--json']);

/** A copy of the bundle, beside the rules that it looks for upward. */
async function copyOfBundle(): Promise<string> {
  const folder = await mkdtemp(`${await builtFolder()}.copy-`);
  await cp(await builtFolder(), folder, { recursive: true });
  return folder;
}

let kept: Ended;

beforeAll(async () => {
  kept = await answer(await builtFolder());
});

describe('one answer from the script with its code', () => {
  it('is the answer of the program in modules', async () => {
    const modules = await run([
      ...[join(await builtFolder(), 'cladwright.js'), '--ascii'],
      ...['advise', SCENARIO, '--json'],
    ]);
    expect(kept.code).toBe(0);
    expect(kept.stderr).toBe('');
    expect(kept).toEqual(modules);
  });

  it('uses the code that the build kept', async () => {
    // In a process of its own: the runtime takes code back under the flags only that it was made under.
    const { outputFiles } = await build({
      stdin: { contents: ASKS_WHETHER_REFUSED, resolveDir: join(ROOT, 'src/cli'), loader: 'ts' },
      ...{ bundle: true, write: false, format: 'esm', platform: 'node' },
    });
    const text = outputFiles?.[0]?.text ?? expect.fail();
    const { stdout } = await run(['--input-type=module', '--eval', text, '--', await builtFolder()]);
    expect(stdout.trim()).toBe('false');
  });

  it('is the same without the code, and with code that is none', async () => {
    const folder = await copyOfBundle();
    try {
      await writeFile(join(folder, CODE_FILE), 'no code at all');
      expect(await answer(folder)).toEqual(kept);
      await rm(join(folder, CODE_FILE));
      expect(await answer(folder)).toEqual(kept);
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});
