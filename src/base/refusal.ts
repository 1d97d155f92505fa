/** One thing the user can fix: which field, what was given, what would be accepted. */
export type Issue = {
  /** Path in the input, for example `windows[0].weight_lb`. */
  readonly field: string;
  /** The value as given, in a form safe to print. */
  readonly value: string;
  /** What would be accepted instead, in words a builder understands. */
  readonly accepted: string;
};

/**
 * Input that can't be worked on: bad shape, out of a method's range, or contradictory.
 * Front ends print {@link Refusal.message} and leave with exit code 2; nothing has been written by then.
 */
export class Refusal extends Error {
  readonly issues: readonly Issue[];

  constructor(issues: Issue | readonly Issue[]) {
    const list = 'field' in issues ? [issues] : issues;
    super(list.map(describeIssue).join('\n'));
    this.name = 'Refusal';
    this.issues = list;
  }
}

/** One line for one issue: `framing.depth_in: "-2" is not accepted. Give inches between 1.5 and 12, for example 5.5.` */
export function describeIssue(issue: Issue): string {
  return `${issue.field}: ${issue.value} is not accepted. ${issue.accepted}`;
}

const LONGEST_SHOWN = 80;
const TOO_LARGE = 'a number too large to be read';

/** The given value in printable form: JSON-quoted, control characters escaped, cut to a readable length. */
export function showValue(value: unknown): string {
  if (value === undefined) return '(nothing)';
  // Read from JSON, a number past the largest there is comes out like this; nobody has written that word.
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return TOO_LARGE;
  // JSON would show what is not a number as null.
  const hasNoJson = Number.isNaN(value);
  const json = (hasNoJson ? undefined : JSON.stringify(value)) ?? String(value);
  // JSON escapes C0 only; DEL, C1 and direction marks could still steer a terminal.
  const safe = json.replace(
    /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  if (safe.length <= LONGEST_SHOWN) return safe;
  // Of a path the end tells most.
  const end = typeof value === 'string' ? LONGEST_END : 0;
  return `${firstOf(safe, LONGEST_SHOWN - end)}…${end === 0 ? '' : lastOf(safe, end)}`;
}

const LONGEST_END = 36;

/** The first or last characters; never half of a surrogate pair. */
function firstOf(text: string, count: number): string {
  return text.slice(0, count).replace(/[\ud800-\udbff]$/, '');
}
function lastOf(text: string, count: number): string {
  return text.slice(-count).replace(/^[\udc00-\udfff]/, '');
}

/**
 * Passes a finite number inside [min, max] through; refuses anything else by name.
 * The single gate for numbers that a calculator's formula is only valid for in a range.
 */
export function inRange(value: number, field: string, min: number, max: number, unit: string): number {
  if (!Number.isFinite(value) || value < min || value > max) {
    throw new Refusal({ field, value: showValue(value), accepted: `Give ${unit} from ${min} to ${max}.` });
  }
  return value;
}
