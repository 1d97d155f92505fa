import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { computeFastening } from '../../src/calculators/fastening/compute-fastening.ts';
import { fasteningInputSchema } from '../../src/calculators/fastening/fastening-input.ts';
import {
  claddingOverFoamSchema,
  FASTENERS,
  FRAMINGS,
} from '../../src/calculators/fastening/fastening-tables.ts';
import { readFasteningTables } from './read-fastening-tables.ts';

const tables = readFasteningTables();
const fasten = (input: unknown) => computeFastening(parseInput(fasteningInputSchema, input), tables);

const example = {
  support: 'furring',
  framing: 'wood',
  cladding_psf: 11,
  insulation_thickness_in: 2,
  fastener: 'wood-screw-10',
  framing_spacing_in: 16,
  fastener_spacing_in: 12,
  outward_wind_psf: 25,
};

const anyCase = fc.record({
  support: fc.constantFrom('direct', 'furring'),
  framing: fc.constantFrom(...FRAMINGS),
  cladding_psf: fc.double({ min: 1, max: 40, noNaN: true }),
  insulation_thickness_in: fc.double({ min: 0.5, max: 8, noNaN: true }),
  fastener: fc.constantFrom(...FASTENERS),
  framing_spacing_in: fc.constantFrom(12, 16, 19.2, 24, 32),
  fastener_spacing_in: fc.integer({ min: 4, max: 30 }),
  outward_wind_psf: fc.double({ min: 0, max: 80, noNaN: true }),
  specific_gravity: fc.double({ min: 0.31, max: 0.7, noNaN: true }),
  insulation_kind: fc.constantFrom('foam', 'fibrous'),
  edition: fc.constantFrom('2018', '2021', '2024'),
});

describe('a case outside the code table in many ways', () => {
  it('names every reason, not only the first', () => {
    const far = fasten({
      ...example,
      fastener: 'wood-screw-12',
      cladding_psf: 30,
      framing_spacing_in: 32,
      fastener_spacing_in: 30,
      insulation_thickness_in: 5,
    });
    expect(far).toMatchObject({ verdict: 'design-required', table: { verdict: 'outside-table' } });
    const told = far.notes.join(' ');
    for (const reason of [
      /doesn't list this fastener/,
      /stops at 25 psf/,
      /stops at 24 in between studs/,
      /stops at 24 in between these fasteners/,
      /stop at 4 in of insulation/,
    ])
      expect(told).toMatch(reason);
  });
});

describe('the screw in a steel stud', () => {
  // AISI S100 J4 by hand, No. 10 (0.19 in., pan head 0.373), Fu 45 ksi in 33 and 43 mil, 65 ksi in 54 mil (from memory),
  // all over 3.0. Pull-out 0.85 t d Fu: 83.8, 109.2, 198.1. Pull-over of a 33 mil strip 1.5 x 0.0346 x 0.373 x 45,000:
  // 290.4. Shear, strip of 33 mil on the stud: 33 mil tilts, 4.2 (0.0346³ x 0.19)^½ 45,000 / 3 = 176.7; on 54 mil the
  // strip bears, 2.7 x 0.0346 x 0.19 x 45,000 / 3 = 266.2.
  it.each([
    ['steel-33mil', 83.8, 176.7],
    ['steel-43mil', 109.2, null],
    ['steel-54mil', 198.1, 266.2],
  ])('of %s by pull-out, pull-over and shear (hand-worked, strengths from memory)', (framing, out, shear) => {
    const { steel_checks } = fasten({ ...example, framing, fastener: 'steel-screw-10' });
    expect(steel_checks?.pull_out_lb).toBeCloseTo(out, 0);
    expect(steel_checks?.pull_over_lb).toBeCloseTo(290.4, 1);
    if (shear !== null) expect(steel_checks?.shear_in_contact_lb).toBeCloseTo(shear, 1);
  });

  it('has no pull-over without furring, and no checks in wood or for a nail', () => {
    const direct = fasten({
      ...example,
      support: 'direct',
      framing: 'steel-43mil',
      fastener: 'steel-screw-10',
    });
    expect(direct.steel_checks?.pull_over_lb).toBeNull();
    expect(fasten(example).steel_checks).toBeNull();
    expect(fasten({ ...example, framing: 'steel-43mil', fastener: 'nail-0.131' }).steel_checks).toBeNull();
  });
});

