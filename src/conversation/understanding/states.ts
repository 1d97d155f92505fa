/** Postal codes of the states and the capital district (US Postal Service, Publication 28). */
const STATES: Readonly<Record<string, string>> = {
  AL: 'alabama',
  AK: 'alaska',
  AZ: 'arizona',
  AR: 'arkansas',
  CA: 'california',
  CO: 'colorado',
  CT: 'connecticut',
  DE: 'delaware',
  DC: 'district of columbia',
  FL: 'florida',
  GA: 'georgia',
  HI: 'hawaii',
  ID: 'idaho',
  IL: 'illinois',
  IN: 'indiana',
  IA: 'iowa',
  KS: 'kansas',
  KY: 'kentucky',
  LA: 'louisiana',
  ME: 'maine',
  MD: 'maryland',
  MA: 'massachusetts',
  MI: 'michigan',
  MN: 'minnesota',
  MS: 'mississippi',
  MO: 'missouri',
  MT: 'montana',
  NE: 'nebraska',
  NV: 'nevada',
  NH: 'new hampshire',
  NJ: 'new jersey',
  NM: 'new mexico',
  NY: 'new york',
  NC: 'north carolina',
  ND: 'north dakota',
  OH: 'ohio',
  OK: 'oklahoma',
  OR: 'oregon',
  PA: 'pennsylvania',
  RI: 'rhode island',
  SC: 'south carolina',
  SD: 'south dakota',
  TN: 'tennessee',
  TX: 'texas',
  UT: 'utah',
  VT: 'vermont',
  VA: 'virginia',
  WA: 'washington',
  WV: 'west virginia',
  WI: 'wisconsin',
  WY: 'wyoming',
};

export const STATE_NAMES: readonly string[] = Object.values(STATES);

/** The state whose code or whole name this is, its name with capitals; null for anything else. */
export function stateCalled(text: string): string | null {
  const said = text.trim().toLowerCase();
  const name = STATES[said.toUpperCase()] ?? STATE_NAMES.find((one) => one === said);
  return name?.replace(/(?<![\p{L}])(?!of\b)\p{L}/gu, (letter) => letter.toUpperCase()) ?? null;
}

export function isStateCode(text: string): boolean {
  return Object.hasOwn(STATES, text.toUpperCase());
}
