import type { WallFigures } from './firm-schema.ts';

/** Share of cells in whole percent; all and none are said only when they are meant. */
export function shareText(part: number, whole: number): string {
  if (whole === 0 || part === 0) return '0 %';
  if (part === whole) return '100 %';
  return `${Math.min(99, Math.max(1, Math.round((100 * part) / whole)))} %`;
}

/** By how much a wall stays below the highest U-factor allowed: "+12 %"; "by R-value" where an option is met instead. */
export function marginText({ u_margin_percent, energy_route }: WallFigures): string {
  if (u_margin_percent === null) return energy_route === 'r-value' ? 'by R-value' : 'no limit';
  if (u_margin_percent < 0 && energy_route === 'r-value') return 'by R-value';
  return `${u_margin_percent < 0 ? '' : '+'}${Math.round(u_margin_percent)} %`.replace('+-0', '+0');
}

const NUMBERS = [
  'No',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
];

/** "three" */
export function countWord(count: number): string {
  return (NUMBERS[count] ?? `${count}`).toLowerCase();
}

/** "Four assemblies", "One assembly" */
export function assembliesText(count: number): string {
  return `${NUMBERS[count] ?? count} ${count === 1 ? 'assembly' : 'assemblies'}`;
}

/** "1 cell", "22 cells" */
export function cellsText(count: number): string {
  return `${count} ${count === 1 ? 'cell' : 'cells'}`;
}

const FINISH_WORDS: Readonly<Record<string, string>> = {
  'cement-stucco': 'cement stucco only',
  'stucco-look': 'the look of stucco',
  any: 'any finish',
};

export function finishText(finish: string): string {
  return FINISH_WORDS[finish] ?? finish;
}

export function budgetText(usd: number | null): string {
  return usd === null ? 'no limit of cost' : `$${usd} a square foot`;
}
