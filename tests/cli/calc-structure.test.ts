import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { CALC_EXAMPLES } from './example-inputs.ts';
import { runProgram } from './run-program.ts';

type Structural = 'wind' | 'withdrawal' | 'pull-through' | 'lateral' | 'fastening';

const calc = (name: Structural, change: object) =>
  runProgram(['calc', name], { stdin: JSON.stringify({ ...CALC_EXAMPLES[name], ...change }) });

describe('structural calculators refuse', () => {
  it.each<[string, Structural, object, RegExp]>([
    [
      'a wind speed under the map',
      'wind',
      { basic_wind_speed_mph: 84.9 },
      /basic_wind_speed_mph: 84\.9 .*85 to 220/,
    ],
    ['a wind speed above the map', 'wind', { basic_wind_speed_mph: 221 }, /basic_wind_speed_mph: 221 /],
    ['an unknown exposure', 'wind', { exposure: 'A' }, /exposure: "A" .*"B", "C", "D"/],
    ['an edition that is not worked out', 'wind', { standard: 'ASCE 7-10' }, /standard: "ASCE 7-10" /],
    ['an effective area of nothing', 'wind', { effective_area_ft2: 0 }, /effective_area_ft2: 0 /],
    ['a topographic factor under 1', 'wind', { kzt: 0.9 }, /kzt: 0\.9 /],
    [
      'a diameter under the withdrawal equations',
      'withdrawal',
      { diameter_in: 0.098 },
      /diameter_in: 0\.098 .*0\.099/,
    ],
    ['a wood screw over them', 'withdrawal', { diameter_in: 1.1 }, /diameter_in: 1\.1 /],
    // 6 x 0.19 = 1.14 in.
    [
      'a wood screw under 6 diameters deep',
      'withdrawal',
      { thread_penetration_in: 1.13 },
      /thread_penetration_in: 1\.13 .*at least 1\.14 in\. \(6 diameters\)/,
    ],
    [
      'a lag screw under 4 diameters deep',
      'withdrawal',
      { fastener: 'lag-screw', diameter_in: 0.375, thread_penetration_in: 1.4 },
      /thread_penetration_in: 1\.4 .*at least 1\.5 in\. \(4 diameters/,
    ],
    ['wood lighter than any table', 'withdrawal', { specific_gravity: 0.29 }, /specific_gravity: 0\.29 /],
    ['a load duration for impact', 'withdrawal', { load_duration: 2 }, /load_duration: 2 .*impact/],
    [
      'a screw pulled out of end grain',
      'withdrawal',
      { end_grain: true },
      /end_grain: true .*into side grain/,
    ],
    ['a head wider than the equation', 'pull-through', { head_diameter_in: 3.1 }, /head_diameter_in: 3\.1 /],
    ['a side thinner than it', 'pull-through', { side_thickness_in: 0.09 }, /side_thickness_in: 0\.09 /],
    ['a dowel under the yield equations', 'lateral', { diameter_in: 0.09 }, /diameter_in: 0\.09 /],
    ['a dowel over them', 'lateral', { diameter_in: 1.01 }, /diameter_in: 1\.01 /],
    [
      'a root above the nominal diameter',
      'lateral',
      { root_diameter_in: 0.2 },
      /root_diameter_in: 0\.2 .*not above the nominal/,
    ],
    [
      'too little penetration',
      'lateral',
      { main: { penetration_in: 1.1, specific_gravity: 0.42 } },
      /main\.penetration_in: 1\.1 .*1\.14/,
    ],
    ['a gap below nothing', 'lateral', { gap_in: -0.1 }, /gap_in: -0\.1 /],
    ['a fastener that is not known', 'fastening', { fastener: 'staple' }, /fastener: "staple" /],
    ['studs no wall has', 'fastening', { framing_spacing_in: 49 }, /framing_spacing_in: 49 .*4 to 48/],
    ['fasteners no wall has', 'fastening', { fastener_spacing_in: 0.5 }, /fastener_spacing_in: 0\.5 /],
    ['suction given as a negative number', 'fastening', { outward_wind_psf: -25 }, /outward_wind_psf: -25 /],
    ['no insulation', 'fastening', { insulation_thickness_in: 0 }, /insulation_thickness_in: 0 /],
  ])('%s', async (_, name, change, message) => {
    const { code, stdout, stderr } = await calc(name, change);
    expect(stderr).toMatch(message);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  });
});

const verdictSchema = z.looseObject({
  table: z.looseObject({ verdict: z.string() }),
  verdict: z.string(),
  wind_capacity_lb: z.number().nullable(),
  notes: z.array(z.string()),
});

describe('calc fastening answers "design required", with the reason,', () => {
  it.each<[string, object, string, RegExp]>([
    ['for studs wider apart than the table', { framing_spacing_in: 32 }, 'outside-table', /stops at 24 in/],
    [
      'for fasteners wider apart than the table',
      { fastener_spacing_in: 30 },
      'outside-table',
      /stops at 24 in between these fasteners/,
    ],
    ['for foam past the cell', { insulation_thickness_in: 3 }, 'design-required', /stops at 2\.3 in/],
    [
      'for foam past the table',
      { insulation_thickness_in: 6 },
      'outside-table',
      /stop at 4 in of insulation.*No gravity figure/,
    ],
    ['for a cladding past the table', { cladding_psf: 26 }, 'outside-table', /stops at 25 psf/],
    [
      'for mineral wool and wood fibre',
      { insulation_kind: 'fibrous' },
      'outside-table',
      /a fibrous board is not in them.*engineering estimate/,
    ],
    ['for light studs', { specific_gravity: 0.36 }, 'outside-table', /specific gravity 0\.42 or more/],
    [
      'for a steel screw in wood',
      { fastener: 'steel-screw-10' },
      'outside-table',
      /No published method for a self-drilling steel screw in wood/,
    ],
    [
      'for a wind that the fastener does not hold',
      { outward_wind_psf: 250 },
      'permitted',
      /The wind takes \d+ % of what the fastener holds/,
    ],
  ])('%s', async (_, change, table, reason) => {
    const { code, stdout, stderr } = await calc('fastening', change);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const answer = verdictSchema.parse(JSON.parse(stdout));
    expect(answer.verdict).toBe('design-required');
    expect(answer.table.verdict).toBe(table);
    expect(answer.notes.join(' ')).toMatch(reason);
    expect(answer.notes.join(' ')).toMatch(/A design professional must size this fastening/);
  });
});
