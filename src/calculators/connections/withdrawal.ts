import { z } from 'zod';
import { inRange } from '../../base/refusal.ts';
import { endGrainWithdrawalFactor, temperatureFactor, wetServiceFactor } from './adjustment-factors.ts';
import { bounded, gravityField, loadDurationField, serviceFields } from './inputs.ts';
import { checkPenetration } from './penetration.ts';
import { GRAVITY_RANGE, WITHDRAWAL_FASTENERS, type WithdrawalFastener } from './ranges.ts';

/** Smallest and largest diameters the withdrawal formulas are used for, in. */
export const WITHDRAWAL_DIAMETERS_IN: Readonly<Record<WithdrawalFastener, { min: number; max: number }>> = {
  // Published tables for screws and nails end at 3/8 in. (No. 24 screws and spikes).
  'wood-screw': { min: 0.099, max: 0.375 },
  // The published lag table runs to 1-1/4 in.
  'lag-screw': { min: 0.099, max: 1.25 },
  'smooth-nail': { min: 0.099, max: 0.375 },
  'ring-shank-nail': { min: 0.099, max: 0.375 },
};

/**
 * Reference withdrawal value per inch of penetration into side grain, lb/in, before any adjustment.
 *
 * @param fastener          kind; wood and lag screws count thread penetration, nails full penetration
 * @param diameter_in       nominal (unthreaded shank) diameter, 0.099 to 0.375 in., lag screws to 1.25 in.
 * @param specific_gravity  of the wood holding the point, oven-dry weight and volume, 0.3 to 0.75
 * @throws Refusal outside those ranges
 *
 * Source: NDS-2018 12.2.1 (lag screws, 1800 G^1.5 D^0.75: every cell of Table 12.2A seen within 1 lb/in),
 * 12.2.2 (wood screws, 2850 G² D, seen in a handbook), 12.2.3 (smooth nails, 1380 G^2.5 D, seen on two pages;
 * ring-shank nails, 1800 G² D for roof-sheathing and post-frame ring-shank nails, from memory).
 */
export function withdrawalReference_lb_per_in(
  fastener: WithdrawalFastener,
  diameter_in: number,
  specific_gravity: number,
): number {
  const range = WITHDRAWAL_DIAMETERS_IN[fastener];
  const d = inRange(diameter_in, 'diameter_in', range.min, range.max, 'a diameter in inches');
  const g = inRange(
    specific_gravity,
    'specific_gravity',
    GRAVITY_RANGE.min,
    GRAVITY_RANGE.max,
    'a specific gravity',
  );
  switch (fastener) {
    case 'wood-screw':
      return 2850 * g ** 2 * d;
    case 'lag-screw':
      return 1800 * g ** 1.5 * d ** 0.75;
    case 'smooth-nail':
      return 1380 * g ** 2.5 * d;
    case 'ring-shank-nail':
      return 1800 * g ** 2 * d;
  }
}

/** Input of `calc withdrawal`. */
export const withdrawalInputSchema = z.strictObject({
  fastener: z.enum(WITHDRAWAL_FASTENERS, {
    error: `Choose one of ${WITHDRAWAL_FASTENERS.map((f) => `"${f}"`).join(', ')}.`,
  }),
  diameter_in: bounded(0.099, 1.25, 'the nominal diameter in inches', 0.19),
  thread_penetration_in: bounded(
    0.25,
    24,
    'the penetration in inches (threads of a screw without the tip, the whole of a nail)',
    1.5,
  ),
  specific_gravity: gravityField,
  load_duration: loadDurationField,
  end_grain: z.boolean('Say whether the fastener is in end grain: true or false.').default(false),
  ...serviceFields,
});
export type WithdrawalInput = z.output<typeof withdrawalInputSchema>;

export type WithdrawalAnswer = {
  readonly reference_lb_per_in: number;
  readonly allowable_lb: number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

const FORMULA_SOURCE: Readonly<Record<WithdrawalFastener, string>> = {
  'wood-screw': 'ANSI/AWC NDS-2018 12.2.2: W = 2850 G² D',
  'lag-screw': 'ANSI/AWC NDS-2018 12.2.1 and Table 12.2A: W = 1800 G^1.5 D^0.75',
  'smooth-nail': 'ANSI/AWC NDS-2018 12.2.3: W = 1380 G^2.5 D',
  'ring-shank-nail': 'ANSI/AWC NDS-2018 12.2.3: W = 1800 G² D (from memory)',
};

/**
 * Allowable withdrawal of one fastener: reference value × penetration × load duration × wet service ×
 * temperature × end grain.
 *
 * @throws Refusal for a diameter outside the formula's range, a penetration under the minimum
 *         (6 D screws and nails, 4 D lags), or nails and wood screws in end grain
 *
 * Source: NDS-2018 12.2 and Table 11.3.1.
 */
export function computeWithdrawal(input: WithdrawalInput): WithdrawalAnswer {
  const reference = withdrawalReference_lb_per_in(input.fastener, input.diameter_in, input.specific_gravity);
  checkPenetration(input.thread_penetration_in, 'thread_penetration_in', input.fastener, input.diameter_in);
  const endGrain = input.end_grain ? endGrainWithdrawalFactor(input.fastener) : 1;
  const wet = input.wet_service ? wetServiceFactor('withdrawal', input.fastener) : 1;
  const hot = temperatureFactor(input.temperature_f, input.wet_service);
  const factors = input.load_duration * wet * hot * endGrain;
  return {
    reference_lb_per_in: reference,
    allowable_lb: reference * input.thread_penetration_in * factors,
    source: [FORMULA_SOURCE[input.fastener], 'ANSI/AWC NDS-2018 Table 11.3.1: adjustment factors'],
    notes: withdrawalNotes(input, wet, hot, endGrain),
  };
}

function withdrawalNotes(input: WithdrawalInput, wet: number, hot: number, endGrain: number): string[] {
  const { fastener, diameter_in } = input;
  const isScrew = fastener === 'wood-screw' || fastener === 'lag-screw';
  const notes = [
    'Withdrawal only: check that the head does not pull through and, for deep threads, the steel in tension at the root.',
  ];
  if (!input.end_grain)
    notes.push('For side grain; the wood holding the point counts, not what lies outside it.');
  if (isScrew) notes.push('Count threads in the wood only, without the tapered tip.');
  if (fastener === 'ring-shank-nail') {
    notes.push(
      'The ring-shank formula is from memory and for roof-sheathing and post-frame ring-shank nails; other deformed nails need their own tests.',
    );
  }
  if (fastener === 'lag-screw' && diameter_in < 0.25) {
    notes.push('The published lag table begins at 1/4 in.; the formula is used below that.');
  }
  if (wet !== 1) notes.push(`Wet service factor ${wet} applied.`);
  if (hot !== 1) notes.push(`Temperature factor ${hot} applied.`);
  if (endGrain !== 1) notes.push(`End grain factor ${endGrain} applied.`);
  return notes;
}
