import { describe, expect, it } from 'vitest';
import type { JudgedWall } from '../../src/advice/judge-walls.ts';
import { board, briefOf, judge, KNOWLEDGE, withCatalogue } from '../advice/pipeline.ts';

const number = (wall: JudgedWall | undefined, id: string): number => {
  const value = wall?.verdicts.facts[id];
  if (typeof value !== 'number') throw new Error(`${id} is ${value}`);
  return value;
};

const STUCCO = 'plaster-on-furred-lath';
/** One cladding, one barrier, one buck that reaches everywhere: what is left differs in its boards alone. */
function plain(builds = KNOWLEDGE.catalogue.builds, claddings = [STUCCO]) {
  const { catalogue } = KNOWLEDGE;
  return withCatalogue({
    builds,
    claddings: catalogue.claddings.filter((c) => claddings.includes(c.id)),
    retarders: catalogue.retarders.filter((r) => r.id === 'latex-paint'),
    barriers: catalogue.barriers.filter((b) => b.id === 'sealed-permeable'),
    bucks: catalogue.bucks
      .filter((b) => b.id === 'plywood-box')
      .map((b) => ({ ...b, min_projection_in: 0, max_projection_in: 99 })),
  });
}

describe('the U-factor', () => {
  // Parallel paths (ASHRAE Fundamentals ch. 27) by hand: 2x6 at 16 in., 25 % wood of per inch, R-20 between,
  // films 0.68 and 0.17, gypsum 0.45, OSB 0.62, 2 in. of XPS. Behind a ventilated space the stucco counts for nothing.
  it('of 2x6, R-20 and 2 in. of XPS matches a hand calculation', async () => {
    const series = 0.68 + 0.45 + 0.62 + 10 + 0.17;
    const expected = 0.75 / (series + 20) + 0.25 / (series + 5.5 * 1.25);
    const { walls } = await judge(briefOf(), plain([board('xps', 2)]));
    expect(walls).toHaveLength(1);
    expect(number(walls[0], 'thermal.clear_wall_u_factor')).toBeCloseTo(expected, 6);
    expect(expected).toBeCloseTo(0.0368, 4);
  });

  // ASHRAE 90.1 Table A9.2-2 as quoted in a trade magazine: R-19 between 6 in. steel studs at 16 in. is.
  it('of R-19 between steel studs is worked out with R-7.1 for studs and filling, and says which method', async () => {
    const steel = {
      framing: { material: 'steel', depth_in: 6, spacing_in: 16 },
      sheathing: 'gypsum',
      cavity_insulation_r: 19,
    };
    const { walls, context } = await judge(briefOf(steel), plain([board('xps', 2)]));
    const expected = 1 / (0.68 + 0.45 + 7.1 + 0.45 + 10 + 0.17);
    expect(number(walls[0], 'thermal.clear_wall_u_factor')).toBeCloseTo(expected, 5);
    expect(walls[0]?.verdicts.facts['thermal.method']).toBe('steel-correction-factor');
    expect(context.framed.framing_fraction).toBeNull();
  });

  it('counts a filling that steel tables do not list as the next lower one, and says so', async () => {
    const steel = { framing: { material: 'steel', depth_in: 6, spacing_in: 16 }, cavity_insulation_r: 20 };
    const { context } = await judge(briefOf(steel), plain([board('xps', 2)]));
    expect(context.framed.cavity_r).toBe(19);
    expect(context.framed.notes.join(' ')).toMatch(/R-20 .* not tabulated/);
  });

  // A construction text and common practice: an R-19 batt of 6-1/4 in. has about R-18 in 5-1/2 in.
  it('counts an R-19 batt pressed into 5-1/2 in. as R-18, and says so', async () => {
    const { context } = await judge(briefOf({ cavity_insulation_r: 19 }), plain([board('xps', 2)]));
    expect(context.framed.cavity_r).toBe(18);
    expect(context.framed.notes.join(' ')).toMatch(/R-19 .* R-18/);
  });

  it('grows by fasteners times their point transmittance, the same for each screw', async () => {
    const several = plain([board('eps', 1.5)], [STUCCO, 'plaster-on-mat-integral-lath', 'wood-siding']);
    const { walls } = await judge(briefOf(), several);
    const added = walls.map((wall) => ({
      by: number(wall, 'thermal.u_factor') - number(wall, 'thermal.clear_wall_u_factor'),
      count: number(wall, 'fastening.count_per_100_ft2'),
    }));
    expect(new Set(added.map(({ count }) => count)).size).toBeGreaterThan(1);
    // 0.004 W/K for a long steel screw (from memory) is 0.0076 Btu/(h·°F). Besides those that carry, 37.5 in 100 ft²
    // hold the board: rows 24 in. apart on studs at 16 in., 14400 / (24 x 16).
    for (const { by, count } of added) expect(by).toBeCloseTo(((count + 37.5) / 100) * 0.0076, 4);
  });
});

