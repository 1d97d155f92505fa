import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  plausibleWeight,
  type WeighedWindow,
  windowsTableSchema,
  windowWeight,
} from '../../src/calculators/window-weight.ts';

const raw = JSON.parse(
  readFileSync(new URL('../../rules/openings/windows.table.json', import.meta.url), 'utf8'),
);
const table = windowsTableSchema.parse(raw);
const casement: WeighedWindow = { width_in: 36, height_in: 60, glazing: 'double', operation: 'casement' };

describe('windowWeight', () => {
  // By hand, 3 × 5 ft fixed, double 1/8 in., vinyl: 2 × 1.64 × 31 × 55 / 144 = 38.84; 16 ft × 1.5 = 24; 62.84 lb.
  it('matches a hand calculation', () => {
    const weight = windowWeight({ ...casement, operation: 'fixed', frame: 'vinyl', lite: '1/8' }, table);
    expect(weight.likely_lb).toBeCloseTo(62.84, 1);
    expect(weight.high_lb).toBe(weight.likely_lb);
  });
  it('adds a sash to a window that opens: 1 lb/ft round 16 ft', () => {
    const fixed = windowWeight({ ...casement, operation: 'fixed', frame: 'vinyl' }, table);
    const opens = windowWeight({ ...casement, frame: 'vinyl' }, table);
    expect(opens.likely_lb - fixed.likely_lb).toBeCloseTo(16, 9);
  });
  it('spans all frames, and both glazings, when they are not known, and says so', () => {
    const unknown = windowWeight({ ...casement, glazing: null, operation: null }, table);
    const lightest = windowWeight({ ...casement, operation: 'fixed', frame: 'vinyl' }, table);
    const heaviest = windowWeight({ ...casement, glazing: 'triple', frame: 'wood-clad' }, table);
    expect(unknown.low_lb).toBeCloseTo(lightest.low_lb, 9);
    expect(unknown.high_lb).toBeCloseTo(heaviest.high_lb, 9);
    expect(unknown.notes.join(' ')).toMatch(/Glazing not known.*Operation not known.*Frame not known/s);
  });
  const size = fc.double({ min: 12, max: 120, noNaN: true });
  it('keeps low ≤ likely ≤ high, and triple above double', () => {
    fc.assert(
      fc.property(size, size, (width_in, height_in) => {
        const double = windowWeight({ ...casement, width_in, height_in }, table);
        const triple = windowWeight({ ...casement, width_in, height_in, glazing: 'triple' }, table);
        expect(double.low_lb).toBeLessThanOrEqual(double.likely_lb);
        expect(double.likely_lb).toBeLessThanOrEqual(double.high_lb);
        expect(triple.likely_lb).toBeGreaterThan(double.likely_lb);
      }),
    );
  });
  it('never gets lighter as the window gets larger', () => {
    fc.assert(
      fc.property(size, size, size, (width_in, a, b) => {
        const at = (height_in: number) => windowWeight({ ...casement, width_in, height_in }, table).likely_lb;
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)));
      }),
    );
  });
  it('refuses a size out of range and glass it does not know', () => {
    expect(() => windowWeight({ ...casement, width_in: 4 }, table)).toThrow(/width_in: 4/);
    expect(() => windowWeight({ ...casement, lite: '7/16' }, table)).toThrow(/lite: "7\/16".*1\/8, 3\/16/);
  });
  it('refuses a table that names glass without a weight', () => {
    const broken = structuredClone(raw);
    broken.lite_thickness.steps.push('5/8');
    expect(windowsTableSchema.safeParse(broken).success).toBe(false);
  });
});

describe('plausibleWeight', () => {
  // The glass of a 3 × 5 ft triple unit: 3 × 1.54 × 11.84 ft² = 54.7 lb.
  it('asks about a weight far below the glass alone', () => {
    const answer = plausibleWeight(30, { ...casement, glazing: 'triple' }, table);
    expect(answer.is_plausible).toBe(false);
    expect(answer.question).toContain('about 55 lb');
  });
  it('accepts an ordinary weight without a question', () => {
    expect(plausibleWeight(85, casement, table)).toMatchObject({ is_plausible: true, question: null });
  });
  it('asks about a weight far above the estimate', () => {
    expect(plausibleWeight(500, casement, table).question).toMatch(/500 lb right/);
  });
  it('measures an unknown glazing against the lighter glass', () => {
    expect(plausibleWeight(45, { ...casement, glazing: null }, table).is_plausible).toBe(true);
  });
});
