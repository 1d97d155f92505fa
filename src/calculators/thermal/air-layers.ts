import { inRange } from '../../base/refusal.ts';
import type { HeatFlow, IsoTable } from './thermal-table.ts';

const STEFAN_BOLTZMANN = 5.67e-8;
const ZERO_CELSIUS_K = 273.15;

export type AirLayer = {
  /** Across the heat flow, m; 0 to 0.3. */
  readonly thickness_m: number;
  readonly direction: HeatFlow;
  /** 10 °C where not given, the mean temperature of the standard's table. */
  readonly mean_temp_c?: number;
  /** Of the two faces; 0.9 each where not given, which is every ordinary building material. */
  readonly emissivities?: readonly [number, number];
  /** Across the layer, K; the standard's table is for at most 5, the default. */
  readonly difference_k?: number;
};

/**
 * Resistance of an unventilated air layer, m²·K/W: 1 / (ha + hr), with hr = 4 sigma T³ / (1/e1 + 1/e2 - 1) and ha
 * the larger of still-air conduction 0.025/d and convection.
 *
 * @throws Refusal outside 0 to 0.3 m, and for temperatures, emissivities or differences out of range
 *
 * Source: ISO 6946:2017 Annex D, coefficients seen second-hand; at 10 °C and emissivity 0.9 it rounds to all
 * 27 cells of the standard's table, seen in a trade reprint.
 * Valid for: length and width above ten times the thickness, no air exchange with either side.
 */
export function airLayerResistance(iso: IsoTable, layer: AirLayer): number {
  const table = iso.air_layer;
  const d = inRange(layer.thickness_m, 'thickness_m', 0, table.max_thickness_m, 'm');
  if (d === 0) return 0;
  const mean_temp_c = layer.mean_temp_c ?? 10;
  const usual = iso.surface.emissivity;
  const [first, second] = layer.emissivities ?? [usual, usual];
  const e1 = inRange(first, 'emissivities[0]', 0.01, 1, 'an emissivity');
  const e2 = inRange(second, 'emissivities[1]', 0.01, 1, 'an emissivity');
  const difference = inRange(layer.difference_k ?? table.small_difference_k, 'difference_k', 0, 100, 'K');
  const branch = difference > table.small_difference_k ? table.large_difference : table.small_difference;
  const { factor, on_difference, on_thickness } = branch[layer.direction];
  const convection = factor * difference ** on_difference * d ** on_thickness;
  const ha = Math.max(table.still_air_w_mk / d, convection);
  return 1 / (ha + blackBodyRadiation(mean_temp_c) / (1 / e1 + 1 / e2 - 1));
}

/**
 * Resistance of the inside surface, m²·K/W: 1 / (hc + 4 e sigma T³).
 *
 * Source: ISO 6946:2017 Annex C, seen second-hand; 20 °C gives 0.131 horizontal, 0.099 up, 0.171 down, which the
 * standard rounds to 0.13, 0.10 and 0.17.
 */
export function insideSurfaceResistance(iso: IsoTable, direction: HeatFlow, mean_temp_c = 20): number {
  const { emissivity, inside_convection_w_m2k } = iso.surface;
  return 1 / (inside_convection_w_m2k[direction] + emissivity * blackBodyRadiation(mean_temp_c));
}

/**
 * Resistance of the outside surface, m²·K/W, with hc = 4 + 4 v.
 * 10 °C gives 0.041 at 4 m/s (rounded 0.04), and in still air 0.116.
 *
 * Source: ISO 6946:2017 Annex C, seen second-hand.
 */
export function outsideSurfaceResistance(iso: IsoTable, wind_m_s = 4, mean_temp_c = 10): number {
  const wind = inRange(wind_m_s, 'wind_m_s', 0, 40, 'm/s');
  const { emissivity, outside_convection_still_w_m2k, outside_convection_per_m_s } = iso.surface;
  const convection = outside_convection_still_w_m2k + outside_convection_per_m_s * wind;
  return 1 / (convection + emissivity * blackBodyRadiation(mean_temp_c));
}

/** Radiation coefficient between black faces, 4 sigma T³, W/(m²·K). */
function blackBodyRadiation(mean_temp_c: number): number {
  return (
    4 *
    STEFAN_BOLTZMANN *
    (ZERO_CELSIUS_K + inRange(mean_temp_c, 'mean_temp_c', -60, 80, 'degrees Celsius')) ** 3
  );
}
