import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openingNeeded, sillRise_in, windowLeft } from '../../../src/calculators/buck/opening.ts';

const room = { clearance_in: 0.5, buck_takes_in: 1.5, sill_slope_in: 0.5 };

describe('rough opening', () => {
  // 36 + 2 × (0.5 + 1.5) = 40; 60 + 4 + 0.5 = 64.5.
  it('adds clearance and buck on both sides, and the sill slope in height', () => {
    expect(openingNeeded({ unit_width_in: 36, unit_height_in: 60, ...room })).toEqual({
      width_in: 40,
      height_in: 64.5,
    });
  });
  it('leaves a smaller window when the opening cannot change, the same one with a buck on the face', () => {
    const opening = { opening_width_in: 37, opening_height_in: 61 };
    expect(windowLeft({ ...opening, ...room })).toEqual({ width_in: 33, height_in: 56.5 });
    expect(windowLeft({ ...opening, clearance_in: 0.5, buck_takes_in: 0, sill_slope_in: 0 })).toEqual({
      width_in: 36,
      height_in: 60,
    });
  });
  it('is its own reverse', () => {
    const n = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        n(6, 200),
        n(6, 170),
        n(0, 2),
        n(0, 6),
        n(0, 4),
        (w, h, clearance_in, buck_takes_in, slope) => {
          const between = { clearance_in, buck_takes_in, sill_slope_in: slope };
          const opening = openingNeeded({ unit_width_in: w, unit_height_in: h, ...between });
          const unit = windowLeft({
            opening_width_in: opening.width_in + 1e-9,
            opening_height_in: opening.height_in + 1e-9,
            ...between,
          });
          expect(unit.width_in).toBeCloseTo(w, 6);
          expect(unit.height_in).toBeCloseTo(h, 6);
        },
      ),
    );
  });
  it('refuses an opening that the buck fills', () => {
    expect(() => windowLeft({ opening_width_in: 9, opening_height_in: 60, ...room })).toThrow(
      /opening_width_in: 9 .*at least 10 in\./,
    );
    expect(() => openingNeeded({ unit_width_in: 36, unit_height_in: 60, ...room, clearance_in: -1 })).toThrow(
      /clearance_in/,
    );
  });
  it('rises 0.55 in. over a 5-1/4 in. sill at 6°', () => {
    expect(sillRise_in(5.25, 6)).toBeCloseTo(0.552, 3);
    expect(() => sillRise_in(5.25, 60)).toThrow(/slope_deg/);
  });
});
