import { z } from 'zod';
import { inRange } from '../../base/refusal.ts';
import { temperatureFactor, wetServiceFactor } from './adjustment-factors.ts';
import { bounded, gravityField, loadDurationField, serviceFields } from './inputs.ts';
import { GRAVITY_RANGE } from './ranges.ts';

/** Head diameters the pull-through equation is used for, in. */
export const HEAD_DIAMETER_RANGE_IN = { min: 0.099, max: 3 } as const;
/** Side member thicknesses it is used for, in. */
export const SIDE_THICKNESS_RANGE_IN = { min: 0.1, max: 12 } as const;

/**
 * Reference head pull-through value of one round-headed fastener, lb, before any adjustment.
 *
 * Above a thickness of 2.5 head diameters more thickness adds nothing; the two branches meet there.
 *
 * @param head_diameter_in   diameter of the round head, 0.099 to 3 in.
 * @param side_thickness_in  net thickness of the wood under the head, 0.1 to 12 in.
 * @param specific_gravity   of the wood under the head, 0.3 to 0.75
 * @throws Refusal outside those ranges
 *
 * Source: NDS-2018 12.2.5, round heads: 690 π D_H G² t up to t = 2.5 D_H, 1725 π D_H² G² above (from memory).
 */
export function pullThroughReference_lb(
  head_diameter_in: number,
  side_thickness_in: number,
  specific_gravity: number,
): number {
  const head = inRange(
    head_diameter_in,
    'head_diameter_in',
    HEAD_DIAMETER_RANGE_IN.min,
    HEAD_DIAMETER_RANGE_IN.max,
    'a head diameter in inches',
  );
  const side = inRange(
    side_thickness_in,
    'side_thickness_in',
    SIDE_THICKNESS_RANGE_IN.min,
    SIDE_THICKNESS_RANGE_IN.max,
    'a thickness in inches',
  );
  const g = inRange(
    specific_gravity,
    'specific_gravity',
    GRAVITY_RANGE.min,
    GRAVITY_RANGE.max,
    'a specific gravity',
  );
  return 690 * Math.PI * head * g ** 2 * Math.min(side, 2.5 * head);
}

/** Input of `calc pull-through`. */
export const pullThroughInputSchema = z.strictObject({
  head_diameter_in: bounded(
    HEAD_DIAMETER_RANGE_IN.min,
    HEAD_DIAMETER_RANGE_IN.max,
    'the diameter of the round head in inches',
    0.375,
  ),
  side_thickness_in: bounded(
    SIDE_THICKNESS_RANGE_IN.min,
    SIDE_THICKNESS_RANGE_IN.max,
    'the thickness of the wood under the head in inches',
    0.75,
  ),
  specific_gravity: gravityField,
  load_duration: loadDurationField,
  ...serviceFields,
});
export type PullThroughInput = z.output<typeof pullThroughInputSchema>;

export type PullThroughAnswer = {
  readonly reference_lb: number;
  readonly allowable_lb: number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Allowable head pull-through of one round-headed fastener: reference × load duration × wet service × temperature.
 *
 * @throws Refusal outside the ranges of {@link pullThroughReference_lb}
 *
 * Source: NDS-2018 12.2.5 and Table 11.3.1 (from memory; the provision is new in that edition and for round heads).
 */
export function computePullThrough(input: PullThroughInput): PullThroughAnswer {
  const { head_diameter_in, side_thickness_in, specific_gravity } = input;
  const reference_lb = pullThroughReference_lb(head_diameter_in, side_thickness_in, specific_gravity);
  const wet = input.wet_service ? wetServiceFactor('pull-through', 'wood-screw') : 1;
  const hot = temperatureFactor(input.temperature_f, input.wet_service);
  return {
    reference_lb,
    allowable_lb: reference_lb * input.load_duration * wet * hot,
    source: [
      'ANSI/AWC NDS-2018 12.2.5: 690 π D_H G² t to t = 2.5 D_H, 1725 π D_H² G² above (from memory)',
      'ANSI/AWC NDS-2018 Table 11.3.1: adjustment factors',
    ],
    notes: [
      'For round heads on solid wood or structural panels; a countersunk head cuts in and needs its maker’s figure. The equation is from memory: confirm before relying on it.',
      ...(side_thickness_in > 2.5 * head_diameter_in
        ? ['Wood thicker than 2.5 head diameters adds nothing: the upper branch governs.']
        : []),
      ...(wet === 1 ? [] : [`Wet service factor ${wet} applied.`]),
      ...(hot === 1 ? [] : [`Temperature factor ${hot} applied.`]),
    ],
  };
}
