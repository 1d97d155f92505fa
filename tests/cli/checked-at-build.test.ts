import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtFolder } from './built-program.ts';
import { ROOT } from './run-program.ts';

type Check = { readonly digest: string };

/** What the bundle carries about the files of the rules folder. */
async function builtChecks(): Promise<Record<string, Check>> {
  const chunks = join(await builtFolder(), 'chunks');
  for (const name of await readdir(chunks)) {
    if (!name.endsWith('.js')) continue;
    const text = await readFile(join(chunks, name), 'utf8');
    const [, json] = /BUILT_CHECKS = JSON\.parse\(([`'"].*[`'"])\);/.exec(text) ?? [];
    if (json) return JSON.parse(new Function(`return ${json}`)()) as Record<string, Check>;
  }
  return expect.fail('no chunk carries the checks');
}

async function sha256(file: string): Promise<string> {
  return createHash('sha256')
    .update(await readFile(join(ROOT, 'rules', file)))
    .digest('hex');
}

describe('the built program', () => {
  it('carries the check of every shipped file under its digest', async () => {
    const files = (await readdir(join(ROOT, 'rules'), { recursive: true })).filter((f) =>
      f.endsWith('.json'),
    );
    const checks = await builtChecks();
    expect(Object.keys(checks).sort()).toEqual(files.sort());
    const [facts, limits] = [await sha256('facts.json'), await sha256('limits.json')];
    for (const file of files) {
      const ground = file.endsWith('.rules.json') ? ` ${facts} ${limits}` : '';
      expect(checks[file]?.digest).toBe((await sha256(file)) + ground);
    }
  });

  it('refuses a shipped pack and a shipped table that somebody spoilt', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'installed-'));
    await cp(await builtFolder(), join(folder, 'dist'), { recursive: true });
    await cp(join(ROOT, 'rules'), join(folder, 'rules'), { recursive: true });
    const spoil = async (file: string, from: string, to: string) => {
      const path = join(folder, 'rules', file);
      const before = await readFile(path, 'utf8');
      expect(before).toContain(from);
      await writeFile(path, before.replace(from, to));
      const told = await adviseBy(folder);
      await writeFile(path, before);
      return told;
    };
    expect(await spoil('rain/drainage.rules.json', '"verdict": "caution"', '"verdict": "perhaps"')).toMatch(
      /^2 cladwright: rain\/drainage\.rules\.json, rule "[^"]+": verdict: "perhaps" is not accepted\./,
    );
    expect(await spoil('openings/wood.table.json', '"schema"', '"scheme"')).toMatch(
      /^2 cladwright: openings\/wood\.table\.json: sche/,
    );
    expect(await adviseBy(folder)).toBe('0 ');
  });
});

/** Exit code and standard error of an answer by the program in a folder. */
function adviseBy(folder: string): Promise<string> {
  const args = [join(folder, 'dist/cladwright.js'), 'advise', join(ROOT, 'scenarios/cold-retrofit.json')];
  return new Promise((resolve) => {
    const child = execFile(process.execPath, [...args, '--json'], { maxBuffer: 1e8 }, (_, __, stderr) =>
      resolve(`${child.exitCode} ${stderr}`),
    );
  });
}
