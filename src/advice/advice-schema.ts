import { z } from 'zod';
import { windZonesSchema } from '../assessment/wind-zones.ts';
import { costPartsSchema, priceSchema } from './cost-breakdown.ts';
import { houseSchema } from './house-schema.ts';
import { openingSchema } from './openings-schema.ts';
import { rankedWallShape, rankingShape } from './ranking-schema.ts';
import { wallLoadsShape } from './wall-loads.ts';
import { wallPhysicsShape } from './wall-physics-schema.ts';

/** What a caution is about; also the order in which a homeowner should read them. */
export const CAUTION_KINDS = [
  'professional',
  'structural',
  'fire',
  'moisture',
  'health',
  'energy',
  'openings',
  'ground',
  'buildability',
  'cost',
  'practice',
  'site-work',
  'data',
] as const;
export type CautionKind = (typeof CAUTION_KINDS)[number];

/** The firm's pack behind it; left out where the shipped rules speak. */
const house = z.string().optional();

const cautionSchema = z.object({
  text: z.string(),
  kind: z.enum(CAUTION_KINDS),
  rule: z.string().optional(),
  remedy: z.string().optional(),
  house,
});

/** A computed figure with its paper trail. */
const figureSchema = z.object({
  id: z.string(),
  what: z.string(),
  value: z.number().nullable(),
  unit: z.string(),
  method: z.string(),
  source: z.array(z.string()),
  /** Said when the number could not be computed, or rests on something remembered. */
  note: z.string().optional(),
});

const verdictSchema = z.object({
  rule: z.string(),
  title: z.string(),
  concern: z.string(),
  verdict: z.enum(['pass', 'caution', 'forbid', 'prefer', 'undecided']),
  citation: z.string(),
  provenance: z.string(),
  text: z.string(),
  /** The facts the rule read. */
  facts: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
  house,
});

const layerSchema = z.object({
  label: z.string(),
  thickness_in: z.number(),
  r: z.number(),
  /** What the layer does: finish, drainage, insulation, barrier, sheathing, framing, lining. */
  role: z.string(),
  provenance: z.string(),
});

export const rankedSchema = z.object({
  rank: z.number().int().positive(),
  id: z.string(),
  title: z.string(),
  score: z.number(),
  cladding: z.string(),
  attachment: z.string(),
  insulation: z.object({
    id: z.string(),
    material: z.string(),
    layers: z.number(),
    board_thicknesses_in: z.array(z.number()),
    thickness_in: z.number(),
    r: z.number(),
  }),
  interior_vapour_retarder: z.string(),
  water_resistive_barrier: z.string(),
  buck: z.object({
    id: z.string(),
    support: z.string(),
    label: z.string(),
    projection_in: z.number(),
    verdict: z.enum(['fits', 'does-not-fit', 'engineer']).nullable(),
    utilisation: z.number().nullable(),
    screws_per_side: z.number().nullable(),
    min_screw_length_in: z.number().nullable(),
    why: z.string(),
    flashing_sequence: z.array(z.string()),
  }),
  /** Every kind of window of the job: what carries it and how. */
  openings: z.array(openingSchema),
  fastening: z.object({
    fastener: z.string(),
    support: z.string(),
    length_in: z.number().nullable(),
    spacing_along_stud_in: z.number(),
    stud_spacing_in: z.number(),
    washer: z.string(),
    lath_or_furring: z.string(),
    count_per_100_ft2: z.number(),
    table_verdict: z.enum(['permitted', 'design-required', 'outside-table']),
    max_insulation_in: z.number().nullable(),
    gravity_load_lb: z.number(),
    wind_load_lb: z.number(),
    wind_capacity_lb: z.number().nullable(),
    /** Weight and wind together by the timber standard; null where it gives no figure, as for steel studs. */
    combined_utilisation: z.number().nullable(),
    /** What holds the cladding to its furring; null where it is glued or fastened straight through. */
    on_furring: z
      .object({
        fastener: z.string().nullable(),
        furring_in: z.number(),
        field_spacing_in: z.number().nullable(),
        corner_spacing_in: z.number().nullable(),
        /** At the corners. */
        wind_load_lb: z.number().nullable(),
        wind_capacity_lb: z.number().nullable(),
        wind_utilisation: z.number().nullable(),
        /** With the weight that hangs on it. */
        combined_utilisation: z.number().nullable(),
      })
      .nullable(),
    /** Which fastener is used most, by what and how far; null where nothing carries by fasteners. */
    weakest_link: z.string().nullable(),
    why: z.string(),
  }),
  /** Inside to outside. */
  layers: z.array(layerSchema),
  u_factor: z.number(),
  r_effective: z.number(),
  added_thickness_in: z.number(),
  weight_psf: z.number(),
  installed_cost_usd_per_ft2: priceSchema,
  /** Empty for an answer from before it was told. */
  cost_parts: costPartsSchema,
  crew: z.object({ needed: z.string(), steps: z.array(z.string()), trades: z.array(z.string()) }),
  scores: z.record(z.string(), z.number()),
  reasons: z.array(z.object({ text: z.string(), rule: z.string().optional(), house })),
  /** The cladding's own merits, which no rule weighs. */
  gains: z.array(z.string()),
  /** What this assembly gives up, against the first choice or against what was wished. */
  gives_up: z.array(z.string()),
  cautions: z.array(cautionSchema),
  verdicts: z.array(verdictSchema),
  figures: z.array(figureSchema),
  ...wallPhysicsShape,
  ...wallLoadsShape,
  ...rankedWallShape,
});
export type RankedAssembly = z.output<typeof rankedSchema>;

