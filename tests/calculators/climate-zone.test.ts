import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import {
  climateInputSchema,
  computeClimateFromMonths,
  thermalZoneFromMonths,
  thermalZoneNumber,
} from '../../src/calculators/climate-zone.ts';
import { degreeDays } from '../../src/calculators/degree-days.ts';

const same = (value: number) => Array.from({ length: 12 }, () => value);

describe('degreeDays', () => {
  // Hand calculation: 365 days of 65 - 40 °F, and next to nothing from the warm tail of a 13 °F daily spread.
  it('is the plain difference times 365 far from the base', () => {
    expect(degreeDays(same(40), 65, 'heating') / (25 * 365)).toBeCloseTo(1, 3);
    expect(degreeDays(same(86), 50, 'cooling') / (36 * 365)).toBeCloseTo(1, 6);
  });

  // Hand calculation at t = base = 18.333 °C, s = 0: sigma = 1.45 - 0.029 * 18.333 = 0.9183;
  // sum of N^1.5 = 7 * 172.601 + 4 * 164.317 + 148.162 = 2013.6; ln 2 / 3.396 = 0.20411;
  // 0.9183 * 2013.6 * 0.20411 = 377.4 °C-days = 679.4 °F-days.
  it('matches a hand calculation at the base temperature, where only the daily spread counts', () => {
    expect(degreeDays(same(65), 65, 'heating')).toBeCloseTo(679.4, 0);
    expect(degreeDays(same(65), 65, 'cooling')).toBeCloseTo(679.4, 0);
  });

  // The estimate's two tails differ by the identity x = x⁺ - x⁻: exact for any month.
  it('keeps cooling less heating equal to the plain difference from the base', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -60, max: 120, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (t) => {
          const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
          const plain = t.reduce((sum, x, i) => sum + (x - 50) * (days[i] ?? 0), 0);
          expect(degreeDays(t, 50, 'cooling') - degreeDays(t, 50, 'heating')).toBeCloseTo(plain, 5);
        },
      ),
    );
  });
});

describe('thermalZoneNumber', () => {
  // ANSI/ASHRAE 169-2020, IECC 2021 Table C301.3: each limit belongs to the cooler side of cooling degree days and
  // to the warmer side of heating degree days.
  it.each([
    [0, 10_801, 0],
    [0, 10_800, 1],
    [0, 9_001, 1],
    [500, 9_000, 2],
    [1_500, 6_301, 2],
    [1_500, 6_300, 3],
    [3_600, 4_000, 3],
    [3_601, 4_000, 4],
    [5_400, 3_000, 4],
    [5_401, 3_000, 5],
    [7_200, 2_000, 5],
    [7_201, 2_000, 6],
    [9_000, 1_500, 6],
    [9_001, 1_500, 7],
    [12_600, 500, 7],
    [12_601, 500, 8],
  ])('HDD65 %d and CDD50 %d is zone %d', (hdd, cdd, zone) => {
    expect(thermalZoneNumber(hdd, cdd)).toBe(zone);
  });
});

const temp = fc.double({ min: -20, max: 95, noNaN: true });
const months = fc.array(temp, { minLength: 12, maxLength: 12 });

describe('zones from months', () => {
  it('never turn colder when every month is hotter by the same amount', () => {
    fc.assert(
      fc.property(months, fc.double({ min: 0, max: 25, noNaN: true }), (cool, rise) => {
        const hot = cool.map((t) => t + rise);
        expect(thermalZoneFromMonths(hot)).toBeLessThanOrEqual(thermalZoneFromMonths(cool));
        expect(degreeDays(hot, 65, 'heating')).toBeLessThanOrEqual(degreeDays(cool, 65, 'heating') + 1e-6);
        expect(degreeDays(hot, 50, 'cooling')).toBeGreaterThanOrEqual(degreeDays(cool, 50, 'cooling') - 1e-6);
      }),
    );
  });

  it('never turn from moist to dry when it rains more in every month by the same share', () => {
    fc.assert(
      fc.property(
        months,
        fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 12, maxLength: 12 }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (temps, rain, factor) => {
          const before = computeClimateFromMonths({ monthly_mean_temp_f: temps, monthly_precip_in: rain });
          const after = computeClimateFromMonths({
            monthly_mean_temp_f: temps,
            monthly_precip_in: rain.map((p) => p * factor),
          });
          if (before.moisture_regime !== 'B') expect(after.climate_zone).toBe(before.climate_zone);
        },
      ),
    );
  });

  it('give a zone that the scenario knows, a letter up to zone 6 and none above', () => {
    fc.assert(
      fc.property(months, months, (temps, rain) => {
        const { climate_zone } = computeClimateFromMonths({
          monthly_mean_temp_f: temps,
          monthly_precip_in: rain.map((p) => Math.abs(p) / 10),
        });
        expect(climate_zone).toMatch(/^([0126][AB]|[345][ABC]|7|8)$/);
      }),
    );
  });
});

