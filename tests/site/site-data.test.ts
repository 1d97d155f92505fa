import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { CLIMATE_ZONES } from '../../src/base/climate-zones.ts';

import { townKey } from '../../src/site/city-data.ts';
import { countiesOf, countyDataSchema, countyRowSchema, loadCounties } from '../../src/site/county-data.ts';
import cityFile from '../../src/site/data/city-counties.json';
import stationFile from '../../src/site/data/climate-stations.json';
import countyFile from '../../src/site/data/county-zones.json';
import { distanceMiles } from '../../src/site/great-circle.ts';
import { nameKey } from '../../src/site/place-names.ts';
import { stationDataSchema, stationSchema } from '../../src/site/station-data.ts';

const PROVENANCE = z.enum(['verified', 'two-sources', 'computed', 'memory', 'proposal', 'common-practice']);
const sourcesSchema = z
  .array(
    z.strictObject({
      id: z.string(),
      text: z.string(),
      provenance: PROVENANCE,
      remark: z.string().optional(),
    }),
  )
  .min(1);

describe('county table', () => {
  const rows = () => Object.values(countyFile.states).flatMap(({ counties }) => counties);

  it('has 3,142 well-formed rows in 50 states and DC, of which 373 moved', () => {
    expect(Object.keys(countyFile.states)).toHaveLength(51);
    expect(rows()).toHaveLength(3142);
    for (const row of rows()) expect(countyRowSchema.safeParse(row).error?.issues ?? []).toEqual([]);
    expect(rows().filter((row) => row[3] !== null)).toHaveLength(373);
    expect(rows().filter((row) => row[3] === row[2])).toEqual([]);
    expect(countyFile.positions_not_found).toEqual([]);
  });
  it('passes the check made at run time, and a spoilt file does not', () => {
    expect(countyDataSchema.safeParse(countyFile).success).toBe(true);
    expect(
      countyDataSchema.safeParse({ ...countyFile, columns: [...countyFile.columns].reverse() }).success,
    ).toBe(false);
    expect(countyDataSchema.safeParse({ ...countyFile, states: { CO: { name: 'Colorado' } } }).success).toBe(
      false,
    );
  });
  it('gives only zones that a scenario may name', () => {
    const zones = new Set<string | number | null>(CLIMATE_ZONES);
    expect(
      rows().filter((row) => !zones.has(row[2] ?? '') || (row[3] !== null && !zones.has(row[3] ?? ''))),
    ).toEqual([]);
  });
  it('has two rows of one name in a state only for the six independent cities beside their county', async () => {
    const data = await loadCounties();
    const shared = Object.keys(data.states).flatMap((state) => {
      const counties = countiesOf(data, state);
      return counties
        .filter((a) => counties.some((b) => b !== a && nameKey(b.name) === nameKey(a.name)))
        .map(({ name, kind }) => `${state} ${name} ${kind}`);
    });
    expect(shared.filter((s) => s.endsWith('city'))).toEqual([
      'MD Baltimore city',
      'MO St. Louis city',
      'VA Fairfax city',
      'VA Franklin city',
      'VA Richmond city',
      'VA Roanoke city',
    ]);
    expect(shared).toHaveLength(12);
  });
  it('names an existing county in every other name it knows', async () => {
    const data = await loadCounties();
    for (const { state, name } of data.also_known_as) {
      expect(countiesOf(data, state).map((c) => c.name)).toContain(name);
    }
  });
  // Positions of a few county seats near the middle of their county, from memory, within 25 mi.
  it.each([
    ['CO', 'Denver', 39.74, -104.99],
    ['IL', 'Cook', 41.88, -87.63],
    ['TX', 'Travis', 30.27, -97.74],
    ['MN', 'Hennepin', 44.98, -93.27],
    ['VA', 'Richmond', 37.54, -77.44],
    ['LA', 'Orleans', 29.95, -90.07],
    ['HI', 'Honolulu', 21.45, -158.0],
    ['ME', 'Cumberland', 43.8, -70.3],
  ])('puts the middle of %s %s where the map has it (from memory)', async (state, name, lat_deg, lon_deg) => {
    const data = await loadCounties();
    const near = countiesOf(data, state).filter(
      (c) => c.name === name && distanceMiles(c, { lat_deg, lon_deg }) < 25,
    );
    expect(near.length).toBeGreaterThanOrEqual(1);
  });
  // Extreme points of the 50 states: no middle of a county can lie outside of them.
  it('keeps every middle inside the United States', () => {
    for (const [, , , , lat, lon] of rows()) {
      expect(Number(lat)).toBeGreaterThan(18.9);
      expect(Number(lat)).toBeLessThan(71.5);
      expect(Number(lon) < -66.9 || Number(lon) > 172).toBe(true);
    }
  });
});

describe('stations', () => {
  it('has 830 well-formed rows, one for each WMO number', () => {
    expect(stationFile.stations).toHaveLength(830);
    for (const row of stationFile.stations)
      expect(stationSchema.safeParse(row).error?.issues ?? []).toEqual([]);
    expect(new Set(stationFile.stations.map(({ wmo }) => wmo)).size).toBe(830);
    expect(stationDataSchema.safeParse(stationFile).success).toBe(true);
  });
  it('names for every US station a county of the table, its zone, and a place near that county', async () => {
    const data = await loadCounties();
    for (const station of stationFile.stations.filter(({ county }) => county !== null)) {
      const county = countiesOf(data, station.state).find(
        ({ name, kind }) => name === station.county && kind === station.county_kind,
      );
      expect(county?.zone_2021).toBe(station.zone_2021);
      // Only in Alaska is a county so long that its station is farther from its middle than this.
      const limit = station.state === 'AK' ? 620 : 110;
      expect(county && distanceMiles(county, station)).toBeLessThan(limit);
    }
  });
  it('has no month colder in July than in January north of the tropics', () => {
    for (const { temp_c } of stationFile.stations)
      expect(temp_c[6] ?? 0).toBeGreaterThan((temp_c[0] ?? 0) - 0.5);
  });
});

describe('towns', () => {
  it('lie in counties of the table', async () => {
    const data = await loadCounties();
    for (const [state = '', town = '', county = ''] of cityFile.towns) {
      expect(countiesOf(data, state).some(({ name, kind }) => name === county && kind !== 'city')).toBe(true);
      expect(townKey(town)).not.toBe('');
    }
  });
});

describe('sources', () => {
  it('are stated for every file with a provenance', () => {
    for (const file of [countyFile, stationFile, cityFile]) {
      expect(sourcesSchema.safeParse(file.sources).error?.issues ?? []).toEqual([]);
    }
    for (const note of countyFile.edition_notes)
      expect(PROVENANCE.safeParse(note.provenance).success).toBe(true);
  });
});
