import { describe, expect, it } from 'vitest';
import { bearingForces, jambScrewShear_lb } from '../../../src/calculators/buck/bearing-statics.ts';
import { faceForces } from '../../../src/calculators/buck/face-statics.ts';
import { frameLayout, screwsAlong } from '../../../src/calculators/buck/screw-layout.ts';
import { compressionPerp_psi, memberNamed } from '../../../src/calculators/buck/wood-table.ts';
import { TABLES } from './tables.ts';

describe('bearingForces', () => {
  const sill = {
    weight_lb: 100,
    eccentricity_in: 2,
    bearing_length_in: 3.5,
    tie_distance_in: 2.75,
    spread_length_in: 14,
    strip_in: 1.5,
  };
  it('balances moments about the tie and vertical forces', () => {
    const { tie_lb, reaction_lb } = bearingForces(sill);
    expect(reaction_lb).toBeCloseTo(100 + tie_lb, 9);
    // About the tie at x = −2.75: W (2 + 2.75) = R (2.75 − 0.75).
    expect(100 * 4.75).toBeCloseTo(reaction_lb * 2, 9);
  });
  it('is continuous where the tie begins to pull', () => {
    const just = (eccentricity_in: number) => bearingForces({ ...sill, eccentricity_in });
    expect(just(-0.75 - 1e-9).stress_psi).toBeCloseTo(just(-0.75 + 1e-9).stress_psi, 6);
    expect(just(-0.75).tie_lb).toBe(0);
  });
  it('refuses ties without a lever', () => {
    expect(() => bearingForces({ ...sill, tie_distance_in: 0.5 })).toThrow(/tie_distance_in/);
  });
});

describe('jambScrewShear_lb', () => {
  // Two screws 10 in. apart, 60 lb at 5 in.: 30 lb each down, couple 300 / 10 = 30 lb each sideways.
  it('matches a two-screw couple by hand', () => {
    expect(jambScrewShear_lb({ weight_lb: 60, lever_in: 5, screws: 2, spacing_in: 10 })).toEqual({
      direct_lb: 30,
      couple_lb: 30,
    });
  });
});

describe('faceForces', () => {
  it('balances the overturning moment about the contact strip', () => {
    const { rows, total } = frameLayout(36, 48, 12, 1.5, 4);
    const forces = faceForces({
      weight_lb: 100,
      eccentricity_in: 3,
      suction_lb: 0,
      rows,
      suction_screws: total,
      contact_in: 1,
    });
    const top = Math.max(...rows.map((row) => row.height_in)) - 0.5;
    const resisted = rows.reduce((sum, row) => {
      const y = row.height_in - 0.5;
      return sum + (row.count * forces.gravity_tension_lb * y ** 2) / top;
    }, 0);
    expect(resisted).toBeCloseTo(300, 6);
  });
  it('refuses rows that give no lever', () => {
    const flat = { weight_lb: 1, eccentricity_in: 1, suction_lb: 0, suction_screws: 2, contact_in: 1 };
    expect(() => faceForces({ ...flat, rows: [{ height_in: 0.5, count: 2 }] })).toThrow(/rows/);
  });
});

describe('screwsAlong', () => {
  it.each([
    [36, 12, 4],
    [60, 12, 6],
    [72, 16, 5],
    [8, 12, 2],
    [32, 12, 3],
    [32.1, 12, 4],
  ])('%f in. at %i in.: %i screws, first and last 4 in. from the corners', (length, spacing, count) => {
    expect(screwsAlong(length, spacing, 4)).toBe(count);
  });
});

describe('wood table', () => {
  it('takes the weakest listed species of that gravity or more', () => {
    expect(compressionPerp_psi(0.36, TABLES.wood)).toBe(335);
    expect(compressionPerp_psi(0.42, TABLES.wood)).toBe(405);
    expect(compressionPerp_psi(0.5, TABLES.wood)).toBe(565);
    expect(compressionPerp_psi(0.7, TABLES.wood)).toBe(565);
  });
  it('names the members it knows when asked for another', () => {
    expect(() => memberNamed('3x5', TABLES.wood)).toThrow(/member\.nominal: "3x5".*"2x4".*"plywood-3\/4"/);
  });
});
