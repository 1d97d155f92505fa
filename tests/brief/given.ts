import { parseInput } from '../../src/base/parse-input.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';

/** A scenario that leaves nothing open. */
export const COMPLETE = {
  schema: 'cladwright-scenario/1',
  name: 'Juniper Street, west wall',
  place: { climate_zone: '5A' },
  project: 'retrofit',
  code_edition: '2018',
  framing: { material: 'wood', depth_in: 3.5, spacing_in: 24, species_gravity: 0.5 },
  sheathing: 'boards',
  cavity_insulation_r: 11,
  interior_vapour_retarder: 'class-ii',
  windows: [
    {
      count: 3,
      width_in: 30,
      height_in: 48,
      glazing: 'double',
      mounting: 'flangeless',
      operation: 'hung',
      weight_lb: 70,
      frame: 'vinyl',
      lite_in: '1/8',
      rough_opening_width_in: 31,
      rough_opening_height_in: 49,
    },
  ],
  rough_opening_can_change: true,
  flange_plane: 'insulation-face',
  finish: 'stucco-look',
  budget_usd_per_ft2: 31,
  crew_skill: 'first-time',
  wall_area_ft2: 900,
  building_least_width_ft: 24,
  basic_wind_speed_mph: 120,
  exposure: 'D',
  mean_roof_height_ft: 18,
  fire_separation_ft: 4,
  wildfire_area: false,
  termite_area: 'very-heavy',
  max_added_thickness_in: 5,
  thermal_assumptions: {
    framing_style: 'advanced',
    framing_fraction: 0.2,
    film_inside_r: 0.7,
    film_outside_r: 0.2,
  },
  price_book: { region_factor: 1.1, labour_usd_per_h: 80 },
  priorities: { cost: 2, moisture_safety: 3, energy: 0, ease: 4, carbon: 5 },
} as const;

/** Checked like a file from outside. */
export function scenario(given: object): Scenario {
  return parseInput(scenarioSchema, given);
}
