/** Shorter runs are chance: "continuous or". */
const FEWEST_IN_A_ROW = 3;
/** With fewer words in common, two sentences are no longer the same one with other figures. */
const FEWEST_SHARED = 8;
const MOST_SLOTS = 8;
const MOST_LAST_WORDS = 2;

/** Several sentences told as one. */
export type SharedWords = {
  /** What all have, with "[a]", "[b]" where they differ. */
  readonly text: string;
  /** What stands there in each of the sentences, in their order. */
  readonly slots: readonly { readonly mark: string; readonly values: readonly string[] }[];
};

/** A run of words that all have, or what each has in its place. */
type Part = { readonly run: readonly string[] } | { readonly differing: readonly (readonly string[])[] };

/**
 * What sentences have in common that differ in their figures only.
 *
 * @param texts  different from each other
 * @returns null where they are different sentences
 */
export function sharedWords(texts: readonly string[]): SharedWords | null {
  const parts = withLastWords(partsOf(texts.map((text) => text.split(' '))));
  const shared = parts.reduce((sum, part) => sum + ('run' in part ? part.run.length : 0), 0);
  const differing = parts.flatMap((part) => ('run' in part ? [] : [part.differing]));
  const isOneSentence = differing.every((values) => values.every((words) => words.length > 0));
  if (shared < FEWEST_SHARED || differing.length > MOST_SLOTS || !isOneSentence) return null;
  const slots: { mark: string; values: readonly string[] }[] = [];
  const told = parts.map((part) => {
    if ('run' in part) return part.run.join(' ');
    const { before, values, after } = bare(part.differing.map((words) => words.join(' ')));
    const mark = `[${String.fromCharCode(97 + slots.length)}]`;
    slots.push({ mark, values });
    return `${before}${mark}${after}`;
  });
  return { text: told.join(' '), slots };
}

/** Splits at the longest run of words that all have, then what is left and right of it. */
function partsOf(sentences: readonly (readonly string[])[], isBegin = true, isEnd = true): Part[] {
  if (sentences.every((words) => words.length === 0)) return [];
  const run = longestRun(sentences, isBegin, isEnd);
  if (run === null) return [{ differing: sentences }];
  const at = sentences.map((words) => placeOf(run, words));
  return [
    ...partsOf(
      sentences.map((words, i) => words.slice(0, at[i])),
      isBegin,
      false,
    ),
    { run },
    ...partsOf(
      sentences.map((words, i) => words.slice((at[i] ?? 0) + run.length)),
      false,
      isEnd,
    ),
  ];
}

/** At the very beginning or end of all sentences a single word in common will do. */
function longestRun(
  sentences: readonly (readonly string[])[],
  isBegin: boolean,
  isEnd: boolean,
): readonly string[] | null {
  const [first = []] = sentences;
  for (let length = first.length; length > 0; length--) {
    for (let from = 0; from + length <= first.length; from++) {
      const run = first.slice(from, from + length);
      if (!sentences.every((words) => placeOf(run, words) >= 0)) continue;
      const places = sentences.map((words) => placeOf(run, words));
      const isEdge =
        (isBegin && places.every((place) => place === 0)) ||
        (isEnd && places.every((place, i) => place + length === sentences[i]?.length));
      if (length >= FEWEST_IN_A_ROW || isEdge) return run;
    }
  }
  return null;
}

function placeOf(run: readonly string[], words: readonly string[]): number {
  return words.findIndex((_, at) => run.every((word, i) => words[at + i] === word));
}

/**
 * A word or two between what differs and a bracket goes with what differs: "R-13 or R-10 continuous (from memory)" is
 * no list without its last word.
 */
function withLastWords(parts: readonly Part[]): Part[] {
  return parts.map((part, i) => {
    const words = lastWords(parts, 'run' in part ? i - 1 : i);
    if ('run' in part) return { run: part.run.slice(words.length) };
    return { differing: part.differing.map((own) => [...own, ...words]) };
  });
}

function lastWords(parts: readonly Part[], at: number): readonly string[] {
  const [part, next] = [parts[at], parts[at + 1]];
  if (!part || 'run' in part || !next || !('run' in next)) return [];
  const bracket = next.run.findIndex((word) => word.startsWith('('));
  const words = next.run.slice(0, Math.max(0, bracket));
  return words.length <= MOST_LAST_WORDS && words.every((word) => /^\p{L}+$/u.test(word)) ? words : [];
}

/** Without the punctuation round all of them, and, of single words, the sign before: "(U-0.056)," is 0.056. */
function bare(given: readonly string[]): { before: string; values: readonly string[]; after: string } {
  const stop = sameIn(given, /[,.;:]*$/);
  const cut = given.map((value) => value.slice(0, value.length - stop.length));
  // Brackets go out in pairs, or where their other half stands outside already.
  const isClosed = cut.every((value) => balance(value) <= 0 && value.endsWith(')'));
  const isOpen = cut.every((value) => balance(value) >= 0 && value.startsWith('('));
  const [open, close] = pairOf(cut, isOpen, isClosed);
  const inner = cut.map((value) => value.slice(open.length, value.length - close.length));
  const sign = inner.every((value) => !value.includes(' ')) ? sameIn(inner, /^(?:[A-Z]-|\$)?/) : '';
  return {
    before: open + sign,
    values: inner.map((value) => value.slice(sign.length)),
    after: close + stop,
  };
}

function pairOf(values: readonly string[], isOpen: boolean, isClosed: boolean): readonly [string, string] {
  if (isOpen && isClosed) return ['(', ')'];
  if (isOpen && values.every((value) => balance(value) > 0)) return ['(', ''];
  return isClosed && values.every((value) => balance(value) < 0) ? ['', ')'] : ['', ''];
}

/** How many brackets stay open; negative for those closed too much. */
function balance(text: string): number {
  return text.split('(').length - text.split(')').length;
}

function sameIn(values: readonly string[], pattern: RegExp): string {
  const [first = '', ...others] = values.map((value) => pattern.exec(value)?.[0] ?? '');
  return others.every((other) => other === first) ? first : '';
}
