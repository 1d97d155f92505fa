import { Refusal, showValue } from '../../base/refusal.ts';
import type { MoistureTable } from './moisture-table.ts';

/**
 * Indoor vapour pressure excess of a humidity class in a month, at the upper limit of the class.
 *
 * @param table           humidity classes with their source
 * @param humidity_class  1 (driest) to 5
 * @param outside_temp_c  monthly mean outdoor temperature, °C
 * @returns               Pa above the outdoor vapour pressure, 0 or more
 * @throws Refusal for a class that the table lacks
 *
 * Source: ISO 13788:2012, annex A: constant up to 0 °C, in a straight line to nought at 20 °C (from memory).
 */
export function humidityClassExcess(
  table: MoistureTable,
  humidity_class: number,
  outside_temp_c: number,
): number {
  const row = table.humidity_classes.find((c) => c.class === humidity_class);
  if (!row) {
    throw new Refusal({
      field: 'humidity_class',
      value: showValue(humidity_class),
      accepted: 'Give a humidity class from 1 to 5.',
    });
  }
  const { constant_up_to_c, nought_from_c } = table.humidity_class_shape;
  const share = (nought_from_c - outside_temp_c) / (nought_from_c - constant_up_to_c);
  return row.max_excess_pa * Math.min(1, Math.max(0, share));
}
