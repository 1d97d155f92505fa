import { pathText } from './parse-input.ts';
import { Refusal, showValue } from './refusal.ts';

/** A document of this program that is no scenario, by the schema that it names: house rules, a firm's file, a record. */
export function namesOtherSchema(data: unknown): data is { readonly schema: string } {
  const name = schemaOf(data);
  return typeof name === 'string' && /^cladwright-(?!scenario\/)/.test(name);
}

/** What the documents are that this program writes or reads, and what takes them. */
const KINDS: Readonly<Record<string, string>> = {
  scenario: 'a scenario, which "advise" and "batch" answer',
  advice: 'an answer, as "advise --json" writes it',
  'why-not': 'an answer to "advise --why-not"',
  record: 'a decision record, which "record show" and "record check" read',
  'record-check': 'a report of "record check"',
  'record-comparison': 'a report of "record compare"',
  rules: 'a pack of rules, which "--house-rules" takes',
  firm: 'a firm’s file, which "matrix" takes',
  matrix: 'a report of "matrix"',
  changes: 'a report of "changes"',
  'batch-short': 'a line that "batch --short" wrote',
  'batch-error': 'a line that "batch" wrote for a scenario it could not answer',
  'batch-state': 'the file in which "batch" keeps how far it has come',
  'batch-lock': 'the file by which "batch" keeps other runs off its output',
  draft: 'a talk that the conversation keeps, which "open" in it goes on with',
};

/** What a schema's name stands for, in words; null for one that is not of this program. */
export function schemaKind(name: string): string | null {
  const [, kind] = /^cladwright-([a-z-]+)(?:\/|$)/.exec(name) ?? [];
  if (kind === undefined) return null;
  return Object.hasOwn(KINDS, kind) ? (KINDS[kind] ?? null) : 'another file of this program';
}

/**
 * Refuses a document that calls itself something else than what is wanted, in one sentence: every key of it would be
 * called unknown, and none of that matters. One without a schema is left to be checked.
 *
 * @param wanted    the schemas that are read here, `cladwright-scenario/1`
 * @param accepted  what would be accepted, as a sentence
 * @param root      name put before the field, for example a file name; empty for none
 * @throws Refusal
 */
export function refuseOtherSchema(
  data: unknown,
  wanted: readonly string[],
  accepted: string,
  root = '',
): void {
  const given = schemaOf(data);
  if (given === undefined || wanted.some((one) => one === given)) return;
  throw new Refusal({
    field: pathText(['schema'], root),
    value: showValue(given),
    accepted: `${whatItIs(given, wanted)} ${accepted}`,
  });
}

function whatItIs(given: unknown, wanted: readonly string[]): string {
  const kind = typeof given === 'string' ? schemaKind(given) : null;
  if (typeof given !== 'string' || kind === null) return 'That is no schema of this program.';
  const [name, version] = given.split('/');
  const own = wanted.find((one) => one.startsWith(`${name}/`));
  if (own === undefined) return `This is ${kind}.`;
  return Number(version) > Number(own.split('/')[1])
    ? `This is written for a later version of the program; this one reads "${own}".`
    : 'There is no such version of it.';
}

function schemaOf(data: unknown): unknown {
  if (typeof data !== 'object' || data === null || !Object.hasOwn(data, 'schema')) return undefined;
  return 'schema' in data ? data.schema : undefined;
}