describe('inside the code table', () => {
  it('permits what the cell allows and gives loads, capacity and length', () => {
    const result = fasten(example);
    expect(result.table).toMatchObject({ max_insulation_in: 2.3, verdict: 'permitted' });
    expect(result.verdict).toBe('permitted');
    // 11 psf and 25 psf over 12 x 16 in = 1.3333 ft²
    expect(result.load_per_fastener_lb.gravity).toBeCloseTo(14.667, 3);
    expect(result.load_per_fastener_lb.wind).toBeCloseTo(33.333, 3);
    // 3/4 furring + 2 + 7/16 sheathing + 1 penetration = 4.1875
    expect(result.min_length_in).toBe(4.1875);
    expect(result.length_in).toBe(4.5);
    // Withdrawal 2850 x 0.42² x 0.19 x 1 x 1.6 = 152.8 governs over pull-through
    // 690 π x 0.363 x 0.42² x 0.75 x 1.6 = 166.6.
    expect(result.wind_checks.pull_through_lb).toBeCloseTo(166.6, 1);
    expect(result.wind_capacity_lb).toBeCloseTo(152.8, 1);
    expect(result.wind_utilisation).toBeCloseTo(33.333 / 152.8, 3);
  });

  it('permits the cell itself and asks for design a hair above it', () => {
    expect(fasten({ ...example, insulation_thickness_in: 2.3 }).table.verdict).toBe('permitted');
    expect(fasten({ ...example, insulation_thickness_in: 2.31 }).table.verdict).toBe('design-required');
  });

  it('asks for design where the cell is blank', () => {
    const result = fasten({
      ...example,
      fastener_spacing_in: 24,
      cladding_psf: 18,
      insulation_thickness_in: 0.5,
    });
    expect(result.table).toMatchObject({ max_insulation_in: null, verdict: 'design-required' });
    expect(result.verdict).toBe('design-required');
  });

  it('takes the next heavier weight and the next wider spacings', () => {
    // 12 psf is past the 11 psf column: 15 psf in 2021, 18 psf in 2018, which has no 15 psf column.
    expect(fasten({ ...example, cladding_psf: 12 }).table.max_insulation_in).toBe(1.55);
    expect(fasten({ ...example, cladding_psf: 12, edition: '2018' }).table.max_insulation_in).toBe(1.2);
    // 13 in uses the 16 in row; 19.2 in studs use the 24 in cells; 8 in the 12 in row.
    expect(fasten({ ...example, fastener_spacing_in: 13 }).table.max_insulation_in).toBe(1.65);
    expect(fasten({ ...example, framing_spacing_in: 19.2 }).table.max_insulation_in).toBe(1.4);
    expect(fasten({ ...example, fastener_spacing_in: 8 }).table.max_insulation_in).toBe(2.3);
  });

  it('counts a drainage mat as gap', () => {
    const mat = {
      ...example,
      insulation_thickness_in: 2.2,
      outboard_thickness_in: 1,
      mat_thickness_in: 0.25,
    };
    expect(fasten(mat).table.verdict).toBe('design-required');
    expect(fasten({ ...mat, mat_thickness_in: 0.1 }).table.verdict).toBe('permitted');
    // The mat is part of the outboard thickness, so the length doesn't count it twice.
    expect(fasten(mat).min_length_in).toBeCloseTo(1 + 2.2 + 0.4375 + 1, 10);
  });

  it('withholds "permitted" when the wind asks more than the fastener holds', () => {
    const windy = fasten({ ...example, outward_wind_psf: 150 });
    expect(windy.table.verdict).toBe('permitted');
    expect(windy.wind_utilisation ?? 0).toBeGreaterThan(1);
    expect(windy.verdict).toBe('design-required');
  });

  it('uses the No. 8 row for thicker steel, and the stronger row of No. 10 from 43 mil', () => {
    const steel = { ...example, support: 'direct', insulation_thickness_in: 1, outward_wind_psf: 10 };
    const cell = (framing: string, fastener: string) =>
      fasten({ ...steel, framing, fastener }).table.max_insulation_in;
    expect(cell('steel-54mil', 'steel-screw-8')).toBe(cell('steel-33mil', 'steel-screw-8'));
    expect(cell('steel-33mil', 'steel-screw-10')).toBe(2.25);
    expect(cell('steel-54mil', 'steel-screw-10')).toBe(3.85);
  });
});

