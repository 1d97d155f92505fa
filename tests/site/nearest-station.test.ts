import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countiesOf, loadCounties } from '../../src/site/county-data.ts';
import { findCounty } from '../../src/site/county-lookup.ts';
import { distanceMiles } from '../../src/site/great-circle.ts';
import { chooseStation, nearestRainGauge, stationZoneNumber } from '../../src/site/nearest-station.ts';
import { loadStations, type Station } from '../../src/site/station-data.ts';

type Point = { lat_deg: number; lon_deg: number };

/** Distance by the angle between two vectors from the middle of the earth: shares nothing with the haversine. */
function byVectors(a: Point, b: Point): number {
  const vector = ({ lat_deg, lon_deg }: Point) => {
    const lat = (lat_deg / 180) * Math.PI;
    const lon = (lon_deg / 180) * Math.PI;
    return [Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat)] as const;
  };
  const [ax, ay, az] = vector(a);
  const [bx, by, bz] = vector(b);
  const cross = Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
  return 3958.76 * Math.atan2(cross, ax * bx + ay * by + az * bz);
}

const point = fc.record({
  lat_deg: fc.double({ min: -90, max: 90, noNaN: true }),
  lon_deg: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe('distanceMiles', () => {
  it('agrees with the angle between vectors anywhere on earth', () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        expect(Math.abs(distanceMiles(a, b) - byVectors(a, b))).toBeLessThan(1e-3);
      }),
    );
  });
  // Great circle between the two busiest coasts, 2,475 statute miles in flight tables; a sphere is good to 0.5 %.
  it('matches a published flight distance (from memory)', () => {
    const east = { lat_deg: 40.64, lon_deg: -73.78 };
    const west = { lat_deg: 33.94, lon_deg: -118.41 };
    expect(Math.abs(distanceMiles(east, west) / 2475 - 1)).toBeLessThan(0.005);
  });
});

const chosenFor = async (state: string, name: string) => {
  const { county } = await findCounty(state, name);
  const stations = await loadStations();
  const zone_number = Number.parseInt(county.zone_2021, 10);
  return { county, stations, zone_number, chosen: chooseStation(county, zone_number, stations) };
};

describe('chooseStation', () => {
  it('takes a station in the county before a nearer one outside it', async () => {
    const { chosen } = await chosenFor('CO', 'Denver');
    expect(chosen?.isInCounty).toBe(true);
    expect(chosen?.station.county).toBe('Denver');
  });

  it('takes the nearest of all for counties without one, by an independent distance, unless it was passed over', async () => {
    const data = await loadCounties();
    const stations = await loadStations();
    for (const state of ['CO', 'VT', 'GA', 'WA', 'ND']) {
      for (const county of countiesOf(data, state)) {
        const isOwn = (s: Station) =>
          s.state === state && s.county === county.name && s.county_kind === county.kind;
        const pool = stations.some(isOwn) ? stations.filter(isOwn) : stations;
        const nearest = Math.min(...pool.map((s) => byVectors(county, s)));
        const chosen = chooseStation(county, Number.parseInt(county.zone_2021, 10), stations);
        const first = chosen?.passedOver ?? chosen;
        expect(Math.abs((first?.distance_mi ?? 0) - nearest)).toBeLessThan(0.01);
      }
    }
  });

  it('passes over a plains station for a county of zone 7 when a mountain station is near enough', async () => {
    const { chosen, zone_number } = await chosenFor('CO', 'Clear Creek');
    expect(zone_number).toBe(7);
    expect(chosen?.passedOver?.station.county).toBe('Jefferson');
    expect(chosen?.station.county).toBe('Lake');
    expect(chosen?.distance_mi).toBeLessThanOrEqual(60);
  });

  it('passes a station over only for one that fits the zone better, in few counties', async () => {
    const data = await loadCounties();
    const stations = await loadStations();
    let passed = 0;
    for (const state of Object.keys(data.states)) {
      for (const county of countiesOf(data, state)) {
        const zone = Number.parseInt(county.zone_2021, 10);
        const chosen = chooseStation(county, zone, stations);
        if (!chosen?.passedOver) continue;
        passed += 1;
        expect(Math.abs(stationZoneNumber(chosen.station) - zone)).toBeLessThanOrEqual(1);
        expect(Math.abs(stationZoneNumber(chosen.passedOver.station) - zone)).toBeGreaterThanOrEqual(2);
      }
    }
    expect(passed).toBeGreaterThan(0);
    expect(passed).toBeLessThan(15);
  });

  it('has none to give from an empty list', async () => {
    const { county } = await findCounty('CO', 'Boulder');
    expect(chooseStation(county, 5, [])).toBeNull();
  });
});

describe('nearestRainGauge', () => {
  it('stays within 150 mi, 1,000 ft and the moisture regime', async () => {
    const stations = await loadStations();
    let found = 0;
    for (const station of stations.filter(({ annual_precip_mm }) => annual_precip_mm === null)) {
      const gauge = nearestRainGauge(station, stations);
      if (!gauge) continue;
      found += 1;
      expect(byVectors(station, gauge.station)).toBeLessThanOrEqual(150.01);
      expect(Math.abs(station.elevation_m - gauge.station.elevation_m)).toBeLessThanOrEqual(305);
      expect(gauge.station.zone_2021?.slice(1)).toBe(station.zone_2021?.slice(1));
    }
    expect(found).toBeGreaterThan(400);
  });

  // What the note on screen promises, by leaving each known station out in turn.
  it('is off by an eighth in the median, by no more than 40 % in nine of ten', async () => {
    const stations = await loadStations();
    const errors = stations
      .flatMap((station) => {
        const gauge = station.annual_precip_mm === null ? null : nearestRainGauge(station, stations);
        return gauge ? [Math.abs(gauge.annual_precip_mm / (station.annual_precip_mm ?? 1) - 1)] : [];
      })
      .sort((a, b) => a - b);
    expect(errors.length).toBeGreaterThan(80);
    expect(errors[Math.floor(errors.length * 0.5)]).toBeLessThan(0.13);
    expect(errors[Math.floor(errors.length * 0.9)]).toBeLessThan(0.4);
  });
});
