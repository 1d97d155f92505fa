import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  temperatureDependentR,
  winterProfile,
} from '../../../src/calculators/thermal/temperature-dependence.ts';
import {
  planeTemperature,
  temperatureProfile,
} from '../../../src/calculators/thermal/temperature-profile.ts';
import type { TemperatureCurve } from '../../../src/calculators/thermal/thermal-table.ts';
import { thermalTable } from './read-table.ts';

const temp = fc.double({ min: -60, max: 120, noNaN: true });
const layersArb = fc.array(
  fc.record({ label: fc.constant('layer'), r: fc.double({ min: 0, max: 30, noNaN: true }) }),
  { minLength: 1, maxLength: 10 },
);

describe('planeTemperature', () => {
  // By hand: 70 - 70 · 13/20 = 24.5
  it('matches a hand calculation', () => {
    expect(planeTemperature(70, 0, 13, 20)).toBeCloseTo(24.5, 12);
  });
  it('refuses planes outside the wall and walls without resistance', () => {
    expect(() => planeTemperature(70, 0, 21, 20)).toThrow(/21 of 20/);
    expect(() => planeTemperature(70, 0, -1, 20)).toThrow(/-1 of 20/);
    expect(() => planeTemperature(70, 0, 0, 0)).toThrow(/above 0/);
  });
});

describe('temperatureProfile', () => {
  it('is monotonic and ends at the two air temperatures', () => {
    fc.assert(
      fc.property(layersArb, temp, temp, (layers, inside, outside) => {
        fc.pre(layers.some((layer) => layer.r > 1e-6));
        const temps = temperatureProfile(layers, inside, outside).map((plane) => plane.temp_f);
        const path = [inside, ...temps];
        const falls = outside < inside;
        for (let i = 1; i < path.length; i += 1) {
          const step = (path[i] ?? Number.NaN) - (path[i - 1] ?? Number.NaN);
          expect(falls ? step : -step).toBeLessThanOrEqual(1e-9);
        }
        expect(temps.at(-1)).toBeCloseTo(outside, 9);
      }),
    );
  });
  it('refuses negative layers and temperatures off the earth', () => {
    expect(() => temperatureProfile([{ label: 'board', r: -1 }], 70, 0)).toThrow(/board: -1/);
    expect(() => temperatureProfile([{ label: 'board', r: 1 }], 70, -200)).toThrow(/outside_temp_f: -200/);
    expect(() => temperatureProfile([{ label: 'board', r: 0 }], 70, 0)).toThrow(/above 0/);
  });
});

function curveOf(insulation: TemperatureCurve['insulation']): TemperatureCurve {
  const curve = thermalTable.temperature_curves.find((entry) => entry.insulation === insulation);
  if (!curve) throw new Error(`no curve for ${insulation}`);
  return curve;
}

describe('temperatureDependentR', () => {
  // Relayed measurements: 5.6, 5.0 and 4.5 per inch at 75, 40 and 25 °F.
  it.each([
    [75, 5.6],
    [40, 5],
    [25, 4.5],
  ])('an inch of polyisocyanurate rated R-5.6 has at %d °F R-%f', (mean, r) => {
    expect(temperatureDependentR(curveOf('polyiso'), 5.6, mean).r).toBeCloseTo(r, 10);
  });
  it('from memory: polystyrene gains in the cold', () => {
    expect(temperatureDependentR(curveOf('xps'), 5, 40).r).toBeCloseTo(5.4, 10);
    expect(temperatureDependentR(curveOf('eps'), 4, 25).r).toBeCloseTo(4.6, 10);
  });
  it('runs straight between points', () => {
    expect(temperatureDependentR(curveOf('polyiso'), 5.6, 57.5).r).toBeCloseTo(5.3, 10);
  });
  it('keeps the last measured value beyond the measurements and says so', () => {
    const cold = temperatureDependentR(curveOf('polyiso'), 5.6, 0);
    expect(cold.r).toBeCloseTo(4.5, 10);
    expect(cold.is_beyond_measurements).toBe(true);
    expect(temperatureDependentR(curveOf('polyiso'), 5.6, 25).is_beyond_measurements).toBe(false);
    expect(temperatureDependentR(curveOf('polyiso'), 5.6, 90)).toMatchObject({
      factor: 1,
      is_beyond_measurements: true,
    });
  });
  it('refuses negative ratings', () => {
    expect(() => temperatureDependentR(curveOf('eps'), -1, 40)).toThrow(/rated_r/);
  });
});

describe('winterProfile', () => {
  const wall = (curve?: TemperatureCurve) => [
    { label: 'inside film', r: 0.68 },
    { label: 'gypsum board', r: 0.45 },
    { label: 'cavity insulation', r: 20 },
    { label: 'sheathing', r: 0.62 },
    { label: 'board', r: 12, ...(curve ? { curve } : {}) },
    { label: 'outside film', r: 0.17 },
  ];
  const sheathing = (profile: { interfaces: readonly { after: string; temp_f: number }[] }) =>
    profile.interfaces.find((plane) => plane.after === 'cavity insulation')?.temp_f ?? Number.NaN;

  it('is the plain profile without curves', () => {
    const plain = temperatureProfile(wall(), 70, 10);
    expect(winterProfile(wall(), 70, 10, true).interfaces).toEqual(plain);
  });
  it('settles: the board has the resistance of its own mean temperature', () => {
    const profile = winterProfile(wall(curveOf('polyiso')), 70, 10, true);
    const at = (label: string) =>
      profile.interfaces.find((plane) => plane.after === label)?.temp_f ?? Number.NaN;
    const mean = (at('sheathing') + at('board')) / 2;
    const board = profile.layers.find((layer) => layer.label === 'board')?.r ?? Number.NaN;
    expect(board).toBeCloseTo(temperatureDependentR(curveOf('polyiso'), 12, mean).r, 3);
    expect(board).toBeLessThan(12);
  });
  it('polyisocyanurate makes the sheathing colder, polystyrene warmer only when gains are credited', () => {
    const plain = sheathing(winterProfile(wall(), 70, 10, true));
    expect(sheathing(winterProfile(wall(curveOf('polyiso')), 70, 10, false))).toBeLessThan(plain);
    expect(sheathing(winterProfile(wall(curveOf('xps')), 70, 10, true))).toBeGreaterThan(plain);
    expect(sheathing(winterProfile(wall(curveOf('xps')), 70, 10, false))).toBe(plain);
  });
  it('names layers colder than they were measured', () => {
    expect(winterProfile(wall(curveOf('polyiso')), 70, -30, true).beyond_measurements).toEqual(['board']);
    expect(winterProfile(wall(curveOf('polyiso')), 70, 40, true).beyond_measurements).toEqual([]);
  });
  it('stays monotonic and ends outdoors at any temperature', () => {
    fc.assert(
      fc.property(
        temp,
        temp,
        fc.constantFrom('polyiso', 'xps', 'eps' as const),
        fc.boolean(),
        (a, b, id, credit) => {
          const temps = winterProfile(wall(curveOf(id)), a, b, credit).interfaces.map(
            (plane) => plane.temp_f,
          );
          const sign = Math.sign(b - a);
          for (let i = 1; i < temps.length; i += 1) {
            expect(sign * ((temps[i] ?? 0) - (temps[i - 1] ?? 0))).toBeGreaterThanOrEqual(-1e-9);
          }
          expect(temps.at(-1)).toBeCloseTo(b, 9);
        },
      ),
    );
  });
});
