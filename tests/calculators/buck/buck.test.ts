import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../../src/base/parse-input.ts';
import { Refusal } from '../../../src/base/refusal.ts';
import { buckInputSchema, computeBuck } from '../../../src/calculators/buck/buck.ts';
import { TABLES } from './tables.ts';

const window = { width_in: 36, height_in: 60, weight_lb: 110, mounting: 'flanged' };
const base = {
  support: 'bears-on-sill',
  member: { nominal: '2x4', specific_gravity: 0.42 },
  projection_in: 3,
  window,
  outward_wind_psf: 25,
  screw: { diameter_in: 0.19, root_diameter_in: 0.152, length_in: 6, bending_yield_psi: 80_000 },
  screw_spacing_in: 12,
  framing_gravity: 0.42,
};
type Over = Record<string, unknown>;
const run = (over: Over = {}) => computeBuck(parseInput(buckInputSchema, { ...base, ...over }), TABLES);
const face = (over: Over = {}) => run({ support: 'face-fastened', ...over });
const seen = (over: Over) => ({ ...window, ...over });

describe('bearing on the rough sill', () => {
  it('carries an ordinary window on a 2x4 buck 3 in. out (common practice, no source)', () => {
    const answer = run();
    expect(answer.verdict).toBe('fits');
    expect(answer.screws_per_side).toBe(6);
    expect(answer.min_screw_length_in).toBe(3);
    for (const use of Object.values(answer.utilisation)) expect(use).toBeLessThan(1);
    expect(answer.why).toContain('110 lb at 3 in.');
  });
  it('barely uses the rough sill in bearing', () => {
    expect(run({ framing_depth_in: 5.5 }).utilisation.bearing).toBeLessThan(0.11);
  });
  it('uses the ties less in a deeper wall: the lever doubles from 2 to 4 in.', () => {
    const [shallow, deep] = [run(), run({ framing_depth_in: 5.5 })];
    expect(deep.utilisation.gravity ?? 9).toBeLessThan(shallow.utilisation.gravity ?? 0);
  });
  // The rough sill is one flat 2x, 1.5 in.: thread that reaches below it past it holds nothing.
  it('counts the ties of the sill with no more thread than the rough sill is thick', () => {
    const heavy = {
      member: { nominal: 'LVL-1-3/4', specific_gravity: 0.5 },
      projection_in: 6,
      window: seen({ weight_lb: 140 }),
      head_diameter_in: 0.8,
    };
    const gravity = (thread_length_in: number) =>
      run({ ...heavy, thread_length_in }).utilisation.gravity ?? 0;
    expect(gravity(1.5)).toBeGreaterThan(gravity(6) - 1e-9);
    expect(gravity(3)).toBe(gravity(1.5));
    expect(gravity(1)).toBeGreaterThan(gravity(1.5));
  });
  it('counts jambs, not a lumber sill across its grain, and so needs joined corners', () => {
    const open = run({ corners_joined: false });
    expect(open.verdict).toBe('does-not-fit');
    expect(open.why).toContain('across its grain');
    expect(run().notes.join(' ')).toContain('the jambs are counted');
  });
  it('lets a panel sill bend across the wall without joined corners', () => {
    const panel = {
      member: { nominal: 'plywood-3/4-double', specific_gravity: 0.5 },
      window: seen({ weight_lb: 60 }),
      projection_in: 2,
      corners_joined: false,
    };
    expect(run(panel).verdict).toBe('fits');
  });
  // 3/4 in. of panel with 1/4 in. sawn out bends at (2/3)² of its strength: 9/4 of the use.
  it('weakens a panel sill by the square of what a drip kerf leaves, and refuses one past the middle', () => {
    const panel = {
      member: { nominal: 'plywood-3/4', specific_gravity: 0.5 },
      window: seen({ weight_lb: 30 }),
      projection_in: 2,
      corners_joined: false,
      framing_depth_in: 5.5,
    };
    const [whole, sawn] = [run(panel), run({ ...panel, sill_kerf_in: 0.25 })];
    expect(sawn.utilisation.gravity).toBeCloseTo(2.25 * (whole.utilisation.gravity ?? 9), 9);
    expect(sawn.notes.join(' ')).toContain('keep it outside the rough sill');
    expect(() => run({ ...panel, sill_kerf_in: 0.4 })).toThrow(/sill_kerf_in: 0\.4 .* 0\.375 in\./);
  });
  it.each([
    ['2x4', 3.5, 4],
    ['2x6', 5.5, 6],
  ])('a %s reaches %f in. and not %f in.', (nominal, reaches, beyond) => {
    const at = (projection_in: number) =>
      run({ member: { nominal, specific_gravity: 0.42 }, projection_in, framing_depth_in: 5.5 });
    expect(at(reaches).verdict).toBe('fits');
    expect(at(beyond).verdict).toBe('does-not-fit');
  });
  it('names a member that would reach', () => {
    expect(run({ projection_in: 5 }).why).toContain('2x6 bearing on the rough sill');
  });
  it('refuses to pass a heavy unit far out in a shallow wall, and says which part fails', () => {
    const heavy = run({
      member: { nominal: '2x8', specific_gravity: 0.42 },
      projection_in: 7,
      window: seen({ width_in: 72, height_in: 96, weight_lb: 600, operation: 'fixed', glazing: 'triple' }),
    });
    expect(heavy.verdict).toBe('does-not-fit');
    expect(heavy.why).toContain('inner edge of the sill');
  });
  it('carries a large fixed triple-glazed unit: the face-fastened rule does not bar it', () => {
    const large = seen({
      width_in: 72,
      height_in: 72,
      weight_lb: 320,
      operation: 'fixed',
      glazing: 'triple',
    });
    expect(run({ window: large, framing_depth_in: 5.5 }).verdict).toBe('fits');
  });
});

