import { z } from 'zod';
import { nearestNames } from '../rulebook/nearest-name.ts';
import type { Block } from './blocks.ts';
import data from './data/glossary.json' with { type: 'json' };
import { note, warning } from './notes.ts';

const glossarySchema = z.strictObject({
  schema: z.literal('cladwright-glossary/1'),
  source: z.string(),
  terms: z.array(
    z.strictObject({
      term: z.string().min(1),
      aliases: z.array(z.string().min(1)),
      /** For somebody who has never built a wall. */
      plain: z.string().min(20),
    }),
  ),
});

export type Term = z.output<typeof glossarySchema>['terms'][number];

let loaded: readonly Term[] | undefined;

/** Words of the trade in plain words, by the alphabet. Read when first asked for: the first question doesn't wait for it. */
export function glossary(): readonly Term[] {
  loaded ??= glossarySchema.parse(data).terms;
  return loaded;
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

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
