import { type County, countyLabel, countyTitle } from './county-data.ts';
import {
  type ChosenStation,
  FARTHEST_NEIGHBOUR_MI,
  nearestRainGauge,
  stationZoneNumber,
} from './nearest-station.ts';
import { outdoorHumidity } from './outdoor-humidity.ts';
import type { OutdoorMonth, SiteClimate } from './site.ts';
import type { Station } from './station-data.ts';

const FT_PER_M = 1 / 0.3048;
const MM_PER_IN = 25.4;

type ClimateWithNotes = { readonly climate: SiteClimate; readonly notes: readonly string[] };

const DATA_TEXT = {
  'us-typical-year': 'TMY3 typical year, NREL/TP-581-43156, months of 1976 to 2005',
  'ca-typical-year': 'CWEC typical year of the Canadian weather service, months of about 1953 to 1995',
} as const;

/** Climate of a county from the station chosen for it, with every limit of that choice said in notes. */
export function climateOfCounty(
  county: County,
  zone_number: number,
  chosen: ChosenStation,
  stations: readonly Station[],
): ClimateWithNotes {
  const { station, isInCounty } = chosen;
  const distance_mi = Math.round(chosen.distance_mi);
  const isFar = chosen.distance_mi > FARTHEST_NEIGHBOUR_MI;
  const rain = rainOf(station, stations);
  const elevation_ft = Math.round(station.elevation_m * FT_PER_M);
  const notes = [
    ...(isFar
      ? [
          `The nearest weather station is ${distance_mi} mi from the middle of ${countyTitle(county)}, farther than ${FARTHEST_NEIGHBOUR_MI} mi: its months are an assumption. Give your own twelve months where you have them.`,
        ]
      : []),
    ...(isInCounty || chosen.passedOver?.isInCounty
      ? []
      : [`No station stands in ${countyTitle(county)}; the months are those of ${stationPlace(station)}.`]),
    ...passedOverNotes(chosen),
    `The elevation of the site is not known; the station stands at ${feet(elevation_ft)} ft. A site higher up is colder by roughly 3 to 3.5 °F for each 1,000 ft: with more than 1,000 ft between them do not rely on these months.`,
    ...zoneNotes(station, zone_number),
    ...rain.notes,
    ...cappedNotes(station),
  ];
  return {
    notes,
    climate: {
      source: `Weather station in ${stationPlace(station)}, ${distance_mi} mi from the middle of ${isInCounty ? 'the county' : countyTitle(county)}, elevation ${feet(elevation_ft)} ft (${DATA_TEXT[station.data]})`,
      station_distance_mi: distance_mi,
      station_elevation_ft: elevation_ft,
      ...monthsOf(station),
      annual_precip_in: rain.annual_precip_in,
      is_assumption: !isInCounty || isFar,
    },
  };
}

/**
 * Climate that stands in when the place is not known: the station at the first quartile of winter mean temperature
 * among those of the zone or territory, so that most of them have a milder winter. Deterministic, and on the safe
 * side for a wall that must dry in the cold. Stations whose own months work out to the zone go before the rest, and
 * of those the ones with a known precipitation when there are at least four.
 *
 * @param standsFor  in words: "zone 5B", "Puerto Rico"
 * @param candidates stations of that zone or territory
 * @param all        all stations, for the precipitation
 * @returns          null when there are no candidates
 */
export function standInClimate(
  standsFor: string,
  zone_number: number,
  candidates: readonly Station[],
  all: readonly Station[],
): ClimateWithNotes | null {
  const fitting = candidates.filter((station) => stationZoneNumber(station) === zone_number);
  const pool = fitting.length > 0 ? fitting : candidates;
  const gauged = pool.filter((station) => station.annual_precip_mm !== null);
  const byWinter = (gauged.length >= 4 ? gauged : pool)
    .map((station) => ({ station, winter: coldestMean(station.temp_c) }))
    .sort((a, b) => a.winter - b.winter || a.station.wmo.localeCompare(b.station.wmo));
  const index = Math.floor((byWinter.length - 1) / 4);
  const station = byWinter[index]?.station;
  if (!station) return null;
  const rain = rainOf(station, all);
  const elevation_ft = Math.round(station.elevation_m * FT_PER_M);
  const winter = coldestMean(station.temp_c);
  const milder = candidates.filter((other) => coldestMean(other.temp_c) > winter).length;
  return {
    notes: [
      `The months of a station in ${stationPlace(station)} stand in for ${standsFor}; of its ${candidates.length} stations ${milder} have a milder winter. The site itself can be quite different.`,
      ...zoneNotes(station, zone_number),
      ...rain.notes,
      ...cappedNotes(station),
    ],
    climate: {
      source: `Weather station in ${stationPlace(station)}, elevation ${feet(elevation_ft)} ft, standing in for ${standsFor} (${DATA_TEXT[station.data]})`,
      station_distance_mi: null,
      station_elevation_ft: elevation_ft,
      ...monthsOf(station),
      annual_precip_in: rain.annual_precip_in,
      is_assumption: true,
    },
  };
}

