import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chooseFastening,
  countPer100Ft2,
  type FasteningContext,
  type FasteningOption,
} from '../../src/calculators/fastening/choose-fastening.ts';
import { readFasteningTables } from './read-fastening-tables.ts';

const tables = readFasteningTables();

const wall: FasteningContext = {
  support: 'furring',
  framing: 'wood',
  framing_spacing_in: 16,
  cladding_psf: 11,
  insulation_thickness_in: 1.5,
  insulation_kind: 'foam',
  outboard_thickness_in: 0.75,
  mat_thickness_in: 0,
  sheathing_thickness_in: 0.4375,
  specific_gravity: 0.42,
  outward_wind_psf: 25,
  edition: '2021',
};

const options: readonly FasteningOption[] = [
  { fastener: 'nail-0.131', spacings_in: [8, 12], washer: 'none' },
  { fastener: 'wood-screw-10', spacings_in: [12, 16, 24], washer: 'none' },
  { fastener: 'wood-screw-14', spacings_in: [12, 16], washer: '1 in plate' },
];

const choose = (change: Partial<FasteningContext> = {}, list = options) =>
  chooseFastening(list, { ...wall, ...change }, tables);

describe('chooseFastening', () => {
  it('takes the first fastener that passes, at its widest spacing', () => {
    // 0.131 nails at 12 in may have 1.60 in of foam, but are not sold long enough (3.94 in); No. 10 at 16 in: 1.65 in.
    const schedule = choose();
    expect(schedule).toMatchObject({
      fastener: 'wood-screw-10',
      fastener_spacing_in: 16,
      verdict: 'permitted',
      length_in: 4,
    });
    expect(schedule.table.max_insulation_in).toBe(1.65);
    expect(schedule.why()).toMatch(/1\.65 in of foam/);
  });

  it('says what puts a case outside the code tables, and nothing of one inside', () => {
    expect(choose().table.outside_because).toBeNull();
    expect(choose({ insulation_kind: 'fibrous' }).table.outside_because).toMatch(
      /a fibrous board is not in them/,
    );
    expect(choose({ insulation_thickness_in: 6 }).table.outside_because).toMatch(/stop at 4 in/);
  });

  it('goes closer when the foam gets thicker', () => {
    expect(choose({ insulation_thickness_in: 2 })).toMatchObject({
      fastener: 'wood-screw-10',
      fastener_spacing_in: 12,
      verdict: 'permitted',
    });
  });

  it('goes closer when the wind gets stronger', () => {
    // No. 10 holds 152.8 lb: 16 x 16 in takes 177.8 lb at 100 psf, 12 x 16 in 133.3 lb.
    expect(choose({ outward_wind_psf: 100 })).toMatchObject({
      fastener: 'wood-screw-10',
      fastener_spacing_in: 12,
    });
  });

  it('takes a screw where a nail holds the wind, but not with the weight', () => {
    const lath: Partial<FasteningContext> = {
      support: 'direct',
      cladding_psf: 5.2,
      insulation_thickness_in: 1,
      mat_thickness_in: 0.375,
      sheathing_thickness_in: 0.4375,
    };
    const list = [
      { fastener: 'nail-0.162', spacings_in: [6], washer: 'plate' },
      { fastener: 'wood-screw-10', spacings_in: [6], washer: 'plate' },
    ];
    expect(choose({ ...lath, outward_wind_psf: 60 }, list).fastener).toBe('nail-0.162');
    const schedule = choose({ ...lath, outward_wind_psf: 73 }, list);
    expect(schedule.fastener).toBe('wood-screw-10');
    expect(schedule.combined_utilisation).toBeLessThan(0.4);
    // With nothing else on the list the nail stays, and is not permitted.
    expect(choose({ ...lath, outward_wind_psf: 73 }, list.slice(0, 1))).toMatchObject({
      fastener: 'nail-0.162',
      verdict: 'design-required',
    });
    expect(choose({ ...lath, outward_wind_psf: 73 }, list.slice(0, 1)).why()).toMatch(
      /weight and wind together ask more/,
    );
  });

  it('falls back to the first that works by estimate, and asks for design', () => {
    const schedule = choose({ insulation_thickness_in: 3, insulation_kind: 'fibrous' });
    expect(schedule.verdict).toBe('design-required');
    expect(schedule.table.verdict).toBe('outside-table');
    expect(schedule.fastener).toBe('wood-screw-14');
    expect(schedule.gravity_utilisation ?? 9).toBeLessThanOrEqual(1);
    expect(schedule.why()).toMatch(/design professional must size it/);
  });

  it('names the least overloaded when nothing works', () => {
    const schedule = choose({ cladding_psf: 25, insulation_thickness_in: 4, insulation_kind: 'fibrous' });
    expect(schedule).toMatchObject({
      fastener: 'wood-screw-14',
      fastener_spacing_in: 12,
      verdict: 'design-required',
    });
    expect(schedule.gravity_utilisation ?? 0).toBeGreaterThan(1);
  });

  it('gives no figure for the weight where no method has one', () => {
    const schedule = choose({ cladding_psf: 30, insulation_thickness_in: 6 });
    expect(schedule.gravity_utilisation).toBeNull();
    expect(schedule.verdict).toBe('design-required');
    expect(schedule.why()).toMatch(/No method gives a figure/);
  });

  it('does not permit a fastener that nobody sells long enough', () => {
    const nails = [{ fastener: 'nail-0.131', spacings_in: [8], washer: 'none' }];
    const schedule = choose({}, nails);
    expect(schedule.table.verdict).toBe('permitted');
    expect(schedule.length_in).toBeNull();
    expect(schedule.verdict).toBe('design-required');
    expect(schedule.why()).toMatch(/no market length/);
  });

  it('counts common practice: 6 in on studs at 16 in is 150 fasteners in 100 ft² (no source)', () => {
    expect(countPer100Ft2(6, 16)).toBe(150);
    expect(choose().count_per_100_ft2).toBe(56.25);
  });

  it('always takes an offered spacing, and permits only what passes every check', () => {
    const context = fc.record({
      support: fc.constantFrom('direct' as const, 'furring' as const),
      cladding_psf: fc.double({ min: 1, max: 40, noNaN: true }),
      insulation_thickness_in: fc.double({ min: 0.5, max: 8, noNaN: true }),
      insulation_kind: fc.constantFrom('foam' as const, 'fibrous' as const),
      framing_spacing_in: fc.constantFrom(16, 24),
      outward_wind_psf: fc.double({ min: 5, max: 120, noNaN: true }),
      specific_gravity: fc.double({ min: 0.35, max: 0.6, noNaN: true }),
    });
    fc.assert(
      fc.property(context, (change) => {
        const schedule = choose(change);
        const option = options.find((o) => o.fastener === schedule.fastener);
        expect(option?.spacings_in).toContain(schedule.fastener_spacing_in);
        if (schedule.verdict === 'permitted') {
          expect(schedule.table.verdict).toBe('permitted');
          expect(schedule.wind_utilisation ?? 9).toBeLessThanOrEqual(1);
          expect(schedule.combined_utilisation ?? 9).toBeLessThanOrEqual(1);
          expect(schedule.length_in).not.toBeNull();
        }
      }),
      { numRuns: 300 },
    );
  });

  it('refuses an empty list, an unknown fastener and a spacing of nothing', () => {
    expect(() => choose({}, [])).toThrow(/at least one fastener/);
    expect(() => choose({}, [{ fastener: 'staple', spacings_in: [6], washer: '' }])).toThrow(/"staple"/);
    expect(() => choose({}, [{ fastener: 'nail-0.131', spacings_in: [0], washer: '' }])).toThrow(
      /above zero/,
    );
  });
});
