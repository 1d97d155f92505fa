import { describe, expect, it } from 'vitest';
import { bearingForces } from '../../src/calculators/buck/bearing-statics.ts';
import { faceScrewUse } from '../../src/calculators/buck/face-check.ts';
import { faceForces } from '../../src/calculators/buck/face-statics.ts';
import { frameLayout } from '../../src/calculators/buck/screw-layout.ts';
import { lateralReference } from '../../src/calculators/connections/lateral.ts';
import { pullThroughReference_lb } from '../../src/calculators/connections/pull-through.ts';
import { withdrawalReference_lb_per_in } from '../../src/calculators/connections/withdrawal.ts';

// No published buck calculation was found. The expected figures come from an independent calculation of the same
// free bodies, made apart from this code; tolerance 0.5 %.
const REL_TOL = 0.005;
function near(actual: number, expected: number) {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.max(Math.abs(expected) * REL_TOL, 1e-9));
}

describe('bearing buck, independent calculation', () => {
  // Setting blocks 2 × 4 in. on a 1.5 in. sill piece: 2 × (4 + 2 × 1.5) = 14 in.; strip 1.5 in.
  // No. 10 ties, 1.5 in. of thread, dead load 0.9; compression strengths 425 psi (spruce-pine-fir), 405 psi × 0.67 wet (hem-fir).
  const cases = [
    {
      id: 'set back in a 2x6 wall',
      W: 70,
      e: -1,
      L: 5.5,
      d: 4.5,
      g: 0.42,
      fc: 425,
      T: 0,
      R: 70,
      f: 2.5,
      bearing: 0.0058824,
      tie: 0,
    },
    {
      id: '2 in. out, 2x4 wall',
      W: 75,
      e: 1,
      L: 3.5,
      d: 2.75,
      g: 0.42,
      fc: 425,
      T: 65.625,
      R: 140.62,
      f: 6.6964,
      bearing: 0.015756,
      tie: 0.12723,
    },
    {
      id: '3.5 in. out, 2x4 wall',
      W: 130,
      e: 2.25,
      L: 3.5,
      d: 2.75,
      g: 0.42,
      fc: 425,
      T: 195,
      R: 325,
      f: 15.476,
      bearing: 0.036415,
      tie: 0.37805,
    },
    {
      id: '3.5 in. out, 2x6 wall',
      W: 130,
      e: 2.25,
      L: 5.5,
      d: 4.75,
      g: 0.42,
      fc: 425,
      T: 97.5,
      R: 227.5,
      f: 10.833,
      bearing: 0.02549,
      tie: 0.18902,
    },
    {
      id: '5 in. out, damp hem-fir',
      W: 320,
      e: 3,
      L: 5.5,
      d: 4.75,
      g: 0.43,
      fc: 405 * 0.67,
      T: 300,
      R: 620,
      f: 29.524,
      bearing: 0.1088,
      tie: 0.55487,
    },
  ];
  it.each(cases)('$id', (c) => {
    const forces = bearingForces({
      weight_lb: c.W,
      eccentricity_in: c.e,
      bearing_length_in: c.L,
      tie_distance_in: c.d,
      spread_length_in: 14,
      strip_in: 1.5,
    });
    near(forces.tie_lb, c.T);
    near(forces.reaction_lb, c.R);
    near(forces.stress_psi, c.f);
    near(forces.stress_psi / c.fc, c.bearing);
    const tieCapacity_lb = withdrawalReference_lb_per_in('wood-screw', 0.19, c.g) * 1.5 * 0.9;
    near(forces.tie_lb / 4 / tieCapacity_lb, c.tie);
  });
});

describe('face-fastened buck, independent calculation', () => {
  // No. 10 screw (root 0.152 in., also for the reduction term), 80 ksi, 1.5 in. of thread, 1.5 in. side,
  // 7/16 in. of sheathing as gap, 3/8 in. head, spruce-pine-fir throughout.
  const capacity = {
    lateral_lb: lateralReference({
      fastener: 'wood-screw',
      diameter_in: 0.19,
      root_diameter_in: 0.152,
      bending_yield_psi: 80_000,
      side: { length_in: 1.5, specific_gravity: 0.42 },
      main: { length_in: 1.5, specific_gravity: 0.42 },
      gap_in: 0.4375,
      load_to_grain: 'perpendicular',
      reduction_diameter: 'root',
    }).reference_lb,
    withdrawal_lb: withdrawalReference_lb_per_in('wood-screw', 0.19, 0.42) * 1.5,
    pull_through_lb: pullThroughReference_lb(0.375, 1.5, 0.42),
  };
  const screw = { ...capacity, tension_lb: Math.min(capacity.withdrawal_lb, capacity.pull_through_lb) };

  it('one screw under dead load', () => {
    near(screw.lateral_lb * 0.9, 54.78);
    near(screw.withdrawal_lb * 0.9, 128.95);
    near(screw.pull_through_lb * 0.9, 120.99);
  });

  const cases = [
    {
      id: 'rigid frame 36 × 60 in., 75 lb',
      frame: { w: 36, h: 60, s: 12 },
      W: 75,
      e: 1,
      V: 3.75,
      T: 0.1515,
      use: 0.068451,
    },
    { id: 'its sill piece alone', sill: 4, W: 75, e: 1, V: 18.75, T: 75, use: 0.6844 },
    {
      id: 'rigid frame 72 × 72 in., 320 lb',
      frame: { w: 72, h: 72, s: 16 },
      W: 320,
      e: 2.25,
      V: 16,
      T: 1.1542,
      use: 0.29201,
    },
    { id: 'its sill piece alone, six screws', sill: 6, W: 320, e: 2.25, V: 53.333, T: 480, use: 4.0506 },
    {
      id: 'rigid frame 48 × 60 in., 130 lb, 24.4 psf of suction',
      frame: { w: 48, h: 60, s: 12 },
      W: 130,
      e: 2.25,
      wind_lb: 24.4 * 20,
      V: 5.9091,
      T: 0.52531,
      Tw: 22.182,
      use: 0.11745,
    },
  ];
  it.each(cases)('$id', (c) => {
    const rows = c.frame
      ? frameLayout(c.frame.w, c.frame.h, c.frame.s, 1.5, 4).rows
      : [{ height_in: 0.75, count: c.sill ?? 0 }];
    const forces = faceForces({
      weight_lb: c.W,
      eccentricity_in: c.e,
      suction_lb: c.wind_lb ?? 0,
      rows,
      suction_screws: rows.reduce((sum, row) => sum + row.count, 0),
      contact_in: 1,
    });
    near(forces.shear_lb, c.V);
    near(forces.gravity_tension_lb, c.T);
    near(forces.wind_tension_lb, c.Tw ?? 0);
    near(faceScrewUse(forces, screw, c.wind_lb ? 1.6 : 0.9), c.use);
  });
});
