import { realpath, stat } from 'node:fs/promises';
import { errorCode } from '../base/error-code.ts';
import { namesOtherSchema } from '../base/other-schema.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import { readScenario } from '../brief/read-scenario.ts';
import type { Project } from '../firm/changes.ts';
import { canonicalJson } from '../record/canonical-json.ts';
import { filesBelow } from '../record/files-below.ts';
import { parseJsonText } from './json-text.ts';
import { readText } from './read-text.ts';

/** Each is judged twice: beyond this nobody would wait, or read the table. */
const MOST_PROJECTS = 1000;

/**
 * Reads scenarios from files and folders, folders with all that is below them, in the order of their names.
 * All or nothing: with one file that is no scenario, or the same project twice, nothing is worked on. Only what a
 * folder holds beside its projects and calls by its own schema (house rules, records) is passed over.
 *
 * @param onPassedOver  told of each such file
 * @throws Refusal with every issue found, each naming its file
 */
export async function readProjects(
  paths: readonly string[],
  onPassedOver: (file: string) => void,
): Promise<Project[]> {
  if (paths.length === 0) {
    throw new Refusal({
      field: 'PATH',
      value: showValue(undefined),
      accepted: 'Give scenario files or folders of them, before the options that take files.',
    });
  }
  const files = (await Promise.all(paths.map(filesAt))).flat();
  if (files.length > MOST_PROJECTS) {
    throw new Refusal({
      field: 'PATH',
      value: `${files.length} files`,
      accepted: `Give at most ${MOST_PROJECTS} projects at a time.`,
    });
  }
  const issues: Issue[] = [];
  const projects: Project[] = [];
  for (const { file, isFound } of files) {
    try {
      const data = parseJsonText(await readText(file, 'PATH'), file);
      if (isFound && namesOtherSchema(data)) {
        onPassedOver(file);
        continue;
      }
      projects.push({ file, scenario: readScenario(data, file) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      issues.push(...error.issues);
    }
  }
  issues.push(...(await doubles(projects)));
  if (issues.length > 0) throw new Refusal(issues);
  if (projects.length === 0) throw noScenario(paths.join(' '));
  return projects;
}

/** `isFound`: in a folder, not named. */
type ProjectFile = { readonly file: string; readonly isFound: boolean };

async function filesAt(path: string): Promise<ProjectFile[]> {
  const isFolder = await stat(path).then(
    (about) => about.isDirectory(),
    // Reading it will say what is wrong.
    () => false,
  );
  if (!isFolder) return [{ file: path, isFound: false }];
  const files = await jsonFiles(path);
  if (files.length > 0) return files.map((file) => ({ file, isFound: true }));
  throw noScenario(path);
}

function noScenario(path: string): Refusal {
  return new Refusal({
    field: 'PATH',
    value: showValue(path),
    accepted: 'Give a folder with at least one scenario, a .json file; this one has none.',
  });
}

async function jsonFiles(path: string): Promise<string[]> {
  try {
    return await filesBelow(path, (entry) => !entry.isDirectory() && entry.name.endsWith('.json'));
  } catch (error) {
    const code = errorCode(error) ?? 'unknown error';
    throw new Refusal({
      field: 'PATH',
      value: showValue(path),
      accepted: `Give a folder that can be read, with all that is below it (${code}).`,
    });
  }
}

/** The same file by two ways, the same name, or the same content without a name: one of them would count twice. */
async function doubles(projects: readonly Project[]): Promise<Issue[]> {
  const seen = new Map<string, string>();
  const issues: Issue[] = [];
  for (const { file, scenario } of projects) {
    const name = scenario.name?.trim().toLowerCase();
    const own = name ? `name ${name}` : `content ${canonicalJson(scenario)}`;
    // Standard input has no path of its own.
    const keys = [`file ${await realpath(file).catch(() => file)}`, own];
    const other = keys.flatMap((key) => seen.get(key) ?? [])[0];
    if (other !== undefined) {
      issues.push({
        field: file,
        value: scenario.name ? showValue(scenario.name) : 'this project',
        accepted: `It is the same project as ${other}: give each once, with a name of its own.`,
      });
    }
    for (const key of keys) seen.set(key, seen.get(key) ?? file);
  }
  return issues;
}
