import { describe, expect, it, vi } from 'vitest';
import { firstChoice } from '../../src/advice/choose-alternatives.ts';
import { type Judged, type JudgedWall, judgeWalls } from '../../src/advice/judge-walls.ts';
import { stepsFrom } from '../../src/advice/why-not-steps.ts';
import { CODE_EDITIONS } from '../../src/base/code-editions.ts';
import { LINING_READINGS } from '../../src/brief/lining-readings.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { RETARDERS } from '../../src/brief/scenario.ts';
import { rawHouse, shippedWith } from '../rulebook/house-packs.ts';
import { answer, briefOf, job, judge, MINUTE, SMALL } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

/** An old house that gets a thin coat outside, by people who have not looked behind the lining. */
const OLD = {
  place: { climate_zone: '6A' },
  project: 'retrofit',
  cavity_insulation_r: 19,
  finish: 'cement-stucco',
  max_added_thickness_in: 5,
  interior_vapour_retarder: 'unknown',
};

const ANY_WALL = { parts: new Map(), builds: [], isSized: false, words: '', notes: [] };

/** A firm's rule that reads the lining beside something of another kind. */
const WITH_A_MIXED_RULE = {
  ...SMALL,
  rulebook: await shippedWith(
    rawHouse({
      rules: [
        {
          id: 'larch-row.no-sheet-on-a-small-budget',
          title: 'No sheet inside on a small budget',
          editions: [...CODE_EDITIONS],
          citation: { text: 'House rule', provenance: 'house' },
          conditions: {
            all: [
              { fact: 'retarder.class', operator: 'equal', value: 'class-i' },
              { fact: 'project.budget_usd_per_ft2', operator: 'lessThan', value: 20 },
            ],
          },
          verdict: 'forbid',
          reason: 'The firm does not build over a sheet on so little money.',
          remedy: 'A larger budget.',
          examples: {
            fires: [
              { name: 'both', facts: { 'retarder.class': 'class-i', 'project.budget_usd_per_ft2': 15 } },
            ],
            silent: [
              { name: 'paint', facts: { 'retarder.class': 'class-iii', 'project.budget_usd_per_ft2': 15 } },
            ],
          },
        },
      ],
    }),
  ),
};

/** A wall but for what is inside, so that it can be found again over another lining. */
const outside = ({ candidate: { cladding, build, barrier, buck, seat } }: JudgedWall) =>
  [cladding.id, build.insulation.id, ...build.boards_in, barrier.id, buck.id, seat.place].join(' ');

const admittedOver = async (change: object) =>
  new Set((await judge(briefOf({ ...OLD, ...change }), SMALL)).admitted.map(outside));

describe('a bare lining', () => {
  it.each(
    CODE_EDITIONS.flatMap((code_edition) =>
      ['4C', '5B', '6A', '7', '8'].map((climate_zone) => ({ code_edition, climate_zone })),
    ),
  )(
    'admits no wall that paint forbids, $climate_zone in $code_edition',
    async ({ code_edition, climate_zone }) => {
      const at = { place: { climate_zone }, code_edition, max_added_thickness_in: 'unknown' };
      const bare = await admittedOver({ ...at, interior_vapour_retarder: 'none' });
      const painted = await admittedOver({ ...at, interior_vapour_retarder: 'class-iii' });
      expect([...bare].filter((wall) => !painted.has(wall))).toEqual([]);
    },
  );

  it('is never what would have to change for a wall to pass', () => {
    const { brief, assumptions } = resolveBrief(job({ ...OLD, interior_vapour_retarder: 'class-i' }));
    const [inside] = stepsFrom(brief, assumptions, ANY_WALL, []).filter(
      ({ field }) => field === 'interior_vapour_retarder',
    );
    expect(JSON.stringify(inside)).toContain('class-iii');
    expect(JSON.stringify(inside)).not.toContain('none');
  });
});

