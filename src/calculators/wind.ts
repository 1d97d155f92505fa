import { z } from 'zod';
import { inRange } from '../base/refusal.ts';

export const WIND_STANDARDS = ['ASCE 7-16', 'ASCE 7-22'] as const;
export type WindStandard = (typeof WIND_STANDARDS)[number];
export const WIND_EXPOSURES = ['B', 'C', 'D'] as const;
export type WindExposure = (typeof WIND_EXPOSURES)[number];
export const ENCLOSURES = ['enclosed', 'partially-enclosed'] as const;
export type Enclosure = (typeof ENCLOSURES)[number];
export type WallZone = 4 | 5;

/** Directionality factor for walls, ASCE 7 Table 26.6-1. */
const KD = 0.85;
/** Allowable-stress share of strength-level wind, ASCE 7 section 2.4. */
const ALLOWABLE_SHARE = 0.6;
/** Least strength-level pressure on components and cladding, psf, either way (ASCE 7 30.2.2, from memory). */
export const LEAST_STRENGTH_PSF = 16;
/** The method's tallest mean roof height, ft. */
const TALLEST_FT = 60;

/** Velocity pressure exposure coefficients: Kz = k (max(z, 15)/zg)^(2/alpha). */
const TERRAIN: Record<WindStandard, { k: number } & Record<WindExposure, { alpha: number; zg_ft: number }>> =
  {
    // ASCE 7-16 Table 26.11-1: constants seen quoted for 7-05, unchanged to 7-16 from memory.
    'ASCE 7-16': {
      k: 2.01,
      B: { alpha: 7.0, zg_ft: 1200 },
      C: { alpha: 9.5, zg_ft: 900 },
      D: { alpha: 11.5, zg_ft: 700 },
    },
    // ASCE 7-22 Table 26.11-1: seen in two public data copies, which disagree on alpha of B (7.0 and 7.5);
    // 7.5 gives Kz close to 7-16, as the constants of C and D do.
    'ASCE 7-22': {
      k: 2.41,
      B: { alpha: 7.5, zg_ft: 3280 },
      C: { alpha: 9.8, zg_ft: 2460 },
      D: { alpha: 11.5, zg_ft: 1935 },
    },
  };

/** Internal pressure coefficient, ASCE 7 Table 26.13-1 (partially enclosed from memory). */
const GCPI: Record<Enclosure, number> = { enclosed: 0.18, 'partially-enclosed': 0.55 };

/** External coefficients of walls at 10 and 500 ft², ASCE 7 Figure 30.3-1 (end points seen in two sources). */
const WALL_GCP = {
  inward: { at_10_ft2: 1.0, at_500_ft2: 0.7 },
  outward: { 4: { at_10_ft2: -1.1, at_500_ft2: -0.8 }, 5: { at_10_ft2: -1.4, at_500_ft2: -0.8 } },
} as const;

function number(what: string, min: number, max: number, example: number) {
  const message = `Give ${what} from ${min} to ${max}, for example ${example}`;
  return z.number(message).min(min, message).max(max, message);
}

function choice<const T extends readonly [string, ...string[]]>(values: T) {
  return z.enum(values, `Choose one of ${values.map((v) => `"${v}"`).join(', ')}`);
}

/** Input of `calc wind`. Left out: `kzt` 1 (flat ground), `ke` 1 (always allowed), `enclosure` enclosed. */
export const windInputSchema = z.strictObject({
  standard: choice(WIND_STANDARDS),
  basic_wind_speed_mph: number('the basic wind speed in miles per hour', 85, 220, 115),
  exposure: choice(WIND_EXPOSURES),
  mean_roof_height_ft: number('the mean roof height in feet', 5, TALLEST_FT, 25),
  wall_zone: z.literal([4, 5], 'Choose 4 (field of the wall) or 5 (near a corner)'),
  effective_area_ft2: number('the effective wind area in square feet', 0.1, 10_000, 10),
  kzt: number('the topographic factor', 1, 4, 1).optional(),
  ke: number('the ground elevation factor', 0.5, 1.1, 1).optional(),
  enclosure: choice(ENCLOSURES).optional(),
});
export type WindInput = z.output<typeof windInputSchema>;

