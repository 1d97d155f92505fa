import { distance } from 'fastest-levenshtein';
import { z } from 'zod';
import type { Catalogue } from '../assembly/catalogue.ts';
import { parseInput } from '../base/parse-input.ts';
import namesJson from './data/names.json' with { type: 'json' };

export const PARTS = ['cladding', 'insulation', 'barrier', 'retarder', 'buck'] as const;
export type Part = (typeof PARTS)[number];

const namesSchema = z.strictObject({
  schema: z.literal('cladwright-names/1'),
  names: z.array(
    z.strictObject({
      part: z.enum(PARTS),
      ids: z.array(z.string()).min(1),
      words: z.array(z.string().min(2)).min(1),
    }),
  ),
  filler: z.array(z.string()),
});

/** Everyday words for entries of the catalogue; several entries where the words leave it open. */
type Term = { readonly part: Part; readonly ids: ReadonlySet<string>; readonly words: readonly string[] };

export type Vocabulary = { readonly terms: readonly Term[]; readonly filler: ReadonlySet<string> };

/** The catalogue's own labels and the everyday words for them, most words first. */
export function vocabularyOf(catalogue: Catalogue): Vocabulary {
  const { names, filler } = parseInput(namesSchema, namesJson, 'names.json');
  const everyday = names.flatMap(({ part, ids, words }) =>
    words.map((phrase): Term => ({ part, ids: new Set(ids), words: wordsOf(phrase) })),
  );
  const lists = {
    cladding: catalogue.claddings,
    insulation: catalogue.insulations,
    barrier: catalogue.barriers,
    retarder: catalogue.retarders,
    buck: catalogue.bucks,
  };
  const onStuds = catalogue.barriers.flatMap(({ id, label_on_open_studs: label }) =>
    label === undefined ? [] : [{ part: 'barrier' as const, id, label }],
  );
  const labels = [
    ...PARTS.flatMap((part) => lists[part].map(({ id, label }) => ({ part, id, label }))),
    ...onStuds,
  ].map(({ part, id, label }): Term => ({ part, ids: new Set([id]), words: wordsOf(label) }));
  return {
    terms: [...labels, ...everyday].sort(
      (a, b) => b.words.length - a.words.length || b.words.join().length - a.words.join().length,
    ),
    filler: new Set(filler),
  };
}

/** Lower case, without accents and marks; British and American spellings alike. */
export function wordsOf(text: string): string[] {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/\bfiber/g, 'fibre')
    .replace(/\bvapor\b/g, 'vapour')
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
}

export type Heard = {
  /** By part: the entries that all words said of it leave open. */
  readonly ids: ReadonlyMap<Part, ReadonlySet<string>>;
  /** Parts of which two things were said that no entry is both of. */
  readonly contradictions: readonly Part[];
  /** Words that mean nothing here. */
  readonly strange: readonly string[];
};

/** Reads the names of parts out of free text: first as written, then with slips of the pen. */
export function hearNames(text: string, { terms, filler }: Vocabulary): Heard {
  const words: (string | null)[] = wordsOf(text);
  const ids = new Map<Part, ReadonlySet<string>>();
  const contradictions = new Set<Part>();
  for (const isSame of [(a: string, b: string) => a === b, isSlip]) {
    for (const term of terms) {
      for (let at = find(words, term.words, isSame); at >= 0; at = find(words, term.words, isSame)) {
        words.fill(null, at, at + term.words.length);
        const known = ids.get(term.part);
        const both = known ? new Set([...known].filter((id) => term.ids.has(id))) : term.ids;
        if (both.size === 0) contradictions.add(term.part);
        else ids.set(term.part, both);
      }
    }
  }
  const strange = words.filter((word) => word !== null).filter((word) => !filler.has(word));
  return { ids, contradictions: [...contradictions], strange };
}

function find(
  words: readonly (string | null)[],
  phrase: readonly string[],
  isSame: (a: string, b: string) => boolean,
): number {
  for (let at = 0; at + phrase.length <= words.length; at++) {
    const isHere = phrase.every((word, i) => {
      const said = words[at + i];
      return said !== null && said !== undefined && isSame(said, word);
    });
    if (isHere) return at;
  }
  return -1;
}

/** A word that was meant: one letter wrong in five, two in nine; a plural counts as the word itself. */
function isSlip(said: string, meant: string): boolean {
  if (said === meant || said === `${meant}s` || `${said}s` === meant) return true;
  const allowed = meant.length >= 9 ? 2 : meant.length >= 5 ? 1 : 0;
  return Math.abs(said.length - meant.length) <= allowed && distance(said, meant) <= allowed;
}

/** Phrases that somebody may have meant by a word nobody knows, nearest first. */
export function nearestPhrases(strange: string, { terms }: Vocabulary, most = 3): string[] {
  const near = terms
    .filter(({ words }) => words.length <= 3)
    .map(({ words }) => {
      const away = Math.min(
        ...words.map((word) => distance(strange, word) / Math.max(word.length, strange.length)),
      );
      return { phrase: words.join(' '), away };
    })
    .filter(({ away }) => away <= 0.5)
    .sort((a, b) => a.away - b.away || (a.phrase < b.phrase ? -1 : 1));
  return [...new Set(near.map(({ phrase }) => phrase))].slice(0, most);
}
