import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** Below the root, so that the bundle finds `rules/` by walking upward, and apart from `dist/`. */
const CACHE = join(ROOT, 'node_modules', '.cache');
const NAME = 'cladwright-test-';
const STALE_MS = 60 * 60 * 1000;

let building: Promise<string> | undefined;

/** Folder of a bundle of the sources as they stand, built once for all test files that ask. */
export function builtFolder(): Promise<string> {
  building ??= build();
  return building;
}

/** The program's entry file. */
export async function builtEntry(): Promise<string> {
  return join(await builtFolder(), 'cladwright.js');
}

async function build(): Promise<string> {
  const folder = join(CACHE, `${NAME}${sourcesHash()}`);
  if (existsSync(folder)) return folder;
  mkdirSync(CACHE, { recursive: true });
  removeStale();
  // Test files run in processes of their own: each builds aside, the first to finish puts its folder in place.
  const aside = `${folder}.${process.pid}`;
  await promisify(execFile)(process.execPath, ['esbuild.config.mjs', aside], { cwd: ROOT });
  try {
    renameSync(aside, folder);
  } catch (error) {
    if (!existsSync(folder)) throw error;
    rmSync(aside, { recursive: true });
  }
  return folder;
}

function sourcesHash(): string {
  const hash = createHash('sha256');
  const files = ['src', 'rules']
    .flatMap((folder) => readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  for (const file of [join(ROOT, 'package.json'), join(ROOT, 'esbuild.config.mjs'), ...files]) {
    hash.update(file).update('\0').update(readFileSync(file));
  }
  return hash.digest('hex').slice(0, 16);
}

function removeStale(): void {
  for (const name of readdirSync(CACHE)) {
    const folder = join(CACHE, name);
    // Another process may be clearing up at the same time.
    const age_ms = Date.now() - (statSync(folder, { throwIfNoEntry: false })?.mtimeMs ?? 0);
    if (name.startsWith(NAME) && age_ms > STALE_MS) {
      rmSync(folder, { recursive: true, force: true });
    }
  }
}
