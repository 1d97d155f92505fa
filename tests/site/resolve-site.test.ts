import { describe, expect, it } from 'vitest';
import { CLIMATE_ZONES } from '../../src/base/climate-zones.ts';
import { Refusal } from '../../src/base/refusal.ts';
import type { CODE_EDITIONS } from '../../src/brief/scenario.ts';
import { climateOfCountyName } from '../../src/site/county-climate.ts';
import { countiesOf, loadCounties } from '../../src/site/county-data.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';

const county = (state: string, name: string, edition: (typeof CODE_EDITIONS)[number] = '2021') =>
  resolveSite({ state, county: name }, edition);
const refusal = async (run: Promise<unknown>): Promise<Refusal> => {
  const error = await run.then(
    () => undefined,
    (e: unknown) => e,
  );
  if (!(error instanceof Refusal)) throw new Error('expected a refusal');
  return error;
};

describe('a county', () => {
  it('gives zone, regime, place and the months of a station with distance and elevation', async () => {
    const site = await county('CO', 'Boulder');
    expect(site).toMatchObject({
      climate_zone: '5B',
      zone_number: 5,
      moisture_regime: 'B',
      is_marine: false,
      place: 'Boulder County, CO',
    });
    expect(site.climate?.source).toMatch(/Boulder County, CO, 7 mi .* 5,541 ft .*TMY3/);
    expect(site.climate?.is_assumption).toBe(false);
    const temps = site.climate?.monthly.map(({ temp_c }) => temp_c) ?? [];
    expect(temps).toHaveLength(12);
    const sorted = [...temps].sort((a, b) => a - b);
    const coldest = ((sorted[0] ?? 0) + (sorted[1] ?? 0) + (sorted[2] ?? 0)) / 3;
    expect(site.climate?.winter_mean_temp_f).toBeCloseTo(coldest * 1.8 + 32, 1);
  });
  it('says that the elevation of the site is not known', async () => {
    expect((await county('CO', 'Boulder')).notes.join(' ')).toMatch(
      /elevation of the site is not known.*1,000 ft/,
    );
  });
  it.each([
    ['co', 'boulder county', 'Boulder County, CO'],
    ['LA', 'orleans', 'Orleans Parish, LA'],
    ['AK', 'Juneau', 'Juneau City and Borough, AK'],
    ['AK', 'nome', 'Nome Census Area, AK'],
    ['VA', 'Alexandria', 'Alexandria city, VA'],
    ['NV', 'Carson City', 'Carson City, NV'],
    ['DC', 'Washington', 'District of Columbia'],
    ['NM', 'Dona Ana', 'Doña Ana County, NM'],
    ['MO', 'Saint Louis Co.', 'St. Louis County, MO'],
    ['MO', 'St. Louis (city)', 'St. Louis city, MO'],
    ['MN', 'ST LOUIS', 'St. Louis County, MN'],
  ])('%s %j is %s', async (state, name, place) => {
    expect((await county(state, name)).place).toBe(place);
  });
  it('prefers the county of two with one name and says how to write the city', async () => {
    const site = await county('MD', 'Baltimore');
    expect(site.place).toBe('Baltimore County, MD');
    expect(site.notes[0]).toContain('"Baltimore city"');
    expect((await county('MD', 'Baltimore city')).place).toBe('Baltimore city, MD');
    const said = await county('MD', 'Baltimore County');
    expect(said.place).toBe('Baltimore County, MD');
    expect(said.notes.join(' ')).not.toContain('Baltimore city');
  });
  it.each(['7', '8'])('has no letter and is not marine in zone %s', async (zone) => {
    const site =
      zone === '7' ? await county('MN', 'Koochiching') : await county('AK', 'Fairbanks North Star');
    expect(site).toMatchObject({ climate_zone: zone, moisture_regime: null, is_marine: false });
  });
  it('is marine where the letter is C', async () => {
    expect(await county('WA', 'King')).toMatchObject({
      climate_zone: '4C',
      moisture_regime: 'C',
      is_marine: true,
    });
  });
});

