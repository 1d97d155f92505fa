import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../src/', import.meta.url));

/** The pipeline: a folder may import from itself and from those before it. */
const ORDER: readonly string[] = [
  'base',
  'calculators',
  'brief',
  'site',
  'assembly',
  'assessment',
  'rulebook',
  'advice',
  'record',
  'firm',
  'conversation',
  'terminal',
  'cli',
];

/** Packages that one folder alone may import. */
const OWNERS: ReadonlyMap<string, string> = new Map([
  ['ink', 'terminal'],
  ['react', 'terminal'],
  ['json-rules-engine', 'rulebook'],
  ['commander', 'cli'],
  ['tinypool', 'cli'],
]);

type Import = { readonly file: string; readonly from: string; readonly to: string };

function importsOf(file: string): Import[] {
  const text = readFileSync(join(SRC, file), 'utf8');
  // `from '…'`, `import '…'` and `import('…')`, types and re-exports included.
  const specifiers = [...text.matchAll(/(?:\bfrom\s*|\bimport\s*\(?\s*)'([^']+)'/g)].map((m) => m[1] ?? '');
  return specifiers.map((to) => ({ file, from: folderOf(file), to }));
}

function folderOf(file: string): string {
  return file.split(sep)[0] ?? '';
}

/** The folder below `src` that a relative import leads to; null for a package or a file outside. */
function targetFolder({ file, to }: Import): string | null {
  if (!to.startsWith('.')) return null;
  const target = relative(SRC, join(SRC, dirname(file), to));
  return target.startsWith('..') ? null : folderOf(target);
}

function packageOf(specifier: string): string {
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? '');
}

const sources = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) =>
  /\.tsx?$/.test(file),
);
const imports = sources.flatMap(importsOf);
const show = (entry: Import) => `${entry.file} imports ${entry.to}`;

describe('the import graph', () => {
  it('is read at all', () => {
    expect(imports.map(show)).toContain('cli/main.ts imports ../base/refusal.ts');
    expect(imports.map(show)).toContain('terminal/draw-conversation.tsx imports ink');
    expect(imports.map(show)).toContain('cli/conversation-command.ts imports ../terminal/run.tsx');
    expect(imports.map(show)).toContain('cli/command-line.ts imports ./advise-command.ts');
  });

  it('has every folder in the order of the pipeline', () => {
    expect([...new Set(sources.map(folderOf))].filter((folder) => !ORDER.includes(folder))).toEqual([]);
  });

  it('leads only to folders earlier in the pipeline', () => {
    const place = (folder: string) => ORDER.indexOf(folder);
    const wrong = imports.filter((entry) => {
      const target = targetFolder(entry);
      return target !== null && place(target) > place(entry.from);
    });
    expect(wrong.map(show)).toEqual([]);
  });

  it('leaves src for package.json only', () => {
    const outside = imports.filter((entry) => entry.to.startsWith('.') && targetFolder(entry) === null);
    expect(outside.map(show)).toEqual(['cli/version.ts imports ../../package.json']);
  });

  it('keeps calculators to base and zod', () => {
    const wrong = imports.filter((entry) => {
      if (entry.from !== 'calculators') return false;
      const target = targetFolder(entry);
      return target === null ? entry.to !== 'zod' : target !== 'calculators' && target !== 'base';
    });
    expect(wrong.map(show)).toEqual([]);
  });

  it('keeps terminal, rule engine and argument parser each in one folder', () => {
    const wrong = imports.filter((entry) => {
      const owner = entry.to.startsWith('.') ? undefined : OWNERS.get(packageOf(entry.to));
      return owner !== undefined && owner !== entry.from;
    });
    expect(wrong.map(show)).toEqual([]);
  });
});

describe('the tests', () => {
  it('that put something in the place of a module stand in files that run alone', () => {
    const tests = dirname(fileURLToPath(import.meta.url));
    const mocking = readdirSync(tests, { recursive: true, encoding: 'utf8' }).filter(
      (file) =>
        /\.test\.tsx?$/.test(file) && /^vi\.(mock|doMock)\(/m.test(readFileSync(join(tests, file), 'utf8')),
    );
    expect(mocking).toContain(join('record', 'save-failure.alone.test.ts'));
    expect(mocking.filter((file) => !file.endsWith('.alone.test.ts'))).toEqual([]);
  });
});
