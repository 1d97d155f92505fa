import type { Face } from '../assembly/candidates.ts';
import type { Cladding } from '../assembly/catalogue-schema.ts';
import { furringDepth_in } from '../assembly/flange-seat.ts';
import {
  chooseFastening,
  type FasteningContext,
  type FasteningOption,
  type FasteningSchedule,
} from '../calculators/fastening/choose-fastening.ts';
import type { AnswerContext } from './answer-context.ts';
import { type OnFurring, onFurring } from './on-furring.ts';
import { remember } from './remember.ts';

export type FasteningPart = {
  /** Null where the cladding is glued and no fastener carries it. */
  readonly schedule: FasteningSchedule | null;
  /** Along the stud in the field (zone 4); the schedule's own is the corner's. 0 where the cladding is glued. */
  readonly field_spacing_in: number;
  /** What holds the cladding to its furring; null where it doesn't come on furring. */
  readonly on_furring: OnFurring | null;
  readonly cladding_psf: number;
  readonly insulation_psf: number;
};

/** What the fasteners of a wall carry, and the schedule that carries it. */
export function fasteningPart(face: Face, context: AnswerContext): FasteningPart {
  return { ...withWeights(face, scheduled(face, context)), on_furring: onFurring(face.cladding, context) };
}

/** {@link fasteningPart}, remembered. A schedule sees of the boards only how thick they are and whether they are foam. */
export function fasteningParts(
  context: AnswerContext,
  heldOnFurring: (cladding: Cladding) => OnFurring | null,
): (face: Face) => FasteningPart {
  const known = new Map<string, Scheduled>();
  return remember((face: Face) => {
    const { cladding, build, sheathing } = face;
    const key = `${cladding.id} ${furringDepth_in(cladding)} ${build.thickness_in} ${build.insulation.is_foam_plastic} ${sheathing.id}`;
    const found = known.get(key) ?? scheduled(face, context);
    known.set(key, found);
    return { ...withWeights(face, found), on_furring: heldOnFurring(cladding) };
  });
}

type Scheduled = Pick<FasteningPart, 'schedule' | 'field_spacing_in'>;

function withWeights(face: Face, found: Scheduled): Omit<FasteningPart, 'on_furring'> {
  const { insulation, thickness_in } = face.build;
  return {
    schedule: found.schedule,
    field_spacing_in: found.field_spacing_in,
    cladding_psf: claddingWeight_psf(face),
    insulation_psf: (insulation.density_pcf.value * thickness_in) / 12,
  };
}

function scheduled(face: Face, context: AnswerContext): Scheduled {
  if (face.cladding.attachment === 'adhered') return { schedule: null, field_spacing_in: 0 };
  const options = fasteningOptions(face, context);
  const wall = fasteningContext(face, context);
  const schedule = chooseFastening(options, wall, context.tables.fastening);
  return { schedule, field_spacing_in: fieldSpacing_in(schedule, options, wall, context) };
}

/** The widest spacing of the chosen fastener that passes under the field's wind; never closer than the corner's. */
function fieldSpacing_in(
  chosen: FasteningSchedule,
  options: readonly FasteningOption[],
  wall: FasteningContext,
  context: AnswerContext,
): number {
  const same = options.filter((option) => option.fastener === chosen.fastener);
  const corner_in = chosen.fastener_spacing_in;
  const wider = same.flatMap((option) => option.spacings_in).filter((spacing_in) => spacing_in > corner_in);
  // Where the corner's wind would allow the next wider spacing, something else forbids it, in the field as well.
  const cornerUse = Math.max(chosen.wind_utilisation ?? 0, chosen.combined_utilisation ?? 0);
  const isByWind = (cornerUse * Math.min(...wider)) / corner_in > 1;
  if (wider.length === 0 || !isByWind) return corner_in;
  const field = chooseFastening(
    same,
    { ...wall, outward_wind_psf: context.field_wind_psf },
    context.tables.fastening,
  );
  return Math.max(field.fastener_spacing_in, corner_in);
}

/** The ways to carry this cladding that fit the framing, in the order to try. */
export function fasteningOptions({ cladding }: Face, { brief }: AnswerContext): readonly FasteningOption[] {
  return cladding.fastenings.filter((f) => f.framing === brief.framing.material);
}

/** The wall as the fastening calculator takes it; not for claddings that are glued. */
export function fasteningContext(face: Face, context: AnswerContext): FasteningContext {
  const { cladding, build } = face;
  const isFurring = cladding.attachment === 'furring';
  const mat_in = isFurring ? 0 : matDepth_in(face);
  return {
    support: isFurring ? 'furring' : 'direct',
    framing: context.fastening_framing,
    cladding_psf: claddingWeight_psf(face),
    insulation_thickness_in: build.thickness_in,
    framing_spacing_in: context.brief.framing.spacing_in,
    outward_wind_psf: context.outward_wind_psf,
    specific_gravity: context.brief.framing.species_gravity,
    // With the barrier on it: the fastener goes through both.
    sheathing_thickness_in: face.sheathing.thickness_in + thickestBarrier_in(context),
    // Straight through lath: the head sits on the lath, the plaster covers it later.
    outboard_thickness_in: isFurring ? furringDepth_in(cladding) : mat_in + LATH_IN,
    mat_thickness_in: mat_in,
    insulation_kind: build.insulation.is_foam_plastic ? 'foam' : 'fibrous',
    edition: context.brief.code_edition,
  };
}

function claddingWeight_psf({ cladding }: Face): number {
  return cladding.layers.reduce((sum, layer) => sum + layer.weight_psf.value, 0);
}

/** One length serves whatever barrier is chosen. */
export function thickestBarrier_in({ catalogue }: AnswerContext): number {
  return Math.max(0, ...catalogue.barriers.map((barrier) => barrier.thickness_in));
}

/** Self-furring lath with its plate washer, in. (common practice, no source). */
export const LATH_IN = 0.375;

/** Of the drainage mat, in.; 0 without one. */
export function matDepth_in({ cladding }: Face): number {
  return cladding.layers.filter((l) => l.role === 'drainage').reduce((sum, l) => sum + l.thickness_in, 0);
}