/** One answer, `cladwright-advice/1`. */
export const adviceSchema = z.object({
  schema: z.literal('cladwright-advice/1'),
  tool_version: z.string(),
  name: z.string(),
  code_edition: z.string(),
  site: z.object({
    climate_zone: z.string(),
    place: z.string(),
    zone_source: z.string(),
    moisture_regime: z.string().nullable(),
    winter_mean_temp_f: z.number().nullable(),
    climate_source: z.string().nullable(),
    annual_precip_in: z.number().nullable(),
    notes: z.array(z.string()),
  }),
  /** On field and corners of the walls. */
  wind: windZonesSchema,
  /** What the user said, field by field, in words. */
  answers: z.array(z.object({ field: z.string(), question: z.string(), answer: z.string() })),
  assumptions: z.array(
    z.object({
      field: z.string(),
      value: z.union([z.string(), z.number(), z.boolean(), z.null()]),
      why: z.string(),
      could_change_answer: z.boolean(),
      house,
    }),
  ),
  /** How many walls were drawn up, and how many passed every rule. */
  considered: z.object({
    candidates: z.number(),
    admitted: z.number(),
    /** Of those, how many compete: no other one is at least as good in everything and better in something. */
    competing: z.number().optional(),
  }),
  ranked: z.array(rankedSchema),
  /** The synthetic insulated finish, which is what the job is to do without: shown, not ranked. */
  comparison: z
    .object({
      title: z.string(),
      score: z.number(),
      u_factor: z.number(),
      weight_psf: z.number(),
      installed_cost_usd_per_ft2: priceSchema,
      gains: z.array(z.string()),
      gives_up: z.array(z.string()),
    })
    .nullable(),
  /** When only true stucco would do and none passes: the best wall that looks like it. */
  fallback: z.object({ why: z.string(), assembly: rankedSchema }).nullable(),
  excluded: z.array(
    z.object({
      title: z.string(),
      id: z.string().optional(),
      because: z.array(
        z.object({ rule: z.string(), citation: z.string(), text: z.string(), remedy: z.string(), house }),
      ),
    }),
  ),
  would_change_the_answer: z.array(z.object({ if: z.string(), then: z.string() })),
  ...rankingShape,
  cautions: z.array(cautionSchema),
  rules: z.object({
    packs: z.array(
      z.object({
        name: z.string(),
        version: z.string(),
        sha256: z.string(),
        /** True for a firm's own pack. */
        house: z.boolean().optional(),
      }),
    ),
  }),
  /** What a firm's packs changed; left out where none was in force. */
  house: houseSchema.optional(),
});
export type Advice = z.output<typeof adviceSchema>;
export type Caution = z.output<typeof cautionSchema>;
export type Figure = z.output<typeof figureSchema>;
