import { describe, expect, it } from 'vitest';
import { framingFraction, woodFramingR } from '../../../src/calculators/thermal/framing-fraction.ts';
import { parallelPathU } from '../../../src/calculators/thermal/parallel-path.ts';
import { steelCavity, steelFrameU } from '../../../src/calculators/thermal/steel-frame.ts';
import { thermalTable } from './read-table.ts';

const rows = thermalTable.steel_cavities;
const wall = { series_r: 4, depth_in: 3.5, spacing_in: 16, insulation_r: 13 };

describe('steelFrameU', () => {
  // By hand: 1 / (4 + 6.0)
  it('adds the effective resistance to the other layers', () => {
    expect(steelFrameU(rows, wall)).toBeCloseTo(0.1, 12);
  });

  it.each(rows.filter((row) => row.insulation_r > 0))(
    'never beats wood: $depth_in in. at $spacing_in in., R-$insulation_r',
    ({ depth_in, spacing_in, insulation_r }) => {
      // The steel cavity 6 in. deep is that of a 2x6 wall, 8 in. that of a 2x8 wall.
      const woodDepth = depth_in === 6 ? 5.5 : depth_in === 8 ? 7.25 : depth_in;
      for (const ci of [0, 5, 15]) {
        const series_r = 2 + ci;
        const wood = parallelPathU({
          series_r,
          cavity_r: insulation_r,
          framing_r: woodFramingR(thermalTable, woodDepth),
          framing_fraction: framingFraction(thermalTable, 'wood', spacing_in).framing_fraction,
        });
        expect(steelFrameU(rows, { series_r, depth_in, spacing_in, insulation_r })).toBeGreaterThan(wood);
      }
    },
  );

  it('falls as the continuous insulation grows', () => {
    const us = [0, 2, 5, 10, 20].map((ci) => steelFrameU(rows, { ...wall, series_r: 4 + ci }));
    expect(us).toEqual(us.slice().sort((a, b) => b - a));
    expect(new Set(us).size).toBe(us.length);
  });
  it('has more resistance at the wider spacing and with more insulation', () => {
    for (const row of rows.filter((r) => r.spacing_in === 16)) {
      const wider = rows.find(
        (r) => r.spacing_in === 24 && r.depth_in === row.depth_in && r.insulation_r === row.insulation_r,
      );
      expect(wider?.effective_r ?? 0).toBeGreaterThan(row.effective_r);
    }
  });

  it.each([
    [{ ...wall, depth_in: 5.5 }, /cavity\.depth_in: 5\.5 .*3\.5, 6 or 8 in\./],
    [{ ...wall, spacing_in: 19.2 }, /cavity\.spacing_in: 19\.2 .*16 or 24 in\./],
    [{ ...wall, insulation_r: 14 }, /cavity\.insulation_r: 14 .*R-0, 11, 13 or 15/],
    [{ ...wall, depth_in: 8 }, /cavity\.insulation_r: 13 .*R-25/],
    [{ ...wall, series_r: -1 }, /series_r/],
  ])('refuses %j and names what is tabulated', (bad, message) => {
    expect(() => steelFrameU(rows, bad)).toThrow(message);
  });
});

describe('steelCavity', () => {
  it('carries source and provenance', () => {
    expect(steelCavity(rows, wall)).toMatchObject({
      effective_r: 6,
      correction_factor: 0.46,
      provenance: 'two-sources',
    });
    expect(steelCavity(rows, { ...wall, spacing_in: 24, insulation_r: 11 }).provenance).toBe('memory');
  });
});
