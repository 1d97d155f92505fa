import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import moistureJson from '../../rules/vapour/moisture.table.json' with { type: 'json' };
import { moistureTableSchema } from '../../src/calculators/moisture/moisture-table.ts';
import {
  muFromPermeability,
  ngFromPerm,
  PERM_KG_S_M2_PA,
  permFromLayers,
  permFromPermeability,
  sdFromPerm,
} from '../../src/calculators/moisture/permeance.ts';
import { saturationPressure, vapourPressure } from '../../src/calculators/moisture/psychrometrics.ts';
import { sheathingDewPoint } from '../../src/calculators/moisture/sheathing-dew-point.ts';
import { requiredTemperatureFactor, surfaceHumidity } from '../../src/calculators/moisture/surface-mould.ts';

const table = moistureTableSchema.parse(moistureJson);

describe('permeance units', () => {
  it('one perm is 5.72135e-11 kg/(Pa·s·m²), NIST SP 811 appendix B (perm, 0 °C), from memory', () => {
    expect(Math.abs(PERM_KG_S_M2_PA / 5.72135e-11 - 1)).toBeLessThan(2e-6);
  });
  // National and provincial building code of Canada 9.25.4.2: 60 ng/(Pa·s·m²), known as about 1 perm.
  it("Canada's vapour barrier limit of 60 ng is 1.05 perm", () => {
    expect(ngFromPerm(1.05)).toBeCloseTo(60, 0);
  });
  // Construction magazine and house-building book: 6 mil polyethylene 0.06 perm.
  it('6 mil polyethylene of 0.06 perm has an sd of 58 m, beside 50 m in ISO 10456 from memory', () => {
    expect(sdFromPerm(0.06)).toBeCloseTo(58.3, 1);
  });
  // Guide to insulating sheathing: XPS 1.1 perm at 1 in., 0.55 at 2 in.
  it('XPS halves from 1.1 perm at 1 in. to 0.55 at 2 in., and two boards make the same', () => {
    expect(permFromPermeability(1.1, 2)).toBeCloseTo(0.55, 12);
    expect(permFromLayers([1.1, 1.1])).toBeCloseTo(0.55, 12);
  });
  // ASTM C578-10 maximum for Type I EPS 5.0 perm·in against mu 60 in European lists (encyclopaedia and roofing guide):
  // maximum permeability is the open end, so its mu lies below.
  it('EPS of 5 perm·in has a mu of 27.5, on the open side of the European design value 60', () => {
    expect(muFromPermeability(5)).toBeCloseTo(27.5, 1);
  });
});

describe('indoor dew point', () => {
  it('of 70 °F and 35 % agrees with the ASHRAE equations within 0.1 °F', () => {
    psychrolib.SetUnitSystem(psychrolib.IP);
    const theirs = psychrolib.GetTDewPointFromRelHum(70, 0.35);
    psychrolib.SetUnitSystem(psychrolib.SI);
    const ours = sheathingDewPoint(
      { r_inside_of_sheathing: 10, r_total: 20, winter_mean_temp_f: 20 },
      table.indoor_winter,
    ).indoor_dew_point_f;
    expect(Math.abs(ours - theirs)).toBeLessThan(0.1);
  });
});

describe('surface mould', () => {
  const standard = { inside_temp_c: 20, inside_pa: vapourPressure(20, 0.5), outside_temp_c: -5 };

  // DIN 4108-2: fRsi at least 0.70 at 20 °C, 50 % and -5 °C (several technical pages).
  it('asks for a temperature factor of 0.70 in the DIN 4108-2 case', () => {
    const { required } = requiredTemperatureFactor([standard], table.surface_mould.critical_rh);
    expect(required).toBeCloseTo(0.7, 2);
  });
  it('puts that surface at 12.6 °C, DIN 4108-2 from memory', () => {
    const surface_c = -5 + 25 * (requiredTemperatureFactor([standard], 0.8).required ?? Number.NaN);
    expect(surface_c).toBeCloseTo(12.6, 1);
  });
  it('has 80 % within one at a surface of factor 0.70, which is printed with two digits', () => {
    expect(Math.abs(surfaceHumidity(20, -5, 0.5, 0.7) - 0.8)).toBeLessThan(0.01);
  });
});

describe('humidity classes', () => {
  // The two columns of the annex say the same thing: Δp = Δv · 461.5 J/(kg·K) · T, at about 20 °C.
  it.each(table.humidity_classes)(
    'class $class: $max_excess_g_m3 g/m³ and $max_excess_pa Pa agree within 1 %',
    (row) => {
      const pa = (row.max_excess_g_m3 / 1000) * 461.5 * 293.15;
      expect(Math.abs(row.max_excess_pa / pa - 1)).toBeLessThan(0.01);
    },
  );
  it('are all marked as from memory', () => {
    expect(table.humidity_classes.map((c) => c.provenance)).toEqual(Array(5).fill('memory'));
  });
  it.each([
    [1, 270],
    [2, 540],
    [3, 810],
    [4, 1080],
    [5, 1360],
  ])('class %i is %i Pa at its upper end, ISO 13788 from memory', (humidity_class, pa) => {
    expect(table.humidity_classes.find((c) => c.class === humidity_class)?.max_excess_pa).toBe(pa);
  });
  it('keep a 20 °C room of class 3 below saturation at 0 °C and 80 % outdoors', () => {
    expect(vapourPressure(0, 0.8) + 810).toBeLessThan(saturationPressure(20));
  });
});
