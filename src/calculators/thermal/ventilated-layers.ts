import { inRange } from '../../base/refusal.ts';
import type { IsoTable } from './thermal-table.ts';

export type Ventilation = 'unventilated' | 'slightly-ventilated' | 'well-ventilated';

/**
 * How an upright air layer counts by its openings to outdoors, mm² per m of wall length.
 * Weep joints for drainage are not vents.
 *
 * Source: ISO 6946, limits 500 and 1500 mm²/m seen in two documents.
 */
export function ventilationOf(iso: IsoTable, openings_mm2_per_m: number): Ventilation {
  const { unventilated_to_mm2_per_m, well_ventilated_from_mm2_per_m } = iso.ventilation;
  const area = inRange(openings_mm2_per_m, 'openings_mm2_per_m', 0, 1_000_000, 'mm² of opening per metre');
  if (area <= unventilated_to_mm2_per_m) return 'unventilated';
  return area < well_ventilated_from_mm2_per_m ? 'slightly-ventilated' : 'well-ventilated';
}

/**
 * Total resistance of a wall with a slightly ventilated air layer, by straight-line interpolation on the openings
 * between the wall with the layer sealed and the wall with it well ventilated (in the units of the input).
 *
 * @throws Refusal outside 500 to 1500 mm² per m
 *
 * Source: ISO 6946:2017, 6.9.3, seen second-hand. The older edition halved the layer instead.
 */
export function slightlyVentilatedR(
  iso: IsoTable,
  openings_mm2_per_m: number,
  r_unventilated: number,
  r_well_ventilated: number,
): number {
  const { unventilated_to_mm2_per_m: from, well_ventilated_from_mm2_per_m: to } = iso.ventilation;
  const area = inRange(openings_mm2_per_m, 'openings_mm2_per_m', from, to, 'mm² of opening per metre');
  const vented = (area - from) / (to - from);
  return (1 - vented) * r_unventilated + vented * r_well_ventilated;
}

/** A wall with an air layer behind its cladding; all resistances in one unit. */
export type RainscreenWall = {
  /** Inside film and everything up to the air layer, or the parallel-path mean of it. */
  readonly inner_r: number;
  readonly air_layer_r: number;
  /** Cladding outside the air layer. */
  readonly outer_r: number;
  readonly film_outside_r: number;
  /** Film in still air, which takes the place of all that lies outside a well ventilated layer. */
  readonly film_still_air_r: number;
  readonly openings_mm2_per_m: number;
};

/**
 * Total resistance of a wall with an air layer behind the cladding: sealed, everything counts; well ventilated, the
 * layer and all outside it count for nothing but a film in still air; between the two, interpolated.
 *
 * Source: ISO 6946:2017, 6.9.2 to 6.9.4, limits and interpolation seen second-hand; that the still-air film is the
 * inside one is from memory.
 */
export function totalRWithAirLayer(iso: IsoTable, wall: RainscreenWall): number {
  const sealed = wall.inner_r + wall.air_layer_r + wall.outer_r + wall.film_outside_r;
  const open = wall.inner_r + wall.film_still_air_r;
  switch (ventilationOf(iso, wall.openings_mm2_per_m)) {
    case 'unventilated':
      return sealed;
    case 'well-ventilated':
      return open;
    case 'slightly-ventilated':
      return slightlyVentilatedR(iso, wall.openings_mm2_per_m, sealed, open);
  }
}
