import { describe, expect, it } from 'vitest';
import { windZones, windZonesSchema } from '../../src/assessment/wind-zones.ts';
import { edgeZoneWidth_ft } from '../../src/calculators/wind.ts';
import { contextOf } from './schedule-walls.ts';

const zonesOf = async (change: object) => windZonesSchema.parse(windZones(await contextOf(change)));

describe('windZones', () => {
  // ASCE 7-16 by hand: Kz = 2.01 (25/1200)^(2/7) = 0.6650; q = 0.00256 x 0.665 x 0.85 x 105² = 15.95 psf;
  // zone 4 outward -(1.1 + 0.18) q = -20.4, zone 5 -(1.4 + 0.18) q = -25.2, inward (1.0 + 0.18) q = 18.8; 0.6 of each.
  it('matches a hand calculation for a calm place', async () => {
    const told = await zonesOf({ basic_wind_speed_mph: 105, exposure: 'B', mean_roof_height_ft: 25 });
    expect(told.velocity_pressure_psf).toBeCloseTo(15.95, 2);
    const [field, corner] = told.zones;
    expect(field).toMatchObject({ zone: 4, name: 'field' });
    expect(corner).toMatchObject({ zone: 5, name: 'corner' });
    expect(field?.strength.outward_psf).toBeCloseTo(-20.42, 1);
    expect(corner?.strength.outward_psf).toBeCloseTo(-25.21, 1);
    expect(corner?.strength.inward_psf).toBeCloseTo(18.83, 1);
    expect(field?.allowable.outward_psf).toBeCloseTo(-12.25, 2);
    expect(corner?.allowable.outward_psf).toBeCloseTo(-15.12, 2);
  });

  it('says which standard goes with the edition (from memory)', async () => {
    for (const [code_edition, standard] of [
      ['2018', 'ASCE 7-16'],
      ['2021', 'ASCE 7-16'],
      ['2024', 'ASCE 7-22'],
    ]) {
      const told = await zonesOf({ code_edition });
      expect(told.standard).toBe(standard);
      expect(told.why_this_standard).toContain(`The ${code_edition} codes refer to ${standard}`);
    }
  });

  it('holds the corners to the pressure that the wall was judged by', async () => {
    const context = await contextOf({ basic_wind_speed_mph: 140, exposure: 'C' });
    const corner = windZones(context).zones.find(({ zone }) => zone === 5);
    expect(corner?.allowable.outward_psf).toBe(-context.outward_wind_psf);
  });

  // Note on dimension a: the lesser of a tenth of the plan and 0.4 h, at least 4 % of the plan and 3 ft.
  it('takes the widest corner zone of an ordinary plan where the plan is not known', async () => {
    for (const mean_roof_height_ft of [8, 15, 25, 60]) {
      const { corner_zone } = await zonesOf({ mean_roof_height_ft });
      for (let least_ft = 10; least_ft <= 10 * mean_roof_height_ft; least_ft += 5) {
        expect(corner_zone.corner_width_ft + 0.05).toBeGreaterThanOrEqual(
          edgeZoneWidth_ft(least_ft, mean_roof_height_ft),
        );
      }
    }
    const { corner_zone } = await zonesOf({ mean_roof_height_ft: 25 });
    expect(corner_zone).toMatchObject({
      corner_width_ft: 10,
      building_least_width_ft: null,
      is_assumed: true,
    });
    expect(corner_zone.text).toMatch(/10 % of its least plan dimension or 10 ft .*at least 3 ft.*not known/);
  });

  // By hand, ASCE 7-16 Figure 30.3-1 note on a, 22 ft to the mean roof (0.4 h = 8.8 ft): a 24 ft plan 2.4 ft, so
  // 3 ft; 40 ft 4 ft; 120 ft 8.8 ft (not 12); 250 ft 4 % = 10 ft. Corner area 8 a h of 1,800 ft²: 528, 704, 1548.8, 1760.
  it.each([
    [24, 3, 528],
    [40, 4, 704],
    [120, 8.8, 1548.8],
    [250, 10, 1760],
  ])('of a plan %d ft wide marks %d ft from each corner, %d ft² in all', async (width, a_ft, area) => {
    const { corner_zone } = await zonesOf({ building_least_width_ft: width });
    expect(corner_zone).toMatchObject({
      corner_width_ft: a_ft,
      building_least_width_ft: width,
      is_assumed: false,
    });
    expect(corner_zone.corner_area_ft2).toBeCloseTo(area, 6);
    expect(corner_zone.field_area_ft2).toBeCloseTo(1800 - area, 6);
  });

  it('never counts more corner than there is wall', async () => {
    const { corner_zone } = await zonesOf({ wall_area_ft2: 300 });
    expect(corner_zone).toMatchObject({ corner_area_ft2: 300, field_area_ft2: 0 });
  });
});
