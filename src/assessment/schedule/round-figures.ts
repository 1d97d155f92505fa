/** The same value with every number in it rounded: sums of sixteenths leave binary noise behind. */
export function roundFigures<T>(value: T, decimals: number): T {
  return rounded(value, decimals) as T;
}

function rounded(value: unknown, decimals: number): unknown {
  if (typeof value === 'number') return Number(value.toFixed(decimals));
  if (Array.isArray(value)) return value.map((inner) => rounded(inner, decimals));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, rounded(inner, decimals)]));
}