describe('face-fastened', () => {
  it('fits while the corners are joined and fails on its sill piece alone', () => {
    const joined = face();
    expect(joined.verdict).toBe('fits');
    expect(joined.utilisation.bearing).toBeNull();
    expect(joined.notes.join(' ')).toContain('sill piece by itself');
    const open = face({ corners_joined: false });
    expect(open.verdict).toBe('does-not-fit');
    expect(open.why).toContain('join sill, jambs and head');
  });
  it('reaches 3.5 in., whatever the lumber', () => {
    expect(face({ projection_in: 3.5 }).verdict).toBe('fits');
    expect(face({ projection_in: 4, member: { nominal: '2x6', specific_gravity: 0.42 } }).verdict).toBe(
      'does-not-fit',
    );
  });

  const large = { width_in: 72, height_in: 72, weight_lb: 320 };
  it('sends a large fixed triple-glazed unit to an engineer though the screws would hold', () => {
    const answer = face({ window: seen({ ...large, operation: 'fixed', glazing: 'triple' }) });
    expect(answer.verdict).toBe('engineer');
    expect(answer.utilisation.gravity).toBeLessThan(0.4);
    expect(answer.why).toContain('sag');
  });
  it('does the same while glazing or operation is unknown, and says so', () => {
    expect(face({ window: seen(large) }).verdict).toBe('engineer');
    expect(face({ window: seen({ ...large, operation: 'fixed' }) }).why).toContain('not known');
    const light = { ...large, weight_lb: 149 };
    expect(face({ window: seen({ ...light, operation: 'fixed', glazing: 'double' }) }).verdict).toBe('fits');
    expect(face({ window: seen({ ...light, operation: 'casement', glazing: 'triple' }) }).verdict).toBe(
      'fits',
    );
  });
  it.each([
    ['fixed', 'double'],
    ['casement', 'triple'],
    ['casement', 'double'],
  ] as const)('leaves a %s %s-glazed unit of 150 lb to an engineer as well', (operation, glazing) => {
    expect(face({ window: seen({ ...large, operation, glazing, weight_lb: 150 }) }).verdict).toBe('engineer');
  });
  it.each([
    ['19.9 ft² and 149 lb: by the figures', 47.76, 149, 'fits'],
    ['20 ft² exactly: engineer', 48, 149, 'engineer'],
    ['150 lb exactly: engineer', 47.76, 150, 'engineer'],
  ])('%s', (_, width_in, weight_lb, verdict) => {
    const at = seen({ width_in, weight_lb, operation: 'fixed', glazing: 'triple' });
    expect(face({ window: at }).verdict).toBe(verdict);
  });

  it('asks for a longer screw by its length', () => {
    // 3 in. of lumber + 7/16 in. of sheathing + 1.5 in. into the framing.
    const short = face({ screw: { ...base.screw, length_in: 4 } });
    expect(short.min_screw_length_in).toBeCloseTo(4.9375, 9);
    expect(short.verdict).toBe('does-not-fit');
    expect(short.why).toContain('at least 4.94 in.');
    expect(short.utilisation.gravity).toBeNull();
  });
  it('takes neither a panel’s edge nor a screw too thick for the narrow edge', () => {
    expect(face({ member: { nominal: 'plywood-3/4', specific_gravity: 0.5 } }).why).toContain('panel’s edge');
    const thick = { diameter_in: 0.375, root_diameter_in: 0.265, length_in: 8, bending_yield_psi: 45_000 };
    expect(face({ screw: thick }).why).toContain('to the edge');
  });
  it('fails under a storm that the screws cannot hold', () => {
    const storm = face({
      window: seen({ width_in: 96, height_in: 96, weight_lb: 140, glazing: 'double', operation: 'fixed' }),
      outward_wind_psf: 190,
      screw_spacing_in: 24,
    });
    expect(storm.verdict).toBe('does-not-fit');
    expect(storm.why).toContain('Suction');
  });
  it('refuses a flangeless window on a flat frame by name, but not on a deeper one', () => {
    const flangeless = seen({ mounting: 'flangeless' });
    expect(() => face({ projection_in: 1.5, window: flangeless })).toThrow(/window\.mounting: "flangeless"/);
    expect(face({ projection_in: 2, window: flangeless }).verdict).toBe('fits');
  });
});