describe('editions', () => {
  // Dane County WI: 6A on the map up to the 2018 edition, 5A since 2021 (PNNL-33270).
  it.each([
    ['2018', '6A'],
    ['2021', '5A'],
    ['2024', '5A'],
  ] as const)('%s puts a county that moved in zone %s and says so', async (edition, zone) => {
    const site = await county('WI', 'Dane', edition);
    expect(site.climate_zone).toBe(zone);
    expect(site.notes.join(' ')).toMatch(/6A in the 2015 and 2018 editions and 5A since/);
  });
  it('say what the zone comes from and what of that is not certain', async () => {
    expect((await county('WI', 'Dane', '2018')).zone_source).toContain('trade reports');
    expect((await county('WI', 'Dane', '2024')).zone_source).toContain('from memory');
  });
  it('give no note for a county that did not move', async () => {
    expect((await county('CO', 'Boulder', '2018')).notes.join(' ')).not.toContain('since the 2021');
  });
});

describe('stations are never used silently', () => {
  it('flags and names a station in another county', async () => {
    const site = await county('MD', 'Baltimore');
    expect(site.climate?.is_assumption).toBe(true);
    expect(site.notes.join(' ')).toContain('No station stands in Baltimore County');
  });
  it('flags a far one, also inside the county, with its distance', async () => {
    const site = await county('AK', 'North Slope');
    expect(site.climate?.is_assumption).toBe(true);
    expect(site.climate?.station_distance_mi).toBeGreaterThan(60);
    expect(site.notes.join(' ')).toMatch(/farther than 60 mi.*assumption/);
  });
  it('says when the months are of another zone than the code', async () => {
    expect((await county('ID', 'Clark')).climate_zone).toBe('6B');
    const data = await loadCounties();
    const spoken = await Promise.all(
      countiesOf(data, 'CO').map(async ({ name }) => (await county('CO', name)).notes.join(' ')),
    );
    expect(
      spoken.some((n) => /code zone is 7, but the station's months work out to zone 5, warmer/.test(n)),
    ).toBe(true);
  });
  it('holds for every county: in its county, near and unflagged, or flagged and noted', async () => {
    const data = await loadCounties();
    for (const state of Object.keys(data.states).slice(0, 12)) {
      for (const { name, kind } of countiesOf(data, state)) {
        const site = await county(state, kind === 'city' ? `${name} city` : name);
        const { climate } = site;
        expect(climate?.monthly.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
        if (climate?.is_assumption === false) expect(climate.station_distance_mi).toBeLessThanOrEqual(60);
        else expect(site.notes.join(' ')).toMatch(/No station stands in|own station|farther than 60 mi/);
        for (const { rh } of climate?.monthly ?? []) {
          expect(rh).toBeGreaterThan(0);
          expect(rh).toBeLessThanOrEqual(1);
        }
      }
    }
  });
  it('shows no name of a station, only county, state, distance and elevation', async () => {
    const { climate } = await county('IL', 'Cook');
    expect(climate?.source).toMatch(
      /^Weather station in [A-Z][\w. ]+ County, IL, \d+ mi from the middle of the county, elevation [\d,]+ ft \(/,
    );
  });
});

describe('a climate zone alone', () => {
  it('takes a station of the zone that stands in, flagged', async () => {
    const site = await resolveSite({ climate_zone: '5B' }, '2021');
    expect(site).toMatchObject({
      climate_zone: '5B',
      place: 'climate zone 5B',
      zone_source: 'Given by the user',
    });
    expect(site.climate?.is_assumption).toBe(true);
    expect(site.climate?.station_distance_mi).toBeNull();
    expect(site.notes.join(' ')).toMatch(/stand in for zone 5B/);
  });
  it('has months for every zone that has counties, and says so where there are none', async () => {
    for (const zone of CLIMATE_ZONES) {
      const site = await resolveSite({ climate_zone: zone }, '2021');
      if (['0A', '0B', '1B'].includes(zone)) {
        expect(site.climate).toBeNull();
        expect(site.notes.join(' ')).toContain('give your own twelve months');
      } else {
        expect(site.climate?.monthly).toHaveLength(12);
      }
    }
  });
  it('gives colder winters for colder zones of one regime', async () => {
    const winters = await Promise.all(
      (['1A', '2A', '3A', '4A', '5A', '6A', '7', '8'] as const).map(
        async (zone) =>
          (await resolveSite({ climate_zone: zone }, '2021')).climate?.winter_mean_temp_f ?? Number.NaN,
      ),
    );
    expect(winters).toEqual([...winters].sort((a, b) => b - a));
  });
  it('is the same every time', async () => {
    expect(await resolveSite({ climate_zone: '6A' }, '2018')).toEqual(
      await resolveSite({ climate_zone: '6A' }, '2018'),
    );
  });
});

describe('twelve months of the user', () => {
  // A year of zone 5: NOAA normals of Chicago (from memory), 37 in. of precipitation.
  const place = {
    monthly_mean_temp_f: [25.2, 28.8, 39.0, 49.7, 60.6, 70.6, 75.4, 73.8, 66.3, 54.0, 41.3, 30.5],
    monthly_precip_in: [1.99, 1.97, 2.45, 3.75, 4.49, 4.1, 3.71, 4.25, 3.19, 3.43, 2.42, 2.11],
  };
  it('give a computed zone, the months in °C, no humidity, and the year of rain', async () => {
    const site = await resolveSite(place, '2021');
    expect(site).toMatchObject({ climate_zone: '5A', place: 'twelve months given by the user' });
    expect(site.climate?.monthly[0]).toEqual({ month: 1, temp_c: (25.2 - 32) / 1.8, rh: null });
    // (25.2 + 28.8 + 30.5) / 3 = 28.17 °F; (75.4 + 73.8 + 70.6) / 3 = 73.27 °F; the rain adds up to 37.86 in.
    expect(site.climate).toMatchObject({
      winter_mean_temp_f: 28.2,
      summer_mean_temp_f: 73.3,
      annual_precip_in: 37.9,
    });
    expect(site.notes.join(' ')).toContain('humidity by month is not known');
  });
});

describe('territories', () => {
  it('are zone 1A from memory, with a stand-in where there is a station', async () => {
    const site = await county('pr', 'San Juan');
    expect(site).toMatchObject({ climate_zone: '1A', place: 'Puerto Rico' });
    expect(site.zone_source).toContain('from memory');
    expect(site.notes.join(' ')).toContain('"San Juan" was not checked');
    expect(site.climate?.is_assumption).toBe(true);
    expect((await county('VI', 'St. Croix')).climate).toBeNull();
  });
});

describe('refusals', () => {
  it('name the field, the value and the near names', async () => {
    const { issues } = await refusal(county('CO', 'Bolder'));
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ field: 'place.county', value: '"Bolder"' });
    expect(issues[0]?.accepted).toMatch(/Did you mean Boulder\? Counties in CO that come close: Boulder/);
  });
  it('say in which state the county lies', async () => {
    expect((await refusal(county('TX', 'Boulder'))).message).toContain(
      'Boulder is a county of CO, not of TX.',
    );
    expect((await refusal(county('NV', 'Franklin'))).message).toMatch(
      /county of AL, AR, .* more states, not of NV/,
    );
  });
  it('say in which county a town lies', async () => {
    expect((await refusal(county('MT', 'Bozeman'))).message).toContain('lies in the county "Gallatin"');
    expect((await refusal(county('IA', 'Iowa City'))).message).toContain('lies in the county "Johnson"');
  });
  it('list the counties of a small state', async () => {
    expect((await refusal(county('CT', 'Capitol Region'))).message).toContain(
      'Counties of CT: Fairfield, Hartford, Litchfield',
    );
  });
  it('refuse a state that is none, on its own field', async () => {
    const { issues } = await refusal(county('XX', 'Boulder'));
    expect(issues[0]).toMatchObject({ field: 'place.state', value: '"XX"' });
    expect(issues[0]?.accepted).toContain('Boulder is a county of CO.');
    expect((await refusal(county('ON', 'York'))).issues[0]?.accepted).toContain('twelve months');
  });
  it.each(['', '!!!', '__proto__', 'constructor', '\u001b[31mBoulder\u0007x', '🏠'])(
    'refuse %j without failing or passing control characters on',
    async (name) => {
      const { message } = await refusal(county('AL', name));
      expect(message).toContain('place.county');
      expect([...message].every((c) => c >= ' ')).toBe(true);
    },
  );
});

describe('climateOfCountyName', () => {
  it('answers calc climate for a county', async () => {
    const answer = await climateOfCountyName({ state: 'GA', county: 'Fulton' });
    expect(answer.climate_zone).toBe('3A');
    expect(answer.source[0]).toContain('PNNL-33270');
    expect(answer.notes.length).toBeGreaterThan(0);
  });
  it('names the fields of its own input in a refusal', async () => {
    expect((await refusal(climateOfCountyName({ state: 'TX', county: 'Boulder' }))).issues[0]?.field).toBe(
      'county',
    );
    expect((await refusal(climateOfCountyName({ state: 'QQ', county: 'Boulder' }))).issues[0]?.field).toBe(
      'state',
    );
  });
});
