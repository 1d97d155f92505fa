/** Who is spoken to: somebody who wants plain words and what to beware of first, or somebody who wants figures. */
export const READERS = ['homeowner', 'professional'] as const;
export type Reader = (typeof READERS)[number];

/** The switch in the words of the talk. */
export const READER_WORDS: Readonly<Record<Reader, string>> = {
  homeowner: 'Plain words and cautions come first from here on. "figures first" switches back.',
  professional: 'Figures and citations come first from here on. "plain words" switches back.',
};