describe('whatever the support', () => {
  it.each(['bears-on-sill', 'face-fastened'])(
    '%s: doors and walked-on sills go to an engineer',
    (support) => {
      expect(run({ support, window: seen({ operation: 'door' }) }).verdict).toBe('engineer');
      expect(run({ support, walked_on_sill: true }).verdict).toBe('engineer');
    },
  );
  it('asks about a weight below that of the glass without refusing it', () => {
    const answer = run({ window: seen({ weight_lb: 12 }) });
    expect(answer.notes.join(' ')).toContain('Is 12 lb right?');
  });
  it('takes the sign of the suction as given', () => {
    expect(run({ outward_wind_psf: -25 }).utilisation).toEqual(run().utilisation);
  });
  it('says when operation and glazing are not given', () => {
    expect(run().notes.join(' ')).toContain('Operation or glazing not given');
  });
  it.each([
    [{ member: { nominal: '2x5', specific_gravity: 0.42 } }, /member\.nominal/],
    [{ projection_in: 13 }, /projection_in/],
    [{ projection_in: -1 }, /projection_in/],
    [{ window: seen({ weight_lb: 0 }) }, /window\.weight_lb/],
    [{ window: seen({ mounting: 'unknown' }) }, /window\.mounting/],
    [{ screw: { ...base.screw, root_diameter_in: 0.2 } }, /screw\.root_diameter_in/],
    [{ screw: { ...base.screw, diameter_in: 0.05 } }, /screw\.diameter_in/],
    [{ support: 'steel-bracket' }, /support/],
    [{ framing_gravity: 0.1 }, /framing_gravity/],
    [{ colour: 'white' }, /colour/],
  ])('refuses %o', (over, message) => {
    expect(() => run(over)).toThrow(Refusal);
    expect(() => run(over)).toThrow(message);
  });
});

