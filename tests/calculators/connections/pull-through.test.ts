import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../../src/base/parse-input.ts';
import {
  computePullThrough,
  pullThroughInputSchema,
  pullThroughReference_lb,
} from '../../../src/calculators/connections/pull-through.ts';

const head = fc.double({ min: 0.1, max: 1.5, noNaN: true });
const side = fc.double({ min: 0.1, max: 4, noNaN: true });
const gravity = fc.double({ min: 0.3, max: 0.75, noNaN: true });

describe('pullThroughReference_lb', () => {
  // By hand, thin branch: 690 π × 0.375 × 0.42² × 0.5 = 71.70; thick branch: 1725 π × 0.375² × 0.42² = 134.43.
  it('matches hand calculations of both branches', () => {
    expect(pullThroughReference_lb(0.375, 0.5, 0.42)).toBeCloseTo(71.7, 1);
    expect(pullThroughReference_lb(0.375, 1.5, 0.42)).toBeCloseTo(134.43, 1);
  });
  it('joins the branches without a step at 2.5 head diameters', () => {
    fc.assert(
      fc.property(head, gravity, (d, g) => {
        const thick = 1725 * Math.PI * d ** 2 * g ** 2;
        expect(pullThroughReference_lb(d, 2.5 * d, g)).toBeCloseTo(thick, 6);
      }),
    );
  });
  it('never falls with head, thickness or gravity', () => {
    fc.assert(
      fc.property(head, head, side, side, gravity, gravity, (d1, d2, t1, t2, g1, g2) => {
        expect(
          pullThroughReference_lb(Math.max(d1, d2), Math.max(t1, t2), Math.max(g1, g2)),
        ).toBeGreaterThanOrEqual(
          pullThroughReference_lb(Math.min(d1, d2), Math.min(t1, t2), Math.min(g1, g2)),
        );
      }),
    );
  });
});

describe('computePullThrough', () => {
  const base = { head_diameter_in: 0.375, side_thickness_in: 0.5, specific_gravity: 0.42 };
  it('applies load duration and wet service', () => {
    const answer = computePullThrough(
      parseInput(pullThroughInputSchema, { ...base, load_duration: 1.6, wet_service: true }),
    );
    expect(answer.allowable_lb).toBeCloseTo(71.7 * 1.6 * 0.7, 1);
    expect(answer.reference_lb).toBeCloseTo(71.7, 1);
  });
  it('says that the equation is from memory and for round heads', () => {
    const answer = computePullThrough(parseInput(pullThroughInputSchema, base));
    expect(answer.notes.join(' ')).toMatch(/round heads.*from memory/s);
  });
  it.each([
    [{ head_diameter_in: 0 }, /head_diameter_in/],
    [{ side_thickness_in: -1 }, /side_thickness_in/],
    [{ specific_gravity: null }, /specific_gravity/],
  ])('refuses %o', (over, message) => {
    expect(() => computePullThrough(parseInput(pullThroughInputSchema, { ...base, ...over }))).toThrow(
      message,
    );
  });
});
