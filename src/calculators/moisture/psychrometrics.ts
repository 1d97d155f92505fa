import { inRange } from '../../base/refusal.ts';

/** Temperatures for which the saturation formula is used here. Below -40 °C it is more than 2 % low. */
export const TEMP_RANGE_C = { min: -60, max: 80 } as const;

const DEW_POINT_RANGE_PA = { min: 1, max: 47_600 } as const;
const PRESSURE_AT_ZERO_PA = 610.5;
const OVER_WATER = { slope: 17.269, offset_c: 237.3 } as const;
const OVER_ICE = { slope: 21.875, offset_c: 265.5 } as const;
/** Gas constant of water vapour, J/(kg·K). */
const VAPOUR_GAS_CONSTANT = 461.5;
const ZERO_CELSIUS_K = 273.15;

/**
 * Saturation vapour pressure: over water from 0 °C up, over ice below.
 *
 * @param temp_c  air or surface temperature, °C, -60 to 80
 * @returns       pressure, Pa
 * @throws Refusal outside the range
 *
 * Source: ISO 13788:2012, annex E (exponents seen in many open meteorological codes of the 1967 formula; the
 * leading 610.5 from memory). Below 0 °C a public copy prints 267.5 instead of 265.5: 265.5 is right, it is
 * 273.16 - 7.66 of the 1967 formula.
 * Accuracy against the ASHRAE equations: 0.25 % from -10 to 50 °C, 0.6 % at -20 °C, 2 % at -40 °C.
 */
export function saturationPressure(temp_c: number): number {
  inRange(temp_c, 'temp_c', TEMP_RANGE_C.min, TEMP_RANGE_C.max, 'a temperature in °C');
  return magnus(temp_c, temp_c >= 0 ? OVER_WATER : OVER_ICE);
}

/**
 * Saturation vapour pressure over liquid water, also below freezing.
 * Weather records give relative humidity over liquid water at all temperatures; at -20 °C that is 21 % more
 * than over ice, so their humidity must be turned into a pressure with this function.
 *
 * @param temp_c  °C, -60 to 80
 * @returns       pressure, Pa
 * @throws Refusal outside the range
 *
 * Source: the water branch of ISO 13788:2012 annex E, carried below 0 °C as meteorological services do.
 */
export function saturationPressureOverWater(temp_c: number): number {
  inRange(temp_c, 'temp_c', TEMP_RANGE_C.min, TEMP_RANGE_C.max, 'a temperature in °C');
  return magnus(temp_c, OVER_WATER);
}

/**
 * Dew point of a vapour pressure; below 610.5 Pa it is the frost point. Exact inverse of {@link saturationPressure}.
 *
 * @param vapour_pa  vapour pressure, Pa, 1 to 47 600: the saturation pressures of -60 and 80 °C, rounded outward
 * @returns          °C
 * @throws Refusal outside the range; nought has no dew point
 *
 * Source: ISO 13788:2012, annex E, inverse formulas.
 */
export function dewPoint(vapour_pa: number): number {
  inRange(vapour_pa, 'vapour_pa', DEW_POINT_RANGE_PA.min, DEW_POINT_RANGE_PA.max, 'a vapour pressure in Pa');
  return inverseMagnus(vapour_pa, vapour_pa >= PRESSURE_AT_ZERO_PA ? OVER_WATER : OVER_ICE);
}

/**
 * Vapour pressure of air.
 *
 * @param temp_c  °C, -60 to 80
 * @param rh      relative humidity as a share, 0 to 1; below 0 °C over ice
 * @returns       Pa
 * @throws Refusal outside the ranges
 */
export function vapourPressure(temp_c: number, rh: number): number {
  inRange(rh, 'rh', 0, 1, 'relative humidity as a share');
  return rh * saturationPressure(temp_c);
}

/**
 * Vapour pressure from a weather record's relative humidity, which is over liquid water at every temperature.
 * In hard frost the result can lie above saturation over ice; the caller caps it there and says so.
 *
 * @param temp_c  °C, -60 to 80
 * @param rh      share, 0 to 1, over liquid water
 * @returns       Pa
 * @throws Refusal outside the ranges
 */
export function vapourPressureOfWeather(temp_c: number, rh: number): number {
  inRange(rh, 'rh', 0, 1, 'relative humidity as a share');
  return rh * saturationPressureOverWater(temp_c);
}

/**
 * Relative humidity, a share; above 1 when the pressure is above saturation.
 *
 * @param temp_c     °C, -60 to 80
 * @param vapour_pa  Pa, 0 or more
 * @throws Refusal outside the ranges
 */
export function relativeHumidity(temp_c: number, vapour_pa: number): number {
  inRange(vapour_pa, 'vapour_pa', 0, 101_325, 'a vapour pressure in Pa');
  return vapour_pa / saturationPressure(temp_c);
}

/**
 * Dew point (frost point below freezing) of air at a temperature and humidity.
 *
 * @param temp_c  °C, -60 to 80
 * @param rh      share, above 0 up to 1
 * @returns       °C
 * @throws Refusal outside the ranges, and for air so dry that its dew point lies below -60 °C
 */
export function dewPointOfAir(temp_c: number, rh: number): number {
  return dewPoint(vapourPressure(temp_c, rh));
}

/**
 * Water vapour in a cubic metre of air.
 *
 * @param temp_c     °C, -60 to 80
 * @param vapour_pa  Pa, 0 or more
 * @returns          g/m³
 * @throws Refusal outside the ranges
 *
 * Source: ideal gas law with 461.5 J/(kg·K).
 */
export function vapourConcentration(temp_c: number, vapour_pa: number): number {
  inRange(temp_c, 'temp_c', TEMP_RANGE_C.min, TEMP_RANGE_C.max, 'a temperature in °C');
  inRange(vapour_pa, 'vapour_pa', 0, 101_325, 'a vapour pressure in Pa');
  return (1000 * vapour_pa) / (VAPOUR_GAS_CONSTANT * (temp_c + ZERO_CELSIUS_K));
}

type Branch = { readonly slope: number; readonly offset_c: number };

function magnus(temp_c: number, branch: Branch): number {
  return PRESSURE_AT_ZERO_PA * Math.exp((branch.slope * temp_c) / (branch.offset_c + temp_c));
}

function inverseMagnus(vapour_pa: number, branch: Branch): number {
  const ratio = Math.log(vapour_pa / PRESSURE_AT_ZERO_PA);
  return (branch.offset_c * ratio) / (branch.slope - ratio);
}
