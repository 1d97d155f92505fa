const LONGEST = 60;
const FALLBACK = 'wall';

/** Letters that have no accent to take off. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

/** Device names that some systems refuse as file names, whatever the ending. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d|conin|conout|clock)$/;

/**
 * A file name for a project: lower-case ASCII letters, digits and single hyphens, at most 60 characters, no ending.
 * Safe on every file system: no separators, dots, control or device names; "wall" when nothing is left.
 * Never ends like a revision (`-r2`), so that a project can't be taken for a later save of another.
 */
export function safeName(projectName: string): string {
  const ascii = projectName
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => LETTERS[letter] ?? letter)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[’']/g, '')
    .replace(/[^a-z0-9]+/g, '-');
  const name = trimHyphens(trimHyphens(ascii).slice(0, LONGEST));
  if (name === '') return FALLBACK;
  return RESERVED.test(name) || /^r\d+$|-r\d+$/.test(name) ? withFallback(name) : name;
}

function withFallback(name: string): string {
  return `${trimHyphens(name.slice(0, LONGEST - FALLBACK.length - 1))}-${FALLBACK}`;
}

function trimHyphens(text: string): string {
  return text.replace(/^-+|-+$/g, '');
}

/** `quarry-lane` for the first save, `quarry-lane-r2` for the second. */
export function revisionName(name: string, revision: number): string {
  return revision === 1 ? name : `${name}-r${revision}`;
}

/** The revision that a file of this name belongs to, whatever its ending; null for a file of something else. */
export function revisionOf(fileName: string, name: string): number | null {
  // Some file systems don't tell upper from lower case.
  const match =
    /^(.*?)(?:-r([1-9]\d{0,5}))?\.(?:json|md|html|build-sheet\.html|build-sheet\.md|take-off\.csv)$/.exec(
      fileName.toLowerCase(),
    );
  if (!match || match[1] !== name) return null;
  return match[2] === undefined ? 1 : Number(match[2]);
}