describe('outside the code table', () => {
  const outside = [
    ['a screw that it does not list', { fastener: 'wood-screw-14' }],
    ['a screw fastened direct', { support: 'direct' }],
    ['a fibrous board', { insulation_kind: 'fibrous' }],
    ['light wood', { specific_gravity: 0.36 }],
    ['heavy cladding', { cladding_psf: 26 }],
    ['thick insulation', { insulation_thickness_in: 4.5, cladding_psf: 3 }],
    ['a wide fastener spacing', { fastener_spacing_in: 25, cladding_psf: 3 }],
    ['a wide stud spacing', { framing_spacing_in: 32, cladding_psf: 3 }],
    ['thin furring', { outboard_thickness_in: 0.5 }],
    ['a nail in steel', { framing: 'steel-33mil', fastener: 'nail-0.131' }],
    ['a steel screw in wood', { fastener: 'steel-screw-10' }],
  ] as const;

  it.each(outside)('asks for design and says why: %s', (_, change) => {
    const result = fasten({ ...example, ...change });
    expect(result.table.verdict).toBe('outside-table');
    expect(result.verdict).toBe('design-required');
    expect(result.notes.join(' ')).toMatch(/Outside the code tables: /);
    expect(result.notes.join(' ')).toMatch(/design professional must size/);
  });

  it('still estimates inside the limits of the equation', () => {
    for (const change of [
      { fastener: 'wood-screw-14' },
      { insulation_kind: 'fibrous' },
      { fastener_spacing_in: 25 },
    ]) {
      const result = fasten({ ...example, ...change });
      expect(result.gravity_capacity_lb ?? 0).toBeGreaterThan(0);
      expect(result.notes.join(' ')).toMatch(/engineering estimate/);
    }
  });

  it('gives no gravity figure beyond 4 in, 25 psf or specific gravity 0.42', () => {
    for (const change of [
      { insulation_thickness_in: 4.1 },
      { cladding_psf: 25.1 },
      { specific_gravity: 0.41 },
    ]) {
      const result = fasten({ ...example, ...change });
      expect(result.gravity_capacity_lb).toBeNull();
      expect(result.gravity_utilisation).toBeNull();
      expect(result.notes.join(' ')).toMatch(/No gravity figure/);
    }
  });

  it('knows no holding of a nail in steel and no head check through lath', () => {
    const nail = fasten({ ...example, framing: 'steel-33mil', fastener: 'nail-0.131' });
    expect(nail.wind_capacity_lb).toBeNull();
    expect(nail.wind_utilisation).toBeNull();
    const lath = fasten({ ...example, support: 'direct', fastener: 'nail-0.162', fastener_spacing_in: 6 });
    expect(lath.wind_checks.pull_through_lb).toBeNull();
    expect(lath.notes.join(' ')).toMatch(/no published equation/);
  });

  it('tells a reviewer what the row of the listed minimum size would allow', () => {
    expect(fasten({ ...example, fastener: 'wood-screw-14' }).notes.join(' ')).toMatch(
      /No\. 10 screws allows 2\.3 in/,
    );
  });

  it('says when no market length reaches', () => {
    const result = fasten({
      ...example,
      fastener: 'nail-0.131',
      fastener_spacing_in: 8,
      insulation_thickness_in: 2.4,
    });
    // 0.75 + 2.4 + 0.4375 + 1.25 in is longer than any 0.131 in nail sold.
    expect(result.length_in).toBeNull();
    expect(result.notes.join(' ')).toMatch(/No market length/);
  });
});

