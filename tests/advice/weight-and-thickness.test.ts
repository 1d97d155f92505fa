import { describe, expect, it, vi } from 'vitest';
import type { JudgedWall } from '../../src/advice/judge-walls.ts';
import { briefOf, judge } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const OF_WEIGHT = [
  'structure.weight-far-past-the-table',
  'structure.weight-over-the-timber-standard',
  'structure.weight-and-wind',
];

const isTooHeavy = ({ verdicts }: JudgedWall) =>
  OF_WEIGHT.some((rule) => verdicts.verdictOf(rule) === 'forbid');

/** Pairs of walls with the same cladding over the same boards, of which the thinner is too heavy for its fasteners. */
function thickerThanTooHeavy(walls: readonly JudgedWall[]): JudgedWall[] {
  const thinnest = new Map<string, number>();
  const kind = ({ candidate: { cladding, build } }: JudgedWall) => `${cladding.id}/${build.insulation.id}`;
  for (const wall of walls) {
    const { thickness_in } = wall.candidate.build;
    if (isTooHeavy(wall))
      thinnest.set(kind(wall), Math.min(thickness_in, thinnest.get(kind(wall)) ?? thickness_in));
  }
  return walls.filter((wall) => wall.candidate.build.thickness_in > (thinnest.get(kind(wall)) ?? 99));
}

describe.each([
  { studs: 'wood', framing: { material: 'wood', depth_in: 5.5, spacing_in: 24 }, cavity_insulation_r: 20 },
  { studs: 'steel', framing: { material: 'steel', depth_in: 6, spacing_in: 24 }, cavity_insulation_r: 19 },
])('a cladding too heavy for its fasteners on $studs studs', (job) => {
  it('is too heavy over thicker boards as well, past the end of the tables too', async () => {
    const { studs: _, ...answers } = job;
    const { walls } = await judge(
      briefOf({ ...answers, place: { climate_zone: '6B' }, finish: 'any', windows: [] }),
    );
    const thicker = thickerThanTooHeavy(walls);
    expect(thicker.length).toBeGreaterThan(50);
    expect(thicker.filter((wall) => !isTooHeavy(wall)).map((wall) => wall.candidate.id)).toEqual([]);
  });
});
