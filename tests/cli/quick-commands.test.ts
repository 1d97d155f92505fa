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

/** The bundler names each file that a chunk is made of in a comment. */
function partsOf(files: Iterable<string>): string[] {
  return [...files].flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/^\/\/ ((?:\.\.\/)*(?:node_modules|src)\/\S+)$/gm)].map(
      (m) => m[1] ?? '',
    ),
  );
}

const SLOW =
  /node_modules\/(?:ink|react|react-reconciler|yoga-layout|json-rules-engine|chalk)\/|src\/(?:terminal|advice|record|assessment)\//;

describe('quick commands', () => {
  it('load neither terminal UI nor rule engine at the start', async () => {
    const parts = partsOf(loadedAtStart(await builtEntry()));
    expect(parts.some((part) => part.endsWith('src/cli/main.ts'))).toBe(true);
    expect(parts.some((part) => part.includes('node_modules/commander/'))).toBe(true);
    expect(parts.filter((part) => SLOW.test(part))).toEqual([]);
  });

  it('is a check that would see them', async () => {
    const entry = readFileSync(await builtEntry(), 'utf8');
    const [, chunk = ''] = /import\("\.\/(chunks\/advise-command-[^"]+)"\)/.exec(entry) ?? [];
    const parts = partsOf(loadedAtStart(join(await builtFolder(), chunk)));
    expect(parts.some((part) => part.includes('node_modules/json-rules-engine/'))).toBe(true);
  });

  it('carry the version, not the whole of package.json', async () => {
    const files = loadedAtStart(await builtEntry());
    const text = [...files].map((file) => readFileSync(file, 'utf8')).join('\n');
    expect(text).not.toContain('devDependencies');
    expect(existsSync(await builtEntry())).toBe(true);
  });
});
