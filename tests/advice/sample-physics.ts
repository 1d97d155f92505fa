import type { CondensateMonth, ProfileSeason, WallPhysics } from '../../src/advice/wall-physics-schema.ts';

const LAYERS = [
  ['inside film', 'film'],
  ['gypsum board', 'lining'],
  ['studs with cavity fill', 'framing'],
  ['OSB', 'sheathing'],
  ['membrane', 'barrier'],
  ['mineral wool', 'insulation'],
  ['drainage mat', 'drainage'],
  ['plaster', 'finish'],
  ['outside film', 'film'],
] as const;

function season(
  given: Omit<ProfileSeason, 'cavity' | 'stud' | 'insulation_r'>,
  temps_f: readonly number[],
  dew_points_f: readonly number[] | null,
): ProfileSeason {
  return {
    ...given,
    insulation_r: 12,
    cavity: LAYERS.map(([after, role], i) => ({
      after,
      role,
      temp_f: temps_f[i] ?? Number.NaN,
      dew_point_f: dew_points_f?.[i] ?? null,
    })),
    stud: LAYERS.map(([after], i) => ({ after, temp_f: temps_f[i] ?? Number.NaN })),
  };
}

/** An invented cold winter; its figures mean nothing, but temperature and dew point meet at one plane. */
export const SAMPLE_WINTER: ProfileSeason = season(
  {
    month: 1,
    indoor_temp_f: 70,
    outdoor_temp_f: 10,
    indoor_dew_point_f: 46,
    outdoor_dew_point_f: 4,
  },
  [68.8, 68, 31, 30, 30, 10.3, 10.3, 10.3, 10],
  [46, 44, 31, 20, 18, 8, 8, 5, 4],
);

/** An invented hot and damp summer: vapour goes inward. */
export const SAMPLE_SUMMER: ProfileSeason = season(
  {
    month: 7,
    indoor_temp_f: 75,
    outdoor_temp_f: 85,
    indoor_dew_point_f: 54,
    outdoor_dew_point_f: 74,
  },
  [75.2, 75.3, 81, 81.2, 81.2, 84.9, 84.9, 84.9, 85],
  [54, 55, 56, 66, 68, 72, 72, 74, 74],
);

/** Water from November to March that dries in May: seven months of nothing follow. */
export const SAMPLE_MONTHS: CondensateMonth[] = [
  [11, 10, 10],
  [12, 40, 50],
  [1, 60, 110],
  [2, 30, 140],
  [3, -20, 120],
  [4, -90, 30],
  [5, -30, 0],
  [6, 0, 0],
  [7, 0, 0],
  [8, 0, 0],
  [9, 0, 0],
  [10, 0, 0],
].map(([month = 0, condensate_g_m2 = 0, accumulated_g_m2 = 0]) => ({
  month,
  condensate_g_m2,
  accumulated_g_m2,
}));

/** Heat and moisture of an invented wall, complete in every field. */
export const SAMPLE_PHYSICS: WallPhysics = {
  temperature_profile: {
    winter: SAMPLE_WINTER,
    summer: SAMPLE_SUMMER,
    notes: ['Steady state at monthly mean temperatures.', 'Indoors 70 °F in winter, from memory.'],
  },
  condensate_by_month: SAMPLE_MONTHS,
  condensate_planes: [{ where: 'between the cavity insulation and the sheathing', peak_g_m2: 140 }],
  condensate_note: 'Peak 140 g/m²; all of it dries again within the year. Diffusion only.',
  energy: {
    route: 'both',
    summary:
      'The wall meets the energy code in zone 5B by its U-factor and by an R-value option. The thinnest on the market that meets it is 2 in.',
    max_u_factor: 0.045,
    max_u_factor_provenance: 'memory',
    u_margin_percent: 9,
    option_met: { cavity_r: 20, ci_r: 5, spare_cavity_r: 1, spare_ci_r: 7.6, provenance: 'two-sources' },
    option_nearest: null,
    nearest_compliant_thickness_in: 2,
    nearest_compliant_route: 'u-factor',
    provenance: 'two-sources',
    from_memory: false,
    notes: [],
  },
  thermal: {
    method: 'parallel-path',
    clear_wall_u_factor: 0.0398,
    delta_u_fasteners: 0.0012,
    delta_u_furring: 0,
    delta_u_bucks: 0.0013,
    delta_u_steel_brackets: 0,
    whole_wall_u_factor: 0.0423,
    air_gap: { level: 0, joints: 'offset', delta_u: 0, delta_u_if_aligned: 0.0004 },
    assumptions: {
      framing_fraction: 0.25,
      film_inside_r: 0.68,
      film_outside_r: 0.17,
      cavity_labelled_r: 21,
      cavity_installed_r: 21,
      fastener_chi_btu_h_f: 0.0076,
      fasteners_per_100_ft2: 150,
      inner_fasteners_per_100_ft2: 0,
      buck_psi_btu_h_ft_f: 0.025,
      opening_perimeter_ft: 96,
      wall_area_ft2: 1800,
    },
    materials: [
      {
        layer: 'lining',
        material: 'gypsum board',
        conductivity_w_mk: 0.16,
        r_per_in: 0.901,
        density_kg_m3: 800,
        density_pcf: 49.94,
        source: 'an invented handbook',
        provenance: 'verified',
      },
      {
        layer: 'water-resistive barrier',
        material: 'fluid-applied membrane',
        conductivity_w_mk: null,
        r_per_in: null,
        density_kg_m3: null,
        density_pcf: null,
        source: 'a film',
        provenance: 'memory',
      },
    ],
    notes: ['Framing takes 25 % of the wall.'],
  },
};
