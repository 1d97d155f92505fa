import { z } from 'zod';
import { ended } from '../base/first-letter.ts';
import { inRange, Refusal, showValue } from '../base/refusal.ts';
import { degreeDays } from './degree-days.ts';

const TEMP_RANGE_F = { min: -60, max: 120 } as const;
const PRECIP_RANGE_IN = { min: 0, max: 60 } as const;

const twelve = (what: string, range: { min: number; max: number }) => {
  const message = `Give twelve numbers from ${range.min} to ${range.max}, January to December: ${ended(what)}`;
  return z
    .array(z.number(message).min(range.min, message).max(range.max, message), message)
    .length(12, message);
};

const STATE_MESSAGE = 'Give a two-letter US state code, for example "CO".';

/** Input of `calc climate`: a county, or twelve months of temperature (°F) and precipitation (in.). */
export const climateInputSchema = z.union(
  [
    z.strictObject({
      state: z.string(STATE_MESSAGE).regex(/^[A-Za-z]{2}$/, STATE_MESSAGE),
      county: z.string('Give a county name, for example "Boulder".').min(1).max(80),
    }),
    z.strictObject({
      monthly_mean_temp_f: twelve('monthly mean outdoor temperature, °F', TEMP_RANGE_F),
      monthly_precip_in: twelve('monthly precipitation, in.', PRECIP_RANGE_IN),
    }),
  ],
  { error: 'Give {"state","county"} or {"monthly_mean_temp_f","monthly_precip_in"}, and nothing else.' },
);

export type ClimateInput = z.output<typeof climateInputSchema>;
export type ClimateMonths = Extract<ClimateInput, { monthly_mean_temp_f: number[] }>;
export type MoistureRegime = 'A' | 'B' | 'C';

