import fc from 'fast-check';
import { CLIMATE_ZONES } from '../../src/base/climate-zones.ts';
import * as given from '../../src/brief/scenario.ts';

const orUnknown = <T>(value: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 9, arbitrary: value }, { weight: 1, arbitrary: fc.constant('unknown' as const) });
const among = <T>(...values: readonly T[]) => orUnknown(fc.constantFrom(...values));
const between = (min: number, max: number) => orUnknown(fc.double({ min, max, noNaN: true }));
const optional = <T>(fields: { [K in keyof T]: fc.Arbitrary<T[K]> }) =>
  fc.record(fields, { requiredKeys: [] });

const months = (min: number, max: number) =>
  fc.array(fc.double({ min, max, noNaN: true }), { minLength: 12, maxLength: 12 });

const place = fc.oneof(
  fc.constantFrom(...CLIMATE_ZONES).map((climate_zone) => ({ climate_zone })),
  fc.constantFrom(
    { state: 'MN', county: 'Stearns' },
    { state: 'FL', county: 'Miami-Dade' },
    { state: 'AK', county: 'Fairbanks North Star' },
    { state: 'WA', county: 'King' },
  ),
  fc.record({ monthly_mean_temp_f: months(-30, 100), monthly_precip_in: months(0, 20) }),
);

const oneWindow = optional({
  count: orUnknown(fc.integer({ min: 1, max: 12 })),
  width_in: between(12, 120),
  height_in: between(12, 100),
  glazing: among(...given.GLAZINGS),
  mounting: among(...given.MOUNTINGS),
  operation: among(...given.OPERATIONS),
  weight_lb: between(20, 500),
});

const wood = optional({
  material: fc.constant('wood'),
  depth_in: among(3.5, 5.5, 7.25, 2.5, 9.25),
  spacing_in: among(16, 19.2, 24),
  species_gravity: between(0.3, 0.75),
});
const steel = fc.record({
  material: fc.constant('steel'),
  depth_in: fc.constantFrom(3.5, 3.625, 6, 8),
  spacing_in: fc.constantFrom(16, 24),
});

/** Any scenario that the schema lets through, with as little left open as makes a quick answer. */
export const scenarios = fc
  .record(
    {
      schema: fc.constant('cladwright-scenario/1'),
      place,
      project: among(...given.PROJECT_KINDS),
      code_edition: among(...given.CODE_EDITIONS),
      framing: fc.oneof({ weight: 3, arbitrary: wood }, { weight: 1, arbitrary: steel }),
      sheathing: among(...given.SHEATHINGS),
      cavity_insulation_r: among(0, 11, 13, 15, 19, 20, 21, 23),
      interior_vapour_retarder: among(...given.RETARDERS),
      windows: orUnknown(fc.array(oneWindow, { maxLength: 2 })),
      rough_opening_can_change: among(true, false),
      finish: among(...given.FINISHES),
      budget_usd_per_ft2: between(10, 90),
      crew_skill: among(...given.CREW_SKILLS),
      wall_area_ft2: between(300, 20_000),
      basic_wind_speed_mph: between(85, 180),
      exposure: among(...given.EXPOSURES),
      mean_roof_height_ft: between(8, 60),
      fire_separation_ft: between(0, 60),
      wildfire_area: among(true, false),
      termite_area: among(...given.TERMITE_AREAS),
      max_added_thickness_in: between(2, 20),
      priorities: orUnknown(
        optional({
          cost: between(0, 10),
          moisture_safety: between(0, 10),
          energy: between(0, 10),
          ease: between(0, 10),
          carbon: between(0, 10),
        }),
      ),
    },
    // What else is left out is tried in other readings too, each as long as an answer: let that be little.
    {
      requiredKeys: [
        'schema',
        'place',
        'framing',
        'code_edition',
        'sheathing',
        'finish',
        'crew_skill',
        'project',
      ],
    },
  )
  .map((scenario) => given.scenarioSchema.parse(scenario));
