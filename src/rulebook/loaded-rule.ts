import type { MovedLimit, RaisedVerdict } from './house-standard.ts';
import type { LimitUse } from './limits.ts';
import type { Concern, Rule } from './rule-schema.ts';

/** What a firm made of a rule that it did not write. */
export type Tightened = {
  /** As shipped. */
  readonly before: Rule;
  /** The limits that the rule reads and the firm moved. */
  readonly limits: readonly MovedLimit[];
  readonly raised: RaisedVerdict | null;
};

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
  /** Named limits that its comparisons read. */
  readonly limits: readonly LimitUse[];
  /** Null for a rule that stands as it was written. */
  readonly tightened: Tightened | null;
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
