import type { Scenario } from './scenario.ts';

/** One thing the user said, in words. */
export type Answer = { readonly field: string; readonly question: string; readonly answer: string };

const QUESTIONS: Readonly<Record<string, string>> = {
  place: 'Where is it?',
  project: 'New wall or retrofit?',
  code_edition: 'Which code edition is adopted?',
  framing: 'What is the wall framed with?',
  sheathing: 'What sheathing is on the studs?',
  cavity_insulation_r: 'What insulation is between the studs (R)?',
  interior_vapour_retarder: 'What vapour retarder is on the inside?',
  windows: 'Which windows?',
  rough_opening_can_change: 'Can the rough openings change?',
  finish: 'Which finish is wanted?',
  budget_usd_per_ft2: 'What is the budget per square foot of wall?',
  crew_skill: 'Who builds it?',
  wall_area_ft2: 'How much wall?',
  basic_wind_speed_mph: 'What is the basic wind speed?',
  exposure: 'How open is the site (exposure)?',
  mean_roof_height_ft: 'How high is the roof on average?',
  fire_separation_ft: 'How far is the lot line?',
  wildfire_area: 'Is it in a wildfire area?',
  termite_area: 'How likely are termites?',
  max_added_thickness_in: 'How much may the wall grow outward?',
  priorities: 'What matters most?',
};

const UNITS: Readonly<Record<string, string>> = {
  budget_usd_per_ft2: ' $/ft²',
  wall_area_ft2: ' ft²',
  basic_wind_speed_mph: ' mph',
  mean_roof_height_ft: ' ft',
  fire_separation_ft: ' ft',
  max_added_thickness_in: ' in.',
};

/** Everything the scenario says, in the order of the questions. What was left out or "unknown" is an assumption. */
export function answersOf(scenario: Scenario): Answer[] {
  const given = new Map(Object.entries(scenario));
  return Object.entries(QUESTIONS).flatMap(([field, question]) => {
    const value: unknown = given.get(field);
    if (value === undefined || value === 'unknown') return [];
    return [{ field, question, answer: `${words(value)}${UNITS[field] ?? ''}` }];
  });
}

function words(value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(words).join('; ');
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .map(([key, inner]) => `${key.replaceAll('_', ' ')} ${words(inner)}`)
      .join(', ');
  }
  return typeof value === 'string' ? value.replaceAll('-', ' ') : String(value);
}
