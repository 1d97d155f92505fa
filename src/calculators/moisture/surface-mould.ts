import { inRange, Refusal, showValue } from '../../base/refusal.ts';
import { dewPoint, vapourPressure } from './psychrometrics.ts';

/**
 * Temperature factor of an inside surface: 1 is as warm as the room, 0 as cold as outdoors.
 *
 * @param surface_temp_c, inside_temp_c, outside_temp_c  °C; inside must be warmer than outside
 * @returns  fRsi, without unit
 * @throws Refusal when the two air temperatures are equal or reversed
 *
 * Source: ISO 13788:2012, clause 5: fRsi = (θsi - θe)/(θi - θe).
 */
export function temperatureFactor(
  surface_temp_c: number,
  inside_temp_c: number,
  outside_temp_c: number,
): number {
  if (!(inside_temp_c > outside_temp_c)) {
    throw new Refusal({
      field: 'inside_temp_c',
      value: showValue(inside_temp_c),
      accepted: 'Give an indoor temperature above the outdoor temperature.',
    });
  }
  return (surface_temp_c - outside_temp_c) / (inside_temp_c - outside_temp_c);
}

/**
 * Temperature factor of a plane wall away from edges: 1 - U·Rsi.
 *
 * @param u_w_m2k   transmittance worked with this same Rsi, W/(m²·K), 0 to 1/Rsi
 * @param rsi_m2kw  0.25 m²·K/W for mould, 0.13 for glazing and frames
 * @returns         fRsi
 * @throws Refusal outside the ranges
 *
 * Source: ISO 13788:2012, clause 5.
 */
export function temperatureFactorFromU(u_w_m2k: number, rsi_m2kw: number): number {
  inRange(rsi_m2kw, 'rsi_m2kw', 0.01, 1, 'an inside surface resistance in m²·K/W');
  inRange(u_w_m2k, 'u_w_m2k', 0, 1 / rsi_m2kw, 'a transmittance in W/(m²·K)');
  return 1 - u_w_m2k * rsi_m2kw;
}

/** Indoor and outdoor air of a month. */
export type MonthlyAir = {
  readonly inside_temp_c: number;
  readonly inside_pa: number;
  readonly outside_temp_c: number;
};

export type RequiredTemperatureFactor = {
  /** The largest need of the year; null when no month is heated. */
  readonly required: number | null;
  /** Index of the critical month. */
  readonly critical_index: number | null;
  /** Need by month; null where the room is not warmer than outdoors or its air is bone dry. */
  readonly by_month: readonly (number | null)[];
};

/**
 * Temperature factor a surface needs so that its humidity stays at or below a critical value.
 *
 * @param months       indoor °C and Pa, outdoor °C
 * @param critical_rh  share, 0.8 against mould; 1 against condensation on glass
 * @returns            the need of each month and of the critical one; above 1 no surface can do it
 * @throws Refusal for a critical humidity outside 0.5 to 1
 *
 * Source: ISO 13788:2012, clause 5: psat(θsi,min) = pi/0.8, the month with the largest need is critical.
 */
export function requiredTemperatureFactor(
  months: readonly MonthlyAir[],
  critical_rh: number,
): RequiredTemperatureFactor {
  inRange(critical_rh, 'critical_rh', 0.5, 1, 'a surface humidity as a share');
  const by_month = months.map((month) => {
    if (month.inside_temp_c <= month.outside_temp_c || month.inside_pa < 2) return null;
    const needed_c = dewPoint(month.inside_pa / critical_rh);
    return temperatureFactor(needed_c, month.inside_temp_c, month.outside_temp_c);
  });
  let required: number | null = null;
  let critical_index: number | null = null;
  for (const [index, need] of by_month.entries()) {
    if (need !== null && (required === null || need > required)) {
      required = need;
      critical_index = index;
    }
  }
  return { required, critical_index, by_month };
}

/**
 * Relative humidity at an inside surface, a share; above 1 it condenses.
 *
 * @param inside_temp_c, outside_temp_c  °C
 * @param inside_rh  share, 0 to 1
 * @param factor     fRsi of the surface, 0 to 1
 * @throws Refusal outside the ranges
 *
 * Source: ISO 13788:2012, clause 5.
 */
export function surfaceHumidity(
  inside_temp_c: number,
  outside_temp_c: number,
  inside_rh: number,
  factor: number,
): number {
  inRange(factor, 'factor', 0, 1, 'a temperature factor');
  const surface_temp_c = outside_temp_c + factor * (inside_temp_c - outside_temp_c);
  return vapourPressure(inside_temp_c, inside_rh) / vapourPressure(surface_temp_c, 1);
}
