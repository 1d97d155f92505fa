import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PARTS, vocabularyOf } from '../../src/advice/assembly-names.ts';
import { isNamed, namedAssembly } from '../../src/advice/named-assembly.ts';
import { buildTitle, wallTitle } from '../../src/advice/titles.ts';
import { drawUpCandidates } from '../../src/assembly/candidates.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { briefOf, KNOWLEDGE } from './pipeline.ts';

const { catalogue } = KNOWLEDGE;
const named = (text: string) => namedAssembly(text, catalogue);
const ids = (text: string, part: (typeof PARTS)[number]) => [...(named(text).parts.get(part) ?? [])].sort();
const sizes = (text: string) => [...new Set(named(text).builds.map((b) => b.thickness_in))].sort();
const refused = (text: string): Refusal => {
  try {
    named(text);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error(`"${text}" was not refused`);
};

const STUCCO = ['plaster-on-furred-lath', 'plaster-on-mat-integral-lath', 'plaster-on-mat-separate-lath'];

describe('an assembly named in words', () => {
  it.each([
    ['three-coat stucco over 4 in polyiso', STUCCO, ['polyiso'], [4]],
    ['3 coat stucco, 4" polyiso', STUCCO, ['polyiso'], [4]],
    ['Three coat stuco over 4 inches of polyisso', STUCCO, ['polyiso'], [4]],
    ['one-coat stucco over 1 1/2 in. EPS', ['one-coat-plaster-on-lath'], ['eps', 'graphite-eps'], [1.5]],
    ['stucco on furring over 2-1/2 in. graphite eps', ['plaster-on-furred-lath'], ['graphite-eps'], [2.5]],
    ['fiber cement lap siding with 3 in rock wool', ['fibre-cement-lap'], ['mineral-wool'], [3]],
    ['fibre cement panels, wood fiber', ['fibre-cement-panels'], ['wood-fibre'], null],
    ['synthetic stucco over EPS type II', ['insulated-finish'], ['eps'], null],
  ] as const)('%s', (text, claddings, insulations, thicknesses) => {
    expect(ids(text, 'cladding')).toEqual(claddings);
    expect(ids(text, 'insulation')).toEqual(insulations);
    if (thicknesses) expect(sizes(text)).toEqual(thicknesses);
    expect(named(text).notes).toEqual([]);
  });

  it('may name barrier, lining and buck as well', () => {
    const text = 'stucco over 2 in. xps with two layers of building paper, kraft facing and a plywood box';
    expect(ids(text, 'barrier')).toEqual(['two-layer-paper']);
    expect(ids(text, 'retarder')).toEqual(['kraft-facing']);
    expect(ids(text, 'buck')).toEqual(['plywood-box']);
  });

  it('may say the layers', () => {
    expect(named('stucco over two layers of 2 in. polyiso').builds.map((b) => b.boards_in)).toEqual([[2, 2]]);
    expect(named('stucco over 4 in. polyiso in one layer').builds.map((b) => b.boards_in)).toEqual([[4]]);
    expect(sizes('stucco over polyiso in two layers').length).toBeGreaterThan(2);
  });

  it('of a thickness that nobody sells is taken as the nearest, and says so', () => {
    const { notes } = named('stucco over 4.9 in. polyiso in one layer');
    expect(sizes('stucco over 4.9 in. polyiso in one layer')).toEqual([4]);
    expect(notes.join()).toMatch(/4\.9 in\.; 4 in\. was taken/);
  });
});

describe('what the answers call a wall', () => {
  const candidates = drawUpCandidates(briefOf(), catalogue, { deeper: [], units: [] });
  const one = fc.constantFrom(...candidates);

  it('names exactly that cladding over those boards', () => {
    fc.assert(
      fc.property(one, (candidate) => {
        const { parts, builds } = named(wallTitle(candidate));
        expect([...(parts.get('cladding') ?? [])]).toEqual([candidate.cladding.id]);
        expect(new Set(builds.map(buildTitle))).toContain(buildTitle(candidate.build));
        expect(isNamed({ candidate }, named(wallTitle(candidate)))).toBe(true);
        for (const build of builds) {
          expect(build.insulation).toBe(candidate.build.insulation);
          expect(build.thickness_in).toBe(candidate.build.thickness_in);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('by its id names that wall and no other', () => {
    fc.assert(
      fc.property(one, one, (candidate, other) => {
        const mine = named(candidate.id);
        expect(isNamed({ candidate }, mine)).toBe(true);
        expect(isNamed({ candidate: other }, mine)).toBe(other.id === candidate.id);
      }),
      { numRuns: 200 },
    );
  });
});

describe('words that name nothing', () => {
  it.each([
    ['polyizo', undefined],
    ['straw over 3 in. eps', 'straw'],
    ['quartz over 3 in. eps', 'quartz'],
    ['', undefined],
    ['why not', undefined],
    ['one-coat three-coat stucco', undefined],
    ['no-such/wall', undefined],
    [`stucco ${'over '.repeat(100)} eps`, undefined],
  ])('%j', (text, word) => {
    if (text === 'polyizo') return void expect(ids(text, 'insulation')).toEqual(['polyiso']);
    const { issues } = refused(text);
    expect(issues[0]?.field).toBe('why-not');
    expect(issues[0]?.accepted).toMatch(/name/i);
    if (word) expect(issues[0]?.accepted).toContain(word);
  });

  it('are answered with the nearest that do', () => {
    expect(refused('polystyreen foamed over').issues[0]?.accepted).toMatch(/Did you mean/);
  });

  it('are refused or understood, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), (text) => {
        try {
          expect(named(text).builds.length).toBeGreaterThan(0);
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
        }
      }),
    );
  });
});

describe('the everyday words', () => {
  it('are of entries that the catalogue has', () => {
    const known = new Set(
      [catalogue.claddings, catalogue.insulations, catalogue.barriers, catalogue.retarders, catalogue.bucks]
        .flat()
        .map(({ id }) => id),
    );
    for (const { ids: meant } of vocabularyOf(catalogue).terms)
      for (const id of meant) expect(known).toContain(id);
  });
});