export type ClimateFromMonths = {
  readonly climate_zone: string;
  readonly zone_number: number;
  readonly moisture_regime: MoistureRegime | null;
  readonly hdd65_f_days: number;
  readonly cdd50_f_days: number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Climate zone of a place that stands in no county table, from its twelve months.
 *
 * @param months  monthly mean temperature, °F (-60 to 120), and precipitation, in. (0 to 60), January to December
 * @returns       zone ("5A", "7"), degree days in °F-days (whole numbers), sources and the limits that matter
 * @throws Refusal for anything but twelve numbers in range
 *
 * Source: ANSI/ASHRAE 169-2020 and IECC 2021 C301.3, recalled; the thermal limits and the marine definition
 * agree with public quotations of the same table. Letters are given for zones 0 to 6 only, C for 3 to 5 only.
 * Known limit: computed zones often differ by one from the county table, which governs where there is one.
 */
export function computeClimateFromMonths(months: ClimateMonths): ClimateFromMonths {
  const temps = checkTwelve(months.monthly_mean_temp_f, 'monthly_mean_temp_f', TEMP_RANGE_F, '°F');
  const precip = checkTwelve(months.monthly_precip_in, 'monthly_precip_in', PRECIP_RANGE_IN, 'inches');
  const hdd65_f_days = Math.round(degreeDays(temps, 65, 'heating'));
  const cdd50_f_days = Math.round(degreeDays(temps, 50, 'cooling'));
  const zone_number = thermalZoneNumber(hdd65_f_days, cdd50_f_days);
  const moisture = moistureRegime(zone_number, temps, precip);
  return {
    climate_zone: `${zone_number}${moisture.regime ?? ''}`,
    zone_number,
    moisture_regime: moisture.regime,
    hdd65_f_days,
    cdd50_f_days,
    source: [
      'ANSI/ASHRAE 169-2020 and IECC 2021 C301.3: thermal zone limits, marine and dry definitions (from memory; thermal limits and marine definition agree with public quotations)',
      'Erbs, Klein and Beckman (1983), in ASHRAE Handbook Fundamentals: degree days from monthly means (from memory, tested against hourly typical years)',
    ],
    notes: [
      ...moisture.notes,
      ...nearLimitNotes(zone_number, hdd65_f_days, cdd50_f_days),
      'In the United States the county table of the adopted code governs; a computed zone is for places that are not in it.',
    ],
  };
}

/** Upper limits in °F-days: zones 0 to 2 by cooling degree days base 50 °F, 3 to 8 by heating base 65 °F. */
const COOLING_LIMITS = [
  { zone: 0, above: 10_800 },
  { zone: 1, above: 9_000 },
  { zone: 2, above: 6_300 },
] as const;
const HEATING_LIMITS = [
  { zone: 3, upTo: 3_600 },
  { zone: 4, upTo: 5_400 },
  { zone: 5, upTo: 7_200 },
  { zone: 6, upTo: 9_000 },
  { zone: 7, upTo: 12_600 },
] as const;

/**
 * Number of the thermal zone, 0 to 8.
 *
 * @param hdd65_f_days  heating degree days base 65 °F, °F-days
 * @param cdd50_f_days  cooling degree days base 50 °F, °F-days
 *
 * Source: ANSI/ASHRAE 169-2020 table of thermal zones, IECC 2021 Table C301.3; the same limits stand in
 * ASHRAE 90.1-2007 Table B-4 for zones 1, 2 and 5 to 8.
 */
export function thermalZoneNumber(hdd65_f_days: number, cdd50_f_days: number): number {
  const hot = COOLING_LIMITS.find((limit) => cdd50_f_days > limit.above);
  if (hot) return hot.zone;
  return HEATING_LIMITS.find((limit) => hdd65_f_days <= limit.upTo)?.zone ?? 8;
}

/** Number of the thermal zone from twelve monthly mean temperatures, °F. */
export function thermalZoneFromMonths(monthly_mean_temp_f: readonly number[]): number {
  return thermalZoneNumber(
    Math.round(degreeDays(monthly_mean_temp_f, 65, 'heating')),
    Math.round(degreeDays(monthly_mean_temp_f, 50, 'cooling')),
  );
}

function moistureRegime(
  zone: number,
  temps: readonly number[],
  precip: readonly number[],
): { regime: MoistureRegime | null; notes: string[] } {
  if (zone > 6) return { regime: null, notes: [] };
  const seasons = splitSeasons(temps, precip);
  const notes = seasons.isSouthern
    ? [
        'October to March is the warmer half here: the seasons were taken as those of the southern hemisphere.',
      ]
    : [];
  if (isMarine(temps, seasons)) {
    if (zone >= 3 && zone <= 5) return { regime: 'C', notes };
    notes.push(
      `The months meet the marine definition, but there is no marine zone ${zone}: the letter is that of the dry test.`,
    );
  }
  const isDry = seasons.annual_in < dryLimit_in(temps, seasons.summerShare);
  const isDryBySimpleTest = seasons.annual_in < dryLimit_in(temps, 0.5);
  if (isDry !== isDryBySimpleTest) {
    notes.push(
      `The older form of the dry test, which does not look at the season of the rain, would give letter ${isDryBySimpleTest ? 'B' : 'A'}.`,
    );
  }
  return { regime: isDry ? 'B' : 'A', notes };
}

type Seasons = {
  readonly cold: readonly number[];
  readonly warm: readonly number[];
  readonly annual_in: number;
  /** Share of the year's precipitation that falls in the warm half. */
  readonly summerShare: number;
  readonly isSouthern: boolean;
};

function splitSeasons(temps: readonly number[], precip: readonly number[]): Seasons {
  const aprilToSeptember = (_: number, month: number) => month >= 3 && month <= 8;
  const octoberToMarch = (_: number, month: number) => month < 3 || month > 8;
  const isSouthern = total(temps.filter(octoberToMarch)) > total(temps.filter(aprilToSeptember));
  const summer = precip.filter(aprilToSeptember);
  const winter = precip.filter(octoberToMarch);
  const [warm, cold] = isSouthern ? [winter, summer] : [summer, winter];
  const annual_in = total(precip);
  return { cold, warm, annual_in, isSouthern, summerShare: annual_in > 0 ? total(warm) / annual_in : 0.5 };
}

/**
 * Marine: coldest month 27 to 65 °F, warmest below 72 °F, at least four months above 50 °F, and the wettest
 * month of the cold half has at least three times the precipitation of the driest month of the warm half.
 */
function isMarine(temps: readonly number[], seasons: Seasons): boolean {
  const coldest = Math.min(...temps);
  return (
    coldest >= 27 &&
    coldest <= 65 &&
    Math.max(...temps) < 72 &&
    temps.filter((t) => t > 50).length >= 4 &&
    Math.max(...seasons.cold) >= 3 * Math.min(...seasons.warm)
  );
}

/** Annual precipitation below which a place is dry, in.; the season of the rain shifts the limit (from memory). */
function dryLimit_in(temps: readonly number[], summerShare: number): number {
  const mean_f = total(temps) / temps.length;
  if (summerShare >= 0.7) return 0.44 * (mean_f - 7);
  if (summerShare <= 0.3) return 0.44 * (mean_f - 32);
  return 0.44 * (mean_f - 19.5);
}

/** The estimate's own accuracy: inside it the neighbouring zone is just as likely. */
const MARGIN = 0.03;

function nearLimitNotes(zone: number, hdd65: number, cdd50: number): string[] {
  const hot = COOLING_LIMITS.find(({ above }) => Math.abs(cdd50 - above) <= MARGIN * above);
  if (hot) return [nearLimit(hot.zone, hot.zone + 1)];
  const cold = zone > 2 && HEATING_LIMITS.find(({ upTo }) => Math.abs(hdd65 - upTo) <= MARGIN * upTo);
  return cold ? [nearLimit(cold.zone, cold.zone + 1)] : [];
}

function nearLimit(warmer: number, colder: number): string {
  return `The degree days lie close to the limit between zones ${warmer} and ${colder}, closer than the estimate is exact.`;
}

function checkTwelve(
  values: readonly number[],
  field: string,
  range: { min: number; max: number },
  unit: string,
): readonly number[] {
  if (values.length !== 12) {
    throw new Refusal({
      field,
      value: `${values.length} months (${showValue(values)})`,
      accepted: 'Give twelve numbers, January to December.',
    });
  }
  return values.map((value, month) => inRange(value, `${field}[${month}]`, range.min, range.max, unit));
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
