import { plainFractions, visibleText } from '../visible-text.ts';

/**
 * A line in the form the readers work on: lower case, one kind of quote, dash and fraction, "1,800" as "1800".
 * Control characters are visible text by then.
 */
export function normaliseLine(line: string): string {
  return straighten(line).toLowerCase();
}

/** The same without losing capitals, which tell a place name from a word. */
export function straighten(line: string): string {
  return plainFractions(visibleText(line))
    .replace(/[″“”]/g, '"')
    .replace(/[′‘’]/g, "'")
    .replace(/×/g, 'x')
    .replace(/(\d) ?\* ?(?=\d)/g, '$1x')
    .replace(/²/g, '2')
    .replace(/[–—−‑]/g, '-')
    .replace(/''/g, '"')
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    .replace(/…/g, '...')
    .replace(/\s+/g, ' ')
    .trim();
}

const SENTENCE_END = /(?<!\b(?:in|ft|sq|lb|lbs|approx|st|mt|no|o\.c|oc|min|max|exp))\.\s+/g;

/** Splits a normalised line where one thing ends and the next begins: commas, semicolons, "and", "with", sentences. */
export function splitClauses(line: string): string[] {
  return (
    line
      .replace(/[()[\]]/g, ',')
      .replace(/\.{2,}/g, ', ')
      // A range is one thing said, though it has an "and" in it.
      .replace(/\b(between \S+) and (\S+)/g, '$1 to $2')
      .replace(/\s+(?=(?:(?:i|we) )?(?:don'?t|do not) know (?:about )?(?:the )?(?:rest|others?)\b)/g, ', ')
      // A storey and a half is one height.
      .replace(/\b(?:an? |one )?(stor(?:e?y)) and a half\b/g, 'one-and-a-half $1')
      .replace(/\b(\w+) and a half (?=stor|floors?|levels?)/g, '$1-and-a-half ')
      .replace(/\blath and plaster\b/g, 'lath-and-plaster')
      .replace(/\b(board|post) and (?=(?:batten|beam)s?\b)/g, '$1-and-')
      // The two lengths of a wall.
      .replace(
        /(?<=\d ?(?:ft|feet|foot|'|inch(?:es)?|in\.?|") (?:long|wide)),? (?:and )?(?=\d+ ?(?:ft|feet|foot|'|inch(?:es)?|in\.?|") (?:high|tall))/g,
        ' by ',
      )
      // "With" belongs to what somebody is experienced with.
      .replace(/\bexperienced with\b/g, 'experienced in')
      .replace(SENTENCE_END, ', ')
      .split(/\s*[,;\n]\s*|\s+(?:and|plus|with|also)\s+|\s*&\s*/)
      .map((clause) =>
        clause
          .replace(/^(?:and|plus|with|also)\s+/, '')
          .replace(/[.!]+$/, '')
          .trim(),
      )
      .filter((clause) => clause !== '')
  );
}

/** What has been read out of a clause is overwritten with this, so that no other reader takes it again. */
const TAKEN = '\u0001';

/**
 * One clause being read. Readers take the stretches they understand; what is left at the end was not understood.
 */
export class Clause {
  readonly text: string;
  #rest: string;

  constructor(text: string) {
    this.text = text;
    this.#rest = text;
  }

  /** The clause with everything taken so far blotted out. */
  get rest(): string {
    return this.#rest;
  }

  /** Takes the first match of a pattern out of what is left. */
  take(pattern: RegExp): Taken | null {
    const match = pattern.exec(this.#rest);
    if (!match) return null;
    this.#blot(match.index, match[0].length);
    return {
      words: match[0].trim(),
      groups: match.slice(1),
      isNegated:
        NEGATION_BEFORE.test(this.text.slice(0, match.index)) ||
        NEGATION_AFTER.test(this.text.slice(match.index + match[0].length)),
    };
  }

  /** Takes every match of a pattern. */
  takeAll(pattern: RegExp): Taken[] {
    const found: Taken[] = [];
    for (let taken = this.take(pattern); taken; taken = this.take(pattern)) found.push(taken);
    return found;
  }

  has(pattern: RegExp): boolean {
    return pattern.test(this.#rest);
  }

  /** Words not taken by anybody. */
  leftover(): string {
    return this.#rest.replaceAll(TAKEN, ' ').replace(/\s+/g, ' ').trim();
  }

  #blot(start: number, length: number): void {
    this.#rest = this.#rest.slice(0, start) + TAKEN.repeat(length) + this.#rest.slice(start + length);
  }
}

export type Taken = {
  readonly words: string;
  readonly groups: readonly (string | undefined)[];
  /** "not", "no", "without" … stands before it, or "is not" behind it. */
  readonly isNegated: boolean;
};

/** Words between a negation and what it denies: "don't want to use", "not going to be doing". */
const BETWEEN =
  'a|an|the|any|that|it|have|has|want|wants|need|use|using|like|as|to|be|been|being|do|going|planning|plan|planned|looking|interested|in|for|with|on|really|actually|exactly|quite|my|our|of|is|are';
const NEGATION_BEFORE = new RegExp(
  `\\b(?:no|not|isn'?t|aren'?t|wasn'?t|weren'?t|never|without|don'?t|doesn'?t|didn'?t|won'?t|can'?t|cannot|wouldn'?t|haven'?t|hasn'?t|ain'?t|except|anything but|rather than|instead of|nor|neither|hates?|dislikes?|avoid|no more|no longer|sick of|tired of)\\s+(?:(?:${BETWEEN})\\s+)*$`,
);
/** "True stucco is not for us". */
const NEGATION_AFTER =
  /^\s*(?:(?:is|are|was|were|will|would|does|do|did)(?:n'?t| not| no)\b(?! (?:sure|certain))|(?:is|are) (?:out|off the table|gone|missing)\b)/;
