import { Refusal, showValue } from '../../base/refusal.ts';

/**
 * Smallest penetration into the member that holds the point, in.
 *
 * @returns 4 D for lag screws (without the tip), 6 D for wood screws and nails
 *
 * Source: NDS-2018 12.1.4.6, 12.1.5.6 and 12.1.6.4, as in a public restatement.
 */
export function minimumPenetration_in(fastener: string, diameter_in: number): number {
  return (fastener === 'lag-screw' ? 4 : 6) * diameter_in;
}

/** Refuses a penetration below the minimum of {@link minimumPenetration_in}. */
export function checkPenetration(
  penetration_in: number,
  field: string,
  fastener: string,
  diameter_in: number,
): void {
  const least = minimumPenetration_in(fastener, diameter_in);
  // A fastener exactly at the limit must not fail on the last binary digit of 6 × 0.19.
  if (penetration_in < least - 1e-9) {
    const diameters = fastener === 'lag-screw' ? '4 diameters, without the tip' : '6 diameters';
    throw new Refusal({
      field,
      value: showValue(penetration_in),
      accepted: `Give at least ${Number(least.toFixed(3))} in. (${diameters}): a longer fastener, or a closer one of smaller diameter.`,
    });
  }
}
