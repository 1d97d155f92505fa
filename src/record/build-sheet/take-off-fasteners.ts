import { inches } from '../../base/inches.ts';
import type { TakeOffJob, TakeOffLine } from './take-off-line.ts';

/** Fasteners, caps and washers as the schedule counts them, with its own waste. */
export function fastenerLines({ wall }: TakeOffJob): TakeOffLine[] {
  const { take_off } = wall.fastening_schedule;
  return take_off.map(({ item, length_in, count, count_with_waste, for_steps }) => ({
    group: 'fasteners',
    item: length_in === null ? item : `${item}, ${inches(length_in)} in.`,
    net: count,
    unit: 'pieces',
    waste_percent: count === 0 ? 0 : Math.round((count_with_waste / count - 1) * 100),
    order: count_with_waste,
    order_unit: 'pieces',
    how: `schedule, line ${for_steps.join(', ')}, zone by zone`,
    provenance: 'common-practice',
  }));
}
