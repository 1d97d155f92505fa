import type { Face } from '../assembly/candidates.ts';
import { chooseFastening, type FasteningSchedule } from '../calculators/fastening/choose-fastening.ts';
import type { AnswerContext } from './answer-context.ts';

export type FasteningPart = {
  /** Null where the cladding is glued and no fastener carries it. */
  readonly schedule: FasteningSchedule | null;
  readonly cladding_psf: number;
  readonly insulation_psf: number;
};

/** What the fasteners of a wall carry, and the schedule that carries it. */
export function fasteningPart(face: Face, context: AnswerContext): FasteningPart {
  const { cladding, build } = face;
  const cladding_psf = cladding.layers.reduce((sum, layer) => sum + layer.weight_psf.value, 0);
  const insulation_psf = (build.insulation.density_pcf.value * build.thickness_in) / 12;
  if (cladding.attachment === 'adhered') return { schedule: null, cladding_psf, insulation_psf };
  const options = cladding.fastenings.filter((f) => f.framing === context.brief.framing.material);
  const isFurring = cladding.attachment === 'furring';
  const mat_in = isFurring ? 0 : thicknessOf(face, 'drainage');
  const furring_in = thicknessOf(face, 'furring');
  const schedule = chooseFastening(
    options,
    {
      support: isFurring ? 'furring' : 'direct',
      framing: context.fastening_framing,
      cladding_psf: cladding_psf,
      insulation_thickness_in: build.thickness_in,
      framing_spacing_in: context.brief.framing.spacing_in,
      outward_wind_psf: context.outward_wind_psf,
      specific_gravity: context.brief.framing.species_gravity,
      sheathing_thickness_in: face.sheathing.thickness_in,
      // Straight through lath: the head sits on the lath, the plaster covers it later.
      outboard_thickness_in: isFurring ? furring_in : mat_in + LATH_IN,
      mat_thickness_in: mat_in,
      insulation_kind: build.insulation.is_foam_plastic ? 'foam' : 'fibrous',
      edition: context.brief.code_edition,
    },
    context.tables.fastening,
  );
  return { schedule, cladding_psf, insulation_psf };
}

/** Self-furring lath with its plate washer, in. (common practice, no source). */
const LATH_IN = 0.375;

function thicknessOf(face: Face, role: 'drainage' | 'furring'): number {
  return face.cladding.layers.filter((l) => l.role === role).reduce((sum, l) => sum + l.thickness_in, 0);
}
