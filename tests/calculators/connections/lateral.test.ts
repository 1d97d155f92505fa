import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../../src/base/parse-input.ts';
import { Refusal } from '../../../src/base/refusal.ts';
import { computeLateral, lateralInputSchema } from '../../../src/calculators/connections/lateral.ts';
import { reductionTerms } from '../../../src/calculators/connections/reduction-term.ts';

const screw = {
  fastener: 'wood-screw',
  diameter_in: 0.19,
  root_diameter_in: 0.152,
  bending_yield_psi: 80_000,
  side: { thickness_in: 0.75, specific_gravity: 0.42 },
  main: { penetration_in: 1.9, specific_gravity: 0.42 },
  gap_in: 0,
  load_duration: 1,
  load_to_grain: 'parallel',
};
const run = (over: object = {}) => computeLateral(parseInput(lateralInputSchema, { ...screw, ...over }));

describe('reductionTerms', () => {
  it('takes 2.2 to 0.17 in. and 10 D + 0.5 above', () => {
    expect(reductionTerms('nail', 0.162, 0.162, 'parallel').IV).toBe(2.2);
    expect(reductionTerms('nail', 0.2, 0.2, 'parallel').IV).toBeCloseTo(2.5, 12);
  });
  it('looks at the nominal diameter of a wood screw unless told otherwise', () => {
    expect(reductionTerms('wood-screw', 0.19, 0.152, 'parallel').IIIs).toBeCloseTo(2.4, 12);
    expect(reductionTerms('wood-screw', 0.19, 0.152, 'parallel', 'root').IIIs).toBe(2.2);
  });
  it('ignores the grain under 1/4 in. and takes 25 % more across it above', () => {
    expect(reductionTerms('nail', 0.148, 0.148, 'perpendicular').IV).toBe(2.2);
    const along = reductionTerms('lag-screw', 0.5, 0.371, 'parallel');
    const across = reductionTerms('lag-screw', 0.5, 0.371, 'perpendicular');
    expect([along.Im, along.II, along.IV]).toEqual([4, 3.6, 3.2]);
    expect([across.Im, across.II, across.IV]).toEqual([5, 4.5, 4]);
  });
  it('treats a 1/4 in. lag, whose root is thinner, as slender times the grain term', () => {
    // 10 × 0.173 + 0.5 = 2.23; × 1.25 = 2.7875.
    expect(reductionTerms('lag-screw', 0.25, 0.173, 'perpendicular').Im).toBeCloseTo(2.7875, 9);
  });
});

