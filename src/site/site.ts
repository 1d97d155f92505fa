/** One month outdoors, as the moisture calculation takes it. */
export type OutdoorMonth = {
  /** 1 January to 12 December. */
  readonly month: number;
  readonly temp_c: number;
  /**
   * Relative humidity, 0 to 1; null when not known. Below freezing it is over ice, so that it goes with the
   * ice branch of the ISO 13788 saturation pressure.
   */
  readonly rh: number | null;
};

export type SiteClimate = {
  /** What the months are, without station names: county, state, distance, elevation. */
  readonly source: string;
  /** From the middle of the county to the station; null when the place of the site is not known. */
  readonly station_distance_mi: number | null;
  readonly station_elevation_ft: number | null;
  /** January to December. */
  readonly monthly: readonly OutdoorMonth[];
  /** Mean of the three coldest months. */
  readonly winter_mean_temp_f: number;
  /** Mean of the three warmest months. */
  readonly summer_mean_temp_f: number;
  readonly annual_precip_in: number | null;
  /** True when the station lies in another county, far off, or stands in for a zone. */
  readonly is_assumption: boolean;
};

/** Where the wall stands: the code's zone for rules, the months for physics. The two may disagree; notes say so. */
export type Site = {
  /** "5B", "7". */
  readonly climate_zone: string;
  readonly zone_number: number;
  /** Null for zones 7 and 8, which carry no letter. */
  readonly moisture_regime: 'A' | 'B' | 'C' | null;
  readonly is_marine: boolean;
  /** "Boulder County, CO", "climate zone 5B", "twelve months given by the user". */
  readonly place: string;
  readonly zone_source: string;
  readonly notes: readonly string[];
  readonly climate: SiteClimate | null;
};