describe('thicker insulation', async () => {
  const { catalogue } = KNOWLEDGE;
  const COLD = { place: { state: 'MN', county: 'Stearns' } };

  describe.each(catalogue.insulations.map(({ id }) => id))('of %s', async (id) => {
    const builds = catalogue.builds.filter((b) => b.insulation.id === id);
    const { walls } = await judge(briefOf(COLD), plain(builds));
    const thinFirst = [...walls].sort(
      (a, b) => a.candidate.build.thickness_in - b.candidate.build.thickness_in,
    );
    // Two boards take more fasteners than one of the same thickness: like is compared with like.
    const pairs = [1, 2, 3].flatMap((layers) => {
      const same = thinFirst.filter((wall) => wall.candidate.build.boards_in.length === layers);
      return same.slice(1).map((thick, i) => [same[i], thick] as const);
    });

    it('never lets more heat through', () => {
      expect(pairs.length).toBeGreaterThan(5);
      for (const [thin, thick] of pairs) {
        expect(number(thick, 'thermal.clear_wall_u_factor')).toBeLessThanOrEqual(
          number(thin, 'thermal.clear_wall_u_factor'),
        );
        expect(number(thick, 'thermal.u_factor')).toBeLessThanOrEqual(
          number(thin, 'thermal.u_factor') + 1e-12,
        );
      }
    });

    it('never makes the sheathing colder, though cold boards insulate less', () => {
      for (const [thin, thick] of pairs)
        expect(number(thick, 'moisture.sheathing_temp_f')).toBeGreaterThanOrEqual(
          number(thin, 'moisture.sheathing_temp_f') - 1e-9,
        );
    });

    it('costs more, board for board', () => {
      for (const layers of [1, 2, 3]) {
        const same = thinFirst.filter((w) => w.candidate.build.boards_in.length === layers);
        for (const [i, thick] of same.slice(1).entries())
          for (const end of ['low', 'likely', 'high'])
            expect(number(thick, `cost.${end}_usd_per_ft2`)).toBeGreaterThan(
              number(same[i], `cost.${end}_usd_per_ft2`),
            );
      }
    });
  });

  it('of polyisocyanurate is taken at less than its rating in the cold, other foams at theirs', async () => {
    const boards = [board('polyiso', 3), board('xps', 3)];
    const { walls } = await judge(briefOf(COLD), plain(boards));
    for (const wall of walls) {
      const { facts } = wall.verdicts;
      const inboard = 0.68 + 0.45 + 20;
      const outboard = 0.62 + wall.candidate.build.r + 0.17;
      const atRating = outboard / (inboard + outboard);
      const share = number(wall, 'moisture.exterior_r_share');
      if (facts['insulation.id'] === 'xps') expect(share).toBeCloseTo(atRating, 3);
      else expect(share).toBeLessThan(atRating - 0.01);
    }
  });
});

describe('the cost', () => {
  it('is the sum of its parts: boards, barrier, cladding, bucks, flashing, fasteners and their driving', async () => {
    const { walls } = await judge(briefOf(), plain([board('xps', 2)]));
    const [wall] = walls;
    const perOpening = 6 / 1800;
    const { prices, bucks, claddings, barriers, insulations } = KNOWLEDGE.catalogue;
    const xps = insulations.find(({ id }) => id === 'xps');
    const parts = [
      xps?.cost.first_inch.likely,
      xps?.cost.each_more_inch.likely,
      barriers.find(({ id }) => id === 'sealed-permeable')?.cost.usd_per_ft2.likely,
      claddings.find(({ id }) => id === STUCCO)?.cost.usd_per_ft2.likely,
      perOpening * (bucks.find(({ id }) => id === 'plywood-box')?.cost_each.usd.likely ?? Number.NaN),
      perOpening * prices.opening_flashing_usd_each.likely,
      // What carries is a 6 in. screw or less; 2 in. of board, 0.04 of barrier and 7/16 of OSB with 3/4 in. in the
      // stud are 3.23 in.: a 3-1/2 or 4 in. screw holds the board, 37.5 in 100 ft².
      (number(wall, 'fastening.count_per_100_ft2') / 100) *
        (prices.fastener_material_usd_each.up_to_6_in.likely +
          (0.35 / 60) * prices.labour_usd_per_hour.likely),
      0.375 *
        (prices.fastener_material_usd_each.up_to_4_in.likely +
          (0.2 / 60) * prices.labour_usd_per_hour.likely),
    ];
    const sum = parts.reduce<number>((total, part) => total + (part ?? Number.NaN), 0);
    expect(number(wall, 'fastening.length_in')).toBeGreaterThan(4);
    expect(number(wall, 'fastening.length_in')).toBeLessThanOrEqual(6);
    expect(number(wall, 'cost.likely_usd_per_ft2')).toBeCloseTo(sum, 6);
  });

  it('has its range in order, and each added window adds to it', async () => {
    const few = (await judge(briefOf(), plain([board('xps', 2)]))).walls[0];
    const many = (await judge(briefOf({ windows: [{ count: 60 }] }), plain([board('xps', 2)]))).walls[0];
    expect(number(few, 'cost.low_usd_per_ft2')).toBeLessThan(number(few, 'cost.likely_usd_per_ft2'));
    expect(number(few, 'cost.likely_usd_per_ft2')).toBeLessThan(number(few, 'cost.high_usd_per_ft2'));
    expect(number(many, 'cost.likely_usd_per_ft2')).toBeGreaterThan(number(few, 'cost.likely_usd_per_ft2'));
  });

  it('of an old retarder is nothing, of one that is added its price', async () => {
    const inside = (id: string) => ({
      retarders: KNOWLEDGE.catalogue.retarders.filter((r) => r.id === id || r.id === 'latex-paint'),
    });
    const base = plain([board('xps', 2)]);
    const knowledge = withCatalogue(inside('retarder-primer'), base);
    const { walls } = await judge(
      briefOf({ project: 'retrofit', interior_vapour_retarder: 'class-iii' }),
      knowledge,
    );
    const kept = walls.find((w) => w.candidate.inside.is_existing);
    const added = walls.find((w) => !w.candidate.inside.is_existing);
    const primer = KNOWLEDGE.catalogue.retarders.find(({ id }) => id === 'retarder-primer');
    expect(number(added, 'cost.likely_usd_per_ft2') - number(kept, 'cost.likely_usd_per_ft2')).toBeCloseTo(
      primer?.cost.usd_per_ft2.likely ?? Number.NaN,
      6,
    );
  });
});
