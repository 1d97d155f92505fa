import { z } from 'zod';
import { DOWEL_DIAMETER_RANGE_IN, GRAVITY_RANGE } from './ranges.ts';

/** A number from min to max with a message that says what would be accepted. */
export function bounded(min: number, max: number, unit: string, example: number) {
  const message = `Give ${unit} from ${min} to ${max}, for example ${example}.`;
  return z.number(message).min(min, message).max(max, message);
}

/**
 * Whether fields passed their own checks. One that failed is told of already; to measure another by it would accuse a
 * good value.
 */
export function areSound(context: z.core.$RefinementCtx, ...fields: readonly string[]): boolean {
  return !context.issues.some(({ path }) => fields.includes((path ?? []).join('.')));
}

export const diameterField = bounded(
  DOWEL_DIAMETER_RANGE_IN.min,
  DOWEL_DIAMETER_RANGE_IN.max,
  'a fastener diameter in inches',
  0.19,
);

export const gravityField = bounded(
  GRAVITY_RANGE.min,
  GRAVITY_RANGE.max,
  'the specific gravity of the wood',
  0.42,
);

const LOAD_DURATION_MESSAGE =
  'Give a load duration factor from 0.9 (permanent load) to 1.6 (wind); impact factors do not apply to connections.';
export const loadDurationField = z
  .number(LOAD_DURATION_MESSAGE)
  .min(0.9, LOAD_DURATION_MESSAGE)
  .max(1.6, LOAD_DURATION_MESSAGE)
  .default(1);

/** Optional conditions of use, the same for every connection calculator. */
export const serviceFields = {
  wet_service: z.boolean('Say whether the wood gets wet in service: true or false.').default(false),
  temperature_f: bounded(-80, 150, 'the sustained temperature of the wood in °F', 70).default(70),
};