/** Months and season means from twelve temperatures, °C; humidity over water in percent, or null when not known. */
export function monthsAndSeasons(
  temp_c: readonly number[],
  rh_percent: readonly number[] | null,
): Pick<SiteClimate, 'monthly' | 'winter_mean_temp_f' | 'summer_mean_temp_f'> {
  const monthly = temp_c.map((t, i): OutdoorMonth => {
    const rh = rh_percent?.[i];
    return {
      month: i + 1,
      temp_c: t,
      rh: rh === undefined ? null : round(outdoorHumidity(t, rh / 100).rh, 3),
    };
  });
  return {
    monthly,
    winter_mean_temp_f: round(fahrenheit(coldestMean(temp_c)), 1),
    summer_mean_temp_f: round(fahrenheit(-coldestMean(temp_c.map((t) => -t))), 1),
  };
}

function monthsOf(station: Station) {
  return monthsAndSeasons(station.temp_c, station.rh_percent);
}

function coldestMean(temp_c: readonly number[]): number {
  const [a = Number.NaN, b = Number.NaN, c = Number.NaN] = [...temp_c].sort((x, y) => x - y);
  return (a + b + c) / 3;
}

function rainOf(
  station: Station,
  stations: readonly Station[],
): { annual_precip_in: number | null; notes: string[] } {
  if (station.annual_precip_mm !== null) {
    return { annual_precip_in: round(station.annual_precip_mm / MM_PER_IN, 1), notes: [] };
  }
  const gauge = nearestRainGauge(station, stations);
  if (!gauge) {
    return {
      annual_precip_in: null,
      notes: ['The annual precipitation is not known: no station like this one has it here within 150 mi.'],
    };
  }
  return {
    annual_precip_in: round(gauge.annual_precip_mm / MM_PER_IN, 1),
    notes: [
      `The annual precipitation is that of a station in ${stationPlace(gauge.station)}, ${Math.round(gauge.distance_mi)} mi from the first, of the same moisture regime and height: expect it to be off by an eighth, at times by a third or more.`,
    ],
  };
}

function passedOverNotes({ passedOver, station }: ChosenStation): string[] {
  if (!passedOver) return [];
  const elevation = feet(Math.round(passedOver.station.elevation_m * FT_PER_M));
  const which = passedOver.isInCounty
    ? "The county's own station"
    : `The station in ${stationPlace(passedOver.station)}`;
  return [
    `${which}, ${Math.round(passedOver.distance_mi)} mi away at ${elevation} ft, would come first but its months work out to zone ${stationZoneNumber(passedOver.station)}; the one in ${stationPlace(station)} fits the county's zone better.`,
  ];
}

function zoneNotes(station: Station, zone_number: number): string[] {
  const zoneOfMonths = stationZoneNumber(station);
  if (zoneOfMonths === zone_number) return [];
  const sense = zoneOfMonths < zone_number ? 'warmer' : 'colder';
  return [
    `The code zone is ${zone_number}, but the station's months work out to zone ${zoneOfMonths}, ${sense}. The zone decides what the code asks; the months decide the moisture calculation.`,
  ];
}

function cappedNotes(station: Station): string[] {
  const capped = station.temp_c.filter(
    (t, i) => outdoorHumidity(t, (station.rh_percent[i] ?? 0) / 100).isCapped,
  ).length;
  if (capped === 0) return [];
  return [
    `In ${capped} of the months the mean humidity lies above saturation over ice: it was held at saturation.`,
  ];
}

/** "Jefferson County, CO"; the state alone where the county is not sure. */
function stationPlace(station: Station): string {
  return station.county !== null && station.county_kind !== null
    ? countyLabel({ name: station.county, kind: station.county_kind, state: station.state })
    : station.state;
}

function fahrenheit(temp_c: number): number {
  return temp_c * 1.8 + 32;
}

function feet(value: number): string {
  return value.toLocaleString('en-US');
}

function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}
