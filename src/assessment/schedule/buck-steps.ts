import { builtBuck } from '../../assembly/built-buck.ts';
import type { Buck } from '../../assembly/catalogue-schema.ts';
import { minimumSpacing_in } from '../../calculators/buck/judge-buck.ts';
import { screwsAlong } from '../../calculators/buck/screw-layout.ts';
import { thickestBarrier_in } from '../fastening-part.ts';
import { worstOf } from '../judge-opening.ts';
import { supportOf } from '../support.ts';
import { type PlannedOpening, windowPlan } from '../window-plan.ts';
import { corrosion } from './corrosion.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import type { ScheduleCheck } from './schedule-schema.ts';
import { NO_LENGTH, type StackLayer, type StockLength, stockLength } from './stock.ts';
import { sameInBothZones } from './zone-line.ts';

type Screw = NonNullable<Buck['screw']>;

/**
 * One line for each kind of buck in the wall, for the windows that it carries; none where there is no window. Bucks
 * stand before the boards; a flange that is fastened through them comes after.
 */
export function buckSteps(job: ScheduleJob): {
  readonly before: readonly StepDraft[];
  readonly after: readonly StepDraft[];
} {
  const plan = windowPlan(job.candidate, job.context);
  const bucks = [...new Set(plan.map((opening) => opening.buck))];
  const lines = (chosen: readonly Buck[]) =>
    chosen.map((buck) =>
      buckStep(
        buck,
        plan.filter((opening) => opening.buck === buck),
        job,
      ),
    );
  return {
    before: lines(bucks.filter((buck) => !isThroughBoards(buck))),
    after: lines(bucks.filter(isThroughBoards)),
  };
}

function isThroughBoards({ support }: Buck): boolean {
  return support === 'flange-over-insulation';
}

function buckStep(buck: Buck, openings: readonly PlannedOpening[], job: ScheduleJob): StepDraft {
  const { candidate, context } = job;
  const worst = worstOf(openings.map((opening) => opening.judgement));
  const screw = context.brief.framing.material === 'wood' ? buck.screw : null;
  const byFlange = isThroughBoards(buck);
  const isSized = worst?.verdict === 'fits' && screw !== null;
  const which = openings.map(({ window }) => `${window.count} of ${window.words}`).join('; ');
  const corner_in = context.tables.openings.wood.statics.first_screw_from_corner_in;
  return {
    fixes: byFlange
      ? `window flange, through the board (${which})`
      : `window buck: ${labelOf(buck, job)} (${which})`,
    to: byFlange ? 'the framing round the opening' : 'the rough opening, all four sides',
    does: 'carries',
    fastener: screw ? (woodScrew(screw, job)?.label ?? screw.label) : null,
    diameter_in: screw?.diameter_in ?? null,
    ...(screw ? screwLength(screw, openings, job) : NO_LENGTH),
    washer: 'none',
    washer_to_buy: null,
    corrosion: corrosion('treated-wood', context.brief),
    aim: null,
    zones: sameInBothZones(job.wind_psf, null, [
      strengthCheck(worst?.utilisation ?? null),
      ...(byFlange ? [flangeCheck(buck, candidate.build.thickness_in)] : []),
    ]).map((zone) => ({ ...zone, spacing_along_in: screw ? spacingOf(screw, job) : null })),
    project_count: screw ? screwCount(screw, openings, job) : null,
    verdict: isSized ? 'checked' : 'design-required',
    why:
      buck.screw && !screw
        ? 'Wood screws do not hold in steel framing: an engineer names the fastener and its number.'
        : (worst?.why ?? ''),
    source: [
      `${buck.limit_source} (${buck.limit_provenance})`,
      ...(!screw ? [] : ['screws: NDS-2018 chapter 12, weight with load duration 0.9, wind with 1.6']),
    ],
    notes: [
      byFlange
        ? 'After the boards and their flashing.'
        : 'Before the boards: barrier, buck and flashing first, then the insulation is fitted to it.',
      ...(screw
        ? [
            `Along each side every ${spacingOf(screw, job)} in. at most, the first ${corner_in} in. from the corners, into solid framing.`,
          ]
        : []),
    ],
    work: 'screw',
    priced_with: 'bucks',
  };
}

function labelOf(buck: Buck, { candidate, context }: ScheduleJob): string {
  return builtBuck({ ...supportOf(candidate), buck }, context.brief.framing.depth_in).label;
}

function strengthCheck(utilisation: number | null): ScheduleCheck {
  return {
    check: 'buck',
    what: 'the most used part of the buck under weight and corner wind, worst window',
    demand: null,
    capacity: null,
    unit: '',
    utilisation,
    decides: true,
    source: 'statics of the buck and NDS-2018 chapter 12',
  };
}

function flangeCheck({ max_projection_in, limit_source }: Buck, board_in: number): ScheduleCheck {
  return {
    check: 'practice',
    what: 'board under the flange against the trade’s limit',
    demand: board_in,
    capacity: max_projection_in,
    unit: 'in.',
    utilisation: board_in / max_projection_in,
    decides: false,
    source: limit_source,
  };
}

/** The fastener table's entry of that size. */
function woodScrew({ diameter_in }: Screw, { context }: ScheduleJob) {
  return context.tables.fastening.fasteners.fasteners.find(
    (fastener) => fastener.kind === 'wood-screw' && Math.abs(fastener.diameter_in - diameter_in) < 1e-6,
  );
}

/** As the buck checks count it: what lies in front of the framing, then 6 diameters and at least the table's depth. */
function screwLength(screw: Screw, openings: readonly PlannedOpening[], job: ScheduleJob): StockLength {
  const { candidate, context } = job;
  const embedment_in = Math.max(
    6 * screw.diameter_in,
    context.tables.openings.wood.screws.min_penetration_in,
  );
  const least = openings
    .map(({ judgement }) => judgement.strength?.min_screw_length_in ?? null)
    .filter((length) => length !== null);
  const sold = woodScrew(screw, job)?.market_lengths_in ?? [];
  if (least.length > 0) {
    const through_in = Math.max(...least) - embedment_in;
    // Not shorter than the screw that the buck was judged with.
    const lengths = [screw.length_in, ...sold].filter((length) => length >= screw.length_in);
    return stockLength(
      [{ label: 'buck, and the sheathing where it lies on the face', thickness_in: through_in }],
      embedment_in,
      lengths,
    );
  }
  const stack: StackLayer[] = [
    { label: candidate.build.insulation.label, thickness_in: candidate.build.thickness_in },
    { label: 'barrier (the thickest on the list)', thickness_in: thickestBarrier_in(context) },
    { label: candidate.sheathing.label, thickness_in: candidate.sheathing.thickness_in },
  ];
  return stockLength(stack, embedment_in, sold);
}

function spacingOf(screw: Screw, { context }: ScheduleJob): number {
  return Math.max(screw.spacing_in, minimumSpacing_in(screw.diameter_in, context.tables.openings));
}

/** All four sides of every window, laid out as the buck checks do. */
function screwCount(screw: Screw, openings: readonly PlannedOpening[], job: ScheduleJob): number {
  const corner_in = job.context.tables.openings.wood.statics.first_screw_from_corner_in;
  const along = (side_in: number) => screwsAlong(side_in, spacingOf(screw, job), corner_in);
  return openings.reduce(
    (sum, { window }) => sum + 2 * window.count * (along(window.width_in) + along(window.height_in)),
    0,
  );
}
