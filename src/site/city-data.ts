import { z } from 'zod';
import { plainWords } from './place-names.ts';

const cityDataSchema = z.object({
  schema: z.literal('cladwright-city-counties/1'),
  towns: z.array(z.tuple([z.string(), z.string(), z.string()])),
});

export type Town = {
  readonly key: string;
  readonly state: string;
  readonly town: string;
  readonly county: string;
};

let loaded: Promise<readonly Town[]> | undefined;

/** Well-known towns and the county each lies in: for suggestions only, from memory. */
export function loadTowns(): Promise<readonly Town[]> {
  loaded ??= import('./data/city-counties.json').then((file) =>
    cityDataSchema.parse(file.default).towns.map(([state, town, county]) => ({
      key: townKey(town),
      state,
      town,
      county,
    })),
  );
  return loaded;
}

/** "St. Paul" and "Saint Paul" fall together; unlike a county's key it keeps "City", which belongs to the name. */
export function townKey(town: string): string {
  return plainWords(town)
    .join('')
    .replace(/^saint/, 'st')
    .replace(/^fort/, 'ft');
}
