import { z } from 'zod';
import { COUNTY_KINDS } from './county-data.ts';

const twelve = (min: number, max: number) => z.array(z.number().min(min).max(max)).length(12);

/** One weather station with its typical year. County is null where it is not sure or outside the United States. */
export const stationSchema = z.strictObject({
  wmo: z.string(),
  data: z.enum(['us-typical-year', 'ca-typical-year']),
  state: z.string().regex(/^[A-Z]{2}$/),
  county: z.string().nullable(),
  county_kind: z.enum(COUNTY_KINDS).nullable(),
  /** Code zone of the station's county, 2021 table. */
  zone_2021: z.string().nullable(),
  lat_deg: z.number().min(-90).max(90),
  lon_deg: z.number().min(-180).max(180),
  elevation_m: z.number().min(-100).max(4500),
  temp_c: twelve(-45, 45),
  /** Over liquid water, also below freezing. */
  rh_percent: twelve(0, 100),
  annual_precip_mm: z.number().positive().nullable(),
  hdd65_f_days: z.number().nonnegative().nullable(),
  cdd50_f_days: z.number().nonnegative().nullable(),
});
export type Station = z.output<typeof stationSchema>;

// As with the counties: the tests parse every row, the program looks at the outside only.
const stations = z.custom<readonly Station[]>((value) => Array.isArray(value) && value.length > 0);

export const stationDataSchema = z.object({
  schema: z.literal('cladwright-climate-stations/1'),
  stations,
});

let loaded: Promise<readonly Station[]> | undefined;

/** The stations, read on first use. */
export function loadStations(): Promise<readonly Station[]> {
  loaded ??= import('./data/climate-stations.json').then(
    (file) => stationDataSchema.parse(file.default).stations,
  );
  return loaded;
}
