import { z } from 'zod';
import { computeWind, type WallZone, WIND_STANDARDS } from '../calculators/wind.ts';
import { type AnswerContext, FASTENER_AREA_FT2 } from './answer-context.ts';
import { cornerZoneSchema } from './corner-zone.ts';
import { whyThisWindStandard } from './wind-standard.ts';

const pressures = z.object({ inward_psf: z.number(), outward_psf: z.number() });

export const windZonesSchema = z.object({
  standard: z.enum(WIND_STANDARDS),
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
  corner_zone: cornerZoneSchema,
  source: z.array(z.string()),
  notes: z.array(z.string()),
});
export type WindZones = z.output<typeof windZonesSchema>;

/**
 * Wind on the field (zone 4) and the corners (zone 5) of the walls, components and cladding.
 *
 * Effective area 10 ft² or less, as for every fastener; flat ground (Kzt 1) and sea level (Ke 1) are taken.
 * Source: see `computeWind`. Which edition of the standard goes with which code: `wind-standard.ts`.
 */
export function windZones({ brief, wind, corner_zone }: AnswerContext): WindZones {
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
    why_this_standard: whyThisWindStandard(brief.code_edition),
    basic_wind_speed_mph,
    exposure,
    mean_roof_height_ft,
    velocity_pressure_psf: field.velocity_pressure_psf,
    effective_area_ft2: FASTENER_AREA_FT2,
    zones: [
      { zone: 4, name: 'field', strength: field.strength, allowable: field.allowable },
      { zone: 5, name: 'corner', strength: corner.strength, allowable: corner.allowable },
    ],
    corner_zone,
    source: [...corner.source, 'ASCE 7 Figure 30.3-1, note on dimension a (seen in a handbook page)'],
    notes: [
      'Effective area: each fastener holds less than 10 ft², and below that the coefficients no longer change.',
      'Flat ground (Kzt 1) and sea level (Ke 1) are taken: a hill, ridge or bluff raises the pressure, height above the sea lowers it.',
      ...new Set([...field.notes, ...corner.notes]),
    ],
  };
}
