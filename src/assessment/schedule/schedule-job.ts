import type { Candidate } from '../../assembly/candidates.ts';
import type { AnswerContext } from '../answer-context.ts';
import type { CalculatedParts } from '../fact-sheet.ts';
import type { FasteningWork } from '../fastening-labour.ts';
import type { FasteningPractice } from './fastening-practice.ts';
import type { ScheduleStep, StepLabour } from './schedule-schema.ts';

/** What every line of a schedule is worked out from. */
export type ScheduleJob = {
  readonly candidate: Candidate;
  readonly parts: Pick<CalculatedParts, 'fastening'>;
  readonly context: AnswerContext;
  readonly practice: FasteningPractice;
  /** Outward, allowable-stress level, as positive numbers of psf. */
  readonly wind_psf: { readonly field: number; readonly corner: number };
};

/** A line before it is numbered and counted. */
export type StepDraft = Omit<
  ScheduleStep,
  'step' | 'count_per_100_ft2' | 'project_count' | 'project_count_with_waste' | 'labour'
> & {
  /** Given where the wall's area doesn't tell it, as for window bucks. */
  readonly project_count?: number | null;
  /** Whose minutes it takes. */
  readonly work: FasteningWork;
  readonly priced_with: StepLabour['priced_with'];
};
