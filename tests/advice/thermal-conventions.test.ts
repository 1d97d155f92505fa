import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { answer, job, TINY } from './pipeline.ts';

describe('heat counted by the user’s own conventions', async () => {
  const [plain, own] = await Promise.all([
    answer(job(), TINY),
    answer(job({ thermal_assumptions: { framing_fraction: 0.4, film_inside_r: 0.74 } }), TINY),
  ]);
  const first = plain.ranked[0];
  const same = own.ranked.find(({ id }) => id === first?.id) ?? own.ranked[0];

  it('is said in the answer', () => {
    expect(first?.thermal.assumptions.framing_fraction).toBe(0.25);
    expect(same?.thermal.assumptions.framing_fraction).toBe(0.4);
    expect(same?.thermal.assumptions.film_inside_r).toBe(0.74);
    expect(same?.thermal.assumptions.film_outside_r).toBe(0.17);
    expect(own.answers.map(({ field }) => field)).toContain('thermal_assumptions');
  });

  it('changes the U-factor the way more framing does', () => {
    for (const wall of own.ranked) {
      const counted = plain.ranked.find(({ id }) => id === wall.id);
      if (counted) expect(wall.u_factor).toBeGreaterThan(counted.u_factor);
    }
    expect(own.ranked.some(({ id }) => plain.ranked.some((wall) => wall.id === id))).toBe(true);
  });

  it('takes less framing for advanced framing at 24 in.', async () => {
    const framing = { material: 'wood', depth_in: 5.5, spacing_in: 24, species_gravity: 0.42 };
    const advanced = await answer(job({ framing, thermal_assumptions: { framing_style: 'advanced' } }), TINY);
    const standard = await answer(job({ framing }), TINY);
    const share = (a: typeof advanced) => a.ranked[0]?.thermal.assumptions.framing_fraction ?? Number.NaN;
    expect(share(advanced)).toBeLessThan(share(standard));
  });

  it('is refused outside its range, by name', () => {
    for (const framing_fraction of [-0.1, 1.2]) {
      expect(() => job({ thermal_assumptions: { framing_fraction } })).toThrow(Refusal);
      expect(() => job({ thermal_assumptions: { framing_fraction } })).toThrow(/framing_fraction/);
    }
  });
});
