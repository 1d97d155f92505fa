import { z } from 'zod';
import { figureSchema, provenanceSchema } from './sourced.ts';

/** A convection coefficient as factor · dT^on_difference · d^on_thickness, W/(m²·K), dT in K, d in m. */
const convectionSchema = z.strictObject({
  factor: z.number().positive(),
  on_difference: z.number(),
  on_thickness: z.number(),
});
const byHeatFlow = <S extends z.ZodType>(schema: S) =>
  z.strictObject({ horizontal: schema, up: schema, down: schema });

const iso6946Schema = z.strictObject({
  /** Upper over lower resistance limit beyond which the combined method is not used. */
  max_limit_ratio: figureSchema,
  /** Share of U below which all corrections together may be left out. */
  negligible_correction: figureSchema,
  surface: z.strictObject({
    emissivity: z.number(),
    inside_convection_w_m2k: byHeatFlow(z.number().positive()),
    outside_convection_still_w_m2k: z.number().positive(),
    outside_convection_per_m_s: z.number().positive(),
    rounded_m2kw: z.strictObject({
      inside_horizontal: z.number(),
      inside_up: z.number(),
      inside_down: z.number(),
      outside: z.number(),
    }),
    source: z.string(),
    provenance: provenanceSchema,
  }),
  air_layer: z.strictObject({
    max_thickness_m: z.number().positive(),
    still_air_w_mk: z.number().positive(),
    small_difference_k: z.number().positive(),
    small_difference: byHeatFlow(convectionSchema),
    large_difference: byHeatFlow(convectionSchema),
    source: z.string(),
    provenance: provenanceSchema,
  }),
  ventilation: z.strictObject({
    unventilated_to_mm2_per_m: z.number(),
    well_ventilated_from_mm2_per_m: z.number(),
    source: z.string(),
    provenance: provenanceSchema,
  }),
  air_gaps: z.strictObject({
    levels: z
      .array(
        z.strictObject({
          level: z.union([z.literal(0), z.literal(1), z.literal(2)]),
          delta_u_w_m2k: z.number().min(0),
          meaning: z.string(),
        }),
      )
      .length(3),
    source: z.string(),
    provenance: provenanceSchema,
  }),
  fasteners: z.strictObject({
    alpha: z.number().positive(),
    least_conductivity_w_mk: z.number().positive(),
    source: z.string(),
    provenance: provenanceSchema,
  }),
});

/** Point thermal transmittance of one fastener through the insulation, W/K; with the range where one is known. */
const pointBridgeSchema = figureSchema
  .extend({ value: z.number().min(0), low: z.number().min(0).optional(), high: z.number().optional() })
  .refine(
    ({ low, value, high }) => (low ?? value) <= value && value <= (high ?? value),
    'Give low, value and high in that order.',
  );

const framingFractionSchema = z.strictObject({
  id: z.string(),
  label: z.string(),
  material: z.enum(['wood']),
  style: z.enum(['standard', 'intermediate', 'advanced']),
  spacing_in: z.number().positive(),
  framing_fraction: z.number().min(0).max(1),
  studs_and_plates: z.number().min(0).max(1),
  headers: z.number().min(0).max(1),
  source: z.string(),
  provenance: provenanceSchema,
});

const steelCavitySchema = z.strictObject({
  depth_in: z.number().positive(),
  spacing_in: z.number().positive(),
  insulation_r: z.number().min(0),
  /** Resistance of studs and insulation together, as the standard rounds it. */
  effective_r: z.number().positive(),
  /** Effective over nominal; null for the empty cavity. */
  correction_factor: z.number().positive().nullable(),
  source: z.string(),
  provenance: provenanceSchema,
});

const battSchema = z.strictObject({
  labelled_r: z.number().positive(),
  thickness_in: z.number().positive(),
  /** Shallower cavities with a published resistance; all others are not known. */
  compressed: z.array(z.strictObject({ cavity_depth_in: z.number().positive(), r: z.number().positive() })),
  source: z.string(),
  provenance: provenanceSchema,
});

const temperatureCurveSchema = z.strictObject({
  insulation: z.enum(['mineral-wool', 'xps', 'eps', 'graphite-eps', 'polyiso', 'wood-fibre']),
  /** From the coldest to the warmest mean temperature; one of them is 75 °F. */
  points: z
    .array(z.strictObject({ mean_temp_f: z.number(), r_per_in: z.number().positive() }))
    .min(2)
    .refine((points) => points.some((p) => p.mean_temp_f === 75), 'Give a point at 75 °F, the rating point.')
    .refine(
      (points) =>
        points.every((p, i) => i === 0 || p.mean_temp_f > (points[i - 1]?.mean_temp_f ?? p.mean_temp_f)),
      'Give the points from the coldest to the warmest.',
    ),
  note: z.string(),
  source: z.string(),
  provenance: provenanceSchema,
});

/** `rules/energy/thermal.table.json`: everything the thermal calculators take from standards and measurements. */
export const thermalTableSchema = z.strictObject({
  schema: z.literal('cladwright-thermal/1'),
  title: z.string(),
  films: z.strictObject({
    inside_vertical_r: figureSchema,
    outside_winter_r: figureSchema,
    outside_summer_r: figureSchema,
    inside_heat_up_r: figureSchema,
    inside_heat_down_r: figureSchema,
  }),
  wood_r_per_in: figureSchema,
  empty_cavity_r: figureSchema,
  max_cavity_r_per_in: figureSchema,
  framing_fractions: z.array(framingFractionSchema).min(1),
  steel_cavities: z.array(steelCavitySchema).min(1),
  batts: z.array(battSchema).min(1),
  temperature_curves: z.array(temperatureCurveSchema).min(1),
  /** By what the tip of the fastener ends in. */
  fastener_chi_w_k: z.strictObject({ wood: pointBridgeSchema, steel: pointBridgeSchema }),
  iso_6946: iso6946Schema,
});

export type ThermalTable = z.output<typeof thermalTableSchema>;
export type IsoTable = ThermalTable['iso_6946'];
export type SteelCavity = ThermalTable['steel_cavities'][number];
export type FramingFraction = ThermalTable['framing_fractions'][number];
export type FramingStyle = FramingFraction['style'];
export type TemperatureCurve = ThermalTable['temperature_curves'][number];
export type HeatFlow = 'horizontal' | 'up' | 'down';
/** How insulation is laid, ISO 6946: 0 no gaps or minor ones, 1 gaps from face to face, 2 air moving behind too. */
export type AirGapLevel = 0 | 1 | 2;
