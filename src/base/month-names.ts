const NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Name of a month, 1 to 12; any other number is shown as it stands. */
export function monthName(month: number): string {
  return NAMES[month - 1] ?? `${month}`;
}

/** "Jan" */
export function monthShort(month: number): string {
  return monthName(month).slice(0, 3);
}
