import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Script } from 'node:vm';

/** The whole program as one script, for commands that give one answer; the bundler writes both files. */
const SCRIPT_FILE = 'answer.cjs';
/** The code that the runtime made of the script while the build got one answer from it. */
export const CODE_FILE = 'answer.code';

export type AnswerScript = { readonly script: Script; readonly run: () => void };

/**
 * The program as a script that needs no compiling where the runtime takes the kept code; it refuses code of another
 * version of itself or another set of flags, and then compiles as usual.
 *
 * @param folder  where the bundle stands
 */
export function answerScript(folder: string): AnswerScript {
  const filename = join(folder, SCRIPT_FILE);
  const code = join(folder, CODE_FILE);
  // The bundler escapes all that is not ASCII.
  const source = `(function (require, __filename) {${readFileSync(filename, 'latin1')}\n})`;
  const script = new Script(source, {
    filename,
    ...(existsSync(code) ? { cachedData: readFileSync(code) } : {}),
  });
  return { script, run: () => script.runInThisContext()(createRequire(filename), filename) };
}
