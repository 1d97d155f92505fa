import { z } from 'zod';
import { provenanceSchema as provenance } from '../../base/provenance.ts';

const sourced = { source: z.string().min(3), provenance, note: z.string().optional() };

/** `rules/vapour/moisture.table.json`: indoor conditions, humidity classes and limits, each with its source. */
export const moistureTableSchema = z.strictObject({
  schema: z.literal('cladwright-moisture-table/1'),
  humidity_classes: z
    .array(
      z.strictObject({
        class: z.number().int().min(1).max(5),
        /** Upper limit of the indoor vapour pressure excess at 0 °C outdoors and below, Pa. */
        max_excess_pa: z.number().positive(),
        max_excess_g_m3: z.number().positive(),
        use: z.string().min(3),
        use_provenance: provenance,
        ...sourced,
      }),
    )
    .length(5),
  /** The excess is constant up to the first temperature and falls in a straight line to nought at the second. */
  humidity_class_shape: z.strictObject({
    constant_up_to_c: z.number(),
    nought_from_c: z.number(),
    ...sourced,
  }),
  surface_resistances: z.strictObject({ rsi_m2kw: z.number(), rse_m2kw: z.number(), ...sourced }),
  /** Indoor winter air of the sheathing dew-point check. */
  indoor_winter: z.strictObject({ temp_f: z.number(), rh: z.number().gt(0).max(1), ...sourced }),
  /** Indoor air of the summer temperature profile: a house that is cooled. */
  indoor_summer: z.strictObject({ temp_f: z.number(), ...sourced }),
  surface_mould: z.strictObject({
    critical_rh: z.number().gt(0).max(1),
    rsi_m2kw: z.number().positive(),
    rsi_glazing_m2kw: z.number().positive(),
    ...sourced,
  }),
  condensate_limits: z.array(
    z.strictObject({ id: z.string(), limit_g_m2: z.number().positive(), applies_to: z.string(), ...sourced }),
  ),
});
export type MoistureTable = z.output<typeof moistureTableSchema>;
