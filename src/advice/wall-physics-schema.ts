import { z } from 'zod';

/** A plane of a temperature profile: the outer face of the layer named. */
const planeSchema = z.object({ after: z.string(), temp_f: z.number() });

/** Through the cavity insulation. */
const cavityPlaneSchema = planeSchema.extend({
  role: z.string(),
  /** Of the vapour at this plane; null where humidity or retarder are not known. */
  dew_point_f: z.number().nullable(),
});

const seasonSchema = z.object({
  /** 1 January to 12 December. */
  month: z.number().int().min(1).max(12),
  indoor_temp_f: z.number(),
  outdoor_temp_f: z.number(),
  indoor_dew_point_f: z.number().nullable(),
  outdoor_dew_point_f: z.number().nullable(),
  /** Of the exterior insulation as taken here; differs from the rated value where it follows its temperature. */
  insulation_r: z.number(),
  /** Inside to outside; the last plane is the outdoor air. */
  cavity: z.array(cavityPlaneSchema),
  /** Null for steel studs. */
  stud: z.array(planeSchema).nullable(),
});

export const profileSchema = z.object({
  /** The coldest and the warmest month of the site; null when its months are not known. */
  winter: seasonSchema.nullable(),
  summer: seasonSchema.nullable(),
  notes: z.array(z.string()),
});
export type TemperatureProfile = z.output<typeof profileSchema>;
export type ProfileSeason = z.output<typeof seasonSchema>;

export const condensateMonthSchema = z.object({
  month: z.number().int().min(1).max(12),
  /** Gained in the month; negative while drying. */
  condensate_g_m2: z.number(),
  /** Held at the end of the month. */
  accumulated_g_m2: z.number(),
});
export type CondensateMonth = z.output<typeof condensateMonthSchema>;

const optionSchema = z.object({
  cavity_r: z.number(),
  ci_r: z.number(),
  /** How sure this option is; the U-factor limit has a provenance of its own. Null in records that don't know it. */
  provenance: z.string().nullable(),
});

export const wallEnergySchema = z.object({
  /** By which route the wall meets the energy code. */
  route: z.enum(['u-factor', 'r-value', 'both', 'none', 'unknown']),
  /** The same in a sentence, with margin and nearest thickness. */
  summary: z.string(),
  max_u_factor: z.number().nullable(),
  /** How sure the U-factor limit is, whatever the options are. */
  max_u_factor_provenance: z.string().nullable(),
  /** How far the wall's U-factor lies below the maximum; negative above. */
  u_margin_percent: z.number().nullable(),
  /** The R-value option met, and what the wall has to spare over it. */
  option_met: optionSchema.extend({ spare_cavity_r: z.number(), spare_ci_r: z.number() }).nullable(),
  /** When no option is met: the one that lacks least. */
  option_nearest: optionSchema.extend({ missing_cavity_r: z.number(), missing_ci_r: z.number() }).nullable(),
  /** The thinnest market thickness of the same insulation, in as many boards, that complies. */
  nearest_compliant_thickness_in: z.number().nullable(),
  nearest_compliant_route: z.enum(['u-factor', 'r-value', 'both', 'none', 'unknown']).nullable(),
  /** How sure the figures are that the verdict rests on; of two routes met, the surer one's. */
  provenance: z.string().nullable(),
  from_memory: z.boolean(),
  notes: z.array(z.string()),
});
export type WallEnergy = z.output<typeof wallEnergySchema>;

/** A wall's U-factor taken apart, Btu/(h·ft²·°F), with what was assumed. */
export const wallThermalSchema = z.object({
  method: z.string(),
  clear_wall_u_factor: z.number(),
  delta_u_fasteners: z.number(),
  delta_u_furring: z.number(),
  delta_u_bucks: z.number(),
  delta_u_steel_brackets: z.number(),
  whole_wall_u_factor: z.number(),
  /** By ISO 6946, for information: in none of the figures above. */
  air_gap: z.object({
    level: z.number().int().min(0).max(2),
    joints: z.enum(['offset', 'aligned']),
    delta_u: z.number(),
    delta_u_if_aligned: z.number(),
  }),
  assumptions: z.object({
    /** Null for steel framing. */
    framing_fraction: z.number().nullable(),
    film_inside_r: z.number(),
    film_outside_r: z.number(),
    cavity_labelled_r: z.number(),
    cavity_installed_r: z.number(),
    fastener_chi_btu_h_f: z.number(),
    /** Through all boards. */
    fasteners_per_100_ft2: z.number(),
    /** Through inner boards only. */
    inner_fasteners_per_100_ft2: z.number(),
    buck_psi_btu_h_ft_f: z.number(),
    opening_perimeter_ft: z.number(),
    wall_area_ft2: z.number(),
  }),
  /** What the layers are made of. */
  materials: z.array(
    z.object({
      layer: z.string(),
      material: z.string(),
      conductivity_w_mk: z.number().nullable(),
      r_per_in: z.number().nullable(),
      density_kg_m3: z.number().nullable(),
      density_pcf: z.number().nullable(),
      source: z.string(),
      provenance: z.string(),
    }),
  ),
  notes: z.array(z.string()),
});
export type WallThermal = z.output<typeof wallThermalSchema>;

/** Heat and moisture of one ranked wall, written out. */
export const wallPhysicsShape = {
  temperature_profile: profileSchema,
  /** Twelve, from the first condensing month on; null when humidity or retarder are not known. */
  condensate_by_month: z.array(condensateMonthSchema).length(12).nullable(),
  /** Where the water forms, the wettest plane first; empty when the wall stays dry or it is not known. */
  condensate_planes: z.array(z.object({ where: z.string(), peak_g_m2: z.number() })),
  /** What the method leaves out, or why there are no months. */
  condensate_note: z.string(),
  energy: wallEnergySchema,
  thermal: wallThermalSchema,
} as const;

export const wallPhysicsSchema = z.object(wallPhysicsShape);
export type WallPhysics = z.output<typeof wallPhysicsSchema>;
