import { inRange, Refusal } from '../../base/refusal.ts';
import type { AirGapLevel, IsoTable } from './thermal-table.ts';

export type IsoFastener = {
  /** Conductivity of the fastener, W/(m·K): 50 for carbon steel, 17 for stainless steel. */
  readonly conductivity_w_mk: number;
  /** Cross-section of one fastener, m². */
  readonly area_m2: number;
  readonly per_m2: number;
  /** Thickness of the insulation layer, m. */
  readonly insulation_m: number;
  /** Length of the fastener inside that layer, m; at most the thickness. */
  readonly penetration_m: number;
  /** Resistance of the insulation layer over the total resistance without bridges, 0 to 1. */
  readonly layer_share: number;
};

/**
 * Rise in U-factor from mechanical fasteners through an insulation layer, W/(m²·K):
 *   alpha k A n / d0 (R1/RT)², alpha = 0.8 through the whole layer, 0.8 d1/d0 when recessed.
 *
 * @throws Refusal for values out of range, and for a fastener longer than the layer is thick
 *
 * Source: ISO 6946:2017 Annex F, coefficients seen second-hand; the exclusion below 1 W/(m·K) is from memory. An
 * older edition is recalled with d1 below the line, which gives d0/d1 times as much for a recessed fastener and
 * the same for one through the whole layer.
 * Known limit: for a bare steel screw this gives several times the published point transmittance of anchors, since
 * it ignores the wood or plastic in the line: an upper estimate.
 */
export function isoFastenerCorrection(iso: IsoTable, fastener: IsoFastener): number {
  const k = inRange(fastener.conductivity_w_mk, 'conductivity_w_mk', 0, 500, 'W/(m·K)');
  const area = inRange(fastener.area_m2, 'area_m2', 0, 0.01, 'm²');
  const per_m2 = inRange(fastener.per_m2, 'per_m2', 0, 500, 'fasteners per m²');
  const d0 = inRange(fastener.insulation_m, 'insulation_m', 0.001, 1, 'm');
  const d1 = inRange(fastener.penetration_m, 'penetration_m', 0, d0, 'm');
  const share = inRange(fastener.layer_share, 'layer_share', 0, 1, 'a share of the total resistance');
  if (k < iso.fasteners.least_conductivity_w_mk) return 0;
  const alpha = iso.fasteners.alpha * (d1 / d0);
  return ((alpha * k * area * per_m2) / d0) * share ** 2;
}

/**
 * Rise in U-factor from air gaps in an insulation layer, W/(m²·K): dU'' (R1/RT)².
 *
 * @param level        0: two layers with offset joints, or taped or lapped joints; 1: one layer with butted joints;
 *                     2: gaps so joined that air can move on both sides of the insulation
 * @param layer_share  resistance of the layer over the total, 0 to 1
 * @throws Refusal for a share outside 0 to 1
 *
 * Source: ISO 6946:2017 Annex F, coefficients seen second-hand.
 */
export function isoAirGapCorrection(iso: IsoTable, level: AirGapLevel, layer_share: number): number {
  const share = inRange(layer_share, 'layer_share', 0, 1, 'a share of the total resistance');
  const row = iso.air_gaps.levels.find((entry) => entry.level === level);
  if (!row) {
    throw new Refusal({ field: 'air_gap_level', value: String(level), accepted: 'Give 0, 1 or 2.' });
  }
  return row.delta_u_w_m2k * share ** 2;
}

/**
 * The air-gap level of insulation boards: 0 for two or more layers with offset joints and for taped or lapped joints,
 * 1 for butted joints that run through. Level 2, air moving behind the boards too, is a fault and never assumed.
 *
 * Source: ISO 6946 Annex F, meaning of the levels; the reading for boards is from memory.
 */
export function boardAirGapLevel(layers: number, joints: 'offset' | 'aligned' | 'taped'): AirGapLevel {
  if (joints === 'taped') return 0;
  return joints === 'offset' && layers >= 2 ? 0 : 1;
}

/** True where ISO 6946 lets the corrections be left out: together below 3 % of U. Same unit for both. */
export function correctionIsNegligible(iso: IsoTable, delta_u: number, u_factor: number): boolean {
  return delta_u < iso.negligible_correction.value * u_factor;
}
