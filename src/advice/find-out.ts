import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import findOutJson from './data/find-out.json' with { type: 'json' };
import type { ToFindOut } from './ranking-schema.ts';
import { byEffect, type Reading } from './readings.ts';
import { round } from './rounded.ts';
import { buildTitle } from './titles.ts';

const findOutSchema = z.strictObject({
  schema: z.literal('cladwright-find-out/1'),
  source: z.string().min(3),
  ways: z.array(z.strictObject({ field: z.string().min(1), how: z.string().min(5) })).min(1),
});

let ways: ReadonlyMap<string, string> | undefined;

/** How to settle an open field on site or by asking; what is known of no field is said so in general. */
export function howToFindOut(field: string): string {
  ways ??= new Map(
    parseInput(findOutSchema, findOutJson, 'find-out.json').ways.map(({ field: one, how }) => [one, how]),
  );
  return ways.get(field.replace(/\[\d+\]/, '')) ?? 'Look, measure or ask whoever knows the building.';
}

/**
 * What to find out before anything else: the assumptions of which another reading changes the first choice, each with
 * the reading that costs most, most telling first.
 *
 * The effect of a reading is what is lost by building the assumed first choice where the reading holds: the wall no
 * longer passes, or its score lies so far behind the best one's.
 */
export function findOutFirst(readings: readonly Reading[]): ToFindOut[] {
  const worst = new Map<string, Reading>();
  for (const reading of [...readings].sort(byEffect))
    if (!worst.has(reading.field)) worst.set(reading.field, reading);
  return [...worst.values()].map((reading) => ({
    field: reading.field,
    why: reading.why,
    how: howToFindOut(reading.field),
    effect: {
      still_passes: reading.stillPasses,
      score_loss: reading.loss === null ? null : round(reading.loss, 4),
      words: effectWords(reading),
    },
  }));
}

function effectWords({ label, winner, stillPasses, loss }: Reading): string {
  const best = winner
    ? `${winner.candidate.cladding.label} over ${buildTitle(winner.candidate.build)}`
    : null;
  if (!best) return `If ${label}, nothing on the list passes any more.`;
  if (!stillPasses) return `If ${label}, the first choice breaks a rule; ${best} would be first.`;
  const behind = (loss ?? 0) < 0.0005 ? 'hardly less' : `${(loss ?? 0).toFixed(3)} less`;
  return `If ${label}, the first choice still passes but scores ${behind} than ${best}.`;
}
