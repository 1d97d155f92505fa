import { furringDepth_in } from '../../assembly/flange-seat.ts';
import { inches } from '../../base/inches.ts';
import type { FasteningSchedule } from '../../calculators/fastening/choose-fastening.ts';
import { evaluateFastening, fastenerData } from '../../calculators/fastening/evaluate-fastening.ts';
import type { FasteningCase } from '../../calculators/fastening/fastening-input.ts';
import type { FastenerData } from '../../calculators/fastening/fastening-tables.ts';
import { deadLoadPart } from '../dead-load-part.ts';
import { fasteningContext, LATH_IN, matDepth_in, thickestBarrier_in } from '../fastening-part.ts';
import { aim } from './aim.ts';
import { carryingChecks } from './carrying-checks.ts';
import { corrosion } from './corrosion.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import type { ScheduleZone } from './schedule-schema.ts';
import type { StackLayer } from './stock.ts';
import { zoneLine } from './zone-line.ts';

/**
 * The line that carries the cladding through the insulation into the studs: mat with lath, lath, or furring.
 *
 * Corners take the spacing that the whole wall was judged by (zone 5); the field takes the widest spacing of the same fastener that passes under zone 4, and never a closer one than the corner.
 */
export function carryingStep(job: ScheduleJob, chosen: FasteningSchedule): StepDraft {
  const { context, candidate } = job;
  const { tables } = context;
  const wall = fasteningContext(candidate.face, context);
  const spacing_in = { field: job.parts.fastening.field_spacing_in, corner: chosen.fastener_spacing_in };
  const load = deadLoadPart(candidate.face);
  const lines = (['field', 'corner'] as const).map((zone) => {
    const asked: FasteningCase = {
      ...wall,
      fastener: chosen.fastener,
      fastener_spacing_in: spacing_in[zone],
      outward_wind_psf: job.wind_psf[zone],
    };
    const e = evaluateFastening(asked, tables.fastening);
    return zoneLine(
      zone,
      job.wind_psf[zone],
      { along_in: spacing_in[zone], across_in: wall.framing_spacing_in },
      carryingChecks(asked, e, load.wet_psf, job),
    );
  });
  const fastener = fastenerData(chosen.fastener, tables.fastening);
  const stack = stackOf(job);
  const stack_in = stack.reduce((sum, layer) => sum + layer.thickness_in, 0);
  const isFurring = candidate.cladding.attachment === 'furring';
  return {
    fixes: whatItFixes(job),
    to: studWords(context.brief.framing),
    does: 'carries',
    fastener: chosen.label,
    diameter_in: fastener.diameter_in,
    stack,
    stack_in,
    embedment_in: chosen.min_length_in - stack_in,
    min_length_in: chosen.min_length_in,
    length_in: chosen.length_in,
    length: chosen.length_in === null ? 'none-on-the-market' : 'reaches',
    washer: chosen.washer,
    washer_to_buy: washerToBuy(fastener, isFurring, job),
    corrosion: corrosion(isFurring ? 'treated-wood' : 'plaster', context.brief),
    aim: aim(stack_in, fastener, job),
    zones: lines,
    verdict: chosen.verdict === 'permitted' ? 'code-table' : 'design-required',
    why: chosen.why(),
    source: [
      ...new Set([chosen.table.source, ...lines.flatMap((line) => line.checks.map((c) => c.source))]),
      ...(chosen.kind === 'lag-screw' ? [`Lead holes: ${job.practice.lag_lead_share_of_shank.source}`] : []),
    ],
    notes: [...chosen.notes(), cornerNote(lines, spacing_in), washerNote(job, spacing_in.corner)],
    work: chosen.kind === 'lag-screw' ? 'lag-screw' : 'screw',
    priced_with: 'fasteners',
  };
}

function studWords({ material, steel_thickness_mil }: ScheduleJob['context']['brief']['framing']): string {
  return material === 'wood' ? 'every stud' : `every steel stud (${steel_thickness_mil} mil)`;
}

function whatItFixes({ candidate }: ScheduleJob): string {
  const { cladding } = candidate;
  if (cladding.attachment === 'furring') return 'furring, through the boards';
  return cladding.lath === 'integral'
    ? 'the mat with its bonded lath, through mat and boards: the mat’s fasteners are the lath’s'
    : 'the lath, through lath, mat and boards';
}

/** From the head inward; the sum with the embedment is the calculator's least length. */
function stackOf({ candidate, context }: ScheduleJob): StackLayer[] {
  const { face, build, sheathing, cladding } = candidate;
  const isFurring = cladding.attachment === 'furring';
  return [
    ...(isFurring
      ? [{ label: 'furring', thickness_in: furringDepth_in(cladding) }]
      : [
          { label: 'lath, furred out, with its plate washer', thickness_in: LATH_IN },
          { label: 'drainage mat', thickness_in: matDepth_in(face) },
        ]),
    ...build.boards_in.map((board_in) => ({ label: build.insulation.label, thickness_in: board_in })),
    { label: 'barrier (the thickest on the list)', thickness_in: thickestBarrier_in(context) },
    { label: sheathing.label, thickness_in: sheathing.thickness_in },
  ].filter((layer) => layer.thickness_in > 0);
}

/** Why the corners are closer than the field, or why they needn't be. */
function cornerNote(
  lines: readonly ScheduleZone[],
  spacing_in: { readonly field: number; readonly corner: number },
): string {
  if (spacing_in.corner < spacing_in.field)
    return 'Closer at the corners than in the field: there the wind decides.';
  const corner = lines.find((line) => line.zone === 'corner')?.checks.find(({ check }) => check === 'wind');
  if (corner?.utilisation === undefined || corner.utilisation === null || corner.utilisation > 1)
    return 'None of the offered spacings is known to hold the corner’s wind.';
  const byWind = lines.some(({ governing }) => governing === 'wind' || governing === 'weight-and-wind');
  return byWind
    ? 'The same at the corners: the field’s spacing holds their wind too.'
    : 'The same at the corners: what decides is not the wind, and their wind is held.';
}

/** Over lath every head needs its plate; on furring only a lag's head needs a washer. */
function washerToBuy(fastener: FastenerData, isFurring: boolean, { practice }: ScheduleJob): string | null {
  if (!isFurring) return `${inches(practice.plate_washer_in.value)} in. plate washer`;
  return fastener.kind === 'lag-screw' ? 'flat washer' : null;
}

/** How much pull the board takes before head, washer or strip sinks in by a tenth. */
function washerNote({ candidate, practice }: ScheduleJob, spacing_in: number): string {
  const { insulation } = candidate.build;
  const psi = insulation.compressive_psi.value;
  const isFurring = candidate.cladding.attachment === 'furring';
  const plate_in = practice.plate_washer_in.value;
  const area_in2 = isFurring ? practice.furring_strip_in.value * spacing_in : (Math.PI / 4) * plate_in ** 2;
  const under = isFurring
    ? `the ${inches(practice.furring_strip_in.value)} in. strip over ${inches(spacing_in)} in.`
    : `a ${inches(plate_in)} in. plate`;
  const stop = insulation.is_foam_plastic
    ? 'Drive until it sits flush, no further.'
    : 'A fibrous board can be crushed: stop when the washer or strip touches, true up to a line, never to a torque.';
  return `The board gives a tenth of its thickness under ${under} at about ${Math.round(area_in2 * psi)} lb (${psi} psi, ${insulation.compressive_psi.provenance === 'memory' ? 'from memory' : insulation.compressive_psi.source}). ${stop}`;
}
