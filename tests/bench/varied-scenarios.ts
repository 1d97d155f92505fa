import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseInput } from '../../src/base/parse-input.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';

/** Counties of every zone, so that neighbours in a batch have neither zone nor weather in common. */
const COUNTIES = [
  ['FL', 'Miami-Dade'],
  ['TX', 'Harris'],
  ['AZ', 'Maricopa'],
  ['GA', 'Fulton'],
  ['CA', 'Los Angeles'],
  ['NC', 'Wake'],
  ['NM', 'Bernalillo'],
  ['OR', 'Multnomah'],
  ['OH', 'Franklin'],
  ['CO', 'Boulder'],
  ['WA', 'King'],
  ['WI', 'Dane'],
  ['MT', 'Gallatin'],
  ['MN', 'Stearns'],
  ['ME', 'Aroostook'],
  ['AK', 'Fairbanks North Star'],
] as const;

/** The sample scenarios of the repository, checked. */
export function sampleScenarios(): Scenario[] {
  return readdirSync('scenarios')
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => parseInput(scenarioSchema, JSON.parse(readFileSync(join('scenarios', file), 'utf8'))));
}

/**
 * The samples over and over, each time at another place, in other wind, at another height, with another budget and size:
 * no two of a thousand are alike. The same number gives the same scenario.
 */
export function variedScenario(samples: readonly Scenario[], i: number): Scenario {
  const sample = samples[i % samples.length];
  const [state, county] = COUNTIES[(i * 7) % COUNTIES.length] ?? COUNTIES[0];
  if (!sample) throw new Error('there are no samples');
  return {
    ...sample,
    name: `Wall ${i}`,
    place: { state, county },
    basic_wind_speed_mph: 95 + ((i * 13) % 71),
    mean_roof_height_ft: 12 + ((i * 5) % 29),
    wall_area_ft2: 900 + ((i * 37) % 2001),
    budget_usd_per_ft2: 22 + ((i * 11) % 47) / 2,
  };
}