describe('properties', () => {
  const n = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const support = fc.constantFrom('bears-on-sill', 'face-fastened');
  const nominal = fc.constantFrom('2x4', '2x6', 'plywood-3/4', 'plywood-3/4-double');
  type Answer = ReturnType<typeof run>;
  function neverLess(worse: Answer, better: Answer) {
    for (const key of ['gravity', 'wind', 'combined', 'bearing'] as const) {
      const [a, b] = [worse.utilisation[key], better.utilisation[key]];
      if (a !== null && b !== null) expect(a).toBeGreaterThanOrEqual(b - 1e-9);
    }
  }
  const member = (name: string) => ({ nominal: name, specific_gravity: 0.45 });

  it('use never falls when the window is heavier', () => {
    fc.assert(
      fc.property(support, nominal, n(0, 6), n(20, 600), n(0, 300), (s, m, projection_in, weight, more) => {
        const at = (weight_lb: number) =>
          run({ support: s, member: member(m), projection_in, window: seen({ weight_lb }) });
        neverLess(at(weight + more), at(weight));
      }),
    );
  });
  it('use never falls when the window sits further out', () => {
    fc.assert(
      fc.property(support, nominal, n(1.51, 6), n(0, 3), n(20, 400), (s, m, projection, more, weight_lb) => {
        const at = (projection_in: number) =>
          run({
            support: s,
            member: member(m),
            projection_in,
            window: seen({ weight_lb }),
            screw: { ...base.screw, length_in: 16 },
          });
        neverLess(at(projection + more), at(projection));
      }),
    );
  });
  it('use never rises when the screws stand closer, and stays put below the least spacing', () => {
    fc.assert(
      fc.property(support, n(3, 24), n(1, 4), (s, screw_spacing_in, closer) => {
        neverLess(
          run({ support: s, screw_spacing_in }),
          run({
            support: s,
            screw_spacing_in: Math.max(1, screw_spacing_in / closer),
          }),
        );
      }),
    );
    // 15 × 0.19 = 2.85 in.
    expect(run({ screw_spacing_in: 1 }).utilisation).toEqual(run({ screw_spacing_in: 2.85 }).utilisation);
    expect(run({ screw_spacing_in: 1 }).notes.join(' ')).toContain('2.85 in.');
  });
  it('use never rises with denser framing', () => {
    fc.assert(
      fc.property(support, n(0.3, 0.75), n(0.3, 0.75), (s, a, b) => {
        const at = (framing_gravity: number) => run({ support: s, framing_gravity });
        neverLess(at(Math.min(a, b)), at(Math.max(a, b)));
      }),
    );
  });
  it('use never falls with suction, nor for a wet buck', () => {
    fc.assert(
      fc.property(support, n(0, 100), n(0, 100), (s, wind, more) => {
        const at = (outward_wind_psf: number, wet_service = false) =>
          run({ support: s, outward_wind_psf, wet_service });
        neverLess(at(wind + more), at(wind));
        neverLess(at(wind, true), at(wind));
      }),
    );
  });
  it('fits only when every use that was worked out is within 1', () => {
    fc.assert(
      fc.property(
        support,
        nominal,
        n(0, 8),
        n(20, 900),
        n(0, 150),
        (s, m, projection_in, weight_lb, wind) => {
          const answer = run({
            support: s,
            member: member(m),
            projection_in,
            window: seen({ weight_lb }),
            outward_wind_psf: wind,
          });
          if (answer.verdict !== 'fits') return;
          for (const use of Object.values(answer.utilisation)) expect(use ?? 0).toBeLessThanOrEqual(1);
          expect(base.screw.length_in).toBeGreaterThanOrEqual(answer.min_screw_length_in ?? 99);
        },
      ),
    );
  });
});

describe('the sign of the wind', () => {
  it('changes no figure, and a negative one is said to be taken as suction', () => {
    const { notes, ...negative } = run({ outward_wind_psf: -25 });
    const { notes: plainNotes, ...positive } = run({ outward_wind_psf: 25 });
    expect(negative).toEqual(positive);
    expect(notes.join(' ')).toContain('negative number: taken as suction');
    expect(plainNotes.join(' ')).not.toContain('negative number');
  });
});

describe('a screw diameter out of range', () => {
  it('is accused alone, and not the root diameter measured by it', () => {
    const screw = { ...base.screw, diameter_in: -1 };
    expect(() => run({ screw })).toThrow(/^screw\.diameter_in: -1 is not accepted\.[^\n]*$/);
  });
});
