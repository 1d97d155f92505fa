import { z } from 'zod';
import { END_GRAIN_LATERAL, temperatureFactor, wetServiceFactor } from './adjustment-factors.ts';
import {
  bendingYieldStrength_psi,
  dowelBearingStrength_psi,
  dowelYieldModes_lb,
  type LoadToGrain,
  YIELD_MODES,
  type YieldMode,
  type YieldModes,
} from './dowel.ts';
import {
  areSound,
  bounded,
  diameterField,
  gravityField,
  loadDurationField,
  serviceFields,
} from './inputs.ts';
import { checkPenetration } from './penetration.ts';
import {
  DEFAULT_REDUCTION_DIAMETER,
  type LateralFastener,
  type ReductionDiameter,
  reductionTerms,
} from './reduction-term.ts';

/** One member of the joint: how deep the fastener bears in it, and in what. */
export type JointMember = {
  readonly length_in: number;
} & ({ readonly specific_gravity: number } | { readonly bearing_psi: number });

export type LateralJoint = {
  readonly fastener: LateralFastener;
  readonly diameter_in: number;
  /** For nails the diameter. */
  readonly root_diameter_in: number;
  readonly bending_yield_psi: number;
  readonly side: JointMember;
  readonly main: JointMember;
  readonly gap_in: number;
  /** Taken for both members. */
  readonly load_to_grain: LoadToGrain;
  readonly reduction_diameter?: ReductionDiameter;
};

export type LateralReference = {
  readonly modes_lb: YieldModes;
  readonly governing: YieldMode;
  readonly reference_lb: number;
};

/**
 * Reference lateral value of one fastener in single shear, lb, with the value of every yield mode.
 *
 * Threaded fasteners bear and bend on the root diameter (threads may cross the joint); the wood's bearing strength
 * follows the nominal diameter.
 *
 * @throws Refusal outside the ranges of the dowel equations
 *
 * Source: NDS-2018 12.3.1 with Tables 12.3.1A and 12.3.1B and 12.3.7; AWC Technical Report 12 for a gap.
 */
export function lateralReference(joint: LateralJoint): LateralReference {
  const working = joint.fastener === 'nail' ? joint.diameter_in : joint.root_diameter_in;
  const yields = dowelYieldModes_lb({
    bearing_diameter_in: working,
    bending_diameter_in: working,
    bending_yield_psi: joint.bending_yield_psi,
    side: { bearing_psi: bearing_psi(joint.side, joint), length_in: joint.side.length_in },
    main: { bearing_psi: bearing_psi(joint.main, joint), length_in: joint.main.length_in },
    gap_in: joint.gap_in,
  });
  const terms = reductionTerms(
    joint.fastener,
    joint.diameter_in,
    working,
    joint.load_to_grain,
    joint.reduction_diameter,
  );
  const modes_lb = {
    Im: yields.Im / terms.Im,
    Is: yields.Is / terms.Is,
    II: yields.II / terms.II,
    IIIm: yields.IIIm / terms.IIIm,
    IIIs: yields.IIIs / terms.IIIs,
    IV: yields.IV / terms.IV,
  };
  const governing = YIELD_MODES.reduce((least, mode) => (modes_lb[mode] < modes_lb[least] ? mode : least));
  return { modes_lb, governing, reference_lb: modes_lb[governing] };
}

function bearing_psi(member: JointMember, joint: LateralJoint): number {
  return 'bearing_psi' in member
    ? member.bearing_psi
    : dowelBearingStrength_psi(member.specific_gravity, joint.diameter_in, joint.load_to_grain);
}

const ROOT_MESSAGE =
  'Give the root diameter of the threads in inches, not above the nominal diameter, for example 0.152 for a No. 10 screw.';

/** Input of `calc lateral`. */
export const lateralInputSchema = z
  .strictObject({
    fastener: z.enum(['nail', 'wood-screw', 'lag-screw'], {
      error: 'Choose one of "nail", "wood-screw", "lag-screw".',
    }),
    diameter_in: diameterField,
    root_diameter_in: bounded(0.099, 1, 'the root diameter in inches', 0.152).optional(),
    bending_yield_psi: bounded(
      20_000,
      250_000,
      'the bending yield strength of the steel in psi',
      80_000,
    ).optional(),
    side: z.strictObject({
      thickness_in: bounded(0.1, 12, 'the thickness of the side member in inches', 1.5),
      specific_gravity: gravityField,
    }),
    main: z.strictObject({
      penetration_in: bounded(0.25, 24, 'the penetration into the main member in inches', 1.5),
      specific_gravity: gravityField,
    }),
    gap_in: bounded(0, 24, 'the gap between the members in inches', 0).default(0),
    load_duration: loadDurationField,
    load_to_grain: z
      .enum(['parallel', 'perpendicular'], { error: 'Choose "parallel" or "perpendicular".' })
      .default('perpendicular'),
    tip_length_in: bounded(0, 2, 'the length of the tapered tip in inches', 0.38).default(0),
    reduction_diameter: z.enum(['nominal', 'root'], { error: 'Choose "nominal" or "root".' }).optional(),
    end_grain: z.boolean('Say whether the fastener is in end grain: true or false.').default(false),
    ...serviceFields,
  })
  .superRefine((input, context) => {
    if (
      input.tip_length_in > input.main.penetration_in &&
      areSound(context, 'tip_length_in', 'main.penetration_in')
    ) {
      context.addIssue({
        code: 'custom',
        path: ['tip_length_in'],
        message: 'Give a tip no longer than the penetration, for example 0.38.',
      });
    }
    if (input.fastener === 'nail' || !areSound(context, 'fastener', 'diameter_in', 'root_diameter_in'))
      return;
    if (input.root_diameter_in === undefined || input.root_diameter_in > input.diameter_in) {
      context.addIssue({ code: 'custom', path: ['root_diameter_in'], message: ROOT_MESSAGE });
    }
  });
