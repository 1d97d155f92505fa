/** 1 h·ft²·°F/Btu in m²·K/W, from 1 ft = 0.3048 m, 1 Btu = 1055.05585262 J (international table), 1 °F = 5/9 K. */
export const M2KW_PER_US_R = (0.3048 ** 2 * 3600 * (5 / 9)) / 1055.05585262;

/** Thermal resistance, h·ft²·°F/Btu to m²·K/W. */
export function resistanceToSi(r: number): number {
  return r * M2KW_PER_US_R;
}

/** Thermal resistance, m²·K/W to h·ft²·°F/Btu. */
export function resistanceToUs(r_m2kw: number): number {
  return r_m2kw / M2KW_PER_US_R;
}

/** Thermal transmittance, Btu/(h·ft²·°F) to W/(m²·K). */
export function transmittanceToSi(u_factor: number): number {
  return u_factor / M2KW_PER_US_R;
}

/** Thermal transmittance, W/(m²·K) to Btu/(h·ft²·°F). */
export function transmittanceToUs(u_w_m2k: number): number {
  return u_w_m2k * M2KW_PER_US_R;
}

const FT2_PER_M2 = 1 / 0.3048 ** 2;
const FT_PER_M = 1 / 0.3048;

/** Point thermal transmittance of one fastener, W/K to Btu/(h·°F). */
export function pointTransmittanceToUs(chi_w_k: number): number {
  return transmittanceToUs(chi_w_k) * FT2_PER_M2;
}

/** Point thermal transmittance of one fastener, Btu/(h·°F) to W/K. */
export function pointTransmittanceToSi(chi_btu_h_f: number): number {
  return transmittanceToSi(chi_btu_h_f) / FT2_PER_M2;
}

/** Linear thermal transmittance, W/(m·K) to Btu/(h·ft·°F). */
export function linearTransmittanceToUs(psi_w_mk: number): number {
  return transmittanceToUs(psi_w_mk) * (FT2_PER_M2 / FT_PER_M);
}

/** Linear thermal transmittance, Btu/(h·ft·°F) to W/(m·K). */
export function linearTransmittanceToSi(psi_btu_h_ft_f: number): number {
  return transmittanceToSi(psi_btu_h_ft_f) * (FT_PER_M / FT2_PER_M2);
}

const M_PER_IN = 0.0254;

/** Resistance of one inch, h·ft²·°F/Btu, of a material of this conductivity, W/(m·K); above 0. */
export function rPerInch(conductivity_w_mk: number): number {
  return resistanceToUs(M_PER_IN / conductivity_w_mk);
}

/** Conductivity, W/(m·K), of a material by the resistance of one inch, h·ft²·°F/Btu; above 0. */
export function conductivityFromRPerInch(r_per_in: number): number {
  return M_PER_IN / resistanceToSi(r_per_in);
}

/** 1 lb/ft³ in kg/m³, from 1 lb = 0.45359237 kg and 1 ft = 0.3048 m. */
const KG_M3_PER_PCF = 0.45359237 / 0.3048 ** 3;

/** Density, kg/m³ to lb/ft³. */
export function densityToUs(density_kg_m3: number): number {
  return density_kg_m3 / KG_M3_PER_PCF;
}

/** Density, lb/ft³ to kg/m³. */
export function densityToSi(density_pcf: number): number {
  return density_pcf * KG_M3_PER_PCF;
}

/** Temperature, °C to °F. */
export function celsiusToFahrenheit(temp_c: number): number {
  return (temp_c * 9) / 5 + 32;
}

/** Temperature, °F to °C. */
export function fahrenheitToCelsius(temp_f: number): number {
  return ((temp_f - 32) * 5) / 9;
}
