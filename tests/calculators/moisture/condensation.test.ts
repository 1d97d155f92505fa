import { describe, expect, it } from 'vitest';
import moistureJson from '../../../rules/vapour/moisture.table.json' with { type: 'json' };
import { parseInput } from '../../../src/base/parse-input.ts';
import { Refusal } from '../../../src/base/refusal.ts';
import { computeCondensation } from '../../../src/calculators/moisture/condensation.ts';
import {
  condensationInputSchema,
  monthNumber,
} from '../../../src/calculators/moisture/condensation-input.ts';
import { humidityClassExcess } from '../../../src/calculators/moisture/humidity-class.ts';
import { moistureTableSchema } from '../../../src/calculators/moisture/moisture-table.ts';

const table = moistureTableSchema.parse(moistureJson);

const TEMPS_C = [-10, -8, -2, 6, 12, 17, 20, 19, 14, 8, 1, -7];
const outside = TEMPS_C.map((temp_c, i) => ({ month: i + 1, temp_c, rh: 0.7 }));
const layers = [
  { label: 'painted gypsum board', r_m2kw: 0.08, sd_m: 0.7 },
  { label: 'cavity insulation', r_m2kw: 3.5, sd_m: 0.15 },
  { label: 'OSB', r_m2kw: 0.11, sd_m: 4 },
  { label: 'stucco', r_m2kw: 0.03, sd_m: 1 },
];
const input = { inside: { temp_c: 20, rh: 0.5 }, outside, layers, rsi_m2kw: 0.13, rse_m2kw: 0.04 };

function ask(changes: Record<string, unknown>) {
  return computeCondensation(table, parseInput(condensationInputSchema, { ...input, ...changes }));
}