describe('computeLateral', () => {
  // Independent calculation: No. 10 screw, spruce-pine-fir, 3/4 in. side: 77 lb on the nominal diameter's term.
  it('matches an independent calculation', () => {
    const answer = run();
    expect(Math.abs(answer.reference_lb - 77)).toBeLessThan(0.5);
    expect(answer.reference_lb).toBe(answer.modes_lb[answer.governing]);
    expect(answer.reference_lb).toBe(Math.min(...Object.values(answer.modes_lb)));
  });
  it('divides the bearing modes by the same term: Im by hand', () => {
    // 16600 × 0.42^1.84 = 3364.2 psi; × 0.152 × 1.9 / 2.4 = 404.8 lb.
    expect(run().modes_lb.Im).toBeCloseTo(404.8, 0);
  });
  it('multiplies by load duration, wet service, heat and end grain', () => {
    const { reference_lb } = run();
    expect(run({ load_duration: 1.6 }).allowable_lb).toBeCloseTo(1.6 * reference_lb, 9);
    expect(run({ wet_service: true, temperature_f: 120 }).allowable_lb).toBeCloseTo(0.49 * reference_lb, 9);
    expect(run({ end_grain: true }).allowable_lb).toBeCloseTo(0.67 * reference_lb, 9);
  });
  it('assumes ordinary steel when the bending yield is not given, and says so', () => {
    const { bending_yield_psi: _, ...rest } = screw;
    const answer = computeLateral(parseInput(lateralInputSchema, rest));
    expect(answer.reference_lb).toBe(run().reference_lb);
    expect(answer.notes.join(' ')).toContain('80000 psi assumed');
  });
  it('leaves half the tip off a short penetration only', () => {
    const short = { main: { penetration_in: 1.5, specific_gravity: 0.42 } };
    const ratio = run({ ...short, tip_length_in: 0.38 }).modes_lb.Im / run(short).modes_lb.Im;
    expect(ratio).toBeCloseTo(1.31 / 1.5, 9);
    expect(run({ tip_length_in: 0.38 }).modes_lb.Im).toBe(run().modes_lb.Im);
  });
  it('needs no root diameter for a nail, and ignores one', () => {
    const { root_diameter_in: _, ...rest } = screw;
    const nail = { ...rest, fastener: 'nail', diameter_in: 0.148, bending_yield_psi: 90_000 };
    const plain = computeLateral(parseInput(lateralInputSchema, nail));
    const given = computeLateral(parseInput(lateralInputSchema, { ...nail, root_diameter_in: 0.12 }));
    expect(given.modes_lb).toEqual(plain.modes_lb);
  });
  it('says what the gap leaves out', () => {
    expect(run({ gap_in: 2 }).notes.join(' ')).toContain('insulation between the members adds nothing');
    expect(run({ gap_in: 2 }).source.join(' ')).toContain('Technical Report 12');
  });

  it.each([
    [{ diameter_in: 0.09 }, /diameter_in/],
    [{ diameter_in: 1.01 }, /diameter_in/],
    [{ root_diameter_in: undefined }, /root_diameter_in/],
    [{ root_diameter_in: 0.2 }, /root_diameter_in/],
    [{ main: { penetration_in: 1, specific_gravity: 0.42 } }, /main\.penetration_in: 1 .*1\.14 in\./],
    [{ gap_in: -1 }, /gap_in/],
    [{ load_to_grain: 'sideways' }, /load_to_grain/],
    [{ side: { thickness_in: 0.75 } }, /side\.specific_gravity/],
    [{ tip_length_in: 1.95 }, /tip_length_in/],
    [{ load_duration: 0.5 }, /load_duration/],
  ])('refuses %o', (over, message) => {
    expect(() => run(over)).toThrow(message);
  });

  const gap = fc.double({ min: 0, max: 6, noNaN: true });
  const gravity = fc.double({ min: 0.3, max: 0.75, noNaN: true });
  it('never rises with the gap', () => {
    fc.assert(
      fc.property(gap, gap, (a, b) => {
        expect(run({ gap_in: Math.max(a, b) }).allowable_lb).toBeLessThanOrEqual(
          run({ gap_in: Math.min(a, b) }).allowable_lb * (1 + 1e-12),
        );
      }),
    );
  });
  it('never falls with the gravity of either member', () => {
    fc.assert(
      fc.property(gravity, gravity, gravity, gravity, gap, (s1, s2, m1, m2, g) => {
        const at = (side: number, main: number) =>
          run({
            gap_in: g,
            side: { thickness_in: 0.75, specific_gravity: side },
            main: { penetration_in: 1.5, specific_gravity: main },
          }).allowable_lb;
        expect(at(Math.max(s1, s2), Math.max(m1, m2))).toBeGreaterThanOrEqual(
          at(Math.min(s1, s2), Math.min(m1, m2)) * (1 - 1e-12),
        );
      }),
    );
  });
  it('never carries more across the grain than along it', () => {
    const lag = {
      fastener: 'lag-screw',
      diameter_in: 0.375,
      root_diameter_in: 0.265,
      bending_yield_psi: 45_000,
      main: { penetration_in: 3, specific_gravity: 0.42 },
    };
    expect(run({ ...lag, load_to_grain: 'perpendicular' }).reference_lb).toBeLessThan(
      run({ ...lag, load_to_grain: 'parallel' }).reference_lb,
    );
  });
});

describe('a field out of range', () => {
  const told = (over: object) => {
    try {
      run(over);
    } catch (error) {
      if (error instanceof Refusal) return error.issues.map(({ field }) => field);
      throw error;
    }
    return [];
  };

  it('is accused alone, and not what is measured by it', () => {
    expect(told({ diameter_in: -1 })).toEqual(['diameter_in']);
    expect(told({ root_diameter_in: 1e308 })).toEqual(['root_diameter_in']);
    expect(told({ main: { penetration_in: -1, specific_gravity: 0.42 } })).toEqual(['main.penetration_in']);
  });

  it('leaves the checks between sound fields standing', () => {
    expect(told({ gap_in: -1, root_diameter_in: 0.5 })).toEqual(['gap_in', 'root_diameter_in']);
    expect(told({ gap_in: -1, tip_length_in: 2 })).toEqual(['gap_in', 'tip_length_in']);
  });
});
