import { describe, expect, it, vi } from 'vitest';
import { foldedInto, foldOf, isSameFold } from '../../src/advice/folds.ts';
import { board, briefOf, judge, SMALL, withCatalogue } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

describe('what a ranked wall stands for', async () => {
  const judged = await judge(briefOf(), SMALL);
  const wall = judged.admitted.find(({ candidate }) => candidate.build.insulation.family === 'mineral-wool');
  if (!wall) throw new Error('no mineral wool');
  const folded = foldedInto(wall, judged);
  const group = judged.admitted.filter(
    ({ candidate }) =>
      candidate.cladding === wall.candidate.cladding &&
      candidate.build.insulation.family === wall.candidate.build.insulation.family,
  );
  const least = (id: string) => Math.min(...group.map(({ verdicts }) => Number(verdicts.facts[id])));

  it('is every admitted wall of the same cladding over the same family of boards', () => {
    expect(folded.count).toBe(group.length);
    expect(group.length).toBeGreaterThan(1);
    const sizes = group.map(({ candidate }) => candidate.build.thickness_in);
    expect(folded.thickness_in).toEqual({ low: Math.min(...sizes), high: Math.max(...sizes) });
  });

  it('names the cheapest, the lightest and the one that loses the least heat', () => {
    expect(folded.cheapest.usd_per_ft2).toBeCloseTo(least('cost.likely_usd_per_ft2'), 1);
    expect(folded.lightest.weight_psf).toBeCloseTo(least('weight.total_psf'), 1);
    expect(folded.least_heat_loss.u_factor).toBeCloseTo(least('thermal.u_factor'), 4);
    for (const { id, thickness_in } of [folded.cheapest, folded.lightest, folded.least_heat_loss]) {
      const found = group.find(({ candidate }) => candidate.id === id);
      expect(found?.candidate.build.thickness_in).toBe(thickness_in);
    }
  });

  it('says so in a sentence', () => {
    expect(folded.words).toMatch(
      /^3 to 4 in\. all pass \(barrier, lining and buck to suit\), all of them only with a design professional.*; 3 in\. is the cheapest/,
    );
  });
});

describe('a gap in what passes', () => {
  // 4 in. is left out by the limit of one cladding only if it is thicker; here the middle one is too soft to be admitted.
  it('is not glossed over', async () => {
    const builds = [board('eps', 2), board('eps', 3), board('eps', 4)];
    const judged = await judge(briefOf(), withCatalogue({ builds }));
    const wall = judged.admitted.find(({ candidate }) => candidate.cladding.id === 'fibre-cement-panels');
    if (!wall) throw new Error('no panels');
    const without = judged.admitted.filter(({ candidate }) => candidate.build !== builds[1]);
    expect(foldedInto(wall, judged).words).toContain('2 to 4 in. all pass');
    expect(foldedInto(wall, { ...judged, admitted: without }).words).toContain(
      '2 to 4 in. pass, but not 3 in.',
    );
    const only = judged.admitted.filter(({ candidate }) => candidate.build === builds[1]);
    expect(foldedInto(only[0] ?? wall, { ...judged, admitted: only }).words).toMatch(
      /^Only 3 in\. of it passes/,
    );
  });
});

// The furring table of IRC R703.15.2 and IBC Table 2603.13.2 ends at 4 in. of foam (reference figures, verified).
describe('thicknesses that no code table permits', () => {
  const builds = [board('eps', 2), board('eps', 4), board('eps', 5), board('eps', 6)];
  const foldOfPanels = async (change: object, of = builds) => {
    const judged = await judge(briefOf(change), withCatalogue({ builds: of }));
    const wall = judged.admitted.find(({ candidate }) => candidate.cladding.id === 'fibre-cement-panels');
    if (!wall) throw new Error('no panels');
    return foldedInto(wall, judged);
  };

  it('are said to pass only with a design professional', async () => {
    const folded = await foldOfPanels({});
    expect(folded.design_required_in).toEqual([5, 6]);
    expect(folded.words).toContain(
      '2 to 6 in. all pass (barrier, lining and buck to suit), those over 4 in. only with a design professional for the fastening, because the code table permits no more;',
    );
  });

  it('are said so where there are no others, and nothing is said where there are none', async () => {
    expect((await foldOfPanels({}, builds.slice(2))).words).toContain('all of them only with a design');
    expect((await foldOfPanels({}, builds.slice(0, 2))).words).not.toContain('design professional');
  });
});

describe('near-duplicates', () => {
  it('are white and grey polystyrene, never two claddings nor two families', async () => {
    const builds = [board('eps', 2.5), board('graphite-eps', 2.5), board('xps', 2)];
    const { admitted } = await judge(briefOf(), withCatalogue({ builds }));
    for (const a of admitted.slice(0, 60)) {
      for (const b of admitted.slice(0, 60)) {
        const isSame =
          a.candidate.cladding.id === b.candidate.cladding.id &&
          (a.candidate.build.insulation.id === 'xps') === (b.candidate.build.insulation.id === 'xps');
        expect(foldOf(a) === foldOf(b)).toBe(isSame);
        expect(isSameFold(a, b)).toBe(isSame);
      }
    }
  });
});
