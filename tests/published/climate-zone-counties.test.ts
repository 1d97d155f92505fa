import { describe, expect, it } from 'vitest';
import { loadCounties } from '../../src/site/county-data.ts';
import { findCounty } from '../../src/site/county-lookup.ts';

// US Department of Energy, Commercial Reference Buildings: the representative city of each zone of the map that stood
// from 2003 to the 2018 edition (public list), here by its county.
const REFERENCE_CITIES: readonly (readonly [string, string, string])[] = [
  ['FL', 'Miami-Dade', '1A'],
  ['TX', 'Harris', '2A'],
  ['AZ', 'Maricopa', '2B'],
  ['GA', 'Fulton', '3A'],
  ['CA', 'Los Angeles', '3B'],
  ['NV', 'Clark', '3B'],
  ['CA', 'San Francisco', '3C'],
  ['MD', 'Baltimore city', '4A'],
  ['NM', 'Bernalillo', '4B'],
  ['WA', 'King', '4C'],
  ['IL', 'Cook', '5A'],
  ['CO', 'Boulder', '5B'],
  ['MN', 'Hennepin', '6A'],
  ['MT', 'Lewis and Clark', '6B'],
  ['MN', 'St. Louis', '7'],
  ['AK', 'Fairbanks North Star', '8'],
];

// Representative cities of the ASHRAE 90.1-2019 prototype buildings, zones of ASHRAE 169-2013, by county: from memory.
const PROTOTYPE_CITIES: readonly (readonly [string, string, string])[] = [
  ['HI', 'Honolulu', '1A'],
  ['FL', 'Hillsborough', '2A'],
  ['AZ', 'Pima', '2B'],
  ['TX', 'El Paso', '3B'],
  ['NY', 'Queens', '4A'],
  ['NM', 'Bernalillo', '4B'],
  ['WA', 'King', '4C'],
  ['NY', 'Erie', '5A'],
  ['CO', 'Denver', '5B'],
  ['WA', 'Clallam', '5C'],
  ['MN', 'Olmsted', '6A'],
  ['MT', 'Cascade', '6B'],
  ['MN', 'Koochiching', '7'],
  ['AK', 'Fairbanks North Star', '8'],
];

const zonesOf = async (state: string, name: string) => {
  const { county } = await findCounty(state, name);
  return { old: county.zone_2015 ?? county.zone_2021, now: county.zone_2021 };
};

describe('county zones against published lists', () => {
  it.each(REFERENCE_CITIES)('%s %s is %s, the reference city of that zone', async (state, name, zone) => {
    expect((await zonesOf(state, name)).old).toBe(zone);
  });
  it.each(PROTOTYPE_CITIES)('%s %s is %s since 2021 (from memory)', async (state, name, zone) => {
    expect((await zonesOf(state, name)).now).toBe(zone);
  });
});

// Trade reports on the 2021 map ("Climate zones are getting warmer (mostly)", "Updated climate zone map reflects warming
// trend"): about a tenth of the counties, roughly 400, changed; most turned warmer; nearly all that turned colder lie in
// Oklahoma; Wisconsin no longer has a county of zone 7; Minnesota now has some of zone 5 in the south.
describe('what moved between the 2015 and the 2021 table', () => {
  const moved = async () => {
    const data = await loadCounties();
    return Object.entries(data.states).flatMap(([state, { counties }]) =>
      counties.flatMap(([name, , now, old]) => (old === null ? [] : [{ state, name, now, old }])),
    );
  };
  const number = (zone: string) => Number.parseInt(zone, 10);

  it('is about a tenth of the counties', async () => {
    const { length } = await moved();
    expect(length).toBeGreaterThan(340);
    expect(length).toBeLessThan(430);
  });
  it('is mostly towards warmer; of those that turned colder more than half lie in Oklahoma', async () => {
    const changes = await moved();
    const colder = changes.filter(({ now, old }) => number(now) > number(old));
    const warmer = changes.filter(({ now, old }) => number(now) < number(old));
    expect(warmer.length).toBeGreaterThan(8 * colder.length);
    expect(colder.filter(({ state }) => state === 'OK').length).toBeGreaterThan(colder.length / 2);
  });
  it('took zone 7 from Wisconsin and brought zone 5 to Minnesota', async () => {
    const { states } = await loadCounties();
    const now = (state: string) => new Set(states[state]?.counties.map((row) => row[2]));
    const earlier = (state: string) => new Set(states[state]?.counties.map((row) => row[3] ?? row[2]));
    expect(earlier('WI').has('7')).toBe(true);
    expect(now('WI').has('7')).toBe(false);
    expect(earlier('MN').has('5A')).toBe(false);
    expect(now('MN').has('5A')).toBe(true);
  });
});