export type WindPressures = { readonly inward_psf: number; readonly outward_psf: number };

export type WindResult = {
  readonly velocity_pressure_psf: number;
  /** Strength level; outward is negative. */
  readonly strength: WindPressures;
  /** 0.6 of the strength level, for allowable-stress checks. */
  readonly allowable: WindPressures;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Velocity pressure exposure coefficient Kz at a height, no unit.
 *
 * @param height_ft  0 to 60 ft above ground; below 15 ft the value at 15 ft holds
 * @throws Refusal above 60 ft
 * Source: ASCE 7 Table 26.10-1 and 26.11-1. No 0.70 floor for exposure B: components dropped it in 7-16.
 */
export function exposureCoefficient(
  standard: WindStandard,
  exposure: WindExposure,
  height_ft: number,
): number {
  const height = inRange(height_ft, 'height_ft', 0, TALLEST_FT, 'a height in feet');
  const { k, [exposure]: terrain } = TERRAIN[standard];
  return k * (Math.max(height, 15) / terrain.zg_ft) ** (2 / terrain.alpha);
}

/**
 * Velocity pressure, psf, strength level, directionality factor 0.85 included: 0.00256 Kz Kzt Kd Ke V².
 *
 * @param speed_mph  basic wind speed, 85 to 220 mph
 * @throws Refusal for a speed off the map
 * Source: ASCE 7-16 Eq. 26.10-1. ASCE 7-22 writes Kd into the pressure instead; the product is the same.
 */
export function velocityPressure_psf(speed_mph: number, kz: number, kzt: number, ke: number): number {
  const speed = inRange(speed_mph, 'basic_wind_speed_mph', 85, 220, 'the basic wind speed in miles per hour');
  return 0.00256 * kz * kzt * KD * ke * speed ** 2;
}

/** Ground elevation factor Ke = exp(-0.0000362 elevation), ASCE 7 Table 26.9-1 (from memory); 1 is always allowed. */
export function elevationFactor(elevation_ft: number): number {
  return Math.exp(
    -0.0000362 * inRange(elevation_ft, 'elevation_ft', -1500, 15_000, 'the ground elevation in feet'),
  );
}

/**
 * External pressure coefficient GCp of a wall, no unit; outward is negative.
 *
 * Straight in the logarithm of the effective area between 10 and 500 ft², flat outside (the straight line is
 * from memory). The cut of one tenth for roofs to 10° is not taken.
 * Source: ASCE 7 Figure 30.3-1, mean roof height to 60 ft.
 */
export function wallCoefficient(
  zone: WallZone,
  direction: 'inward' | 'outward',
  effective_area_ft2: number,
): number {
  const area = inRange(effective_area_ft2, 'effective_area_ft2', 0.1, 10_000, 'square feet');
  const ends = direction === 'inward' ? WALL_GCP.inward : WALL_GCP.outward[zone];
  const share = Math.log10(Math.min(Math.max(area, 10), 500) / 10) / Math.log10(50);
  return ends.at_10_ft2 + share * (ends.at_500_ft2 - ends.at_10_ft2);
}

/** Pressure p = qh (GCp ± GCpi) with the worse sign of the internal pressure, psf. */
export function netPressure_psf(velocity_pressure_psf: number, gcp: number, gcpi: number): number {
  return velocity_pressure_psf * (gcp + (gcp < 0 ? -gcpi : gcpi));
}

/**
 * Strength-level pressures on a wall before the 16 psf minimum, psf. For comparison with published tables, which
 * print smaller values; a design uses {@link computeWind}.
 */
export function wallPressuresWithoutMinimum(input: WindInput): WindPressures {
  const qh = roofHeightPressure_psf(input);
  const gcpi = GCPI[input.enclosure ?? 'enclosed'];
  const { wall_zone, effective_area_ft2 } = input;
  return {
    inward_psf: netPressure_psf(qh, wallCoefficient(wall_zone, 'inward', effective_area_ft2), gcpi),
    outward_psf: netPressure_psf(qh, wallCoefficient(wall_zone, 'outward', effective_area_ft2), gcpi),
  };
}

function roofHeightPressure_psf(input: WindInput): number {
  const kz = exposureCoefficient(input.standard, input.exposure, input.mean_roof_height_ft);
  return velocityPressure_psf(input.basic_wind_speed_mph, kz, input.kzt ?? 1, input.ke ?? 1);
}

/**
 * Wind pressure on wall cladding and its fasteners: the answer of `calc wind`.
 *
 * @param input  checked by `windInputSchema`: speed 85 to 220 mph, mean roof height to 60 ft, wall zone 4 or 5
 * @returns psf; outward negative; strength level and 0.6 of it for allowable-stress checks
 * @throws Refusal outside the method's range
 * Source: ASCE 7 chapters 26 and 30, components and cladding, h ≤ 60 ft; minimum of 16 psf from memory.
 */
export function computeWind(input: WindInput): WindResult {
  const bare = wallPressuresWithoutMinimum(input);
  const strength = {
    inward_psf: Math.max(bare.inward_psf, LEAST_STRENGTH_PSF),
    outward_psf: Math.min(bare.outward_psf, -LEAST_STRENGTH_PSF),
  };
  const governed = [
    ...(bare.inward_psf < LEAST_STRENGTH_PSF ? [`inward (${bare.inward_psf.toFixed(1)} psf computed)`] : []),
    ...(-bare.outward_psf < LEAST_STRENGTH_PSF
      ? [`outward (${bare.outward_psf.toFixed(1)} psf computed)`]
      : []),
  ];
  const notes = [
    ...(governed.length > 0
      ? [`The least strength-level pressure of ${LEAST_STRENGTH_PSF} psf governs ${governed.join(' and ')}.`]
      : []),
    ...(input.standard === 'ASCE 7-22'
      ? [
          'velocity_pressure_psf includes the directionality factor 0.85, so that both editions compare; ASCE 7-22 writes it into the pressure equation. Terrain constants of exposure B differ between public data copies.',
        ]
      : []),
    'Components and cladding on walls, mean roof height to 60 ft. Tornado loads, hurricane debris and canopies are not covered; the basic wind speed comes from the adopted code or the building department.',
  ];
  return {
    velocity_pressure_psf: roofHeightPressure_psf(input),
    strength,
    allowable: {
      inward_psf: ALLOWABLE_SHARE * strength.inward_psf,
      outward_psf: ALLOWABLE_SHARE * strength.outward_psf,
    },
    source: [
      `${input.standard} Eq. 26.10-1 and Tables 26.10-1, 26.11-1: velocity pressure`,
      `${input.standard} Figure 30.3-1 and Table 26.13-1: wall and internal coefficients`,
      `${input.standard} 30.2.2: least pressure 16 psf (from memory); section 2.4: 0.6 W`,
    ],
    notes,
  };
}

/**
 * Width of the corner zone (zone 5) measured from each corner, ft: the lesser of a tenth of the least plan
 * dimension and 0.4 h, but not under 4 % of the least dimension or 3 ft.
 *
 * @param least_dimension_ft   4 to 1,000 ft
 * @param mean_roof_height_ft  5 to 60 ft
 * @throws Refusal outside those ranges
 * Source: ASCE 7 Figure 30.3-1, note on dimension a (seen in a handbook page).
 */
export function edgeZoneWidth_ft(least_dimension_ft: number, mean_roof_height_ft: number): number {
  const least = inRange(
    least_dimension_ft,
    'least_dimension_ft',
    4,
    1000,
    'the least plan dimension in feet',
  );
  const height = inRange(
    mean_roof_height_ft,
    'mean_roof_height_ft',
    5,
    TALLEST_FT,
    'the mean roof height in feet',
  );
  return Math.max(Math.min(0.1 * least, 0.4 * height), 0.04 * least, 3);
}
