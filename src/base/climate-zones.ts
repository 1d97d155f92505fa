/** The climate zones of the energy codes (ASHRAE 169): number, and moisture letter where there is one. */
export const CLIMATE_ZONES = [
  '0A',
  '0B',
  '1A',
  '1B',
  '2A',
  '2B',
  '3A',
  '3B',
  '3C',
  '4A',
  '4B',
  '4C',
  '5A',
  '5B',
  '5C',
  '6A',
  '6B',
  '7',
  '8',
] as const;
export type ClimateZone = (typeof CLIMATE_ZONES)[number];
