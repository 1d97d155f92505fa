import { z } from 'zod';
import { provenanceSchema as provenance } from '../base/provenance.ts';
import { BUCK_STOCKS } from './buck-stock.ts';

export { provenance };

/** A figure with where it comes from. `memory` figures are shown as such. */
export const sourced = z.strictObject({
  value: z.number(),
  low: z.number().optional(),
  high: z.number().optional(),
  source: z.string().min(3),
  provenance,
});
export type Sourced = z.output<typeof sourced>;

const price = z.strictObject({ low: z.number().min(0), likely: z.number().min(0), high: z.number().min(0) });
export type Price = z.output<typeof price>;

const paid = z.strictObject({
  usd_per_ft2: price,
  year: z.number().int(),
  source: z.string(),
  provenance,
});

export const insulationSchema = z.strictObject({
  id: z.enum(['mineral-wool', 'xps', 'eps', 'graphite-eps', 'polyiso', 'wood-fibre']),
  label: z.string(),
  /** Boards of one family are near enough the same that one is no real alternative to the other. */
  family: z.string(),
  /** Design value at 75 °F mean, h·ft²·°F/Btu per inch. */
  r_per_in: sourced,
  density_pcf: sourced,
  /** Of the bare board; null where the facers decide. */
  permeability_perm_in: sourced.nullable(),
  /** Of the facers, whatever the thickness; null for unfaced boards. */
  facer_permeance_perm: sourced.nullable(),
  compressive_psi: sourced,
  market_thicknesses_in: z.array(z.number().positive()).min(1),
  max_layers: z.number().int().min(1).max(3),
  is_foam_plastic: z.boolean(),
  is_combustible: z.boolean(),
  /** Board alone, laid and taped: a price for the first inch and for each inch more, and for each extra layer. */
  cost: z.strictObject({
    first_inch: price,
    each_more_inch: price,
    each_more_layer: price,
    year: z.number().int(),
    source: z.string(),
    provenance,
  }),
  carbon_kgco2e_per_m2_rsi: sourced,
  /** 0 (awkward) to 1 (easy to cut, hold and screw through). */
  handling: z.number().min(0).max(1),
  notes: z.array(z.string()),
});
export type Insulation = z.output<typeof insulationSchema>;

const outerLayer = z.strictObject({
  label: z.string(),
  role: z.enum(['finish', 'lath', 'drainage', 'furring']),
  thickness_in: z.number().min(0),
  r: sourced,
  weight_psf: sourced,
  /** Soaked or freshly placed; left out where nobody gives one. */
  wet_weight_psf: sourced.optional(),
});

export const claddingSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  label: z.string(),
  finish_kind: z.enum(['cement-stucco', 'stucco-look', 'other']),
  is_cement_stucco: z.boolean(),
  is_one_coat: z.boolean(),
  is_insulated_finish: z.boolean(),
  is_adhered_veneer: z.boolean(),
  is_fibre_cement: z.boolean(),
  is_wood_siding: z.boolean(),
  is_combustible: z.boolean(),
  is_reservoir: z.boolean(),
  needs_evaluation_report: z.boolean(),
  /** How the weight reaches the studs. */
  attachment: z.enum(['direct', 'furring', 'adhered']),
  attachment_label: z.string(),
  lath: z.enum(['integral', 'separate', 'none']),
  drainage: z.strictObject({
    kind: z.enum(['mat', 'furring-gap', 'grooved-board', 'none']),
    gap_in: z.number().min(0),
    is_ventilated: z.boolean(),
    counts_as_vented_cladding: z.boolean(),
  }),
  /** From the insulation outward. */
  layers: z.array(outerLayer).min(1),
  permeance_perm: sourced,
  works_with: z.strictObject({
    insulations: z.array(z.string()).min(1),
    framing: z.array(z.enum(['wood', 'steel'])).min(1),
    max_layers: z.number().int().min(1).max(3),
    max_insulation_in: z.number().positive(),
    /** Why the limits above. */
    why: z.string(),
  }),
  /** Fasteners that can carry it, in the order to try: cheapest and most ordinary first. */
  fastenings: z.array(
    z.strictObject({
      fastener: z.string(),
      framing: z.enum(['wood', 'steel']),
      spacings_in: z.array(z.number().positive()).min(1),
      washer: z.string(),
    }),
  ),
  lath_or_furring: z.string(),
  /** How it is called on deeper strips, for winds that its nails don't hold in the usual ones. */
  deeper_furring: z
    .strictObject({ label: z.string(), layer_label: z.string(), lath_or_furring: z.string() })
    .optional(),
  cost: paid,
  crew: z.strictObject({
    needed_rank: z.number().int().min(0).max(2),
    needed: z.string(),
    trades: z.array(z.string()).min(1),
    steps: z.array(z.string()).min(1),
    needs_plasterer: z.boolean(),
  }),
  /** 0 (patching is hard, windows locked in) to 1. */
  repairability: z.number().min(0).max(1),
  carbon_kgco2e_per_m2: sourced,
  gives_up: z.array(z.string()),
  gains: z.array(z.string()),
});
export type Cladding = z.output<typeof claddingSchema>;

