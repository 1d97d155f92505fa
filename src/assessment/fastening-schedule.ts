import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from './answer-context.ts';
import type { CalculatedParts } from './fact-sheet.ts';
import { boardSteps } from './schedule/board-steps.ts';
import { buckSteps } from './schedule/buck-steps.ts';
import { carryingStep } from './schedule/carrying-step.ts';
import { type FasteningPractice, fasteningPractice } from './schedule/fastening-practice.ts';
import { gluedStep } from './schedule/glued-step.ts';
import { lapStep, matStep } from './schedule/lath-steps.ts';
import { onFurringStep } from './schedule/on-furring-step.ts';
import { roundFigures } from './schedule/round-figures.ts';
import type { ScheduleJob, StepDraft } from './schedule/schedule-job.ts';
import type { FasteningScheduleAnswer, ScheduleStep } from './schedule/schedule-schema.ts';
import { takeOff } from './schedule/take-off.ts';
import { windZones } from './wind-zones.ts';

/**
 * The fastening schedule of one wall, in the order of work: what fixes what, with which fastener, how long, how far
 * apart in the field and at the corners, by which check, and how many to buy.
 *
 * Buck, boards (few, with caps), mat, lath or furring, cladding, laps. Only what carries gets the real schedule, so
 * that the barrier is not pierced twice. Counts are for the wall's whole area at the corner's spacing, which is never
 * too few: how much of the wall lies in the corner zone is not known.
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
  const steps = drafts(job).map((draft, i) => numbered(draft, i + 1, context.brief.wall_area_ft2, practice));
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
      corner_zone: wind.corner_zone,
      steps,
      take_off: takeOff(steps, practice),
      notes: [
        `Counted on ${context.brief.wall_area_ft2} ft² of wall without taking openings off, all at the corner’s spacing: never too few. ${practice.waste_percent.value} % more for waste (${practice.waste_percent.source}).`,
        ...(context.brief.framing.material === 'steel'
          ? ['The thickness of the steel studs is not asked for: 33 mil is taken. Read it on the studs.']
          : []),
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
  { project_count: given, ...draft }: StepDraft,
  step: number,
  wall_area_ft2: number,
  practice: FasteningPractice,
): ScheduleStep {
  const rates = draft.zones.map((zone) => zone.count_per_100_ft2).filter((rate) => rate !== null);
  const byArea = rates.length > 0 ? Math.max(...rates) : null;
  const project_count = given ?? (byArea === null ? null : whole((byArea * wall_area_ft2) / 100));
  return {
    step,
    ...draft,
    count_per_100_ft2: byArea ?? (project_count === null ? null : (100 * project_count) / wall_area_ft2),
    project_count,
    project_count_with_waste:
      project_count === null ? null : whole((project_count * (100 + practice.waste_percent.value)) / 100),
  };
}

/** Rounded up; binary noise doesn't buy one more. */
function whole(count: number): number {
  return Math.ceil(count - 1e-6);
}
