import { showValue } from '../base/refusal.ts';
import type { CodeEdition } from '../brief/brief.ts';
import type { Place } from '../brief/scenario.ts';
import { computeClimateFromMonths, type MoistureRegime } from '../calculators/climate-zone.ts';
import {
  type County,
  type CountyData,
  countiesOf,
  countyLabel,
  countyTitle,
  loadCounties,
} from './county-data.ts';
import { findCounty } from './county-lookup.ts';
import { chooseStation } from './nearest-station.ts';
import type { Site } from './site.ts';
import { climateOfCounty, monthsAndSeasons, standInClimate } from './station-climate.ts';
import { loadStations, type Station } from './station-data.ts';

/**
 * Where a wall stands, for rules and for physics: code zone of the edition, moisture regime, and the twelve months
 * of the station that stands for the place.
 *
 * @param place    county, climate zone, or twelve months given by the user
 * @param edition  decides which county table the zone is taken from
 * @param path     put before the field names of a refusal
 * @throws Refusal for an unknown state or county (with near names), or months that are not twelve numbers in range
 */
export async function resolveSite(place: Place, edition: CodeEdition, path = 'place.'): Promise<Site> {
  if ('monthly_mean_temp_f' in place) return siteFromMonths(place);
  if ('climate_zone' in place) return siteFromZone(place.climate_zone, edition);
  const data = await loadCounties();
  const territory = territoryOf(data, place.state);
  if (territory) return siteInTerritory(territory, place.county);
  const { county, notes } = await findCounty(place.state, place.county, path);
  return siteInCounty(county, notes, edition);
}

type ZoneTable = { readonly column: 'zone_2015' | 'zone_2021'; readonly source: string };

/** The county table that each edition goes by. */
const ZONE_TABLES: Readonly<Record<CodeEdition, ZoneTable>> = {
  '2018': {
    column: 'zone_2015',
    source:
      'County table of the 2015 edition, which the 2018 edition kept by two trade reports (PNNL-33270 county data file; the printed 2018 table was not read); state amendments govern',
  },
  '2021': {
    column: 'zone_2021',
    source: 'County table of the 2021 edition (PNNL-33270 county data file); state amendments govern',
  },
  '2024': {
    column: 'zone_2021',
    source:
      'County table of the 2021 edition (PNNL-33270 county data file), which the 2024 edition is reported to keep (from memory); state amendments govern',
  },
};

/** Zone of a county in the table of an edition. */
export function zoneForEdition(
  county: Pick<County, 'zone_2015' | 'zone_2021'>,
  edition: CodeEdition,
): string {
  // Only counties that the 2021 table moved have a zone of 2015 of their own.
  return county[ZONE_TABLES[edition].column] ?? county.zone_2021;
}

async function siteInCounty(
  county: County,
  homonyms: readonly string[],
  edition: CodeEdition,
): Promise<Site> {
  const zone = zoneForEdition(county, edition);
  const zone_number = zoneNumber(zone);
  const stations = await loadStations();
  const chosen = chooseStation(county, zone_number, stations);
  const fromStation = chosen && climateOfCounty(county, zone_number, chosen, stations);
  return {
    ...zoneParts(zone),
    place: countyLabel(county),
    zone_source: ZONE_TABLES[edition].source,
    notes: [...homonyms, ...editionNotes(county, edition), ...(fromStation?.notes ?? [])],
    climate: fromStation?.climate ?? null,
  };
}

function editionNotes(county: County, edition: CodeEdition): string[] {
  if (county.zone_2015 === null) return [];
  const taken = zoneForEdition(county, edition);
  return [
    `${countyTitle(county)} is zone ${county.zone_2015} in the 2015 and 2018 editions and ${county.zone_2021} since the 2021 edition; ${taken} was taken for edition ${edition}. Ask which edition has been adopted there.`,
  ];
}

async function siteFromZone(climate_zone: string, edition: CodeEdition): Promise<Site> {
  const data = await loadCounties();
  const stations = await loadStations();
  const zones = new Map<string, string>();
  for (const state of Object.keys(data.states)) {
    for (const county of countiesOf(data, state))
      zones.set(countyKey(county), zoneForEdition(county, edition));
  }
  const ofZone = stations.filter((station) => zones.get(stationKey(station)) === climate_zone);
  const standIn = standInClimate(`zone ${climate_zone}`, zoneNumber(climate_zone), ofZone, stations);
  return {
    ...zoneParts(climate_zone),
    place: `climate zone ${climate_zone}`,
    zone_source: 'Given by the user',
    notes: standIn
      ? [...standIn.notes, 'Give state and county to use a real place.']
      : [
          `No county is zone ${climate_zone} in the table of edition ${edition}, so there are no months to stand in for it: give your own twelve months for the moisture calculation.`,
        ],
    climate: standIn?.climate ?? null,
  };
}

function siteFromMonths(place: Extract<Place, { monthly_mean_temp_f: number[] }>): Site {
  const computed = computeClimateFromMonths(place);
  const temp_c = place.monthly_mean_temp_f.map((t) => (t - 32) / 1.8);
  return {
    ...zoneParts(computed.climate_zone),
    place: 'twelve months given by the user',
    zone_source: `Computed from the months: ${computed.source.join('; ')}`,
    notes: [
      ...computed.notes,
      'The outdoor humidity by month is not known: what depends on it cannot be told. Give state and county where there is a station to take it from.',
    ],
    climate: {
      source: 'Twelve monthly means given by the user',
      station_distance_mi: null,
      station_elevation_ft: null,
      ...monthsAndSeasons(temp_c, null),
      annual_precip_in: Math.round(place.monthly_precip_in.reduce((sum, p) => sum + p, 0) * 10) / 10,
      is_assumption: false,
    },
  };
}

type Territory = { readonly code: string; readonly name: string; readonly zone: string };

function territoryOf(data: CountyData, state: string): Territory | null {
  const code = state.toUpperCase();
  const territory = Object.hasOwn(data.territories, code) ? data.territories[code] : undefined;
  return territory ? { code, ...territory } : null;
}

async function siteInTerritory(territory: Territory, county: string): Promise<Site> {
  const stations = await loadStations();
  const own = stations.filter(({ state }) => state === territory.code);
  const standIn = standInClimate(territory.name, zoneNumber(territory.zone), own, stations);
  return {
    ...zoneParts(territory.zone),
    place: territory.name,
    zone_source: `IECC 2021 Table C301.1 (from memory): all of ${territory.name}; the adopted local code governs`,
    notes: [
      `There is no table of the parts of ${territory.name} here: ${showValue(county)} was not checked.`,
      ...(standIn?.notes ?? [
        `No weather station of ${territory.name} is known here: give your own twelve months for the moisture calculation.`,
      ]),
    ],
    climate: standIn?.climate ?? null,
  };
}

function zoneParts(
  zone: string,
): Pick<Site, 'climate_zone' | 'zone_number' | 'moisture_regime' | 'is_marine'> {
  const letter = zone.slice(1);
  const regime: MoistureRegime | null = letter === 'A' || letter === 'B' || letter === 'C' ? letter : null;
  return {
    climate_zone: zone,
    zone_number: zoneNumber(zone),
    moisture_regime: regime,
    is_marine: regime === 'C',
  };
}

function zoneNumber(zone: string): number {
  return Number.parseInt(zone, 10);
}

function countyKey(county: Pick<County, 'state' | 'name' | 'kind'>): string {
  return `${county.state}|${county.name}|${county.kind}`;
}

function stationKey(station: Station): string {
  return `${station.state}|${station.county}|${station.county_kind}`;
}
