import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { COMPLETE, scenario } from './given.ts';

const window = { count: 1, width_in: 36, height_in: 60 };
const resolve = (change: object) => resolveBrief(scenario({ ...COMPLETE, ...change }));

describe('windows that the wall has no room for', () => {
  it('are refused by name when one alone is larger than the wall', () => {
    // 96 x 120 in. are 80 ft².
    const asked = { windows: [window, { ...window, width_in: 96, height_in: 120 }], wall_area_ft2: 70 };
    expect(() => resolve(asked)).toThrow(Refusal);
    expect(() => resolve(asked)).toThrow(
      /^windows\[1\]: "96 x 120 in\." is not accepted\. Give a window smaller than the wall \(70 ft²\)/,
    );
  });
  it('are refused together when only all of them are too much', () => {
    // Ten of 15 ft² fill 150 ft² exactly.
    expect(() => resolve({ windows: [{ ...window, count: 10 }], wall_area_ft2: 150 })).toThrow(
      /^windows: "150 ft² of windows".*larger wall_area_ft2/,
    );
    expect(() => resolve({ windows: [{ ...window, count: 10 }], wall_area_ft2: 151 })).not.toThrow();
  });
  it('are refused when one is taller than the roof is high', () => {
    const tall = { windows: [{ ...window, height_in: 110 }], wall_area_ft2: 900 };
    expect(() => resolve({ ...tall, mean_roof_height_ft: 9 })).toThrow(/^windows\[0\]\.height_in: 110/);
    expect(() => resolve({ ...tall, mean_roof_height_ft: 10 })).not.toThrow();
  });
  it('all are named at once', () => {
    const both = [
      { ...window, width_in: 200, height_in: 100 },
      { ...window, width_in: 150, height_in: 100 },
    ];
    try {
      resolve({ windows: both, wall_area_ft2: 60 });
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      expect(error.issues.map(({ field }) => field)).toEqual(['windows[0]', 'windows[1]']);
    }
  });
});

describe('what is assumed', () => {
  it('is wall enough round many windows when no area is given: five times 3,000 ft²', () => {
    const { brief, assumptions } = resolve({
      windows: [{ ...window, count: 200 }],
      wall_area_ft2: 'unknown',
    });
    expect(brief.wall_area_ft2).toBe(15_000);
    expect(assumptions.map(({ field }) => field)).toContain('wall_area_ft2');
  });
  it('is the usual wall round few windows', () => {
    expect(resolve({ windows: [window], wall_area_ft2: 'unknown' }).brief.wall_area_ft2).toBe(1500);
  });
  it.each([
    [1800, 8],
    [400, 4],
    [90, 0],
  ])('on %i ft² without a word of windows: %i', (wall_area_ft2, count) => {
    const { brief } = resolve({ windows: 'unknown', wall_area_ft2 });
    expect(brief.windows.reduce((sum, w) => sum + w.count, 0)).toBe(count);
  });
});
