import { z } from 'zod';
import { Refusal, showValue } from '../../base/refusal.ts';
import { areSound, bounded, gravityField } from '../connections/inputs.ts';
import { plausibleWeight } from '../window-weight.ts';
import { ASSUMED, type BuckJudgement, type BuckOption, type BuckWindow } from './buck-types.ts';
import { judgeBuckInFull, minimumSpacing_in } from './judge-buck.ts';
import { holdsByFlangeOnly, isLarge } from './trade-rules.ts';
import { type BuckTables, memberNamed } from './wood-table.ts';

const ROOT_MESSAGE = 'Give a root diameter not above the nominal diameter, for example 0.152.';

/** Input of `calc buck`. */
export const buckInputSchema = z
  .strictObject({
    support: z.enum(['bears-on-sill', 'face-fastened'], {
      error: 'Choose "bears-on-sill" or "face-fastened".',
    }),
    member: z.strictObject({
      nominal: z.string('Give a nominal size, for example "2x4".').max(40),
      specific_gravity: gravityField,
    }),
    projection_in: bounded(0, 12, 'the projection past the framing or sheathing in inches', 3),
    window: z.strictObject({
      width_in: bounded(6, 240, 'the unit width in inches', 36),
      height_in: bounded(6, 180, 'the unit height in inches', 60),
      weight_lb: bounded(2, 3000, 'the weight of the unit in pounds', 130),
      mounting: z.enum(['flanged', 'flangeless'], { error: 'Choose "flanged" or "flangeless".' }),
      operation: z
        .enum(['fixed', 'casement', 'awning', 'hung', 'sliding', 'door', 'unknown'], {
          error: 'Choose one of "fixed", "casement", "awning", "hung", "sliding", "door", or "unknown".',
        })
        .default('unknown'),
      glazing: z
        .enum(['double', 'triple', 'unknown'], { error: 'Choose "double", "triple" or "unknown".' })
        .default('unknown'),
    }),
    outward_wind_psf: bounded(-200, 200, 'the suction in psf, allowable-stress level', 25),
    screw: z.strictObject({
      diameter_in: bounded(0.099, 0.5, 'the screw diameter in inches', 0.19),
      root_diameter_in: bounded(0.099, 0.5, 'the root diameter in inches', 0.152),
      length_in: bounded(1, 24, 'the screw length in inches', 6),
      bending_yield_psi: bounded(20_000, 250_000, 'the bending yield strength in psi', 80_000),
    }),
    screw_spacing_in: bounded(1, 48, 'the screw spacing in inches', 12),
    framing_gravity: gravityField,
    framing_depth_in: bounded(2.5, 12, 'the depth of the studs in inches', 5.5).default(3.5),
    gap_in: bounded(0, 2, 'the sheathing thickness in inches', 0.4375).default(ASSUMED.gap_in),
    head_diameter_in: bounded(0.15, 2, 'the screw head diameter in inches', 0.375).default(
      ASSUMED.head_diameter_in,
    ),
    thread_length_in: bounded(0.5, 12, 'the thread length in inches', 1.5).default(ASSUMED.thread_length_in),
    corners_joined: z
      .boolean('Say whether sill, jambs and head are screwed to each other: true or false.')
      .default(true),
    sill_kerf_in: bounded(0, 1, 'the depth of a drip kerf in inches', 0.125).default(0),
    wet_service: z.boolean('Say whether the buck gets wet in service: true or false.').default(false),
    walked_on_sill: z.boolean('Say whether people step on the sill: true or false.').default(false),
  })
  .superRefine((input, context) => {
    if (
      input.screw.root_diameter_in > input.screw.diameter_in &&
      areSound(context, 'screw.diameter_in', 'screw.root_diameter_in')
    ) {
      context.addIssue({ code: 'custom', path: ['screw', 'root_diameter_in'], message: ROOT_MESSAGE });
    }
  });
export type BuckInput = z.output<typeof buckInputSchema>;

