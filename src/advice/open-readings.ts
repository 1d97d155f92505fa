import { CODE_EDITIONS } from '../base/code-editions.ts';
import type { Scenario } from '../brief/scenario.ts';

/** One thing that an open field may turn out to be. */
export type OpenReading = { readonly words: string; readonly scenario: Scenario };

export type OpenField = { readonly field: string; readonly readings: readonly OpenReading[] };

/** What may turn out one way or the other; where the flange is to sit is a wish, and open lets both planes compete. */
type Key = Exclude<
  keyof Scenario,
  'schema' | 'place' | 'name' | 'framing' | 'thermal_assumptions' | 'price_book' | 'flange_plane'
>;
type Framing = Exclude<NonNullable<Scenario['framing']>, 'unknown'>;

const isOpen = (value: unknown) => value === undefined || value === 'unknown';

const WINDOW = { count: 4, operation: 'fixed', mounting: 'flangeless' } as const;
const USUAL = { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 0.5 };

/**
 * What each answer may turn out to be: the ends of what is usual and something in between (our choice). They are tried to
 * see whether the answer matters, and are never assumed.
 */
const READINGS: { readonly [K in Key]: readonly NonNullable<Scenario[K]>[] } = {
  project: ['new', 'retrofit'],
  code_edition: CODE_EDITIONS,
  sheathing: ['osb', 'gypsum', 'boards', 'none'],
  cavity_insulation_r: [0, 13, 20, 30],
  interior_vapour_retarder: ['class-iii', 'class-ii', 'class-i'],
  windows: [
    [],
    [{ ...WINDOW, width_in: 72, height_in: 72, glazing: 'triple' }],
    [
      {
        ...WINDOW,
        width_in: 36,
        height_in: 60,
        glazing: 'double',
        mounting: 'flanged',
        operation: 'casement',
      },
    ],
  ],
  rough_opening_can_change: [true, false],
  finish: ['cement-stucco', 'stucco-look', 'any'],
  budget_usd_per_ft2: [16, 25, 60],
  crew_skill: ['first-time', 'general', 'stucco-experienced'],
  wall_area_ft2: [600, 3000],
  basic_wind_speed_mph: [105, 140, 170],
  exposure: ['B', 'D'],
  mean_roof_height_ft: [15, 40],
  building_least_width_ft: [18, 60],
  fire_separation_ft: [3, 30],
  wildfire_area: [true, false],
  termite_area: ['none-to-slight', 'very-heavy'],
  max_added_thickness_in: [2.5, 8],
  priorities: [
    { ...USUAL, cost: 4 },
    { ...USUAL, energy: 4 },
    { ...USUAL, moisture_safety: 4 },
  ],
};

const FRAMING_READINGS: readonly (readonly [keyof Framing, readonly Framing[]])[] = [
  ['material', [{ material: 'wood' }, { material: 'steel' }]],
  ['depth_in', [{ depth_in: 3.5 }, { depth_in: 5.5 }]],
  ['spacing_in', [{ spacing_in: 16 }, { spacing_in: 24 }]],
];

/** Nobody leaves the bays of a new wall empty, and few fill those of an old one beyond the depth of a stud. */
function isSensible(key: Key, value: unknown, { project }: Scenario): boolean {
  return key !== 'cavity_insulation_r' || value !== (project === 'retrofit' ? 30 : 0);
}

/** The fields that a scenario leaves open, each with what it may turn out to be. */
export function openReadings(scenario: Scenario): OpenField[] {
  const framing: Framing =
    scenario.framing === undefined || scenario.framing === 'unknown' ? {} : scenario.framing;
  const ofFraming = FRAMING_READINGS.filter(([key]) => isOpen(framing[key])).map(([key, values]) => ({
    field: `framing.${key}`,
    readings: values.map((value) => ({
      words: String(Object.values(value)[0]),
      scenario: { ...scenario, framing: { ...framing, ...value } },
    })),
  }));
  const others = (Object.keys(READINGS) as Key[])
    .filter((key) => isOpen(scenario[key]))
    .map((key) => ({
      field: key,
      readings: readingsOf(key, scenario),
    }));
  return [...others, ...ofFraming];
}

function readingsOf<K extends Key>(key: K, scenario: Scenario): OpenReading[] {
  return READINGS[key]
    .filter((value) => isSensible(key, value, scenario))
    .map((value) => ({
      words: typeof value === 'object' ? JSON.stringify(value) : String(value),
      scenario: { ...scenario, [key]: value },
    }));
}
