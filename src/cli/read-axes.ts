import { CLIMATE_ZONES } from '../base/climate-zones.ts';
import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { CODE_EDITIONS, FINISHES } from '../brief/scenario.ts';
import { budgetSchema, withinSchema } from '../firm/firm-file.ts';
import { readFraming } from '../firm/framing-text.ts';
import type { Axes } from '../firm/matrix-plan.ts';
import { didYouMean } from '../rulebook/nearest-name.ts';

export type AxisFlags = {
  readonly zones?: string;
  readonly framings?: string;
  readonly finishes?: string;
  readonly budgets?: string;
  readonly within?: string;
  readonly edition?: string;
};

/** @throws Refusal naming the option, the value and what would be accepted */
export function readAxes({ zones, framings, finishes, budgets, within, edition }: AxisFlags): Axes {
  return {
    ...(zones === undefined ? {} : { places: onceEach(words(zones, '--zones').map(readZone)) }),
    ...(framings === undefined
      ? {}
      : { framings: words(framings, '--framings').map((word) => readFraming(word, '--framings')) }),
    ...(finishes === undefined
      ? {}
      : { finishes: words(finishes, '--finishes').map((word) => oneOf(word, FINISHES, '--finishes')) }),
    ...(budgets === undefined ? {} : { budgets: words(budgets, '--budgets').map(readBudget) }),
    ...(within === undefined
      ? {}
      : { within_score: parseInput(withinSchema, plainNumber(within), '--within') }),
    ...(edition === undefined ? {} : { edition: readEdition(edition, '--edition') }),
  };
}

/** @throws Refusal for an edition that there are no rules for */
export function readEdition(text: string, field: string): (typeof CODE_EDITIONS)[number] {
  return oneOf(text, CODE_EDITIONS, field);
}

function words(text: string, field: string): string[] {
  const list = text.split(',').map((word) => word.trim());
  if (list.every((word) => word !== '')) return list;
  throw new Refusal({
    field,
    value: showValue(text),
    accepted: 'Give values with commas between them, none empty.',
  });
}

function readZone(word: string) {
  return { climate_zone: oneOf(word.toUpperCase(), CLIMATE_ZONES, '--zones', word) };
}

/** In the file it is the list of places that would be named. */
function onceEach<T extends { readonly climate_zone: string }>(places: readonly T[]): readonly T[] {
  const double = places.find(
    ({ climate_zone }, i) => places.findIndex((one) => one.climate_zone === climate_zone) !== i,
  );
  if (double === undefined) return places;
  throw new Refusal({
    field: '--zones',
    value: showValue(double.climate_zone),
    accepted: 'Give each zone once; this one stands twice.',
  });
}

function readBudget(word: string): number | null {
  if (word.toLowerCase() === 'none') return null;
  return parseInput(budgetSchema, plainNumber(word.replace(/^\$/, '')), '--budgets');
}

/** A decimal number as somebody writes it; the word itself where it is none, for the message. */
function plainNumber(word: string): unknown {
  return /^\d+(?:\.\d+)?$/.test(word) ? Number(word) : word;
}

function oneOf<T extends string>(word: string, known: readonly T[], field: string, given = word): T {
  const found = known.find((value) => value === word);
  if (found !== undefined) return found;
  throw new Refusal({
    field,
    value: showValue(given),
    // Years and zones are all alike, so that nearness says nothing.
    accepted: `Give any of ${known.join(', ')}.${/\d/.test(word) ? '' : didYouMean(word, known)}`,
  });
}
