import type { z } from 'zod';
import { type Issue, Refusal, showValue } from './refusal.ts';

/**
 * Checks unknown input against a zod schema and returns the typed value.
 *
 * @param schema  the schema; put unit and example into its messages (`z.number('Give inches, for example 5.5')`)
 * @param input   anything: parsed JSON, an answer
 * @param root    name put before each path, for example a file name; empty for none
 * @throws Refusal with every issue found: field path, value given, what would be accepted
 */
export function parseInput<S extends z.ZodType>(schema: S, input: unknown, root = ''): z.output<S> {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  throw new Refusal(oneEach(result.error.issues.flatMap((issue) => toIssues(issue, input, root))));
}

/** One line a field: a value of the wrong type breaks every bound as well, and the first says what is wanted. */
function oneEach(issues: readonly Issue[]): Issue[] {
  const fields = new Map<string, Issue>();
  for (const issue of issues) if (!fields.has(issue.field)) fields.set(issue.field, issue);
  return [...fields.values()];
}

/** The value that stands at a path of unknown data, own properties only. */
export function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let here: unknown = data;
  for (const key of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}

/** `['windows', 0, 'weight_lb']` → `windows[0].weight_lb` */
export function pathText(path: readonly PropertyKey[], root = ''): string {
  const text = path.reduce<string>(
    (sofar, key) =>
      typeof key === 'number' ? `${sofar}[${key}]` : sofar ? `${sofar}.${String(key)}` : String(key),
    '',
  );
  if (!text) return root || 'input';
  return root ? `${root}: ${text}` : text;
}

/** A schema's own message of a key that doesn't belong; any other is of the whole object and says nothing of the key. */
const ABOUT_KEY = /^This key /;

function toIssues(issue: z.core.$ZodIssue, input: unknown, root: string): Issue[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      field: pathText([...issue.path, key], root),
      value: showValue(valueAt(input, [...issue.path, key])),
      accepted: ABOUT_KEY.test(issue.message)
        ? sentence(issue.message)
        : 'This key is not known here; leave it out or check its spelling.',
    }));
  }
  if (issue.code === 'invalid_union') {
    const meant = meantBranch(issue.errors, valueAt(input, issue.path));
    if (meant) {
      return meant.flatMap((inner) =>
        toIssues({ ...inner, path: [...issue.path, ...inner.path] }, input, root),
      );
    }
  }
  return [
    {
      field: pathText(issue.path, root),
      value: showValue(valueAt(input, issue.path)),
      accepted: sentence(shapeWanted(issue) ?? issue.message),
    },
  ];
}

/** What a value of another shape ought to be, where the schema has no words of its own for it. */
const SHAPES: Readonly<Record<string, string>> = {
  object: 'Give an object: names and values in braces, as in {"name": "value"}.',
  array: 'Give a list: values in brackets, as in ["value"].',
  string: 'Give a text in quotes.',
  number: 'Give a number, without quotes.',
  boolean: 'Give true or false, without quotes.',
};

function shapeWanted(issue: z.core.$ZodIssue): string | undefined {
  if (issue.code !== 'invalid_type' || !issue.message.startsWith('Invalid input: expected')) return undefined;
  return SHAPES[issue.expected];
}

/**
 * Of a union's failed branches, the one speaks whose keys are most nearly those of the input, then the one that got
 * furthest into it; none does when all failed at once.
 */
function meantBranch(
  branches: readonly z.core.$ZodIssue[][],
  input: unknown,
): readonly z.core.$ZodIssue[] | undefined {
  const inside = branches.filter((issues) =>
    issues.some((i) => i.path.length > 0 || i.code === 'unrecognized_keys' || isWrongLength(i, input)),
  );
  return inside.sort((a, b) => strangeKeys(a, input) - strangeKeys(b, input) || depth(b) - depth(a))[0];
}

/** A list where a list is wanted, only too long or too short. */
function isWrongLength({ code }: z.core.$ZodIssue, input: unknown): boolean {
  return Array.isArray(input) && (code === 'too_big' || code === 'too_small');
}

/** How many keys a branch misses or doesn't know. */
function strangeKeys(issues: readonly z.core.$ZodIssue[], input: unknown): number {
  return issues.reduce((sum, issue) => {
    if (issue.code === 'unrecognized_keys') return sum + issue.keys.length;
    return sum + (issue.path.length > 0 && valueAt(input, issue.path) === undefined ? 1 : 0);
  }, 0);
}

function depth(issues: readonly z.core.$ZodIssue[]): number {
  return Math.max(0, ...issues.map((i) => i.path.length));
}

function sentence(message: string): string {
  return /[.!?]$/.test(message) ? message : `${message}.`;
}
