import { z } from 'zod';
import { Refusal, showValue } from '../../base/refusal.ts';
import {
  FASTENERS,
  FASTENING_EDITIONS,
  type FastenerId,
  FRAMINGS,
  SUPPORTS,
  type Support,
} from './fastening-tables.ts';

export const INSULATION_KINDS = ['foam', 'fibrous'] as const;
export type InsulationKind = (typeof INSULATION_KINDS)[number];

/** Thinner strips are not furring that a fastener head can bear on. */
const LEAST_FURRING_IN = 0.25;

function number(what: string, min: number, max: number, example: number) {
  const message = `Give ${what} from ${min} to ${max}, for example ${example}`;
  return z.number(message).min(min, message).max(max, message);
}

function choice<const T extends readonly [string, ...string[]]>(values: T) {
  return z.enum(values, `Choose one of ${values.map((v) => `"${v}"`).join(', ')}`);
}

/**
 * Input of the fastening calculator. The keys down to `outward_wind_psf` are required; the rest have defaults.
 * Thicknesses in inches, weights and pressures in psf; `outward_wind_psf` is suction at allowable-stress level,
 * given as a positive number.
 */
export const fasteningInputSchema = z
  .strictObject({
    support: choice(SUPPORTS),
    framing: choice(FRAMINGS),
    cladding_psf: number('the weight that the fasteners carry in psf', 0.1, 100, 11),
    insulation_thickness_in: number('the insulation thickness in inches', 0.1, 24, 2),
    fastener: choice(FASTENERS),
    framing_spacing_in: number('the stud (or furring) spacing in inches on center', 4, 48, 16),
    fastener_spacing_in: number('the fastener spacing along the stud in inches', 1, 48, 12),
    outward_wind_psf: number('the outward wind pressure as a positive number of psf', 0, 300, 25),
    /** Of the studs. */
    specific_gravity: number('the specific gravity of the studs', 0.3, 0.75, 0.42).default(0.42),
    sheathing_thickness_in: number('the sheathing thickness in inches', 0, 2, 0.4375).default(0.4375),
    /** Outside the insulation, under the fastener's head: furring, or cladding, lath and mat. */
    outboard_thickness_in: number('what lies outside the insulation in inches', 0, 4, 0.75).optional(),
    /** How much of that is a drainage mat: soft, so it counts as gap. */
    mat_thickness_in: number('the drainage mat in inches', 0, 2, 0.25).default(0),
    insulation_kind: choice(INSULATION_KINDS).default('foam'),
    edition: choice(FASTENING_EDITIONS).default('2021'),
  })
  .refine((input) => input.mat_thickness_in <= outboard_in(input.support, input.outboard_thickness_in), {
    path: ['mat_thickness_in'],
    message: 'The mat is part of outboard_thickness_in, so give no more than that',
  })
  .refine(
    (input) =>
      input.support === 'direct' ||
      outboard_in(input.support, input.outboard_thickness_in) - input.mat_thickness_in >= LEAST_FURRING_IN,
    {
      path: ['outboard_thickness_in'],
      message: `Furring, without any mat behind it, is at least ${LEAST_FURRING_IN} in thick, commonly 0.75`,
    },
  );
export type FasteningInput = z.output<typeof fasteningInputSchema>;

/** Outboard thickness when none is given: 1x furring, or 3/8 in of cladding. */
export function outboard_in(support: Support, given: number | undefined): number {
  return given ?? (support === 'furring' ? 0.75 : 0.375);
}

/** One fully stated case; what the input becomes. */
export type FasteningCase = Omit<FasteningInput, 'outboard_thickness_in'> & {
  readonly outboard_thickness_in: number;
};

/** Fills in the outboard thickness. */
export function fasteningCase(input: FasteningInput): FasteningCase {
  return { ...input, outboard_thickness_in: outboard_in(input.support, input.outboard_thickness_in) };
}

/** A fastener name from a catalogue; refuses one that the calculators don't know. */
export function knownFastener(name: string, field: string): FastenerId {
  const found = FASTENERS.find((id) => id === name);
  if (!found) {
    throw new Refusal({
      field,
      value: showValue(name),
      accepted: `Choose one of ${FASTENERS.map((v) => `"${v}"`).join(', ')}.`,
    });
  }
  return found;
}
