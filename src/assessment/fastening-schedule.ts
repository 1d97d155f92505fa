import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from './answer-context.ts';
import { type CornerZone, overWholeWall } from './corner-zone.ts';
import type { CalculatedParts } from './fact-sheet.ts';
import { minutesEach } from './fastening-labour.ts';
import { boardSteps } from './schedule/board-steps.ts';
import { buckSteps } from './schedule/buck-steps.ts';
import { carryingStep } from './schedule/carrying-step.ts';
import { type FasteningPractice, fasteningPractice } from './schedule/fastening-practice.ts';
import { gluedStep } from './schedule/glued-step.ts';
import { lapStep, matStep } from './schedule/lath-steps.ts';
import { onFurringStep } from './schedule/on-furring-step.ts';
import { roundFigures } from './schedule/round-figures.ts';
import type { ScheduleJob, StepDraft } from './schedule/schedule-job.ts';
import { scheduleLabour, stepLabour } from './schedule/schedule-labour.ts';
import type { FasteningScheduleAnswer, ScheduleStep } from './schedule/schedule-schema.ts';
import { takeOff } from './schedule/take-off.ts';
import { windZones } from './wind-zones.ts';

/**
 * The fastening schedule of one wall, in the order of work: what fixes what, with which fastener, how long, how far
 * apart in the field and at the corners, by which check, and how many to buy.
 *
 * Buck, boards (few, with caps), mat, lath or furring, cladding, laps. Only what carries gets the real schedule, so
 * that the barrier is not pierced twice. Counts take the field's area at the field's spacing and the corners' at
 * theirs; where the plan isn't known the corner zone is taken as wide as it can be, see `cornerZone`.
 *
 * Only for walls that are shown; the rules read the shorter `FasteningPart`.
 * Sources: those of the calculators it calls, and the practice figures with theirs.
 */
export function fasteningSchedule(
  candidate: Candidate,
  parts: Pick<CalculatedParts, 'fastening'>,
  context: AnswerContext,
): FasteningScheduleAnswer {
  const wind = windZones(context);
  const psf = (name: 'field' | 'corner') =>
    Math.abs(wind.zones.find((zone) => zone.name === name)?.allowable.outward_psf ?? Number.NaN);
  const practice = fasteningPractice();
  const job: ScheduleJob = {
    candidate,
    parts,
    context,
    practice,
    wind_psf: { field: psf('field'), corner: psf('corner') },
  };
  const steps = drafts(job).map((draft, i) => numbered(draft, i + 1, context.corner_zone, practice));
  const open = steps.filter(
    (step) => step.verdict === 'design-required' || step.length === 'none-on-the-market',
  );
  return roundFigures<FasteningScheduleAnswer>(
    {
      verdict: open.length > 0 ? 'design-required' : 'permitted',
      why:
        open.length > 0
          ? `A design professional must settle ${open.length === 1 ? 'line' : 'lines'} ${open.map((step) => step.step).join(', ')} before anything is ordered.`
          : 'The code table allows what carries, the published equations hold for the rest; the building department has the last word.',
      corner_zone: context.corner_zone,
      steps,
      take_off: takeOff(steps, practice),
      labour: scheduleLabour(steps, context),
      notes: [
        `Counted without taking openings off: ${Math.round(context.corner_zone.field_area_ft2)} ft² of field and ${Math.round(context.corner_zone.corner_area_ft2)} ft² of corner zone, each at its spacing. ${practice.waste_percent.value} % more for waste (${practice.waste_percent.source}).`,
        'Around openings, at edges and at control joints fasteners are added as the details say; they are not counted.',
      ],
    },
    4,
  );
}

function drafts(job: ScheduleJob): StepDraft[] {
  const { cladding } = job.candidate;
  const { schedule } = job.parts.fastening;
  const { before, after } = buckSteps(job);
  if (!schedule) return [...before, gluedStep(job), ...after];
  const laps = cladding.lath === 'none' ? [] : [lapStep(job)];
  const boards = [...before, ...boardSteps(job), ...after];
  if (cladding.attachment === 'furring')
    return [...boards, carryingStep(job, schedule), onFurringStep(job), ...laps];
  const mat = cladding.drainage.kind === 'mat' && cladding.lath !== 'integral' ? [matStep(job)] : [];
  return [...boards, ...mat, carryingStep(job, schedule), ...laps];
}

/** Numbers a line and counts it. */
function numbered(
  { project_count: given, work, priced_with, ...draft }: StepDraft,
  step: number,
  corner_zone: CornerZone,
  practice: FasteningPractice,
): ScheduleStep {
  const wall_area_ft2 = corner_zone.field_area_ft2 + corner_zone.corner_area_ft2;
  const rate = (name: 'field' | 'corner') =>
    draft.zones.find((zone) => zone.zone === name)?.count_per_100_ft2 ?? null;
  const [field, corner] = [rate('field'), rate('corner')];
  const byArea = field === null || corner === null ? null : overWholeWall({ field, corner }, corner_zone);
  const project_count = given ?? (byArea === null ? null : whole((byArea * wall_area_ft2) / 100));
  return {
    step,
    ...draft,
    count_per_100_ft2: byArea ?? (project_count === null ? null : (100 * project_count) / wall_area_ft2),
    project_count,
    project_count_with_waste:
      project_count === null ? null : whole((project_count * (100 + practice.waste_percent.value)) / 100),
    labour:
      project_count === null
        ? null
        : stepLabour(project_count, minutesEach(work, draft.length_in), priced_with),
  };
}

/** Rounded up; binary noise doesn't buy one more. */
function whole(count: number): number {
  return Math.ceil(count - 1e-6);
}
