import { describe, expect, it, vi } from 'vitest';
import { firstChoice } from '../../src/advice/choose-alternatives.ts';
import { standingBy } from '../../src/advice/standing.ts';
import { answer, board, briefOf, job, judge, SMALL, withCatalogue } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

/** Ordinary over-cladding with room for 2 in. outside: no wall reaches the tables of zone 5. */
const OVER_CLADDING = {
  place: { climate_zone: '5A' },
  project: 'retrofit',
  framing: { material: 'wood', depth_in: 3.5, spacing_in: 16, species_gravity: 0.42 },
  sheathing: 'boards',
  cavity_insulation_r: 13,
  rough_opening_can_change: false,
  max_added_thickness_in: 2,
};
const MARKET = withCatalogue({ builds: [board('eps', 1), board('eps', 3), board('polyiso', 3)] }, SMALL);
const EXCEPTION = 'energy.alteration-exception';

// IECC R503.1.1, exceptions: section and wording from memory; a brochure on the editions 2006 to 2012 and a trade article
// say that what is opened must be filled. R-3.0 an inch as full: an architects' article on ASHRAE 90.1-2022 5.1.4.
describe('a standing wall that misses the energy tables', () => {
  it('is ranked where none meets them, with the exception and its conditions said first', async () => {
    const { ranked } = await answer(job(OVER_CLADDING), MARKET);
    expect(ranked.length).toBeGreaterThan(0);
    for (const { reasons, cautions } of ranked) {
      expect(reasons[0]).toMatchObject({ rule: EXCEPTION, text: expect.stringContaining('does not meet') });
      expect(cautions.find(({ rule }) => rule === EXCEPTION)?.text).toMatch(/closed.+filled.+no more energy/);
    }
  });

  it('does not compete with one that meets them, whatever its score', async () => {
    const judged = await judge(briefOf({ ...OVER_CLADDING, max_added_thickness_in: 5 }), MARKET);
    expect(firstChoice(judged)?.verdicts.facts['energy.complies']).toBe(true);
    const missing = judged.admitted.filter(({ verdicts }) => verdicts.facts['energy.complies'] === false);
    expect(missing.length).toBeGreaterThan(0);
    for (const { standing } of missing) {
      expect(standing & standingBy('energy-exception')).toBeGreaterThan(0);
    }
  });

  it.each([
    ['closed bays, empty', { cavity_insulation_r: 0 }, [EXCEPTION, 'caution']],
    ['open bays, full', { sheathing: 'none', cavity_insulation_r: 11 }, [EXCEPTION, 'caution']],
    [
      'open bays, half full',
      { sheathing: 'none', cavity_insulation_r: 7 },
      ['energy.opened-bays-left-short', 'forbid'],
    ],
    ['the 2024 edition', { code_edition: '2024' }, ['energy.alteration-unsettled-2024', 'undecided']],
    ['new work', { project: 'new' }, ['energy.wall-complies', 'forbid']],
  ] as const)('%s', async (_, change, [rule, verdict]) => {
    const { walls } = await judge(briefOf({ ...OVER_CLADDING, ...change }), MARKET);
    const [thin] = walls.filter(({ candidate }) => candidate.build.thickness_in === 1);
    const spoken = [
      'wall-complies',
      'opened-bays-left-short',
      'alteration-exception',
      'alteration-unsettled-2024',
    ]
      .map((name) => [`energy.${name}`, thin?.verdicts.verdictOf(`energy.${name}`)])
      .filter(([, said]) => said !== 'silent' && said !== 'pass');
    expect(spoken).toEqual([[rule, verdict]]);
    const leans = ((thin?.standing ?? 0) & standingBy('energy-exception')) > 0;
    expect(leans).toBe(verdict !== 'forbid');
  });
});
