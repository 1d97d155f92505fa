import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { monthlyCondensation } from '../../../src/calculators/moisture/monthly-condensation.ts';
import { saturationPressure } from '../../../src/calculators/moisture/psychrometrics.ts';
import { WaterThroughYear } from '../../../src/calculators/moisture/year-of-water.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const twelve = (one: fc.Arbitrary<number>) => fc.array(one, { minLength: 12, maxLength: 12 });

const year = fc
  .record({
    inside_temp_c: twelve(within(15, 26)),
    inside_rh: twelve(within(0.2, 0.95)),
    outside_temp_c: twelve(within(-35, 38)),
    outside_rh: twelve(within(0.2, 1)),
  })
  .map(({ inside_temp_c, inside_rh, outside_temp_c, outside_rh }) => ({
    inside_temp_c,
    inside_pa: inside_temp_c.map((t, i) => saturationPressure(t) * (inside_rh[i] ?? 0)),
    outside_temp_c,
    outside_pa: outside_temp_c.map((t, i) => saturationPressure(t) * (outside_rh[i] ?? 0)),
    month_s: inside_temp_c.map((_, i) => (i % 2 ? 30 : 31) * 86_400),
  }));

const resistances = fc.array(within(0, 4), { minLength: 2, maxLength: 6 });

describe('the year of water without its months', () => {
  // `monthlyCondensation` is itself held against published cases.
  it('comes to what the whole method comes to, to the last bit', () => {
    fc.assert(
      fc.property(
        year,
        resistances,
        fc.array(fc.array(within(0.005, 60), { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 4 }),
        (conditions, r_m2kw, walls) => {
          const boards = new WaterThroughYear({ r_m2kw, rsi_m2kw: 0.13, rse_m2kw: 0.04 }, conditions);
          for (const sds of walls) {
            const sd_m = r_m2kw.map((_, i) => sds[i] ?? 1);
            const whole = monthlyCondensation({ r_m2kw, sd_m, rsi_m2kw: 0.13, rse_m2kw: 0.04 }, conditions);
            const { peak_kg_m2, dries_out, unbounded } = whole;
            expect(boards.of(sd_m)).toEqual({ peak_kg_m2, dries_out, unbounded });
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('leaves walls with planes that nothing divides to the whole method', () => {
    const conditions = {
      inside_temp_c: [20],
      inside_pa: [1200],
      outside_temp_c: [0],
      outside_pa: [500],
      month_s: [86_400],
    };
    const boards = new WaterThroughYear({ r_m2kw: [1, 0.1], rsi_m2kw: 0.13, rse_m2kw: 0.04 }, conditions);
    expect(boards.of([1, 0])).toBeNull();
    expect(boards.of([1, 1])).not.toBeNull();
  });
});
