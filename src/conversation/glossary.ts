import { capital } from '../base/first-letter.ts';
import { nearestNames } from '../rulebook/nearest-name.ts';
import type { Block } from './blocks.ts';
import data from './data/glossary.json' with { type: 'json' };
import { note, warning } from './notes.ts';

export type Term = {
  readonly term: string;
  readonly aliases: readonly string[];
  /** For somebody who has never built a wall. */
  readonly plain: string;
};

/** Words of the trade in plain words, by the alphabet. */
export function glossary(): readonly Term[] {
  return data.terms;
}

const namesOf = ({ term, aliases }: Term) => [term, ...aliases].map((name) => name.toLowerCase());

/** The term that goes by a name: itself, one of its other names, or the plural of either; null where none does. */
export function termOf(word: string): Term | null {
  const wanted = word.toLowerCase().trim();
  const forms = [wanted, wanted.replace(/s$/, ''), wanted.replace(/es$/, ''), `${wanted}s`];
  return glossary().find((term) => namesOf(term).some((name) => forms.includes(name))) ?? null;
}

/** Explains a word, or says which words are near it. */
export function explainBlocks(word: string): Block[] {
  const term = termOf(word);
  if (term) return [note(`${capital(term.term)}: ${term.plain}`)];
  const near = nearestNames(word, glossary().flatMap(namesOf));
  const meant = near.length > 0 ? ` Did you mean ${near.map((name) => `"${name}"`).join(' or ')}?` : '';
  return [warning(`I have no words for "${word}".${meant} "glossary" lists the words I can explain.`)];
}

/** All the words there are. */
export function glossaryBlocks(): Block[] {
  return [
    { kind: 'heading', text: 'Words I can explain' },
    {
      kind: 'paragraph',
      text: `${glossary()
        .map(({ term }) => term)
        .join(', ')}.`,
    },
    note('Say "what is …" with one of them.'),
  ];
}

/** The terms that stand in a text, each once, in the order of the alphabet. */
export function termsIn(text: string): Term[] {
  const lower = text.toLowerCase();
  return glossary().filter((term) =>
    namesOf(term).some((name) => name.length > 3 && new RegExp(`\\b${escaped(name)}s?\\b`).test(lower)),
  );
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
