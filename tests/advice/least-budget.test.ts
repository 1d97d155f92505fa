import { describe, expect, it } from 'vitest';
import { DOLLARS_MEAN } from '../../src/conversation/understanding/dollars.ts';
import { briefOf, judge, TINY } from './pipeline.ts';

describe('the budget that is asked back', () => {
  it('lies below the lowest price of the cheapest wall, and not far', async () => {
    const { walls } = await judge(briefOf({ windows: [], crew_skill: 'first-time' }), TINY);
    const lowest = Math.min(...walls.map(({ parts }) => parts.cost.low));
    expect(lowest).toBeGreaterThan(DOLLARS_MEAN.least_usd_per_ft2);
    expect(lowest).toBeLessThan(1.5 * DOLLARS_MEAN.least_usd_per_ft2);
  });
});
