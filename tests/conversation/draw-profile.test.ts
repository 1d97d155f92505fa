import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import type { ProfileSeason } from '../../src/advice/wall-physics-schema.ts';
import {
  drawProfile,
  NARROWEST_PROFILE,
  profileInWords,
  profileRows,
} from '../../src/conversation/draw-profile.ts';
import { asciiText } from '../../src/conversation/visible-text.ts';
import { SAMPLE_SUMMER, SAMPLE_WINTER } from '../advice/sample-physics.ts';

/** What stands between the two edges of a row. */
const plotOf = (line: string) => line.split('│')[1] ?? '';
const rowOf = (lines: readonly string[], label: string) => {
  const found = lines.find((line) => line.trimStart().startsWith(label));
  if (!found) throw new Error(`no row ${label}`);
  return found;
};

describe('the drawn profile', () => {
  const lines = drawProfile(SAMPLE_WINTER, 76);

  it('has a row for each plane from the indoor to the outdoor air, under a scale', () => {
    const labels = lines.slice(1).map((line) => line.slice(2, 16).trim());
    expect(labels).toEqual([
      'indoor air',
      'room face',
      'lining',
      'cavity fill',
      'sheathing',
      'rain barrier',
      'insulation',
      'finish',
      'outdoor air',
    ]);
    expect(lines[0]).toMatch(/outer face of\s+temp\s+dew\s+0\s+20\s+40\s+60\s+80$/);
  });

  it('gives every figure beside its row', () => {
    expect(rowOf(lines, 'lining')).toMatch(/ 68\.0 {2}44\.0 │/);
    expect(rowOf(lines, 'outdoor air')).toMatch(/ 10\.0 {3}4\.0 │/);
  });

  it('holds both lines in every row, and one mark where they meet', () => {
    for (const line of lines.slice(1)) {
      const plot = plotOf(line);
      const meets = line.includes('cavity fill');
      expect([line, /T/.test(plot), /d/.test(plot), /X/.test(plot)]).toEqual([line, !meets, !meets, meets]);
    }
  });

  it('puts the marks where the scale says', () => {
    const width = plotOf(lines[1] ?? '').length;
    // The scale runs from 0 to 80 °F over the plot.
    const column = (temp_f: number) => Math.round((temp_f / 80) * (width - 1));
    const lining = plotOf(rowOf(lines, 'lining'));
    expect(lining.indexOf('T')).toBe(column(68));
    expect(lining.indexOf('d')).toBe(column(44));
  });

  it('shows by a line how far the temperature falls across a layer', () => {
    const dash = (label: string) => (plotOf(rowOf(lines, label)).match(/─/g) ?? []).length;
    expect(dash('cavity fill')).toBeGreaterThan(15);
    expect(dash('rain barrier')).toBe(0);
  });

  it('leaves out planes that nothing happens at', () => {
    expect(profileRows(SAMPLE_WINTER).map(({ label }) => label)).not.toContain('drainage mat');
  });

  it('draws a summer in which heat and vapour go inward', () => {
    const summer = drawProfile(SAMPLE_SUMMER, 76);
    const marks = summer.slice(1).map((line) => plotOf(line).indexOf('d'));
    expect(marks).toEqual(marks.toSorted((a, b) => a - b));
    expect(marks.at(-1)).toBeGreaterThan(marks[0] ?? 0);
  });

  it('draws the temperature alone where the dew point is not known', () => {
    const unknown: ProfileSeason = {
      ...SAMPLE_WINTER,
      cavity: SAMPLE_WINTER.cavity.map((plane) => ({ ...plane, dew_point_f: null })),
    };
    const drawn = drawProfile(unknown, 76);
    for (const line of drawn.slice(1)) {
      expect(plotOf(line)).toContain('T');
      expect(plotOf(line)).not.toMatch(/[dX]/);
      expect(line).toContain(' ? ');
    }
  });

  it('has an ASCII twin of the same shape', () => {
    for (const line of lines) {
      const twin = asciiText(line);
      expect(twin).toMatch(/^[\x20-\x7e]*$/);
      expect(twin).toHaveLength(stringWidth(line));
    }
  });

  it('fits into any width that it can be drawn in, whatever the weather', () => {
    const temp = fc.integer({ min: -40, max: 110 });
    fc.assert(
      fc.property(temp, temp, fc.integer({ min: 20, max: 120 }), (indoor, outdoor, width) => {
        const season: ProfileSeason = {
          ...SAMPLE_WINTER,
          indoor_temp_f: indoor,
          outdoor_temp_f: outdoor,
          indoor_dew_point_f: indoor - 20,
          cavity: SAMPLE_WINTER.cavity.map((plane, i, all) => {
            const temp_f = indoor + ((outdoor - indoor) * (i + 1)) / all.length;
            return { ...plane, temp_f, dew_point_f: temp_f - 12 };
          }),
        };
        const drawn = drawProfile(season, width);
        const most = Math.max(NARROWEST_PROFILE, Math.min(76, width));
        for (const line of drawn) expect(stringWidth(line)).toBeLessThanOrEqual(most);
        for (const line of drawn.slice(1)) {
          expect(line.endsWith('│')).toBe(true);
          expect(plotOf(line)).toMatch(/[TX]/);
        }
      }),
    );
  });

  it('says the same in words for a window too narrow', () => {
    expect(profileInWords(SAMPLE_WINTER)[3]).toEqual({
      label: 'cavity fill',
      value: '31.0 °F, dew point 31.0 °F',
    });
  });
});