/** Strips deeper than those that the claddings on furring come with: what they are, and what they cost more. */
export const deeperFurringSchema = z.strictObject({
  id: z.string(),
  thickness_in: z.number().positive(),
  weight_psf: sourced,
  /** On top of the cladding's price. */
  cost: paid,
});
export type DeeperFurring = z.output<typeof deeperFurringSchema>;

export const retarderSchema = z.strictObject({
  id: z.string(),
  label: z.string(),
  class: z.enum(['none', 'class-iii', 'class-ii', 'class-i', 'responsive']),
  dry_cup_perm: sourced,
  wet_cup_perm: sourced,
  /** Can it be added without opening an existing wall? */
  can_be_added_in_retrofit: z.boolean(),
  is_offered_in_new_work: z.boolean(),
  cost: paid,
  note: z.string(),
});
export type Retarder = z.output<typeof retarderSchema>;

/** How a barrier takes a flashing: lapped, stuck on, or run into without a joint. */
export const BARRIER_KINDS = ['sheet', 'adhered', 'fluid'] as const;

export const barrierSchema = z.strictObject({
  id: z.string(),
  /** The ways of carrying a cladding that it is offered behind. */
  behind: z.array(z.enum(['direct', 'furring', 'adhered'])).min(1),
  label: z.string(),
  /** What it is called where there is no sheathing; left out where the label names none. */
  label_on_open_studs: z.string().optional(),
  permeance_perm: sourced,
  kind: z.enum(BARRIER_KINDS),
  is_adhered_or_fluid: z.boolean(),
  /** Its joints are taped, so that a loose sheet holds back air too. */
  is_taped: z.boolean(),
  layers: z.number().int().min(1).max(2),
  grade: z.enum(['two-layer-10-minute', 'one-layer-60-minute', 'one-layer-10-minute']),
  thickness_in: z.number().min(0),
  cost: paid,
  note: z.string(),
});
export type Barrier = z.output<typeof barrierSchema>;

export const BUCK_SUPPORTS = [
  'bears-on-sill',
  'face-fastened',
  'flange-over-insulation',
  'steel-bracket',
] as const;

export const buckSchema = z.strictObject({
  id: z.string(),
  label: z.string(),
  support: z.enum(BUCK_SUPPORTS),
  /** As in the buck calculator; null where no wood member carries. */
  member: z.strictObject({ nominal: z.string(), specific_gravity: z.number() }).nullable(),
  /** What its pieces are cut from, and what it is called with them in the place of "{pieces}"; null without pieces. */
  pieces: z.strictObject({ stock: z.enum(BUCK_STOCKS), label: z.string().includes('{pieces}') }).nullable(),
  min_projection_in: z.number().min(0),
  max_projection_in: z.number().positive(),
  /** Drawn up only where a window of the job is as large or as heavy; left out, for any window. */
  for_units_from: z.strictObject({ area_ft2: z.number(), weight_lb: z.number() }).optional(),
  takes_room_in_opening_in: z.number().min(0),
  works_with_flangeless: z.boolean(),
  screw: z
    .strictObject({
      diameter_in: z.number(),
      root_diameter_in: z.number(),
      bending_yield_psi: z.number(),
      length_in: z.number(),
      spacing_in: z.number(),
      label: z.string(),
    })
    .nullable(),
  psi_btu_h_ft_f: sourced,
  cost_each: z.strictObject({ usd: price, year: z.number().int(), source: z.string(), provenance }),
  min_crew_rank: z.number().int().min(0).max(2),
  limit_source: z.string(),
  limit_provenance: provenance,
  note: z.string(),
});
export type Buck = z.output<typeof buckSchema>;

export const sheathingSchema = z.strictObject({
  id: z.enum(['osb', 'plywood', 'gypsum', 'fibreboard', 'boards', 'none']),
  label: z.string(),
  thickness_in: z.number().min(0),
  r: sourced,
  dry_cup_perm: sourced,
  wet_cup_perm: sourced,
  is_wood_based: z.boolean(),
});
export type SheathingEntry = z.output<typeof sheathingSchema>;

/** Prices that belong to no single part. */
export const pricesSchema = z.strictObject({
  schema: z.literal('cladwright-prices/1'),
  year: z.number().int(),
  source: z.string(),
  provenance,
  /** The fastener with its cap or washer, by length; driving it is labour. */
  fastener_material_usd_each: z.strictObject({ up_to_4_in: price, up_to_6_in: price, longer: price }),
  /** One person, with the employer's costs and the contractor's share. */
  labour_usd_per_hour: price,
  opening_flashing_usd_each: price,
});
export type Prices = z.output<typeof pricesSchema>;