/** A mild year (mean 50 °F, coldest 40, warmest 60: zone 5) whose letter is then decided by the rain alone. */
const mild = [40, 41.34, 45, 50, 55, 58.66, 60, 58.66, 55, 50, 45, 41.34];
const zone = (temps: readonly number[], rain: readonly number[]) =>
  computeClimateFromMonths({ monthly_mean_temp_f: [...temps], monthly_precip_in: [...rain] });

describe('moisture regime', () => {
  // Limits by hand at a mean of 50 °F: 0.44 (50 - 19.5) = 13.42 in. for rain spread over the year.
  it('is dry below 0.44 (T - 19.5) when the rain is spread over the year', () => {
    expect(zone(mild, same(13.3 / 12)).moisture_regime).toBe('B');
    expect(zone(mild, same(13.6 / 12)).moisture_regime).toBe('A');
  });

  // 0.44 (50 - 7) = 18.92 in. when 70 % or more falls from April to September.
  it('takes the higher limit for summer rain, and says that the older test differs', () => {
    const summer = (annual: number) =>
      mild.map((_, i) => (i >= 3 && i <= 8 ? (annual * 0.8) / 6 : (annual * 0.2) / 6));
    expect(zone(mild, summer(18.8)).moisture_regime).toBe('B');
    expect(zone(mild, summer(18.8)).notes.join(' ')).toContain('older form of the dry test');
    expect(zone(mild, summer(19.1)).moisture_regime).toBe('A');
  });

  // 0.44 (50 - 32) = 7.92 in. when 30 % or less falls from April to September; a year whose warmest month is 73 °F
  // cannot be marine.
  it('takes the lower limit for winter rain', () => {
    const hotSummer = mild.map((t, i) => (i === 6 ? 73 : i === 0 ? 27 : t));
    const winter = (annual: number) =>
      mild.map((_, i) => (i >= 3 && i <= 8 ? (annual * 0.25) / 6 : (annual * 0.75) / 6));
    expect(zone(hotSummer, winter(7.8)).moisture_regime).toBe('B');
    expect(zone(hotSummer, winter(8.1)).moisture_regime).toBe('A');
  });

  const dryJuly = (wettest: number) => mild.map((_, i) => (i === 0 ? wettest : i === 6 ? 1 : 2));
  it('is marine when the wettest cold month has three times the rain of the driest warm one', () => {
    expect(zone(mild, dryJuly(3)).moisture_regime).toBe('C');
    expect(zone(mild, dryJuly(2.9)).moisture_regime).toBe('A');
  });
  it('is not marine with a coldest month below 27 °F, a warmest of 72 °F, or three months above 50 °F', () => {
    const change = (month: number, t: number) => mild.map((x, i) => (i === month ? t : x));
    expect(zone(change(0, 27), dryJuly(3)).moisture_regime).toBe('C');
    expect(zone(change(0, 26.9), dryJuly(3)).moisture_regime).toBe('A');
    expect(zone(change(6, 71.9), dryJuly(3)).moisture_regime).toBe('C');
    expect(zone(change(6, 72), dryJuly(3)).moisture_regime).toBe('A');
    const cool = mild.map((t) => Math.min(t, 50));
    expect(
      zone(
        cool.map((t, i) => (i >= 4 && i <= 7 ? 51 : t)),
        dryJuly(3),
      ).moisture_regime,
    ).toBe('C');
    expect(
      zone(
        cool.map((t, i) => (i >= 4 && i <= 6 ? 51 : t)),
        dryJuly(3),
      ).moisture_regime,
    ).toBe('A');
  });
  it('gives no marine letter outside zones 3 to 5 and says so', () => {
    const cold = [29, 30, 34, 40, 48, 53, 55, 54, 53, 42, 34, 30];
    const result = zone(cold, dryJuly(6));
    expect(result.zone_number).toBe(6);
    expect(result.climate_zone).toBe('6A');
    expect(result.notes.join(' ')).toContain('no marine zone 6');
  });
  it('turns the seasons for the southern hemisphere and says so', () => {
    const turn = <T>(values: readonly T[]) => [...values.slice(6), ...values.slice(0, 6)];
    const south = zone(turn(mild), turn(dryJuly(3)));
    expect(south.climate_zone).toBe(zone(mild, dryJuly(3)).climate_zone);
    expect(south.notes.join(' ')).toContain('southern hemisphere');
  });
});

