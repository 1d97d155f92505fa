import { z } from 'zod';
import { computeWind, edgeZoneWidth_ft, type WallZone } from '../calculators/wind.ts';
import { type AnswerContext, FASTENER_AREA_FT2 } from './answer-context.ts';

const pressures = z.object({ inward_psf: z.number(), outward_psf: z.number() });

export const windZonesSchema = z.object({
  standard: z.enum(['ASCE 7-16', 'ASCE 7-22']),
  why_this_standard: z.string(),
  basic_wind_speed_mph: z.number(),
  exposure: z.enum(['B', 'C', 'D']),
  mean_roof_height_ft: z.number(),
  velocity_pressure_psf: z.number(),
  effective_area_ft2: z.number(),
  zones: z.array(
    z.object({
      zone: z.union([z.literal(4), z.literal(5)]),
      name: z.enum(['field', 'corner']),
      /** Outward is negative. */
      strength: pressures,
      /** 0.6 of it: what the fastener checks use. */
      allowable: pressures,
    }),
  ),
  corner_zone: z.object({ width_if_unmeasured_ft: z.number(), text: z.string() }),
  source: z.array(z.string()),
  notes: z.array(z.string()),
});
export type WindZones = z.output<typeof windZonesSchema>;

/**
 * Wind on the field (zone 4) and the corners (zone 5) of the walls, components and cladding.
 *
 * Effective area 10 ft² or less, as for every fastener; flat ground (Kzt 1) and sea level (Ke 1) are taken.
 * Source: see `computeWind`. Which edition of the standard goes with which code: IBC and IRC 2018 and 2021 refer to
 * ASCE 7-16, 2024 to 7-22 (from memory).
 */
export function windZones({ brief, wind }: AnswerContext): WindZones {
  const { basic_wind_speed_mph, exposure, mean_roof_height_ft } = brief;
  const of = (wall_zone: WallZone) =>
    computeWind({
      standard: wind.standard,
      basic_wind_speed_mph,
      exposure,
      mean_roof_height_ft,
      wall_zone,
      effective_area_ft2: FASTENER_AREA_FT2,
    });
  const [field, corner] = [of(4), of(5)];
  return {
    standard: wind.standard,
    why_this_standard: `The ${brief.code_edition} codes refer to ${wind.standard} (from memory).`,
    basic_wind_speed_mph,
    exposure,
    mean_roof_height_ft,
    velocity_pressure_psf: field.velocity_pressure_psf,
    effective_area_ft2: FASTENER_AREA_FT2,
    zones: [
      { zone: 4, name: 'field', strength: field.strength, allowable: field.allowable },
      { zone: 5, name: 'corner', strength: corner.strength, allowable: corner.allowable },
    ],
    corner_zone: cornerZone(mean_roof_height_ft),
    source: [...corner.source, 'ASCE 7 Figure 30.3-1, note on dimension a (seen in a handbook page)'],
    notes: [
      'Effective area: each fastener holds less than 10 ft², and below that the coefficients no longer change.',
      'Flat ground (Kzt 1) and sea level (Ke 1) are taken: a hill, ridge or bluff raises the pressure, height above the sea lowers it.',
      ...new Set([...field.notes, ...corner.notes]),
    ],
  };
}

/**
 * Where the corner zone ends. The plan dimensions aren't asked for, so the text says how to find its width, and the
 * figure is the widest that it can be on a building whose least plan dimension is at most ten times its height.
 */
function cornerZone(mean_roof_height_ft: number): WindZones['corner_zone'] {
  const byHeight_ft = Number((0.4 * mean_roof_height_ft).toFixed(1));
  // At four heights the tenth of the plan and 0.4 h meet; up to ten heights 4 % of the plan stays below them.
  const width_ft = Number(edgeZoneWidth_ft(4 * mean_roof_height_ft, mean_roof_height_ft).toFixed(1));
  return {
    width_if_unmeasured_ft: width_ft,
    text: `Corner zone (zone 5): from every corner of the building, 10 % of its least plan dimension or ${byHeight_ft} ft (0.4 of the mean roof height), whichever is less, but at least 3 ft and at least 4 % of that dimension. The plan dimensions are not known: measure, or mark ${width_ft} ft from each corner. The field (zone 4) is the rest.`,
  };
}
