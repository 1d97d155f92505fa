import { describe, expect, it } from 'vitest';
import { degreeDays } from '../../src/calculators/degree-days.ts';

// Degree days of TMY3 typical years (NREL/TP-581-43156): summed over the 365 daily means of the hourly files, base
// 18.3 °C and 10 °C, beside the monthly means of the same files. The estimate sees only the monthly means.
const TYPICAL_YEARS: readonly (readonly [string, readonly number[], number, number])[] = [
  ['Key West FL', [19.7, 21.9, 23.5, 24.9, 26.8, 28.5, 29.4, 29.3, 28.6, 26.9, 25.1, 21.9], 35, 5681],
  ['Savannah GA', [9.0, 11.1, 16.7, 19.1, 23.3, 26.5, 27.4, 26.5, 24.8, 19.0, 16.1, 9.5], 995, 3522],
  ['Austin TX', [10.9, 13.5, 16.8, 21.6, 23.5, 26.9, 28.9, 27.3, 24.6, 21.7, 17.4, 12.3], 736, 3947],
  ['Yuma AZ', [16.2, 14.7, 19.9, 22.9, 25.9, 30.4, 34.7, 35.6, 31.3, 24.3, 19.7, 15.0], 319, 5208],
  ['Shreveport LA', [6.0, 9.7, 15.0, 19.1, 22.6, 25.6, 27.6, 28.2, 24.9, 17.2, 14.7, 7.4], 1322, 3342],
  ['Little Rock AR', [2.7, 7.8, 11.2, 16.8, 21.1, 26.0, 27.5, 27.3, 23.8, 16.7, 11.9, 5.6], 1744, 2989],
  ['Riverside CA', [9.4, 14.2, 13.5, 12.7, 19.8, 23.1, 24.2, 24.4, 23.2, 20.8, 10.7, 10.7], 1243, 2786],
  ['Sacramento CA', [8.5, 10.3, 12.0, 14.2, 18.4, 21.1, 23.5, 22.5, 21.0, 16.8, 10.5, 7.5], 1529, 2208],
  ['Santa Rosa CA', [8.4, 10.7, 10.9, 13.2, 16.1, 18.3, 17.1, 18.6, 18.4, 13.7, 10.3, 8.9], 1786, 1512],
  ['Roanoke VA', [1.9, 3.8, 9.3, 13.8, 17.8, 22.9, 24.3, 23.1, 19.9, 13.6, 9.8, 2.1], 2351, 2155],
  ['Indianapolis IN', [-4.4, -3.0, 6.4, 11.5, 18.0, 22.6, 24.6, 23.1, 18.2, 11.6, 5.1, -2.0], 3233, 1975],
  ['Prescott AZ', [1.9, 6.3, 7.1, 12.3, 17.3, 23.1, 24.5, 23.4, 20.0, 14.2, 7.3, 4.3], 2355, 2021],
  ['Salem OR', [4.9, 5.2, 8.4, 10.4, 13.4, 17.4, 20.1, 19.5, 16.7, 11.3, 8.5, 4.5], 2550, 1282],
  ['Scranton PA', [-2.3, -2.5, 2.1, 10.2, 15.7, 20.5, 22.9, 20.1, 16.2, 11.6, 5.0, -1.6], 3413, 1515],
  ['Fort Wayne IN', [-5.5, -4.4, 3.4, 10.1, 16.4, 21.3, 22.7, 22.0, 18.1, 10.9, 4.1, -3.6], 3576, 1725],
  ['Grand Rapids MI', [-5.7, -4.7, 1.3, 9.0, 15.6, 20.0, 22.5, 20.5, 16.6, 8.7, 4.5, -3.1], 3793, 1478],
  ['Grand Junction CO', [-2.1, 1.2, 6.6, 11.8, 17.3, 23.6, 26.0, 24.4, 19.9, 12.6, 3.9, -1.2], 2978, 2062],
  ['Redmond OR', [-0.2, 2.6, 3.8, 8.4, 10.3, 16.1, 19.7, 17.4, 14.4, 9.1, 1.8, 1.2], 3634, 952],
  ['Port Angeles WA', [4.2, 4.2, 5.9, 9.0, 10.0, 13.3, 15.0, 15.7, 13.4, 9.3, 6.7, 4.1], 3321, 587],
  ['Burlington VT', [-7.2, -5.6, -0.5, 7.8, 13.8, 19.3, 21.1, 19.8, 15.1, 8.7, 2.8, -1.5], 4055, 1285],
  ['Sault Ste. Marie MI', [-11.7, -9.9, -3.0, 2.6, 11.2, 15.8, 17.9, 17.1, 13.0, 6.2, 2.1, -6.9], 5072, 809],
  ['Helena MT', [-4.7, -3.7, 2.1, 6.2, 11.8, 17.4, 20.5, 18.5, 14.7, 6.3, 1.1, -5.0], 4253, 1066],
  ['Jackson WY', [-5.3, -8.9, -0.4, 4.3, 7.6, 12.2, 16.7, 14.6, 11.3, 2.9, -3.4, -7.4], 5326, 544],
  ['Kotzebue AK', [-17.7, -17.2, -16.4, -10.9, -0.8, 6.8, 13.0, 11.8, 6.3, -4.1, -12.6, -17.2], 8455, 176],
];

const fahrenheit = (temps: readonly number[]) => temps.map((t) => t * 1.8 + 32);

describe('degree days from monthly means against hourly typical years', () => {
  const cold = TYPICAL_YEARS.filter(([, , hdd]) => hdd > 2000);
  it.each(cold)('heating base 65 °F of %s is within 3.5 %', (_, temps, hdd) => {
    const estimate = degreeDays(fahrenheit(temps), 65, 'heating') / 1.8;
    expect(Math.abs(estimate / hdd - 1)).toBeLessThan(0.035);
  });

  const hot = TYPICAL_YEARS.filter(([, , , cdd]) => cdd > 3000);
  it.each(hot)('cooling base 50 °F of %s is within 4 %', (_, temps, _hdd, cdd) => {
    const estimate = degreeDays(fahrenheit(temps), 50, 'cooling') / 1.8;
    expect(Math.abs(estimate / cdd - 1)).toBeLessThan(0.04);
  });

  it('has enough of both to mean something', () => {
    expect(cold.length).toBeGreaterThanOrEqual(14);
    expect(hot.length).toBeGreaterThanOrEqual(4);
  });
});
