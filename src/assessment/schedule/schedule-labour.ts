import type { AnswerContext } from '../answer-context.ts';
import { eachEnd, type Spread } from '../fastening-labour.ts';
import { fasteningPractice } from './fastening-practice.ts';
import type { ScheduleLabour, ScheduleStep, StepLabour } from './schedule-schema.ts';

/** One line's work, from its count; waste takes no time. */
export function stepLabour(
  project_count: number,
  minutes_each: Spread,
  priced_with: StepLabour['priced_with'],
): StepLabour {
  return {
    minutes_each,
    hours: eachEnd((end) => (project_count * minutes_each[end]) / 60),
    priced_with,
  };
}

/** All lines' work, and which part of the wall's price pays for it. */
export function scheduleLabour(steps: readonly ScheduleStep[], { brief }: AnswerContext): ScheduleLabour {
  const labours = steps.flatMap(({ labour }) => (labour === null ? [] : [labour]));
  const sum = (some: readonly StepLabour[]) =>
    eachEnd((end) => some.reduce((total, labour) => total + labour.hours[end], 0));
  const hours = sum(labours);
  const paid = sum(labours.filter(({ priced_with }) => priced_with === 'fasteners'));
  const { source } = fasteningPractice().minutes_each;
  return {
    hours,
    hours_per_100_ft2: eachEnd((end) => (100 * hours[end]) / brief.wall_area_ft2),
    hours_priced_with_fasteners: paid,
    text: `Fastening takes one person about ${inHours(hours.likely)} (${inHours(hours.low)} to ${inHours(hours.high)}), scaffold and layout not counted. ${inHours(paid.likely)} of it go through the insulation and are the labour in the price of the fasteners; the rest is in the prices of cladding and bucks and not added again.`,
    source,
  };
}

function inHours(hours: number): string {
  return hours >= 10 ? `${Math.round(hours)} h` : `${hours.toFixed(1)} h`;
}
