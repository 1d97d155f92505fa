/** Form of a name in which the ways people write it fall together: "Doña Ana" and "dona ana", "St." and "Saint". */
export function nameKey(name: string): string {
  return plainWords(name)
    .map((word) => SAME_WORDS.get(word) ?? word)
    .join('');
}

const SAME_WORDS = new Map([
  ['saint', 'st'],
  ['sainte', 'st'],
  ['ste', 'st'],
  ['mount', 'mt'],
  ['fort', 'ft'],
]);

/** Lower-case words without diacritics, apostrophes and other marks. */
export function plainWords(text: string): string[] {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/['’‘`ʻ]/g, '')
    .replace(/&/g, ' and ')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** What somebody said a place is; null when nothing was said. */
export type SaidKind = 'city' | 'county' | 'parish' | 'borough' | 'municipality' | 'census area' | null;

export type SaidName = { readonly key: string; readonly kind: SaidKind };

const AFTER_NAME: readonly { words: readonly string[]; kind: SaidKind }[] = [
  { words: ['city', 'and', 'borough'], kind: 'borough' },
  { words: ['census', 'area'], kind: 'census area' },
  { words: ['independent', 'city'], kind: 'city' },
  { words: ['parish'], kind: 'parish' },
  { words: ['borough'], kind: 'borough' },
  { words: ['municipality'], kind: 'municipality' },
  ...['county', 'counties', 'cnty', 'cty', 'co'].map((word) => ({ words: [word], kind: 'county' as const })),
  { words: ['city'], kind: 'city' },
];
const BEFORE_NAME: readonly { words: readonly string[]; kind: SaidKind }[] = [
  { words: ['county', 'of'], kind: 'county' },
  { words: ['parish', 'of'], kind: 'parish' },
  { words: ['city', 'of'], kind: 'city' },
];

/**
 * Readings of a county name, best first: as it stands ("James City" is a name), then without the word
 * that says what it is ("Boulder County", "City of Roanoke").
 */
export function readCountyName(text: string): SaidName[] {
  const words = plainWords(text);
  const readings: SaidName[] = [{ key: nameKey(words.join(' ')), kind: null }];
  const after = AFTER_NAME.find(({ words: tail }) => endsWith(words, tail));
  if (after) readings.push(reading(words.slice(0, words.length - after.words.length), after.kind));
  const before = BEFORE_NAME.find(({ words: head }) => startsWith(words, head));
  if (before) readings.push(reading(words.slice(before.words.length), before.kind));
  return readings.filter(({ key }) => key !== '');
}

function reading(words: readonly string[], kind: SaidKind): SaidName {
  return { key: nameKey(words.join(' ')), kind };
}

function endsWith(words: readonly string[], tail: readonly string[]): boolean {
  return (
    words.length > tail.length && tail.every((word, i) => words[words.length - tail.length + i] === word)
  );
}

function startsWith(words: readonly string[], head: readonly string[]): boolean {
  return words.length > head.length && head.every((word, i) => words[i] === word);
}