describe('a lining that nobody has looked behind', () => {
  it('is tried with everything that may be there, in a standing wall only', async () => {
    const kinds = async (change: object) =>
      (await judge(briefOf({ ...OLD, ...change }), MINUTE)).linings.map(({ retarder }) => retarder);
    expect(await kinds({})).toEqual([...RETARDERS]);
    expect(await kinds({ interior_vapour_retarder: 'class-ii' })).toEqual([]);
    expect(await kinds({ project: 'new' })).toEqual([]);
  });

  it.each([2.5, 5, 10])(
    'forbids under each reading what is judged forbidden there, up to %s in.',
    async (max_added_thickness_in) => {
      const at = { ...OLD, max_added_thickness_in };
      const { admitted } = await judge(briefOf(at));
      expect(admitted.length).toBeGreaterThan(0);
      for (const kind of RETARDERS) {
        const passing = await admittedOver({ max_added_thickness_in, interior_vapour_retarder: kind });
        for (const wall of admitted.slice(0, 40)) {
          const words = wall.forbiddenLinings.map((one) => one.words);
          expect(words.includes(LINING_READINGS[kind]), `${outside(wall)} over ${kind}`).toBe(
            !passing.has(outside(wall)),
          );
        }
      }
    },
  );

  it('puts first a wall that passes over as much of what may be there as any', async () => {
    const { admitted } = await judge(briefOf({ ...OLD, max_added_thickness_in: 'unknown' }));
    const fewest = Math.min(...admitted.map(({ forbiddenLinings }) => forbiddenLinings.length));
    expect(admitted[0]?.forbiddenLinings).toHaveLength(fewest);
    expect(admitted.some(({ forbiddenLinings }) => forbiddenLinings.length > fewest)).toBe(true);
  });

  it.each([
    { fire_separation_ft: 2 },
    { budget_usd_per_ft2: 15 },
    { crew_skill: 'first-time' },
    { basic_wind_speed_mph: 170 },
    { code_edition: '2018' },
    { code_edition: '2024' },
    { sheathing: 'boards' },
    { cavity_insulation_r: 0 },
    { framing: { material: 'wood', depth_in: 5.5, spacing_in: 24, species_gravity: 0.42 } },
  ])(
    'forbids the same under another reading of something else, %j, judged anew or after the first',
    async (change) => {
      const base = await judge(briefOf(OLD), WITH_A_MIXED_RULE);
      const other = briefOf({ ...OLD, ...change });
      const after = await judgeWalls(other, base.context.site, WITH_A_MIXED_RULE, base);
      const anew = await judgeWalls(other, base.context.site, WITH_A_MIXED_RULE);
      const told = ({ linings, set }: Judged) =>
        linings.map(({ retarder, forbids }) => [
          retarder,
          set.candidates.filter((_, i) => forbids(i)).map(({ id }) => id),
        ]);
      expect(anew.linings.length).toBe(RETARDERS.length);
      expect(told(after)).toEqual(told(anew));
    },
  );

  it('is not judged anew over each lining where nothing of it can have changed', async () => {
    const base = await judge(briefOf(OLD), SMALL);
    const other = await judgeWalls(
      briefOf({ ...OLD, fire_separation_ft: 2 }),
      base.context.site,
      SMALL,
      base,
    );
    expect(other.linings).toBe(base.linings);
    const older = briefOf({ ...OLD, code_edition: '2018' });
    expect((await judgeWalls(older, base.context.site, SMALL, base)).linings).not.toBe(base.linings);
  });

  it('is told before anything speaks for a wall that some of it forbids', async () => {
    const { ranked, find_out_first } = await answer(job({ ...OLD, max_added_thickness_in: 2.5 }));
    const [told] = (ranked[0]?.reasons ?? []).filter(({ text }) => text.includes('behind the lining'));
    expect(told?.text).toMatch(
      /not known, and a rule forbids this wall if .* Look behind it before ordering/,
    );
    expect(told?.rule).toMatch(/^vapour\./);
    const first = find_out_first?.find(({ field }) => field === 'interior_vapour_retarder');
    expect(first?.effect.still_passes).toBe(false);
  });

  it('says of a wall that would score higher what speaks against it', async () => {
    const judged = await judge(
      briefOf({ ...OLD, max_added_thickness_in: 'unknown', priorities: { cost: 3 } }),
    );
    const first = firstChoice(judged);
    const { ranked } = await answer(
      job({ ...OLD, max_added_thickness_in: 'unknown', priorities: { cost: 3 } }),
    );
    const better = judged.admitted.some(
      (wall) =>
        first && wall.score > first.score && wall.forbiddenLinings.length > first.forbiddenLinings.length,
    );
    expect(better).toBe(true);
    expect(ranked[0]?.reasons.map(({ text }) => text).join('\n')).toMatch(
      /would score higher.*nobody has looked/,
    );
  });
});
