import type { FasteningPractice } from './fastening-practice.ts';
import type { FasteningScheduleAnswer, ScheduleStep } from './schedule-schema.ts';

type Line = FasteningScheduleAnswer['take_off'][number];

/**
 * What the crew buys: lines of the same fastener and length together, and the caps and plate washers apart.
 * Waste is put on each sum. Lines that an engineer or a report must size are left out.
 */
export function takeOff(steps: readonly ScheduleStep[], practice: FasteningPractice): Line[] {
  const lines = new Map<string, Omit<Line, 'count_with_waste'>>();
  const add = (item: string, length_in: number | null, { project_count, step }: ScheduleStep) => {
    if (project_count === null) return;
    const key = `${item} ${length_in}`;
    const before = lines.get(key);
    lines.set(key, {
      item,
      length_in,
      count: (before?.count ?? 0) + project_count,
      for_steps: [...(before?.for_steps ?? []), step],
    });
  };
  for (const step of steps) {
    if (step.fastener !== null) add(step.fastener, step.length_in, step);
    if (step.washer_to_buy !== null) add(step.washer_to_buy, null, step);
  }
  return [...lines.values()].map((line) => ({
    ...line,
    count_with_waste: Math.ceil((line.count * (100 + practice.waste_percent.value)) / 100 - 1e-6),
  }));
}
