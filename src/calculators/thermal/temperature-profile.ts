import { inRange, Refusal } from '../../base/refusal.ts';

/** A layer that heat passes, from inside to outside; films are layers too. */
export type ResistanceLayer = { readonly label: string; readonly r: number };

/** Temperature at the outer face of a layer. */
export type Interface = { readonly after: string; readonly temp_f: number };

/**
 * Temperature at a plane inside a wall, steady state, one dimension, °F.
 *
 * @param inside_temp_f   indoor air, °F
 * @param outside_temp_f  outdoor air, °F
 * @param r_inside        resistance from the indoor air to the plane
 * @param r_total         air-to-air resistance of the same path, same unit
 * @throws Refusal unless 0 <= r_inside <= r_total and r_total > 0
 *
 * Source: series resistances (ASHRAE Handbook Fundamentals; ISO 13788).
 * Valid for: no storage, no air leakage, no heat flowing sideways; take the path through the insulation or the one
 * through the stud, never the area-weighted mean of both.
 */
export function planeTemperature(
  inside_temp_f: number,
  outside_temp_f: number,
  r_inside: number,
  r_total: number,
): number {
  if (!(r_total > 0 && r_inside >= 0 && r_inside <= r_total)) {
    throw new Refusal({
      field: 'r_inside',
      value: `${r_inside} of ${r_total}`,
      accepted: 'Give a plane inside the wall: 0 to the total resistance, and a total above 0.',
    });
  }
  return inside_temp_f - (inside_temp_f - outside_temp_f) * (r_inside / r_total);
}

/**
 * Temperatures at the outer face of each layer, from inside to outside; after the last one stands the outdoor air.
 *
 * @param layers  both films included
 * @throws Refusal for a negative resistance, for none at all, and for temperatures outside -80 to 140 °F
 */
export function temperatureProfile(
  layers: readonly ResistanceLayer[],
  inside_temp_f: number,
  outside_temp_f: number,
): Interface[] {
  inRange(inside_temp_f, 'inside_temp_f', -80, 140, '°F');
  inRange(outside_temp_f, 'outside_temp_f', -80, 140, '°F');
  const passed: number[] = [];
  let sofar = 0;
  for (const layer of layers) {
    sofar += inRange(layer.r, layer.label, 0, 1000, 'h·ft²·°F/Btu');
    passed.push(sofar);
  }
  return layers.map((layer, index) => ({
    after: layer.label,
    temp_f: planeTemperature(inside_temp_f, outside_temp_f, passed[index] ?? sofar, sofar),
  }));
}