describe('whatever the case', () => {
  it('covers the stack plus the penetration, and never permits outside the table', () => {
    fc.assert(
      fc.property(anyCase, (c) => {
        const result = fasten(c);
        const stack = (c.support === 'furring' ? 0.75 : 0.375) + c.insulation_thickness_in + 0.4375;
        const penetration = c.framing === 'wood' ? 1 : 0.4;
        if (c.framing === 'wood' && c.fastener.startsWith('steel')) return;
        expect(result.min_length_in).toBeGreaterThanOrEqual(stack + penetration - 1e-6);
        if (result.length_in !== null) {
          expect(result.length_in).toBeGreaterThanOrEqual(result.min_length_in - 1e-6);
        }
        if (result.table.verdict === 'permitted') {
          expect(c.insulation_thickness_in).toBeLessThanOrEqual((result.table.max_insulation_in ?? 0) + 1e-9);
          expect(result.gravity_utilisation).not.toBeNull();
          // What the table permits, the equation behind it permits too.
          expect(result.gravity_utilisation ?? 9).toBeLessThanOrEqual(1 + 1e-6);
          expect(c.insulation_kind).toBe('foam');
        } else {
          expect(result.verdict).toBe('design-required');
        }
      }),
      { numRuns: 300 },
    );
  });

  it('carries no more across a wider gap, and allows no more foam under more weight', () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0.01, max: 2, noNaN: true }), (c, more) => {
        const near = fasten(c);
        const far = fasten({ ...c, insulation_thickness_in: c.insulation_thickness_in + more });
        if (far.gravity_capacity_lb !== null) {
          expect(near.gravity_capacity_lb ?? 0).toBeGreaterThanOrEqual(far.gravity_capacity_lb);
        }
        expect(far.wind_capacity_lb).toBe(near.wind_capacity_lb);
        const heavy = fasten({ ...c, cladding_psf: c.cladding_psf + more });
        expect(heavy.table.max_insulation_in ?? 0).toBeLessThanOrEqual(near.table.max_insulation_in ?? 0);
        if (near.table.verdict !== 'permitted') expect(heavy.table.verdict).not.toBe('permitted');
      }),
      { numRuns: 300 },
    );
  });

  it('is used more by more weight and more wind, and holds no more in lighter wood', () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0.01, max: 5, noNaN: true }), (c, more) => {
        const base = fasten(c);
        const heavy = fasten({ ...c, cladding_psf: c.cladding_psf + more });
        if (base.gravity_utilisation !== null && heavy.gravity_utilisation !== null) {
          expect(heavy.gravity_utilisation).toBeGreaterThan(base.gravity_utilisation);
        }
        const windy = fasten({ ...c, outward_wind_psf: c.outward_wind_psf + more });
        if (base.wind_utilisation !== null && windy.wind_utilisation !== null) {
          expect(windy.wind_utilisation).toBeGreaterThan(base.wind_utilisation);
        }
        const lighter = fasten({ ...c, specific_gravity: c.specific_gravity - 0.01 });
        expect(lighter.wind_capacity_lb ?? 0).toBeLessThanOrEqual(base.wind_capacity_lb ?? 0);
        expect(lighter.gravity_capacity_lb ?? 0).toBeLessThanOrEqual(base.gravity_capacity_lb ?? 0);
      }),
      { numRuns: 300 },
    );
  });
});

describe('input', () => {
  it.each([
    ['cladding_psf', 0],
    ['cladding_psf', '11'],
    ['insulation_thickness_in', -2],
    ['insulation_thickness_in', 40],
    ['fastener', 'staple'],
    ['framing', 'steel'],
    ['support', 'glued'],
    ['framing_spacing_in', 0],
    ['fastener_spacing_in', 60],
    ['outward_wind_psf', -25],
    ['specific_gravity', 0.2],
    ['mat_thickness_in', 1],
    ['outboard_thickness_in', 0.1],
    ['edition', '2015'],
    ['fastener_diameter_in', 0.2],
  ])('refuses %s %s by name', (field, value) => {
    expect(() => fasten({ ...example, [field]: value })).toThrow(Refusal);
    expect(() => fasten({ ...example, [field]: value })).toThrow(new RegExp(`^${field}: `));
  });

  it('refuses a table file with a cell missing', () => {
    const broken: unknown = JSON.parse(
      JSON.stringify(tables.foam).replace('[4,2.45,1.75,1.45,0.95]', '[4,2.45]'),
    );
    expect(() => claddingOverFoamSchema.parse(broken)).toThrow(/one cell for each cladding weight/);
  });
});