export type BuckAnswer = BuckJudgement & {
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Whether a buck carries a window out past the framing: `fits`, `does-not-fit` (and what would), or `engineer`.
 *
 * @throws Refusal for an unknown member size, a kerf past half the member, a flangeless window on a support that
 *         holds by the flange only, and outside the ranges of the connection formulas
 *
 * Source: as {@link judgeBuckInFull}.
 */
export function computeBuck(input: BuckInput, tables: BuckTables): BuckAnswer {
  checkKerf(input, memberNamed(input.member.nominal, tables.wood).thickness_in);
  const option: BuckOption = {
    support: input.support,
    member: input.member,
    screw: input.screw,
    screw_spacing_in: input.screw_spacing_in,
    corners_joined: input.corners_joined,
    head_diameter_in: input.head_diameter_in,
    thread_length_in: input.thread_length_in,
    sill_kerf_in: input.sill_kerf_in,
  };
  const { operation, glazing } = input.window;
  const window: BuckWindow = {
    ...input.window,
    operation: operation === 'unknown' ? null : operation,
    glazing: glazing === 'unknown' ? null : glazing,
  };
  if (window.mounting === 'flangeless' && holdsByFlangeOnly(option, input, tables)) {
    throw new Refusal({
      field: 'window.mounting',
      value: showValue(input.window.mounting),
      accepted:
        'A flat frame holds a window by its flange only: give a "flanged" window, or use a buck that bears on the rough sill.',
    });
  }
  const { verdict, why, strength } = judgeBuckInFull(option, window, input, tables);
  return {
    verdict,
    utilisation: strength?.utilisation ?? { gravity: null, wind: null, combined: null, bearing: null },
    screws_per_side: strength?.screws_per_side ?? null,
    min_screw_length_in: strength?.min_screw_length_in ?? null,
    why,
    source: sources(input, tables),
    notes: [
      ...(strength?.screw_count ? [strength.screw_count] : []),
      ...(strength?.notes ?? []),
      ...notes(input, window, strength?.sag_in ?? null, tables),
    ],
  };
}

/** Past half the thickness no formula for the bending of a cut panel holds. */
function checkKerf({ sill_kerf_in }: BuckInput, thickness_in: number): void {
  if (sill_kerf_in > thickness_in / 2) {
    throw new Refusal({
      field: 'sill_kerf_in',
      value: showValue(sill_kerf_in),
      accepted: `Give a kerf of at most half the member’s thickness, ${thickness_in / 2} in.`,
    });
  }
}

function sources(input: BuckInput, tables: BuckTables): string[] {
  const { wood, windows } = tables;
  return [
    'Statics of the free body: own derivation',
    'ANSI/AWC NDS-2018 12.2.2, 12.3.1 and 12.4.1: withdrawal, lateral and combined load on screws',
    ...(input.support === 'face-fastened'
      ? [
          'ANSI/AWC NDS-2018 12.2.5: head pull-through (from memory)',
          'AWC Technical Report 12: lateral load across the sheathing as a gap (from memory)',
          `Reach: ${wood.face_fastened.max_projection_source}`,
          `Large windows: ${windows.large.source}`,
        ]
      : [
          `Compression perpendicular to grain: ${wood.fc_perp.source}`,
          `Bending: ${wood.bending.source}; ${wood.panel_bending.source}`,
          `Reach: ${wood.members.source}`,
        ]),
    `Screws: ${wood.screws.min_penetration_source}; ${wood.screws.spacing_source}`,
  ];
}

function notes(input: BuckInput, window: BuckWindow, sag_in: number | null, tables: BuckTables): string[] {
  const { serviceability, screws, statics } = tables.wood;
  const least = minimumSpacing_in(input.screw.diameter_in, tables);
  const weight = plausibleWeight(window.weight_lb, window, tables.windows);
  return [
    ...(window.operation === null || window.glazing === null
      ? [
          isLarge(window, tables) && input.support === 'face-fastened'
            ? 'Operation or glazing not given: taken as a large fixed triple-glazed unit until known.'
            : 'Operation or glazing not given: a door, or a large fixed triple-glazed unit, would be judged more strictly.',
        ]
      : []),
    ...(weight.question ? [weight.question] : []),
    ...(input.outward_wind_psf < 0
      ? ['Outward wind given as a negative number: taken as suction, as the positive number is.']
      : []),
    ...(input.screw_spacing_in < least
      ? [
          `Screws closer than ${Number(least.toFixed(2))} in. (${screws.min_spacing_diameters} diameters without lead holes) split the wood: counted at that spacing.`,
        ]
      : []),
    ...(input.wet_service ? [] : ['Taken as dry in service: the flashing has to keep the buck dry.']),
    ...(sag_in === null
      ? []
      : [
          `Sag at the glass from screws, jambs and sill, with creep, about ${Math.max(sag_in, 0.001).toFixed(3)} in.; proposed limit at the glass ${serviceability.sag_limit_in} in. Shrinkage, and turning as screws draw out, are not in it.`,
        ]),
    `The window’s weight is taken in the plane of its flange, the buck at ${statics.buck_density_pcf} lb/ft³. Studs ${input.framing_depth_in} in. deep${input.support === 'face-fastened' ? ` behind ${input.gap_in} in. of sheathing` : ''}.`,
    'A guide, not a design: follow the window maker’s instructions and the local code, and have an engineer check anything unusual.',
  ];
}
