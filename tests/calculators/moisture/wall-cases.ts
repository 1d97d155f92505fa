import fc from 'fast-check';
import type { YearConditions } from '../../../src/calculators/moisture/monthly-condensation.ts';
import { vapourPressure } from '../../../src/calculators/moisture/psychrometrics.ts';
import type { WallLayers } from '../../../src/calculators/moisture/wall-planes.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const DAY_S = 86_400;

/** Twelve months of 30 days with the given outdoor air and steady indoor air. */
export function steadyIndoors(
  inside: { temp_c: number; rh: number },
  outside: readonly { temp_c: number; rh: number }[],
): YearConditions {
  return {
    inside_temp_c: outside.map(() => inside.temp_c),
    inside_pa: outside.map(() => vapourPressure(inside.temp_c, inside.rh)),
    outside_temp_c: outside.map((m) => m.temp_c),
    outside_pa: outside.map((m) => vapourPressure(m.temp_c, m.rh)),
    month_s: outside.map(() => 30 * DAY_S),
  };
}

/** Walls of two to six layers, some of them cut into parts by the method, some with little vapour resistance. */
export function anyWall(max_r_m2kw: number): fc.Arbitrary<WallLayers> {
  return fc
    .array(fc.tuple(between(0, max_r_m2kw), between(0.02, 20)), { minLength: 2, maxLength: 6 })
    .map((layers) => ({
      r_m2kw: layers.map(([r]) => r),
      sd_m: layers.map(([, sd]) => sd),
      rsi_m2kw: 0.13,
      rse_m2kw: 0.04,
    }));
}

/** Framed walls of four layers whose water forms at the sheathing: open inside, tight outside. */
export const tightOutside: fc.Arbitrary<WallLayers> = fc
  .tuple(between(0.1, 1), between(1, 4), between(0.05, 0.2), between(4, 20), between(0, 1), between(0.1, 2))
  .map(([lining_sd, cavity_r, cavity_sd, sheathing_sd, outer_r, outer_sd]) => ({
    r_m2kw: [0.08, cavity_r, 0.1, outer_r],
    sd_m: [lining_sd, cavity_sd, sheathing_sd, outer_sd],
    rsi_m2kw: 0.13,
    rse_m2kw: 0.04,
  }));

/** Years with a cold and a warm side of the calendar, cold to hot places, dry to damp rooms. */
export const anyYear: fc.Arbitrary<YearConditions> = fc
  .record({
    mean_c: between(-5, 25),
    swing_c: between(0, 20),
    outside_rh: between(0.3, 1),
    inside_c: between(18, 26),
    inside_rh: between(0.2, 0.8),
  })
  .map((y) =>
    steadyIndoors(
      { temp_c: y.inside_c, rh: y.inside_rh },
      Array.from({ length: 12 }, (_, month) => ({
        temp_c: y.mean_c - y.swing_c * Math.cos((Math.PI * month) / 6),
        rh: y.outside_rh,
      })),
    ),
  );

export const winterMonth = fc.record({
  outside_c: between(-30, 5),
  outside_rh: between(0.5, 1),
  inside_rh: between(0.3, 0.8),
});
