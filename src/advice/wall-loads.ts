import type { z } from 'zod';
import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { deadLoadPart, deadLoadSchema } from '../assessment/dead-load-part.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { fasteningSchedule } from '../assessment/fastening-schedule.ts';
import { roundFigures } from '../assessment/schedule/round-figures.ts';
import { fasteningScheduleSchema } from '../assessment/schedule/schedule-schema.ts';
import { type WindZones, windZones } from '../assessment/wind-zones.ts';

/** Keys of a ranked wall on what it weighs and how it is held up. */
export const wallLoadsShape = {
  /** What fixes what, in the order of work, with spacings, checks and counts. */
  fastening_schedule: fasteningScheduleSchema,
  /** Of everything outside the barrier, dry and wet. */
  dead_load: deadLoadSchema,
};

export type WallLoads = {
  readonly fastening_schedule: z.output<typeof fasteningScheduleSchema>;
  readonly dead_load: z.output<typeof deadLoadSchema>;
};

/** Works the schedule and the dead load of one wall out; only for walls that are shown. */
export function wallLoads(candidate: Candidate, parts: CalculatedParts, context: AnswerContext): WallLoads {
  return {
    fastening_schedule: fasteningSchedule(candidate, parts, context),
    dead_load: roundFigures(deadLoadPart(candidate.face), 3),
  };
}

/** Wind on field and corners, as the answer tells it. */
export function windTold(context: AnswerContext): WindZones {
  return roundFigures(windZones(context), 2);
}