describe('notes and sources', () => {
  it('say when the degree days lie closer to a limit than the estimate is exact', () => {
    // Some uniform shift of the mild year lands within 3 % of 5,400, another well clear of any limit.
    const notesOf = (t: readonly number[]) => zone(t, same(3)).notes.join(' ');
    const hdd = (shift: number) =>
      zone(
        mild.map((t) => t + shift),
        same(3),
      ).hdd65_f_days;
    const close = [...Array(200).keys()]
      .map((i) => i / 20)
      .find((shift) => Math.abs(hdd(shift) - 5_400) < 50);
    const clear = [...Array(200).keys()]
      .map((i) => i / 20)
      .find((shift) => Math.abs(hdd(shift) - 4_500) < 50);
    expect(notesOf(mild.map((t) => t + (close ?? 0)))).toContain('limit between zones 4 and 5');
    expect(notesOf(mild.map((t) => t + (clear ?? 0)))).not.toContain('close to the limit');
  });
  it('name the standard and say what is from memory', () => {
    const { source } = zone(mild, same(3));
    expect(source.join(' ')).toContain('ANSI/ASHRAE 169');
    expect(source.join(' ')).toContain('from memory');
  });
});

describe('refusals', () => {
  const parse = (input: unknown) => parseInput(climateInputSchema, input);
  const message = (run: () => unknown): string => {
    try {
      run();
    } catch (error) {
      if (error instanceof Refusal) return error.message;
      throw error;
    }
    return 'accepted';
  };

  it('accepts the two forms', () => {
    expect(parse({ state: 'CO', county: 'Boulder' })).toEqual({ state: 'CO', county: 'Boulder' });
    expect(parse({ monthly_mean_temp_f: same(50), monthly_precip_in: same(2) })).toHaveProperty(
      'monthly_precip_in',
    );
  });
  it.each([
    [
      'eleven months',
      { monthly_mean_temp_f: same(50).slice(1), monthly_precip_in: same(2) },
      /monthly_mean_temp_f.*twelve/,
    ],
    [
      'a month in kelvin',
      { monthly_mean_temp_f: same(283), monthly_precip_in: same(2) },
      /monthly_mean_temp_f\[0\]: 283/,
    ],
    [
      'rain below nothing',
      { monthly_mean_temp_f: same(50), monthly_precip_in: same(-1) },
      /monthly_precip_in\[0\]: -1/,
    ],
    ['an unknown key', { state: 'CO', county: 'Boulder', zip: 80302 }, /zip/],
    ['a state in full', { state: 'Colorado', county: 'Boulder' }, /state: "Colorado".*two-letter/],
    ['no county', { state: 'CO' }, /county/],
    ['a text', 'Boulder', /state.*county/],
  ])('refuses %s by name', (_, input, expected) => {
    expect(message(() => parse(input))).toMatch(expected);
  });
  it('refuses eleven months also when called past the schema', () => {
    expect(
      message(() =>
        computeClimateFromMonths({ monthly_mean_temp_f: same(50), monthly_precip_in: same(2).slice(1) }),
      ),
    ).toMatch(/monthly_precip_in: 11 months.*twelve/);
    expect(
      message(() =>
        computeClimateFromMonths({ monthly_mean_temp_f: same(Number.NaN), monthly_precip_in: same(2) }),
      ),
    ).toMatch(/monthly_mean_temp_f\[0\]/);
  });
});
