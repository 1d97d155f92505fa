import type { Price } from '../assembly/catalogue-schema.ts';
import { fasteningPractice } from './schedule/fastening-practice.ts';

/** A figure with its ends; here minutes or hours of one person. */
export type Spread = Price;

/** Which of the stated minutes a line of the schedule takes. */
export type FasteningWork = 'screw' | 'lag-screw' | 'nail' | 'tack' | 'tie';

/** Screws up to here are short, up to `MIDDLE_IN` middling; prices and minutes step at the same lengths. */
const SHORT_IN = 4;
const MIDDLE_IN = 6;

/** The entry for a fastener of this length. */
export function byLength<T>(
  length_in: number,
  of: { readonly short: T; readonly middle: T; readonly long: T },
): T {
  if (length_in <= SHORT_IN) return of.short;
  return length_in <= MIDDLE_IN ? of.middle : of.long;
}

/** One person's minutes for one fastener. */
export function minutesEach(work: FasteningWork, length_in: number | null): Spread {
  const { minutes_each } = fasteningPractice();
  if (work === 'nail' || work === 'tack' || work === 'tie') return minutes_each[work];
  const driving = byLength(length_in ?? Number.POSITIVE_INFINITY, {
    short: minutes_each.screw_up_to_4_in,
    middle: minutes_each.screw_up_to_6_in,
    long: minutes_each.longer_screw,
  });
  return work === 'screw' ? driving : eachEnd((end) => driving[end] + minutes_each.lag_holes[end]);
}

/** The same of every end. */
export function eachEnd(of: (end: keyof Spread) => number): Spread {
  return { low: of('low'), likely: of('likely'), high: of('high') };
}
