/** One m²·K/W in h·ft²·°F/Btu. Source: exact from the international foot and the international-table Btu. */
export const R_US_PER_SI = 5.678263;

/** °F to °C. */
export function celsiusFromFahrenheit(temp_f: number): number {
  return (temp_f - 32) / 1.8;
}

/** °C to °F. */
export function fahrenheitFromCelsius(temp_c: number): number {
  return temp_c * 1.8 + 32;
}

/** Thermal resistance from h·ft²·°F/Btu to m²·K/W. */
export function rSiFromUs(r: number): number {
  return r / R_US_PER_SI;
}

/** Thermal resistance from m²·K/W to h·ft²·°F/Btu. */
export function rUsFromSi(r_m2kw: number): number {
  return r_m2kw * R_US_PER_SI;
}
