import { describe, expect, it } from 'vitest';
import { CLIMATE_ZONES } from '../../src/base/climate-zones.ts';
import { ZONE_EXAMPLES } from '../../src/conversation/zone-examples.ts';
import { findCounty } from '../../src/site/county-lookup.ts';

describe('the cities named for the climate zones', () => {
  // County table of the 2021 edition (national-laboratory data).
  it.each(ZONE_EXAMPLES)('$city lies in zone $zone', async ({ zone, county, state }) => {
    expect((await findCounty(state, county)).county.zone_2021).toBe(zone);
  });

  it('cover the zones of the states, the warmest islands and 5C aside', () => {
    const named = ZONE_EXAMPLES.map(({ zone }) => zone as string);
    expect(CLIMATE_ZONES.filter((zone) => !named.includes(zone))).toEqual(['0A', '0B', '1B', '5C']);
  });
});
