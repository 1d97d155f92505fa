import { Refusal, showValue } from '../base/refusal.ts';

/** @throws Refusal naming the option and its range */
export function readWholeNumber(
  text: string,
  field: string,
  least: number,
  most: number,
  example: number,
): number {
  const number = /^[0-9]{1,15}$/.test(text) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return number;
  throw new Refusal({
    field,
    value: showValue(text),
    accepted: `Give a whole number from ${least} to ${most}, for example ${example}.`,
  });
}

const MOST_RANKED = 20;

/** How many assemblies are to be ranked. @throws Refusal for anything but a whole number from 1 to 20 */
export function readTop(text: string): number {
  return readWholeNumber(text, '--top', 1, MOST_RANKED, 3);
}
