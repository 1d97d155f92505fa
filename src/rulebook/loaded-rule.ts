import type { Concern, Rule } from './rule-schema.ts';

/** A rule with where it came from. */
export type LoadedRule = {
  readonly rule: Rule;
  readonly concern: Concern;
  readonly pack: string;
  /** As messages call it: relative to the rules folder, or as given for a house pack. */
  readonly file: string;
  readonly house: boolean;
  /** Facts that decide it, sorted. */
  readonly reads: readonly string[];
};

/** A pack as an answer names it. */
export type PackInfo = {
  readonly name: string;
  readonly version: string;
  /** Of the file's bytes. */
  readonly sha256: string;
  readonly concern: Concern;
  readonly file: string;
  readonly house: boolean;
  readonly rules: number;
};
