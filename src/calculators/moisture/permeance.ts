import { inRange, Refusal, showValue } from '../../base/refusal.ts';

/** Vapour permeability of still air in ISO 13788:2012, kg/(m·s·Pa). */
export const AIR_PERMEABILITY = 2e-10;

const GRAIN_KG = 64.79891e-6;
const FOOT_M = 0.3048;
const INCH_M = 0.0254;
/** One inch of mercury at 0 °C, Pa. */
const INCH_OF_MERCURY_PA = 3386.389;

/**
 * One US perm, 1 grain/(h·ft²·inHg), in kg/(s·m²·Pa): 5.7214e-11.
 * Source: computed from the definition (ASTM E96; mercury at 0 °C).
 */
export const PERM_KG_S_M2_PA = GRAIN_KG / 3600 / FOOT_M ** 2 / INCH_OF_MERCURY_PA;

const PERM_RANGE = { min: 1e-6, max: 1e6 } as const;

/**
 * Equivalent air layer thickness of a permeance: sd = 3.496 m / perm.
 *
 * @param perm  US perm, 0.000001 to 1 000 000; a perfect barrier (0) has no sd and is refused
 * @returns     sd, m
 * @throws Refusal outside the range
 *
 * Source: sd = air permeability / permeance, ISO 13788:2012 (2.0e-10 kg/(m·s·Pa) for air).
 */
export function sdFromPerm(perm: number): number {
  inRange(perm, 'perm', PERM_RANGE.min, PERM_RANGE.max, 'a permeance in US perm');
  return AIR_PERMEABILITY / (perm * PERM_KG_S_M2_PA);
}

/**
 * Permeance of an equivalent air layer thickness, US perm. Inverse of {@link sdFromPerm}.
 *
 * @param sd_m  m, above 0 (0.000003 to 4 000 000)
 * @throws Refusal outside the range
 */
export function permFromSd(sd_m: number): number {
  inRange(sd_m, 'sd_m', 3e-6, 4e6, 'an equivalent air layer thickness in m');
  return AIR_PERMEABILITY / (sd_m * PERM_KG_S_M2_PA);
}

/**
 * Permeance of a homogeneous layer, US perm.
 *
 * @param permeability_perm_in  permeability, perm·in
 * @param thickness_in          in., above 0
 * @throws Refusal outside 0 to 1 000 000 perm·in or 0.0001 to 100 in.
 */
export function permFromPermeability(permeability_perm_in: number, thickness_in: number): number {
  inRange(permeability_perm_in, 'permeability_perm_in', 0, PERM_RANGE.max, 'a permeability in perm·in');
  inRange(thickness_in, 'thickness_in', 1e-4, 100, 'a thickness in inches');
  return permeability_perm_in / thickness_in;
}

/**
 * Permeance of layers one behind the other: the vapour resistances 1/perm add up. One perfect barrier makes it 0.
 *
 * @param perms  permeance of each layer, US perm, 0 or more; at least one
 * @returns      US perm
 * @throws Refusal for no layer or a negative or endless figure
 *
 * Source: series resistance, as in ASHRAE Handbook Fundamentals ch. 26 (recalled).
 */
export function permFromLayers(perms: readonly number[]): number {
  if (perms.length === 0) {
    throw new Refusal({ field: 'perms', value: showValue(perms), accepted: 'Give at least one layer.' });
  }
  let resistance = 0;
  for (const [index, perm] of perms.entries()) {
    // Runs for thousands of walls: the name of the field is put together only where it is needed.
    if (!(perm >= 0 && perm <= PERM_RANGE.max)) {
      inRange(perm, `perms[${index}]`, 0, PERM_RANGE.max, 'a permeance in US perm');
    }
    resistance += 1 / perm;
  }
  return 1 / resistance;
}

/** US perm to ng/(s·m²·Pa), the unit of Canadian codes. */
export function ngFromPerm(perm: number): number {
  return inRange(perm, 'perm', 0, PERM_RANGE.max, 'a permeance in US perm') * PERM_KG_S_M2_PA * 1e12;
}

/** ng/(s·m²·Pa) to US perm. */
export function permFromNg(permeance_ng: number): number {
  inRange(permeance_ng, 'permeance_ng', 0, 6e7, 'a permeance in ng/(s·m²·Pa)');
  return permeance_ng / (PERM_KG_S_M2_PA * 1e12);
}

/**
 * Vapour resistance factor (mu) of a permeability: 137.6 / (perm·in).
 *
 * @param permeability_perm_in  perm·in, 0.000001 to 1 000 000
 * @returns                     mu, without unit
 * @throws Refusal outside the range
 */
export function muFromPermeability(permeability_perm_in: number): number {
  inRange(permeability_perm_in, 'permeability_perm_in', PERM_RANGE.min, PERM_RANGE.max, 'perm·in');
  return AIR_PERMEABILITY / (permeability_perm_in * PERM_KG_S_M2_PA * INCH_M);
}
