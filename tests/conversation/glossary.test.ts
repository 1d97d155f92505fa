import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { blocksToText } from '../../src/conversation/blocks.ts';
import data from '../../src/conversation/data/glossary.json' with { type: 'json' };
import { explainBlocks, glossary, termOf, termsIn } from '../../src/conversation/glossary.ts';

describe('the glossary', () => {
  it('is data of the shape that it says, in our own words', () => {
    const shape = z.strictObject({
      schema: z.literal('cladwright-glossary/1'),
      source: z.literal('our own words'),
      terms: z.array(
        z.strictObject({
          term: z.string().min(1),
          aliases: z.array(z.string().min(1)),
          plain: z.string().min(20),
        }),
      ),
    });
    expect(shape.parse(data).terms).toHaveLength(glossary().length);
  });

  it('says of a board what it is, not only what it serves for', () => {
    expect(termOf('osb')?.plain).toContain('Oriented strand board');
    expect(termOf('plywood')?.term).toBe('plywood');
  });

  it.each(['psf', 'U', 'R', 'EIFS'])('explains %s, which people read or ask', (unit) => {
    expect(termOf(unit)).not.toBeNull();
  });

  it('has at least sixty terms, each name standing for one of them only', () => {
    expect(glossary().length).toBeGreaterThanOrEqual(60);
    const names = glossary().flatMap(({ term, aliases }) => [term, ...aliases].map((n) => n.toLowerCase()));
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  it('speaks in whole short sentences without explaining a word by itself', () => {
    for (const { term, plain } of glossary()) {
      expect(plain, term).toMatch(/^[A-Z0-9].*[.]$/);
      expect(
        plain.split(/[.:;] /).every((sentence) => sentence.length < 180),
        term,
      ).toBe(true);
    }
  });

  it('finds a term by another name, and by its plural', () => {
    expect(termOf('window bucks')?.term).toBe('buck');
    expect(termOf('polyiso')?.term).toBe('polyisocyanurate');
    expect(termOf('Jambs')?.term).toBe('jamb');
    expect(termOf('flashings')?.term).toBe('flashing');
    expect(termOf('zebra')).toBeNull();
  });

  it('offers near words where it has none', () => {
    expect(blocksToText(explainBlocks('furing'), 200)).toContain('Did you mean "furring"');
    expect(blocksToText(explainBlocks('xylophone'), 200)).toContain('I have no words for "xylophone".');
  });

  it('finds the terms in a text, not parts of other words', () => {
    const terms = termsIn('Bucks bear on the rough sill; the buckle is no term. U 0.04').map(
      ({ term }) => term,
    );
    expect(terms).toContain('buck');
    expect(terms).toContain('sill');
    expect(termsIn('the buckle').map(({ term }) => term)).not.toContain('buck');
  });
});
