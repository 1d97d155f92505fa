import { z } from 'zod';
import { nameKey } from './place-names.ts';

const zone = z.string().regex(/^([0-6][ABC]|7|8)$/);

/** How a county equivalent is called: this follows its name. */
export const COUNTY_KINDS = [
  'County',
  'Parish',
  'Borough',
  'City and Borough',
  'Municipality',
  'Census Area',
  'city',
  'district',
] as const;

const COLUMNS = ['name', 'kind', 'zone_2021', 'zone_2015', 'lat_deg', 'lon_deg'] as const;

/** One row of the county table, in the order of {@link COLUMNS}. `zone_2015` is null where it is the same. */
export const countyRowSchema = z.tuple([
  z.string().min(1),
  z.enum(COUNTY_KINDS),
  zone,
  zone.nullable(),
  z.number().min(-90).max(90),
  z.number().min(-180).max(180),
]);
export type CountyRow = z.output<typeof countyRowSchema>;

// Rows are only looked at from outside here: parsing all of them would cost more than the look-up. The tests do it.
const rows = z.custom<readonly CountyRow[]>((value) => Array.isArray(value) && value.length > 0);

export const countyDataSchema = z.object({
  schema: z.literal('cladwright-county-zones/1'),
  columns: z.tuple(COLUMNS.map((column) => z.literal(column)) as [z.ZodLiteral, ...z.ZodLiteral[]]),
  also_known_as: z.array(z.object({ state: z.string(), said: z.string(), name: z.string() })),
  territories: z.record(z.string(), z.object({ name: z.string(), zone })),
  states: z.record(z.string(), z.object({ name: z.string(), counties: rows })),
});
export type CountyData = z.output<typeof countyDataSchema>;

export type County = {
  readonly state: string;
  readonly name: string;
  /** The form of the name in which the ways people write it fall together. */
  readonly key: string;
  readonly kind: CountyRow[1];
  readonly zone_2021: string;
  /** Null where the 2015 zone is the same. */
  readonly zone_2015: string | null;
  readonly lat_deg: number;
  readonly lon_deg: number;
};

let loaded: Promise<CountyData> | undefined;

/** The county table, read on first use: a command that needs no place never parses it. */
export function loadCounties(): Promise<CountyData> {
  loaded ??= import('./data/county-zones.json').then((file) => countyDataSchema.parse(file.default));
  return loaded;
}

/** By table and state: a search through free text goes over all of them for every line. */
const counties = new WeakMap<CountyData, Map<string, readonly County[]>>();

/** Counties of one state, always the same objects; empty for a state that is not in the table. */
export function countiesOf(data: CountyData, state: string): readonly County[] {
  const known = counties.get(data) ?? new Map<string, readonly County[]>();
  counties.set(data, known);
  const ofState = known.get(state) ?? readCounties(data, state);
  known.set(state, ofState);
  return ofState;
}

function readCounties(data: CountyData, state: string): County[] {
  const rowsOfState = Object.hasOwn(data.states, state) ? data.states[state]?.counties : undefined;
  return (rowsOfState ?? []).map(([name, kind, zone_2021, zone_2015, lat_deg, lon_deg]) => ({
    state,
    name,
    key: nameKey(name),
    kind,
    zone_2021,
    zone_2015,
    lat_deg,
    lon_deg,
  }));
}

const indexes = new WeakMap<readonly County[], Map<string, County[]>>();

/** Counties by the keys of their names. To go through thousands of names for every line of a talk is slow. */
export function countiesByKey(counties: readonly County[]): ReadonlyMap<string, readonly County[]> {
  const known = indexes.get(counties);
  if (known) return known;
  const index = new Map<string, County[]>();
  for (const county of counties) {
    const same = index.get(county.key);
    if (same) same.push(county);
    else index.set(county.key, [county]);
  }
  indexes.set(counties, index);
  return index;
}

/** "Boulder County, CO", "Orleans Parish, LA", "Baltimore city, MD", "Carson City, NV". */
export function countyLabel(county: Pick<County, 'name' | 'kind' | 'state'>): string {
  if (county.kind === 'district') return county.name;
  return `${countyTitle(county)}, ${county.state}`;
}

/** The same without the state. */
export function countyTitle(county: Pick<County, 'name' | 'kind'>): string {
  const isNamedCity = county.kind === 'city' && /\bCity$/.test(county.name);
  return county.kind === 'district' || isNamedCity ? county.name : `${county.name} ${county.kind}`;
}
