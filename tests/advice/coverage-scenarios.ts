import type { Scenario } from '../../src/brief/scenario.ts';
import { job } from './pipeline.ts';

/** Invented jobs at the edges of what is asked: together with the samples they reach every rule that can be reached. */
export const COVERAGE_SCENARIOS: readonly Scenario[] = [
  // A small, tall, steel-framed infill a step from its neighbour.
  job({
    name: 'Narrow lot infill',
    place: { climate_zone: '4A' },
    framing: { material: 'steel', depth_in: 3.625, spacing_in: 16 },
    cavity_insulation_r: 13,
    wall_area_ft2: 400,
    mean_roof_height_ft: 55,
    fire_separation_ft: 2,
    budget_usd_per_ft2: 100,
  }),
  // By the sea in a hurricane region, studs of light wood, an old edition.
  job({
    name: 'Dune house',
    place: { state: 'FL', county: 'Miami-Dade' },
    code_edition: '2018',
    framing: { material: 'wood', depth_in: 3.5, spacing_in: 24, species_gravity: 0.36 },
    cavity_insulation_r: 13,
    basic_wind_speed_mph: 180,
    exposure: 'D',
    mean_roof_height_ft: 45,
    sheathing: 'none',
    wildfire_area: true,
  }),
  // Interior Alaska, everything outside the studs.
  job({
    name: 'North fork cabin',
    place: { state: 'AK', county: 'Fairbanks North Star' },
    cavity_insulation_r: 0,
    windows: [
      { count: 2, width_in: 60, height_in: 48, glazing: 'triple', mounting: 'flanged', operation: 'fixed' },
    ],
  }),
  job({
    name: 'North fork cabin, insulated studs',
    place: { climate_zone: '8' },
    framing: { material: 'wood', depth_in: 7.25, spacing_in: 16, species_gravity: 0.5 },
    cavity_insulation_r: 30,
    code_edition: '2018',
  }),
  // An old wall with polyethylene in a warm zone, and one with kraft facing.
  job({
    name: 'Poly in the south',
    place: { climate_zone: '2A' },
    project: 'retrofit',
    interior_vapour_retarder: 'class-i',
    rough_opening_can_change: true,
  }),
  // The same where a winter counts as well, and where the air is dry.
  job({
    name: 'Poly between two seasons',
    place: { climate_zone: '4A' },
    project: 'retrofit',
    interior_vapour_retarder: 'class-i',
  }),
  job({
    name: 'Poly in the desert',
    place: { climate_zone: '3B' },
    project: 'retrofit',
    interior_vapour_retarder: 'class-i',
  }),
  job({
    name: 'Kraft in the north',
    place: { climate_zone: '6A' },
    project: 'retrofit',
    interior_vapour_retarder: 'class-ii',
    rough_opening_can_change: false,
    crew_skill: 'first-time',
  }),
  job({
    name: 'Bare lining in the north',
    place: { climate_zone: '5A' },
    project: 'retrofit',
    interior_vapour_retarder: 'none',
  }),
  // Rain without end, and the newest edition with a row that nobody has seen.
  job({
    name: 'Rain coast',
    place: {
      monthly_mean_temp_f: [40, 42, 45, 49, 54, 58, 62, 63, 59, 51, 44, 40],
      monthly_precip_in: [12, 9, 9, 6, 4, 3, 2, 2, 4, 8, 13, 13],
    },
    code_edition: '2024',
  }),
  job({ name: 'Middle zone, next edition', place: { climate_zone: '4A' }, code_edition: '2024' }),
  // An old wall with nothing between its studs.
  job({
    name: 'Cooper Lane, before the fill',
    project: 'retrofit',
    place: { climate_zone: '5A' },
    framing: { material: 'wood', depth_in: 3.5, spacing_in: 16, species_gravity: 0.5 },
    cavity_insulation_r: 0,
    interior_vapour_retarder: 'class-iii',
  }),
  // Without any retarder inside: full studs, empty studs, and by the old edition.
  job({
    name: 'Bare lining, an old edition',
    place: { climate_zone: '6A' },
    project: 'retrofit',
    code_edition: '2018',
    interior_vapour_retarder: 'none',
  }),
  job({ name: 'No retarder, full studs', place: { climate_zone: '5A' }, interior_vapour_retarder: 'none' }),
  job({
    name: 'No retarder, empty studs',
    place: { climate_zone: '5A' },
    interior_vapour_retarder: 'none',
    cavity_insulation_r: 0,
  }),
  job({
    name: 'No retarder, old edition',
    place: { climate_zone: '5A' },
    interior_vapour_retarder: 'none',
    code_edition: '2018',
  }),
  // The hardest wind that is asked about, on wide studs of light wood.
  job({
    name: 'Cape light',
    code_edition: '2024',
    place: { climate_zone: '2A' },
    framing: { material: 'wood', depth_in: 5.5, spacing_in: 24, species_gravity: 0.31 },
    basic_wind_speed_mph: 220,
    exposure: 'D',
    mean_roof_height_ft: 60,
  }),
  // Damp and cold by its own twelve months.
  job({
    name: 'Fog bay',
    place: {
      monthly_mean_temp_f: [-10, -5, 5, 20, 38, 50, 55, 50, 40, 22, 5, -8],
      monthly_precip_in: [2, 2, 2, 2, 2, 3, 3, 4, 3, 3, 2, 2],
    },
    cavity_insulation_r: 0,
  }),
  // Standing walls by the lot line: one on it with open, empty bays, one that the added boards bring too near.
  job({
    name: 'Row house flank',
    project: 'retrofit',
    place: { climate_zone: '4A' },
    framing: { material: 'wood', depth_in: 3.5, spacing_in: 16, species_gravity: 0.42 },
    sheathing: 'none',
    cavity_insulation_r: 0,
    fire_separation_ft: 0,
  }),
  job({
    name: 'Glass porch',
    project: 'retrofit',
    code_edition: '2024',
    sheathing: 'boards',
    windows: [
      { count: 40, width_in: 36, height_in: 60, glazing: 'double', mounting: 'flanged', operation: 'hung' },
    ],
    fire_separation_ft: 5.2,
  }),
  // A dry place where nothing of the kind is asked, and a wall without windows that stands already.
  job({
    name: 'High desert shop',
    project: 'retrofit',
    place: { climate_zone: '3B' },
    windows: [],
    sheathing: 'gypsum',
    budget_usd_per_ft2: 200,
    mean_roof_height_ft: 12,
  }),
  // More between shallow studs than any batt gives there.
  job({
    name: 'Sprayed bungalow',
    place: { climate_zone: '4A' },
    framing: { material: 'wood', depth_in: 3.5, spacing_in: 16, species_gravity: 0.42 },
    cavity_insulation_r: 20,
  }),
];
