import { readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import envPaths from 'env-paths';
import { errorCode } from '../base/error-code.ts';
import type { Draft, DraftStore } from '../conversation/draft.ts';
import type { ProjectEntry } from '../conversation/projects.ts';
import { makeFolder } from '../record/make-folder.ts';
import { safeName } from '../record/safe-name.ts';

/**
 * The user's data folder: `$CLADWRIGHT_HOME` where set (not empty), else the platform's own
 * (`$XDG_DATA_HOME/cladwright` or `~/.local/share/cladwright` on Linux).
 */
export function dataFolder(env: Readonly<Record<string, string | undefined>> = process.env): string {
  return env.CLADWRIGHT_HOME || envPaths('cladwright', { suffix: '' }).data;
}

/** File name of a talk that has no name yet. */
const UNNAMED = 'draft';
/** Talks with a name, one file each. */
const PROJECTS = 'projects';
/** Largest file taken for a draft; a talk is a few kilobytes. */
const LARGEST_BYTES = 1_000_000;
/** Most files of one name. */
const MOST_NAMESAKES = 1000;

type Kept = { readonly path: string; readonly draft: Draft };

/**
 * Keeps talks in a folder: one without a name, any number with. A crash at any moment leaves the old file or the new
 * one, never half of one. Names come from the user; file names are made from them and are safe everywhere.
 */
export function draftStoreIn(folder: string): DraftStore {
  const projects = join(folder, PROJECTS);
  /** The file of the talk in hand, once it has one. */
  let inHand: string | null = null;

  async function all(): Promise<{ readonly kept: readonly Kept[]; readonly setAside: string | null }> {
    const kept: Kept[] = [];
    let aside: string | null = null;
    for (const path of [...(await draftFiles(folder)), ...(await projectFiles(projects))]) {
      const text = await readDraft(path);
      if (text === null) continue;
      const draft = await parseDraft(text);
      if (draft) kept.push({ path, draft });
      else aside = await setAside(path);
    }
    // The last one first; of two kept at the same moment the order of the files decides.
    return { kept: kept.sort((a, b) => (a.draft.saved_at < b.draft.saved_at ? 1 : -1)), setAside: aside };
  }

  async function pathFor({ answers: { name } }: Draft): Promise<string> {
    const [dir, base] = name === undefined ? [folder, UNNAMED] : [projects, safeName(name)];
    for (let n = 1; n <= MOST_NAMESAKES; n += 1) {
      const path = join(dir, n === 1 ? `${base}.json` : `${base}-${n}.json`);
      // A file that another talk has taken is left alone.
      if (path === inHand || !(await exists(path))) return path;
    }
    throw new Error(`${dir} holds ${MOST_NAMESAKES} talks called ${base} already.`);
  }

  return {
    async load() {
      const { kept, setAside: aside } = await all();
      const last = kept.find(({ draft }) => !draft.finished) ?? null;
      inHand = last?.path ?? null;
      return { draft: last?.draft ?? null, setAside: aside };
    },
    async save(draft) {
      const path = await pathFor(draft);
      await makeFolder(dirname(path));
      const { default: writeFileAtomic } = await import('write-file-atomic');
      await writeFileAtomic(path, `${JSON.stringify(draft, null, 2)}\n`, { mode: 0o600 });
      // The talk was given a name, or another one: its old file has been written anew under it.
      if (inHand !== null && inHand !== path) await rm(inHand, { force: true });
      inHand = path;
    },
    async clear() {
      if (inHand !== null) await rm(inHand, { force: true });
      inHand = null;
    },
    async list() {
      const { kept } = await all();
      return kept.map(({ draft }) => entryOf(draft));
    },
    async open(name) {
      const { kept } = await all();
      const wanted = plainName(name);
      const found = kept.find(({ draft }) => plainName(draft.answers.name ?? UNNAMED_NAME) === wanted);
      if (!found) return null;
      inHand = found.path;
      return found.draft;
    },
    putAway() {
      inHand = null;
    },
  };
}

/** What the talk without a name is opened by. */
const UNNAMED_NAME = 'no name yet';

function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[()"']/g, '')
    .trim();
}

function entryOf({ answers, saved_at, finished }: Draft): ProjectEntry {
  const { name, ...rest } = answers;
  return {
    name: name ?? null,
    saved_at,
    answered: Object.keys(rest).length,
    finished: finished ?? false,
  };
}

function draftFiles(folder: string): Promise<string[]> {
  return filesIn(folder, /^draft(?:-\d+)?\.json$/);
}

function projectFiles(folder: string): Promise<string[]> {
  return filesIn(folder, /\.json$/);
}

async function filesIn(folder: string, pattern: RegExp): Promise<string[]> {
  try {
    const names = await readdir(folder);
    return names
      .filter((name) => pattern.test(name))
      .sort()
      .map((name) => join(folder, name));
  } catch (error) {
    if (isMissing(error)) return [];
    throw error;
  }
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

/** The schema is loaded only where there is a file to read: most first questions do without it. */
async function parseDraft(text: string): Promise<Draft | null> {
  const { draftSchema } = await import('../conversation/draft-schema.ts');
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
  const code = errorCode(error);
  return code === 'ENOENT' || code === 'ENOTDIR';
}
