import { describe, expect, it, vi } from 'vitest';
import type { JudgedWall } from '../../src/advice/judge-walls.ts';
import { against, answer, briefOf, job, judge, SMALL } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const CASEMENT = {
  count: 6,
  width_in: 36,
  height_in: 60,
  glazing: 'double',
  mounting: 'flanged',
  operation: 'casement',
  weight_lb: 80,
};
const BIG = { ...CASEMENT, count: 1, width_in: 60, height_in: 72, operation: 'fixed', weight_lb: 160 };

/** Walls that a rule on windows forbids, of those that both briefs draw up. */
async function forbidden(change: object): Promise<{ all: Set<string>; out: Set<string> }> {
  const { walls } = await judge(briefOf({ priorities: { cost: 1 }, ...change }), SMALL);
  const isOut = (wall: JudgedWall) => against(wall).some((rule) => rule.startsWith('openings.'));
  return {
    all: new Set(walls.map(({ candidate }) => candidate.id)),
    out: new Set(walls.filter(isOut).map(({ candidate }) => candidate.id)),
  };
}

/** Walls forbidden for what asks less and not for what asks more: there must be none. */
async function milder(less: object, more: object): Promise<string[]> {
  const [a, b] = [await forbidden(less), await forbidden(more)];
  expect(a.out.size).toBeGreaterThan(0);
  return [...a.out].filter((id) => b.all.has(id) && !b.out.has(id));
}

describe.each([
  ['alone', (window: object) => ({ windows: [window] })],
  ['beside casements', (window: object) => ({ windows: [CASEMENT, window] })],
  [
    'in a storm',
    (window: object) => ({ windows: [CASEMENT, window], basic_wind_speed_mph: 180, exposure: 'D' }),
  ],
  [
    'in openings that can’t change',
    (window: object) => ({ windows: [CASEMENT, window], rough_opening_can_change: false }),
  ],
] as const)('a large window, %s', (_, withWindow) => {
  it.each([120, 160, 300, 700])(
    'is not judged the more mildly for a third pane, at %i lb',
    async (weight_lb) => {
      const [two, three] = [
        { ...BIG, weight_lb, glazing: 'double' },
        { ...BIG, weight_lb, glazing: 'triple' },
      ];
      expect(await milder(withWindow(two), withWindow(three))).toEqual([]);
    },
  );

  it.each(['double', 'triple'])(
    'is not judged the more mildly for weighing more, %s-glazed',
    async (glazing) => {
      const weights = [60, 120, 149, 150, 220, 400, 900];
      for (const [i, weight_lb] of weights.entries()) {
        const lighter = weights[i - 1];
        if (lighter === undefined) continue;
        const of = (weight: number) => withWindow({ ...BIG, glazing, weight_lb: weight });
        expect(await milder(of(lighter), of(weight_lb)), `${lighter} to ${weight_lb} lb`).toEqual([]);
      }
    },
  );
});

describe('a window buck that is used beyond its limit by a figure', () => {
  it('never carries a wall that passes, but for what an engineer may find in the rest of its sill', async () => {
    for (const weight_lb of [160, 400, 900]) {
      const { admitted } = await judge(briefOf({ windows: [{ ...BIG, weight_lb }] }), SMALL);
      expect(admitted.length, `${weight_lb} lb`).toBeGreaterThan(0);
      for (const { candidate, parts } of admitted) {
        const use = parts.buck.worst?.utilisation ?? 0;
        if (use <= 1) continue;
        // Only the strip under the frame, 2-1/4 in., is counted of what stands out.
        expect(parts.buck.worst?.verdict, candidate.id).toBe('engineer');
        expect(use, candidate.id).toBeLessThanOrEqual(parts.buck.projection_in / 2.25);
      }
    }
  });

  it('leaves engineered brackets for what no wood buck carries', async () => {
    const { ranked } = await answer(job({ windows: [{ ...BIG, weight_lb: 900 }] }));
    expect(ranked.map(({ buck }) => buck.id)).toContain('steel-bracket');
    expect(ranked[0]?.cautions.map(({ rule }) => rule)).toContain('openings.buck-needs-engineer');
  });
});

describe('a flange without a buck', () => {
  it('is never set straight over a soft board', async () => {
    const { walls } = await judge(briefOf({ place: { climate_zone: '2A' }, windows: [CASEMENT] }), SMALL);
    const onBoard = walls.filter(({ candidate }) => candidate.buck.support === 'flange-over-insulation');
    const isSoft = ({ candidate }: JudgedWall) => candidate.build.insulation.compressive_psi.value < 15;
    expect(onBoard.some((wall) => !isSoft(wall) && wall.forbids === 0)).toBe(true);
    for (const wall of onBoard.filter(isSoft))
      expect(against(wall)).toContain('openings.flange-over-soft-board');
  });

  it('is told of enlarging nothing where there is no window', async () => {
    const { ranked } = await answer(
      job({ project: 'retrofit', interior_vapour_retarder: 'class-ii', windows: [] }),
    );
    expect(ranked.length).toBeGreaterThan(0);
    for (const { cautions } of ranked)
      expect(cautions.map(({ rule }) => rule)).not.toContain('openings.enlarging-openings');
  });
});
