import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chooseAlternatives } from '../../src/advice/choose-alternatives.ts';
import type { JudgedWall, Knowledge } from '../../src/advice/judge-walls.ts';
import { dominates } from '../../src/advice/pareto.ts';
import { answer, briefOf, job, judge, KNOWLEDGE, SMALL, withCatalogue } from './pipeline.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

/** The same catalogue with every list in another order. */
function shuffled(seed: number, knowledge: Knowledge = SMALL): Knowledge {
  const mix = <T>(list: readonly T[]): T[] =>
    fc.sample(fc.shuffledSubarray([...list], { minLength: list.length, maxLength: list.length }), {
      numRuns: 1,
      seed,
    })[0] ?? [];
  const { catalogue } = knowledge;
  return withCatalogue(
    {
      claddings: mix(catalogue.claddings),
      insulations: mix(catalogue.insulations),
      builds: mix(catalogue.builds),
      retarders: mix(catalogue.retarders),
      barriers: mix(catalogue.barriers),
      bucks: mix(catalogue.bucks),
      sheathings: mix(catalogue.sheathings),
    },
    knowledge,
  );
}

const pairOf = ({ candidate }: JudgedWall) =>
  `${candidate.cladding.id} over ${candidate.build.insulation.id}`;

describe('the answer', () => {
  it('does not hang on the order of the catalogue', async () => {
    for (const change of [{}, { project: 'retrofit', interior_vapour_retarder: 'class-ii' }]) {
      const expected = await answer(job(change));
      const { excluded, ...rest } = await answer(job(change), shuffled(1));
      const { excluded: before, ...same } = expected;
      expect(rest).toEqual(same);
      // What is excluded is listed by kind, in catalogue order; what is said of each does not change.
      const byTitle = (a: { title: string }, b: { title: string }) => (a.title < b.title ? -1 : 1);
      expect([...excluded].sort(byTitle)).toEqual([...before].sort(byTitle));
    }
  });

  it('is the same every time', async () => {
    const bare = job({ finish: 'unknown', exposure: 'unknown', sheathing: 'unknown' });
    expect(await answer(bare)).toEqual(await answer(bare));
  });

  it('settles a tie by the id, whichever stands first in the catalogue', async () => {
    const { catalogue } = SMALL;
    const twin = (prefix: string) => catalogue.claddings.map((c) => ({ ...c, id: `${prefix}-${c.id}` }));
    for (const claddings of [
      [...twin('a'), ...twin('b')],
      [...twin('b'), ...twin('a')],
    ]) {
      const { admitted } = await judge(briefOf(), withCatalogue({ claddings }, SMALL));
      expect(admitted[0]?.score).toBe(admitted[1]?.score);
      expect(admitted[0]?.candidate.id.startsWith('a-')).toBe(true);
      expect(admitted[1]?.candidate.id).toBe(admitted[0]?.candidate.id.replace(/^a-/, 'b-'));
    }
  });
});

describe('the alternatives', async () => {
  const { admitted } = await judge(briefOf());
  const wanted = admitted.filter((w) => w.standing === 0);
  const pairs = new Set(wanted.map(pairOf));
  const kindOf = ({ candidate }: JudgedWall) =>
    `${candidate.cladding.id} over ${candidate.build.insulation.family}`;
  const isBeaten = (wall: JudgedWall) => wanted.some((other) => dominates(other.scores, wall.scores));
  const kinds = new Set(wanted.filter((wall) => !isBeaten(wall)).map(kindOf));

  it.each([1, 2, 3, 5, 8, 1000])('of the best %i never repeat a cladding over a family of boards', (top) => {
    const chosen = chooseAlternatives(admitted, top);
    expect(chosen).toHaveLength(Math.min(top, kinds.size));
    expect(new Set(chosen.map(kindOf)).size).toBe(chosen.length);
  });

  it('begin with the best wall, then another cladding, then another insulation as well', () => {
    const chosen = chooseAlternatives(admitted, 3);
    expect(chosen[0]).toBe(wanted[0]);
    expect(new Set(chosen.map((w) => w.candidate.cladding.id)).size).toBeGreaterThan(1);
    expect(new Set(chosen.map((w) => w.candidate.build.insulation.family)).size).toBeGreaterThan(1);
  });

  it('are each the best of their kind that nothing beats in everything', () => {
    for (const wall of chooseAlternatives(admitted, 8)) {
      expect(isBeaten(wall)).toBe(false);
      expect(wanted.find((other) => kindOf(other) === kindOf(wall) && !isBeaten(other))).toBe(wall);
    }
  });

  it('show a synthetic finish only when nothing else is left', () => {
    const isSynthetic = (wall: JudgedWall) => wall.candidate.cladding.is_insulated_finish;
    expect(chooseAlternatives(admitted, 3).some(isSynthetic)).toBe(false);
    expect(chooseAlternatives(admitted, pairs.size).some(isSynthetic)).toBe(false);
    const synthetic = admitted.filter(isSynthetic);
    if (synthetic[0]) expect(chooseAlternatives(synthetic, 1)).toEqual([synthetic[0]]);
  });

  it('of nothing are none', () => {
    expect(chooseAlternatives([], 3)).toEqual([]);
  });

  it('show another cladding wherever one is admitted, over the whole market', async () => {
    const { admitted: all } = await judge(briefOf({ finish: 'cement-stucco' }), KNOWLEDGE);
    const chosen = chooseAlternatives(all, 3);
    expect(new Set(chosen.map((w) => w.candidate.cladding.id)).size).toBeGreaterThan(1);
    expect(chosen.every((w) => w.candidate.cladding.is_cement_stucco)).toBe(true);
  });
});
