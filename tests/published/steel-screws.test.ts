import { describe, expect, it } from 'vitest';
import { pullOutAllowable_lb } from '../../src/calculators/steel-screws.ts';

describe('screw pull-out from steel of Fu 45 ksi, factor 3.0', () => {
  // Table of an evaluation-service report in a permit file, whole pounds.
  const THICKNESS_IN = [0.018, 0.024, 0.03, 0.036, 0.048, 0.06, 0.075, 0.105, 0.125];
  const PRINTED_LB = [
    ['No. 10', 0.19, [44, 58, 73, 87, 116, 145, 182, 254, 303]],
    ['No. 12', 0.216, [50, 66, 83, 99, 132, 165, 207, 289, 344]],
    ['1/4 in', 0.25, [57, 77, 96, 115, 153, 191, 239, 335, 398]],
  ] as const;

  it.each(PRINTED_LB)('gives the printed pounds for %s', (_, diameter, printed) => {
    printed.forEach((pounds, i) => {
      const t = THICKNESS_IN[i] ?? Number.NaN;
      // Rounded to whole pounds.
      expect(Math.abs(pullOutAllowable_lb(diameter, t, 45_000) - pounds), `${t} in`).toBeLessThanOrEqual(0.5);
    });
  });
});
