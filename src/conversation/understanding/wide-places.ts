import { z } from 'zod';
import { parseInput } from '../../base/parse-input.ts';
import { provenanceSchema } from '../../base/provenance.ts';
import dataJson from '../data/wide-places.json' with { type: 'json' };
import { stateCalled } from './states.ts';

const names = z.array(z.string().regex(/^[a-z -]+$/)).min(1);

export const widePlacesSchema = z.strictObject({
  schema: z.literal('cladwright-wide-places/1'),
  source: z.string().min(5),
  provenance: provenanceSchema,
  /** Words before a state or a region that make no place of it. */
  parts: names,
  /** Parts of the country. */
  regions: names,
  /** Countries, and what is mostly meant of another country. */
  abroad: names,
});
type WidePlaces = z.output<typeof widePlacesSchema>;

let loaded: WidePlaces | undefined;

function widePlaces(): WidePlaces {
  loaded ??= parseInput(widePlacesSchema, dataJson, 'wide-places.json');
  return loaded;
}

/** A place too wide for one climate, or outside the tables; the name as it is to be called. */
export type WidePlace = { readonly kind: 'state' | 'region' | 'abroad'; readonly name: string };

const LEAD_IN =
  /^(?:(?:i'?m|i am|we'?re|we are|it'?s|it is|i live|we live|somewhere|anywhere|in|near|the) )+/i;

/** What a place that was named is too wide for, or outside of; null for what may be a county or a town. */
export function widePlace(text: string): WidePlace | null {
  const said = text
    .trim()
    .replace(/[.!?]+$/, '')
    .replace(LEAD_IN, '');
  const { parts, regions, abroad } = widePlaces();
  const names = [said.toLowerCase(), ...withoutParts(said.toLowerCase(), parts)];
  const state = names.map(stateCalled).find((one) => one !== null);
  // The capital is a county of its own.
  if (state && state !== 'District of Columbia') return { kind: 'state', name: state };
  if (names.some((name) => regions.includes(name))) return { kind: 'region', name: said };
  const country = said.toLowerCase().split(/,\s*/).at(-1) ?? '';
  return [country, ...names].some((name) => abroad.includes(name)) ? { kind: 'abroad', name: said } : null;
}

/** "western north carolina" without its first part, without its first two, …; the state may begin with one itself. */
function withoutParts(lower: string, parts: readonly string[]): string[] {
  const pattern = new RegExp(`^(?:${parts.join('|')})[- ]+(?:part of |half of )?(?=\\S)`);
  const rest = lower.replace(pattern, '');
  return rest === lower ? [] : [rest, ...withoutParts(rest, parts)];
}
