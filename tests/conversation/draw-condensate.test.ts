import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import {
  condensateInWords,
  drawCondensate,
  NARROWEST_CONDENSATE,
} from '../../src/conversation/draw-condensate.ts';
import { asciiText } from '../../src/conversation/visible-text.ts';
import { SAMPLE_MONTHS } from '../advice/sample-physics.ts';

const bar = (line: string) => (line.match(/█/g) ?? []).length;

describe('the drawn condensate', () => {
  const lines = drawCondensate(SAMPLE_MONTHS, 76) ?? [];

  it('has a row for each wet month from the start month on, and one for the dry ones', () => {
    expect(lines.slice(1).map((line) => line.trim().split(/\s{2,}/)[0])).toEqual([
      'Nov',
      'Dec',
      'Jan',
      'Feb',
      'Mar',
      'Apr',
      'May',
      'Jun to Oct',
    ]);
    expect(lines.at(-1)).toContain('dry');
  });

  it('gives what is gained, with its sign, and what is held', () => {
    expect(lines[2]).toMatch(/Dec\s+\+40\.0\s+50\.0 │/);
    expect(lines[6]).toMatch(/Apr\s+-90\.0\s+30\.0 │/);
  });

  it('has bars as long as the water held: the peak reaches the edge', () => {
    const lengths = lines.slice(1).map(bar);
    const peak = Math.max(...lengths);
    expect(lengths[3]).toBe(peak);
    for (const [i, held] of [10, 50, 110, 140, 120, 30, 0].entries())
      expect(Math.abs((lengths[i] ?? 0) - (held / 140) * peak)).toBeLessThanOrEqual(1);
    expect(stringWidth(lines[4] ?? '')).toBe(76);
  });

  it('has an ASCII twin of the same shape', () => {
    for (const line of lines) {
      expect(asciiText(line)).toMatch(/^[\x20-\x7e]*$/);
      expect(asciiText(line)).toHaveLength(stringWidth(line));
    }
  });

  it('draws nothing for a wall in which no water forms', () => {
    expect(
      drawCondensate(
        SAMPLE_MONTHS.map((m) => ({ ...m, accumulated_g_m2: 0 })),
        76,
      ),
    ).toBeNull();
  });

  it('fits into any width, and a month that holds water has a bar', () => {
    const month = fc.record({
      condensate_g_m2: fc.double({ min: -5000, max: 5000, noNaN: true }),
      accumulated_g_m2: fc.double({ min: 0.001, max: 9000, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(month, { minLength: 12, maxLength: 12 }),
        fc.integer({ min: 10, max: 200 }),
        (year, width) => {
          const months = year.map((one, i) => ({ ...one, month: i + 1 }));
          const drawn = drawCondensate(months, width) ?? [];
          expect(drawn).toHaveLength(13);
          const most = Math.max(NARROWEST_CONDENSATE, Math.min(76, width));
          for (const line of drawn) expect(stringWidth(line)).toBeLessThanOrEqual(most);
          for (const line of drawn.slice(1)) expect(bar(line)).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('says the same in words for a window too narrow', () => {
    const words = condensateInWords(SAMPLE_MONTHS);
    expect(words[1]).toEqual({ label: 'Dec', value: '+40.0 g/m², holds 50.0 g/m²' });
    expect(words.at(-1)).toEqual({ label: 'Jun to Oct', value: 'dry' });
  });
});
