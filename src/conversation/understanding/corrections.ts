import { sameAnswer } from '../answers.ts';
import { straighten } from './line-text.ts';
import type { Reading } from './reading.ts';

/** What people say between a slip and what they meant. A bare "no" may deny what follows it, so it is none. */
const SLIP =
  /[\s,;.-]+(?:(?:oh |oops,? |no,? )?(?:sorry|wait|i mean(?:t)?|scratch that|make (?:that|it)|correction|actually|or rather)(?:,? (?:no|i mean(?:t)?|it'?s|that'?s|make it))?)[\s,:;.-]+/gi;
/** At the head of a line it takes back what was said before; the line says what. */
const LEADING = /^(?:oh |oops,? )?(?:sorry|wait|no wait|i mean(?:t)?|actually)[\s,:;.-]+(?=\S)/i;
const NOT_THAT = /^(?:no,? )?(.+?)[\s,;.-]+not (.+?)[.!]?$/i;
const BARE_NUMBER = /^\$?\d+(?:\.\d+)?[.!]?$/;
const NUMBER = /\d+(?:\.\d+)?/g;

/** Any words may be a place where one is asked; only what is plainly one takes the place of another. */
const NAMES_A_PLACE =
  /\b(?:county|parish|borough)\b|^[\p{L} .'-]+,? (?:[A-Z]{2}|\p{Lu}\p{L}+(?: \p{Lu}\p{L}+)?)[.!]?$/u;

type Corrected = {
  /** The line without the slip. */
  readonly line: string;
  /** What has to be said of it; null where nothing was taken back within the line. */
  readonly note: string | null;
};

/**
 * A line in which the user mends a slip, as it was meant: "2x4, sorry 2x6", "R-13, make that 19", "2x6, not 2x4". Taken
 * for that only where both halves answer the same question, and differently; else null, and the line is read as it stands.
 *
 * @param read  reads a line in which nothing is mended
 */
export function corrected(said: string, read: (line: string) => Reading): Corrected | null {
  const line = straighten(said).replace(LEADING, '');
  for (const slip of line.matchAll(SLIP)) {
    const [before, after] = [line.slice(0, slip.index), line.slice(slip.index + slip[0].length)];
    if (before === '' || after === '') continue;
    const found = mended(before, after, read);
    if (found) return found;
  }
  const [, kept = '', dropped = ''] = NOT_THAT.exec(line) ?? [];
  const found = kept === '' || dropped === '' ? null : set(kept, dropped, read);
  if (found) return found;
  return LEADING.test(straighten(said)) ? { line, note: null } : null;
}

/** "2x4" and "2x6" from "2x4, sorry 2x6": the second in the place of the first. */
function mended(before: string, after: string, read: (line: string) => Reading): Corrected | null {
  const first = read(before);
  const [window, ...otherWindows] = first.windows;
  if (window && otherWindows.length === 0 && first.findings.length === 0) {
    const second = read(after);
    const isOneKind =
      second.windows.length === 1 && second.findings.length === 0 && second.unclear.length === 0;
    if (isOneKind) return { line: after, note: note(after, before) };
  }
  if (first.place !== null && NAMES_A_PLACE.test(after)) {
    const { place, unclear } = read(after);
    const rest = place === null || unclear.length > 0 ? null : without(before, first.place);
    if (rest !== null) return { line: joined(rest, after), note: note(after, first.place) };
  }
  // What follows a comma is said besides.
  const [, mend = after, further = ''] = /^([^,;]+)[,;]\s*(.*)$/.exec(after) ?? [];
  for (const { field, value, words } of [...first.findings].reverse()) {
    const meant = BARE_NUMBER.test(mend) ? withNumber(words, mend) : mend;
    const second = meant === null ? null : read(meant);
    const other = second?.findings.find((finding) => finding.field === field);
    if (!second || !other || sameAnswer(other.value, value) || second.unclear.length > 0) continue;
    const rest = without(before, words);
    if (rest === null) continue;
    return { line: joined(rest, meant ?? '', further), note: note(other.words, words) };
  }
  return null;
}

/** "2x6, not 2x4": both are of one question, so the second only says what it is not. */
function set(kept: string, dropped: string, read: (line: string) => Reading): Corrected | null {
  const [first, second] = [read(kept), read(dropped)];
  if (second.findings.length === 0 || second.unclear.length > 0) return null;
  const isOfTheSame = second.findings.every(({ field, value }) =>
    first.findings.some(
      (one) => one.field === field && (!sameAnswer(one.value, value) || second.findings.length > 1),
    ),
  );
  const isOther = second.findings.some(({ field, value }) =>
    first.findings.some((one) => one.field === field && !sameAnswer(one.value, value)),
  );
  return isOfTheSame && isOther ? { line: kept, note: note(kept, dropped) } : null;
}

/** The words with their only number replaced; null where they have none or several. */
function withNumber(words: string, number: string): string | null {
  return words.match(NUMBER)?.length === 1 ? words.replace(NUMBER, number.replace(/[$.!]+$|^\$/g, '')) : null;
}

function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(', ');
}

/** The line without the last place where these words stand; null where they stand nowhere. */
function without(line: string, words: string): string | null {
  const at = line.toLowerCase().lastIndexOf(words.toLowerCase());
  if (at < 0) return null;
  return `${line.slice(0, at)} ${line.slice(at + words.length)}`
    .replace(/\s+/g, ' ')
    .replace(/[\s,;.]+$/, '')
    .trim();
}

function note(meant: string, slip: string): string {
  return `I took “${meant}”, which you put in the place of “${slip}”.`;
}
