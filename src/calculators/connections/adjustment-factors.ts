import { Refusal, showValue } from '../../base/refusal.ts';
import type { WithdrawalFastener } from './ranges.ts';

/**
 * Load duration factors for allowable-stress design of connections.
 * Source: NDS-2018 Table 2.3.2 (from memory). Impact (2.0) is left out: it doesn't apply to connections.
 */
export const LOAD_DURATION = {
  permanent: 0.9,
  ten_year: 1.0,
  two_month: 1.15,
  seven_day: 1.25,
  wind_or_seismic: 1.6,
} as const;

/** What the connection does; its wet-service factor differs. */
export type ConnectionCheck = 'lateral' | 'withdrawal' | 'pull-through';

/**
 * Wet service factor of one fastener, for wood above 19 % moisture in service or wetted now and then.
 *
 * @returns 0.7 for lateral load, pull-through and screws in withdrawal; 0.25 for nails in withdrawal, where
 *          wood that wets and dries lets go of the shank
 *
 * Source: NDS-2018 Table 11.3.3 (from memory; the 75 % cut for nails agrees with a designers' association
 * posting on the 2001 edition's Table 10.3.3). Nails in wood that stays wet for good would keep 1.0; that
 * isn't counted on here.
 */
export function wetServiceFactor(check: ConnectionCheck, fastener: WithdrawalFastener | 'nail'): number {
  const isNail = fastener === 'nail' || fastener === 'smooth-nail' || fastener === 'ring-shank-nail';
  return check === 'withdrawal' && isNail ? 0.25 : 0.7;
}

/**
 * Temperature factor for wood that stays hot for long.
 *
 * @param temperature_f  sustained temperature of the wood, °F, to 150
 * @param isWet          wet in service
 * @throws Refusal above 150 °F
 *
 * Source: NDS-2018 Table 11.3.4 (from memory).
 */
export function temperatureFactor(temperature_f: number, isWet: boolean): number {
  if (temperature_f <= 100) return 1;
  if (temperature_f <= 125) return isWet ? 0.7 : 0.8;
  if (temperature_f <= 150) return isWet ? 0.5 : 0.7;
  throw new Refusal({
    field: 'temperature_f',
    value: showValue(temperature_f),
    accepted: 'Give a sustained wood temperature up to 150 °F; there are no factors above.',
  });
}

/** Lateral load on a fastener in end grain. Source: NDS-2018 12.5.2.2 (from memory). */
export const END_GRAIN_LATERAL = 0.67;

/**
 * End grain factor for withdrawal.
 *
 * @throws Refusal for nails and wood screws, which may not be loaded in withdrawal from end grain
 *
 * Source: NDS-2018 12.5.2.1: lag screws 0.75 (also in a public restatement); 12.2.2 and 12.2.3: the others
 * not permitted (nails: designers' association posting; screws: from memory).
 */
export function endGrainWithdrawalFactor(fastener: WithdrawalFastener): number {
  if (fastener === 'lag-screw') return 0.75;
  throw new Refusal({
    field: 'end_grain',
    value: showValue(true),
    accepted: 'Nails and wood screws may not be pulled out of end grain: drive them into side grain.',
  });
}
