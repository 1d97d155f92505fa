/** Rounded to so many decimals. */
export function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

/** The same; what is not known stays unknown. */
export function roundOrNull(value: number | null, digits: number): number | null {
  return value === null ? null : round(value, digits);
}
