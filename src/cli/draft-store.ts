import { mkdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import envPaths from 'env-paths';
import writeFileAtomic from 'write-file-atomic';
import { type Draft, type DraftStore, draftSchema } from '../conversation/draft.ts';

/**
 * The user's data folder: `$CLADWRIGHT_HOME` where set (not empty), else the platform's own
 * (`$XDG_DATA_HOME/cladwright` or `~/.local/share/cladwright` on Linux).
 */
export function dataFolder(env: Readonly<Record<string, string | undefined>> = process.env): string {
  return env.CLADWRIGHT_HOME || envPaths('cladwright', { suffix: '' }).data;
}

const FILE_NAME = 'draft.json';
/** Largest file taken for a draft; a talk is a few kilobytes. */
const LARGEST_BYTES = 1_000_000;

/** Keeps the unfinished talk in a folder. A crash at any moment leaves the old draft or the new one, never half of one. */
export function draftStoreIn(folder: string): DraftStore {
  const path = join(folder, FILE_NAME);
  return {
    async load() {
      const text = await readDraft(path);
      if (text === null) return { draft: null, setAside: null };
      const draft = parseDraft(text);
      if (draft) return { draft, setAside: null };
      return { draft: null, setAside: await setAside(path) };
    },
    async save(draft) {
      await mkdir(folder, { recursive: true });
      await writeFileAtomic(path, `${JSON.stringify(draft, null, 2)}\n`, { mode: 0o600 });
    },
    async clear() {
      await rm(path, { force: true });
    },
  };
}

/** The file's text; null when there is none. A file too large to be a draft reads as an empty text. */
async function readDraft(path: string): Promise<string | null> {
  try {
    const { size } = await stat(path);
    return size > LARGEST_BYTES ? '' : await readFile(path, 'utf8');
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

function parseDraft(text: string): Draft | null {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return null; // not JSON: the caller sets the file aside
  }
  const result = draftSchema.safeParse(data);
  return result.success ? result.data : null;
}

const MOST_SET_ASIDE = 1000;

/** Moves a draft that can't be read out of the way, under the first free `….corrupt-<n>`. */
async function setAside(path: string): Promise<string> {
  for (let n = 1; n <= MOST_SET_ASIDE; n += 1) {
    const aside = `${path}.corrupt-${n}`;
    if (await exists(aside)) continue;
    await rename(path, aside);
    return aside;
  }
  throw new Error(
    `${path} can't be read, and ${MOST_SET_ASIDE} drafts have been set aside beside it already.`,
  );
}

async function exists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch (error) {
    if (isMissing(error)) return false;
    throw error;
  }
}

function isMissing(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}