export type LateralInput = z.output<typeof lateralInputSchema>;

export type LateralAnswer = LateralReference & {
  readonly allowable_lb: number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Lateral value of one fastener in single shear, with or without a gap between the members.
 *
 * `modes_lb` holds each mode's reference value (yield load over its reduction term); `allowable_lb` is the lowest
 * times load duration, wet service, temperature and end grain.
 *
 * @throws Refusal for a penetration under the minimum (6 D nails and wood screws, 4 D lags) and outside the ranges
 *
 * Source: as {@link lateralReference}; NDS-2018 12.3.5.3 for the bearing length, Table 11.3.1 for the factors.
 */
export function computeLateral(input: LateralInput): LateralAnswer {
  const { fastener, diameter_in, main } = input;
  checkPenetration(main.penetration_in, 'main.penetration_in', fastener, diameter_in);
  const bending_yield_psi = input.bending_yield_psi ?? bendingYieldStrength_psi(fastener, diameter_in);
  const answer = lateralReference({
    fastener,
    diameter_in,
    root_diameter_in: fastener === 'nail' ? diameter_in : (input.root_diameter_in ?? diameter_in),
    bending_yield_psi,
    side: { length_in: input.side.thickness_in, specific_gravity: input.side.specific_gravity },
    main: { length_in: bearingLength_in(input), specific_gravity: main.specific_gravity },
    gap_in: input.gap_in,
    load_to_grain: input.load_to_grain,
    ...(input.reduction_diameter === undefined ? {} : { reduction_diameter: input.reduction_diameter }),
  });
  const wet = input.wet_service ? wetServiceFactor('lateral', fastener) : 1;
  const hot = temperatureFactor(input.temperature_f, input.wet_service);
  const endGrain = input.end_grain ? END_GRAIN_LATERAL : 1;
  return {
    ...answer,
    allowable_lb: answer.reference_lb * input.load_duration * wet * hot * endGrain,
    source: [
      'ANSI/AWC NDS-2018 12.3.1, Tables 12.3.1A and 12.3.1B: yield modes and reduction terms',
      'ANSI/AWC NDS-2018 Table 12.3.3: dowel bearing strength',
      ...(input.gap_in > 0
        ? ['AWC Technical Report 12: general dowel equations with a gap (from memory)']
        : []),
      ...(input.bending_yield_psi === undefined
        ? ['ANSI/AWC NDS-2018 Table I1: bending yield strength']
        : []),
    ],
    notes: lateralNotes(input, bending_yield_psi, wet, hot, endGrain),
  };
}

/** From 10 D of penetration the tapered tip counts as full bearing; below it half the tip is lost. */
function bearingLength_in(input: LateralInput): number {
  const penetration = input.main.penetration_in;
  if (input.fastener === 'lag-screw' || penetration >= 10 * input.diameter_in) return penetration;
  return penetration - input.tip_length_in / 2;
}

function lateralNotes(
  input: LateralInput,
  bending_yield_psi: number,
  wet: number,
  hot: number,
  endGrain: number,
): string[] {
  const { fastener, diameter_in } = input;
  const notes: string[] = [];
  if (fastener !== 'nail') {
    const basis = input.reduction_diameter ?? DEFAULT_REDUCTION_DIAMETER[fastener];
    notes.push(
      `Bears and bends on the root diameter; the reduction term is taken from the ${basis} diameter` +
        (fastener === 'wood-screw' && basis === 'nominal' && diameter_in > 0.17
          ? ' as in the design association’s worked example (the root would give more).'
          : '.'),
    );
  }
  if (input.bending_yield_psi === undefined) {
    notes.push(`Bending yield strength not given: ${bending_yield_psi} psi assumed for ordinary steel.`);
  }
  if (diameter_in >= 0.25) {
    notes.push(
      `From 1/4 in. the grain counts: load taken ${input.load_to_grain} to the grain in both members.`,
    );
  }
  if (fastener !== 'lag-screw' && input.main.penetration_in < 10 * diameter_in) {
    notes.push(
      input.tip_length_in > 0
        ? 'Under 10 diameters of penetration: half the tapered tip is left off the bearing length.'
        : 'Under 10 diameters of penetration: give tip_length_in if the penetration includes a tapered tip; half of it does not count.',
    );
  }
  if (fastener === 'lag-screw' && input.main.penetration_in < 8 * diameter_in) {
    notes.push('Under 8 diameters of penetration: the actual length is used, less than the tables assume.');
  }
  if (input.gap_in > 0) {
    notes.push(
      'The gap is taken as empty: insulation between the members adds nothing. Strength only; sag over time across a gap needs its own limit.',
    );
  }
  if (wet !== 1) notes.push(`Wet service factor ${wet} applied.`);
  if (hot !== 1) notes.push(`Temperature factor ${hot} applied.`);
  if (endGrain !== 1) notes.push(`End grain factor ${endGrain} applied.`);
  return notes;
}