describe('computeCondensation', () => {
  it('finds the water of a cold winter behind the sheathing, and begins where it begins', () => {
    const found = ask({});
    expect(found.months).toHaveLength(12);
    expect(found.months[0]?.month).toBe(found.start_month);
    expect(found.months[0]?.condensate_kg_m2).toBeGreaterThan(0);
    expect(found.peak_kg_m2).toBeGreaterThan(0.5);
    expect(found.dries_out).toBe(true);
    expect(found.interfaces.map((i) => i.after)).toEqual([
      'painted gypsum board',
      'cavity insulation',
      'OSB',
    ]);
    expect(found.interfaces[1]?.peak_kg_m2).toBeCloseTo(found.peak_kg_m2, 12);
    expect(found.interfaces[0]?.peak_kg_m2).toBe(0);
  });

  it('has no start month and no water where nothing condenses', () => {
    const found = ask({ inside: { temp_c: 20, rh: 0.1 } });
    expect(found.start_month).toBeNull();
    expect(found.peak_kg_m2).toBe(0);
    expect(found.dries_out).toBe(true);
    expect(found.months.map((m) => m.month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('says so when water is left after a year', () => {
    // Permafrost outdoors: every month condenses.
    const found = ask({ outside: outside.map((m) => ({ ...m, temp_c: -10 })) });
    expect(found.dries_out).toBe(false);
    expect(found.start_month).toBe(1);
    expect(found.notes.join(' ')).toContain('every month');
  });

  it('takes months in any order, by number, name or three letters, and names them as given', () => {
    const names = [
      'Jan',
      'february',
      'MAR',
      'April',
      'may',
      'jun',
      'July',
      'aug',
      'Sep',
      'oct',
      'nov',
      'Dec',
    ];
    const named = outside.map((m, i) => ({ ...m, month: names[i] }));
    const turned = [...named.slice(7), ...named.slice(0, 7)];
    const found = ask({ outside: turned });
    expect(found.peak_kg_m2).toBeCloseTo(ask({}).peak_kg_m2, 12);
    expect(names).toContain(found.start_month);
    expect(found.months[0]?.month).toBe(found.start_month);
  });

  it('keeps twelve indoor months beside the outdoor months they were given with', () => {
    const inside = TEMPS_C.map((_, i) => ({ temp_c: 20 + i / 10, rh: 0.4 + i / 100 }));
    const turn = <T>(list: readonly T[]) => [...list.slice(5), ...list.slice(0, 5)];
    const plain = ask({ inside });
    const turned = ask({ inside: turn(inside), outside: turn(outside) });
    expect(turned.peak_kg_m2).toBeCloseTo(plain.peak_kg_m2, 12);
    expect(turned.start_month).toBe(plain.start_month);
  });

  it('gives the same for steady air and for twelve equal months', () => {
    const inside = TEMPS_C.map(() => ({ temp_c: 20, rh: 0.5 }));
    expect(ask({ inside }).months).toEqual(ask({}).months);
  });

  it('wets more with a higher humidity class, and says that the class figures are from memory', () => {
    const peaks = [1, 2, 3, 4, 5].map(
      (humidity_class) => ask({ inside: { temp_c: 20, humidity_class } }).peak_kg_m2,
    );
    expect([...peaks].sort((a, b) => a - b)).toEqual(peaks);
    expect(ask({ inside: { temp_c: 20, humidity_class: 3 } }).notes.join(' ')).toContain('from memory');
    expect(ask({}).source.join(' ')).not.toContain('humidity classes');
  });

  it('cuts a humidity class to saturation in a hot damp month, and says so', () => {
    const hot = outside.map((m) => ({ ...m, temp_c: m.temp_c + 10, rh: 0.9 }));
    const found = ask({ inside: { temp_c: 20, humidity_class: 5 }, outside: hot });
    expect(found.notes.join(' ')).toContain('above saturation in');
  });

  it('takes the usual surface resistances where none are given', () => {
    const { rsi_m2kw: _rsi, rse_m2kw: _rse, ...rest } = input;
    const found = computeCondensation(table, parseInput(condensationInputSchema, rest));
    expect(found).toEqual(ask({}));
  });

  it('always tells the limits of the method', () => {
    expect(ask({}).notes.join(' ')).toMatch(/no air leakage.*no rain/);
    expect(ask({}).source[0]).toContain('ISO 13788:2012');
  });

  it('names a plane inside a thick layer only where water forms there', () => {
    const thick = [
      { label: 'lining', r_m2kw: 0.05, sd_m: 0.1 },
      { label: 'foam', r_m2kw: 3, sd_m: 6 },
      { label: 'render', r_m2kw: 0.03, sd_m: 0.5 },
    ];
    const found = ask({ layers: thick, inside: { temp_c: 20, rh: 0.8 } });
    const inner = found.interfaces.filter((i) => i.after.startsWith('foam, '));
    expect(inner.length).toBeGreaterThan(0);
    expect(inner.every((i) => i.peak_kg_m2 > 0)).toBe(true);
    expect(found.interfaces.some((i) => i.after === 'foam')).toBe(true);
  });
});

describe('condensation input that is refused', () => {
  const refusal = (changes: Record<string, unknown>): string => {
    try {
      ask(changes);
    } catch (error) {
      if (error instanceof Refusal) return error.message;
      throw error;
    }
    return 'accepted';
  };
  const change = (index: number, patch: Record<string, unknown>) =>
    outside.map((m, i) => (i === index ? { ...m, ...patch } : m));

  it.each([
    [
      'humidity in percent indoors',
      { inside: { temp_c: 20, rh: 50 } },
      /inside\.rh: 50 .*did you mean 0\.5\?/,
    ],
    [
      'humidity in percent outdoors',
      { outside: change(3, { rh: 70 }) },
      /outside\[3\]\.rh: 70 .*did you mean 0\.7\?/,
    ],
    [
      'negative humidity',
      { outside: change(3, { rh: -0.1 }) },
      /outside\[3\]\.rh: -0\.1 .*0 to 1, for example 0\.5\./,
    ],
    ['eleven months', { outside: outside.slice(1) }, /outside: .*twelve months/],
    [
      'eleven indoor months',
      { inside: outside.slice(1).map(() => ({ temp_c: 20, rh: 0.5 })) },
      /inside: .*twelve/,
    ],
    ['a month twice', { outside: change(3, { month: 1 }) }, /outside\[3\]\.month: 1 .*twice/],
    ['a month that is none', { outside: change(3, { month: 13 }) }, /outside\[3\]\.month: 13 .*1 to 12/],
    ['a misspelt month', { outside: change(3, { month: 'Avril' }) }, /outside\[3\]\.month: "Avril"/],
    ['no layers', { layers: [] }, /layers: .*at least one layer/],
    [
      'no vapour resistance',
      { layers: layers.map((l) => ({ ...l, sd_m: 0 })) },
      /layers: sd_m 0, 0.*no vapour resistance/,
    ],
    ['negative sd', { layers: [{ ...layers[0], sd_m: -1 }] }, /layers\[0\]\.sd_m: -1/],
    ['a layer without sd', { layers: [{ label: 'x', r_m2kw: 1 }] }, /layers\[0\]\.sd_m: \(nothing\)/],
    ['humidity and class at once', { inside: { temp_c: 20, rh: 0.5, humidity_class: 3 } }, /inside: /],
    ['class 6', { inside: { temp_c: 20, humidity_class: 6 } }, /inside\.humidity_class: 6 .*1 to 5/],
    ['a temperature in kelvin', { outside: change(0, { temp_c: 263 }) }, /outside\[0\]\.temp_c: 263/],
    ['an unknown key', { wind: 3 }, /wind: 3 .*not known/],
    [
      'open layers before a cold plane',
      { layers: layers.map((l, i) => (i < 2 ? { ...l, sd_m: 0 } : l)) },
      /layers\[0\]\.sd_m: 0 .*dew point/,
    ],
  ])('%s', (_name, changes, message) => {
    expect(refusal(changes)).toMatch(message);
  });
});

describe('monthNumber', () => {
  it('knows numbers, names and three letters', () => {
    expect([1, 12, 'jan', 'December', ' Sep ', 'MAY'].map(monthNumber)).toEqual([1, 12, 1, 12, 9, 5]);
  });
  it('knows nothing else', () => {
    expect([0, 13, 1.5, 'sept', '1', '', 'ja'].map(monthNumber)).toEqual(Array(7).fill(null));
  });
});

describe('humidityClassExcess', () => {
  it('is constant in frost, half at 10 °C and nought from 20 °C', () => {
    expect([-20, 0, 10, 20, 30].map((t) => humidityClassExcess(table, 3, t))).toEqual([810, 810, 405, 0, 0]);
  });
  it('refuses class 6', () => {
    expect(() => humidityClassExcess(table, 6, 0)).toThrow(Refusal);
  });
});
