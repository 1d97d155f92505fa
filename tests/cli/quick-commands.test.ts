import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtEntry, builtFolder } from './built-program.ts';

/** Every file that Node loads before the entry's first line runs. */
function loadedAtStart(entry: string, seen = new Set<string>()): Set<string> {
  if (seen.has(entry)) return seen;
  seen.add(entry);
  for (const [, to = ''] of readFileSync(entry, 'utf8').matchAll(
    /^(?:import|export|\}) ?[^;]*?"(\.[^"]+)";$/gm,
  )) {
    loadedAtStart(join(dirname(entry), to), seen);
  }
  return seen;
}

/** The bundler names each file that a chunk is made of in a comment; node_modules may be a link to another folder. */
function partsOf(files: Iterable<string>): string[] {
  return [...files].flatMap((file) =>
    [
      ...readFileSync(file, 'utf8').matchAll(
        /^ *\/\/ ((?:\.\.\/(?:[\w-]+\/)?)*(?:node_modules|src)\/\S+)$/gm,
      ),
    ].map((m) => m[1] ?? ''),
  );
}

/** The program itself, which the entry loads for every command but `advise`. */
async function mainChunk(): Promise<string> {
  const entry = readFileSync(await builtEntry(), 'utf8');
  const [, chunk = ''] = /import\("\.\/(chunks\/main-[^"]+)"\)/.exec(entry) ?? [];
  return join(await builtFolder(), chunk);
}

/** What is loaded before the first line of a command's own code. */
async function filesAtStart(): Promise<Set<string>> {
  return loadedAtStart(await mainChunk(), loadedAtStart(await builtEntry()));
}

const SLOW =
  /node_modules\/(?:ink|react|react-reconciler|yoga-layout|json-rules-engine|chalk)\/|src\/(?:terminal|advice|record|assessment)\//;

const TERMINAL = /node_modules\/(?:ink|react|react-reconciler|yoga-layout|chalk)\/|src\/terminal\//;

describe('quick commands', () => {
  it('load neither terminal UI nor rule engine at the start', async () => {
    const parts = partsOf(await filesAtStart());
    expect(parts.some((part) => part.endsWith('src/cli/main.ts'))).toBe(true);
    expect(parts.some((part) => part.includes('node_modules/commander/'))).toBe(true);
    expect(parts.filter((part) => SLOW.test(part))).toEqual([]);
  });

  it('is a check that would see them', async () => {
    const main = readFileSync(await mainChunk(), 'utf8');
    const [, chunk = ''] = /import\("\.\/(advise-command-[^"]+)"\)/.exec(main) ?? [];
    const parts = partsOf(loadedAtStart(join(await builtFolder(), 'chunks', chunk)));
    expect(parts.some((part) => part.includes('node_modules/json-rules-engine/'))).toBe(true);
  });

  it('carry the version, not the whole of package.json', async () => {
    const files = await filesAtStart();
    const text = [...files].map((file) => readFileSync(file, 'utf8')).join('\n');
    expect(text).not.toContain('devDependencies');
    expect(existsSync(await builtEntry())).toBe(true);
  });
});

describe('the script of one answer', () => {
  it('has the rule engine, and nothing of the terminal UI', async () => {
    const parts = partsOf([join(await builtFolder(), 'answer.cjs')]);
    expect(parts.some((part) => part.includes('node_modules/json-rules-engine/'))).toBe(true);
    expect(parts.filter((part) => TERMINAL.test(part))).toEqual([]);
  });
});
