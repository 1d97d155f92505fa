import type { CodeEdition } from '../brief/brief.ts';
import { resolveSite } from './resolve-site.ts';

export type CountyClimate = {
  readonly climate_zone: string;
  readonly place: string;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * The county form of `calc climate`: the zone that the code's county table gives.
 *
 * @param edition  code edition whose table counts; the 2021 one unless said
 * @throws Refusal on `state` or `county` that is not in the table, with near names
 */
export async function climateOfCountyName(
  input: { readonly state: string; readonly county: string },
  edition: CodeEdition = '2021',
): Promise<CountyClimate> {
  const site = await resolveSite({ state: input.state, county: input.county }, edition, '');
  return {
    climate_zone: site.climate_zone,
    place: site.place,
    source: [site.zone_source, ...(site.climate ? [site.climate.source] : [])],
    notes: site.notes,
  };
}
