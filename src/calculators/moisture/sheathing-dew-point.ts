import { inRange, Refusal, showValue } from '../../base/refusal.ts';
import { dewPointOfAir } from './psychrometrics.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from './units.ts';

export type SheathingInput = {
  /** From indoor air to the inner face of the sheathing along the cavity path, film included, h·ft²·°F/Btu. */
  readonly r_inside_of_sheathing: number;
  /** Air to air along the same path, h·ft²·°F/Btu. */
  readonly r_total: number;
  /** Mean of the three coldest months, °F; null when the climate is not known. */
  readonly winter_mean_temp_f: number | null;
};

/** Indoor air of the check, for example 70 °F and 0.35; from the moisture table, with its provenance. */
export type IndoorWinter = { readonly temp_f: number; readonly rh: number };

export type SheathingDewPoint = {
  /** At the inner face of the sheathing, °F. */
  readonly sheathing_temp_f: number | null;
  readonly indoor_dew_point_f: number;
  /** Sheathing above (+) or below (-) the indoor dew point, °F. */
  readonly dew_point_margin_f: number | null;
  /** Share of the resistance that lies outside the inner face of the sheathing. */
  readonly exterior_r_share: number;
  /** Share that puts the sheathing just at the dew point; 0 where the winter is warmer than that anyway. */
  readonly min_exterior_r_share: number | null;
};

/**
 * Winter check of the sheathing against the indoor dew point: would leaking room air wet it?
 *
 * The margin is not negative exactly when `exterior_r_share` reaches `min_exterior_r_share`, because both count
 * everything outside the inner face of the sheathing, films included.
 *
 * @param input   resistances (0 < r_inside_of_sheathing <= r_total <= 500) and winter mean (-60 to 100 °F or null)
 * @param indoor  50 to 90 °F, humidity 0.05 to 0.95
 * @returns       null where the climate is not known, never a pass
 * @throws Refusal outside the ranges
 *
 * Source: steady-state series resistance; the three coldest months and 70 °F / 35 % are the trade's usual
 * air-leakage check (from memory). Independent of any layer's permeance. Studs, air leakage and sun left out.
 */
export function sheathingDewPoint(input: SheathingInput, indoor: IndoorWinter): SheathingDewPoint {
  const { r_inside_of_sheathing, r_total, winter_mean_temp_f } = input;
  inRange(r_total, 'r_total', 0.01, 500, 'a resistance in h·ft²·°F/Btu');
  if (!(r_inside_of_sheathing > 0 && r_inside_of_sheathing <= r_total)) {
    throw new Refusal({
      field: 'r_inside_of_sheathing',
      value: showValue(r_inside_of_sheathing),
      accepted: `Give a resistance above 0 up to the total of ${r_total} h·ft²·°F/Btu.`,
    });
  }
  inRange(indoor.temp_f, 'indoor.temp_f', 50, 90, 'the indoor temperature in °F');
  inRange(indoor.rh, 'indoor.rh', 0.05, 0.95, 'the indoor relative humidity as a share');
  const indoor_dew_point_f = fahrenheitFromCelsius(
    dewPointOfAir(celsiusFromFahrenheit(indoor.temp_f), indoor.rh),
  );
  const exterior_r_share = (r_total - r_inside_of_sheathing) / r_total;
  if (winter_mean_temp_f === null) {
    return {
      sheathing_temp_f: null,
      indoor_dew_point_f,
      dew_point_margin_f: null,
      exterior_r_share,
      min_exterior_r_share: null,
    };
  }
  inRange(winter_mean_temp_f, 'winter_mean_temp_f', -60, 100, 'the winter mean temperature in °F');
  const sheathing_temp_f = winter_mean_temp_f + (indoor.temp_f - winter_mean_temp_f) * exterior_r_share;
  return {
    sheathing_temp_f,
    indoor_dew_point_f,
    dew_point_margin_f: sheathing_temp_f - indoor_dew_point_f,
    exterior_r_share,
    min_exterior_r_share:
      winter_mean_temp_f >= indoor_dew_point_f
        ? 0
        : (indoor_dew_point_f - winter_mean_temp_f) / (indoor.temp_f - winter_mean_temp_f),
  };
}

/**
 * Mean of the three coldest of twelve monthly means, °F or °C alike; null when any month is not known.
 *
 * @throws Refusal for anything but twelve months
 */
export function meanOfThreeColdest(monthly: readonly (number | null)[]): number | null {
  if (monthly.length !== 12) {
    throw new Refusal({
      field: 'monthly',
      value: `${monthly.length} months`,
      accepted: 'Give twelve monthly means.',
    });
  }
  const known = monthly.filter((t) => t !== null);
  if (known.length < 12) return null;
  const [a = 0, b = 0, c = 0] = known.sort((x, y) => x - y);
  return (a + b + c) / 3;
}
