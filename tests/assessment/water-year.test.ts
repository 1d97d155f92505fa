import { describe, expect, it } from 'vitest';
import { waterYear } from '../../src/assessment/water-year.ts';
import { board, briefOf, judge, KNOWLEDGE, withCatalogue } from '../advice/pipeline.ts';

const market = withCatalogue({
  builds: [board('polyiso', 1), board('eps', 1.5), board('mineral-wool', 4)],
  bucks: KNOWLEDGE.catalogue.bucks.filter((b) => b.id === 'plywood-box'),
});

describe('water by month', async () => {
  const places = [
    { state: 'MN', county: 'Stearns' },
    { state: 'WA', county: 'King' },
    { state: 'TX', county: 'Harris' },
  ];
  const cases = [];
  for (const place of places) {
    const { walls, context } = await judge(briefOf({ place }), market);
    for (const wall of walls)
      cases.push({ place: place.county, wall, year: waterYear(wall.candidate, context) });
  }
  const known = cases.flatMap(({ place, wall, year }) => ('why' in year ? [] : [{ place, wall, year }]));

  it('is worked out for every wall whose lining is known', () => {
    expect(known.length).toBe(cases.length);
    expect(known.length).toBeGreaterThan(300);
    expect(known.some(({ year }) => year.peak_g_m2 > 50)).toBe(true);
    expect(known.some(({ year }) => year.peak_g_m2 === 0)).toBe(true);
  });

  it('has twelve months, one after the other, and adds up to the fact that the rules read', () => {
    for (const { wall, year } of known) {
      expect(year.months).toHaveLength(12);
      const first = year.months[0]?.month ?? 0;
      expect(year.months.map(({ month }) => month)).toEqual(
        Array.from({ length: 12 }, (_, i) => ((first - 1 + i) % 12) + 1),
      );
      let held = 0;
      for (const month of year.months) {
        held += month.condensate_g_m2;
        expect(month.accumulated_g_m2).toBeCloseTo(held, 6);
        expect(month.accumulated_g_m2).toBeGreaterThanOrEqual(0);
      }
      const peak = Math.max(...year.months.map((month) => month.accumulated_g_m2));
      expect(year.peak_g_m2).toBeCloseTo(peak, 9);
      expect(wall.verdicts.facts['moisture.condensate_peak_g_m2']).toBeCloseTo(peak, 9);
      expect(wall.verdicts.facts['moisture.dries_within_year']).toBe(held < 1e-6);
    }
  });

  it('begins in the month in which water first forms', () => {
    for (const { year } of known) {
      if (year.peak_g_m2 === 0) expect(year.months[0]?.month).toBe(1);
      else expect(year.months[0]?.condensate_g_m2).toBeGreaterThan(0);
    }
  });

  it('names the planes that hold it, the wettest first, and none in a dry wall', () => {
    for (const { year } of known) {
      expect(year.planes.length > 0).toBe(year.peak_g_m2 >= 0.01);
      const peaks = year.planes.map((plane) => plane.peak_g_m2);
      expect(peaks).toEqual(peaks.toSorted((a, b) => b - a));
      expect(peaks[0] ?? 0).toBeLessThanOrEqual(year.peak_g_m2 + 1e-9);
    }
    const wettest = known.toSorted((a, b) => b.year.peak_g_m2 - a.year.peak_g_m2)[0];
    expect(wettest?.place).toBe('Stearns');
    expect(wettest?.year.planes[0]?.where).toMatch(/^between the (cavity insulation|sheathing) and the/);
  });

  it('says what is not known instead of being empty', async () => {
    const retrofit = { project: 'retrofit', interior_vapour_retarder: 'unknown' };
    const open = await judge(briefOf(retrofit), market);
    const wall = open.walls[0];
    if (!wall) throw new Error('no wall');
    expect(waterYear(wall.candidate, open.context)).toEqual({
      why: 'The interior vapour retarder is not known.',
    });
    const own = {
      place: {
        monthly_mean_temp_f: [10, 14, 28, 44, 58, 72, 82, 78, 64, 48, 32, 16],
        monthly_precip_in: [1, 1, 2, 3, 4, 5, 4, 4, 3, 2, 2, 1],
      },
    };
    const dry = await judge(briefOf(own), market);
    const other = dry.walls[0];
    if (!other) throw new Error('no wall');
    expect(waterYear(other.candidate, dry.context)).toEqual({
      why: 'The monthly temperature and humidity of the place are not known.',
    });
  });
});
