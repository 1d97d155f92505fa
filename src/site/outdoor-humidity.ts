/**
 * Outdoor relative humidity as the moisture calculation needs it. Weather services report it over liquid water also
 * below freezing; ISO 13788 takes the saturation pressure over ice there. The same air has a higher relative humidity
 * over ice: about 1.10 times at -10 °C, 1.21 times at -20 °C.
 *
 * @param temp_c            monthly mean temperature, °C
 * @param rh_over_water     0 to 1
 * @returns                 0 to 1; a month that would come out above saturation is held at 1 (`isCapped`)
 *
 * Source: saturation pressures 610.5 exp(17.269 t / (237.3 + t)) over water and
 * 610.5 exp(21.875 t / (265.5 + t)) over ice, ISO 13788:2012 annex E (from memory).
 * Known limit: a month's mean of hourly humidities times the saturation pressure at its mean temperature is not
 * exactly its mean vapour pressure. Against hourly typical years of 157 stations: 0.3 % high in the median
 * station-month, from 14 % low to 10 % high in nine of ten.
 */
export function outdoorHumidity(temp_c: number, rh_over_water: number): { rh: number; isCapped: boolean } {
  if (temp_c >= 0) return { rh: rh_over_water, isCapped: false };
  const overWater = Math.exp((17.269 * temp_c) / (237.3 + temp_c));
  const overIce = Math.exp((21.875 * temp_c) / (265.5 + temp_c));
  const rh = (rh_over_water * overWater) / overIce;
  return rh > 1 ? { rh: 1, isCapped: true } : { rh, isCapped: false };
}
