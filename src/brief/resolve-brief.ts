import { CODE_EDITIONS, type CodeEdition } from '../base/code-editions.ts';
import { Refusal } from '../base/refusal.ts';
import type { Assumption, Brief, BriefWindow, CrewSkill, PriorityKey } from './brief.ts';
import { assumedWallArea_ft2, checkOpenings } from './check-openings.ts';
import { LINING_READINGS } from './lining-readings.ts';
import { PRIORITY_KEYS, RETARDERS, type Scenario, type ScenarioWindow } from './scenario.ts';

/** An assumption as the brief stage makes it; whether it could change the answer is found out later by trying. */
export type OpenAssumption = Omit<Assumption, 'could_change_answer'> & {
  /** Other readings worth trying, each in words and as a change of the brief. */
  readonly alternatives: readonly { readonly label: string; readonly change: Partial<Brief> }[];
};

/** Our choice where nobody says; the other editions are tried as readings of it. */
const ASSUMED_EDITION: CodeEdition = '2021';

/** What a firm's standard takes where the user says nothing. */
export type BriefDefaults = {
  readonly crew_skill?: {
    readonly value: CrewSkill;
    /** In words, for the assumption. */
    readonly firm: string;
    readonly pack: string;
  };
};

export type ResolvedBrief = { readonly brief: Brief; readonly assumptions: readonly OpenAssumption[] };

/**
 * Cavity insulation usual for a stud depth, h·ft²·°F/Btu (common practice, no source: R-13 in 2x4, R-20 in 2x6; in
 * shallower studs the per inch of an R-13 batt).
 */
function usualCavityR(depth_in: number, isSteel: boolean): number {
  if (isSteel) return depth_in < 5 ? 13 : 19;
  if (depth_in < 3.5) return Math.floor(depth_in * 3.7);
  if (depth_in < 5) return 13;
  return depth_in < 7 ? 20 : 30;
}

/** The value given, or undefined where nothing or "unknown" was said. */
function said<T>(value: T | 'unknown' | undefined): T | undefined {
  return value === 'unknown' ? undefined : value;
}

const TYPICAL_WINDOW: BriefWindow = {
  count: 8,
  width_in: 36,
  height_in: 60,
  glazing: 'double',
  mounting: 'flanged',
  operation: 'casement',
  weight_lb: null,
  frame: null,
  lite_in: null,
  rough_opening_width_in: null,
  rough_opening_height_in: null,
};

/** Windows to take when none are named: about 15 % of a small wall, at most the ordinary set. */
function usualWindowCount(wall_area_ft2: number | undefined): number {
  if (wall_area_ft2 === undefined) return TYPICAL_WINDOW.count;
  return Math.min(TYPICAL_WINDOW.count, Math.floor((0.15 * wall_area_ft2) / 15));
}

/**
 * Fills every open field of a scenario with a stated assumption.
 *
 * Safe side first: where a wrong guess could make a wall look better than it is (wind exposure, roof height), the
 * assumption is the harsher one; where nothing sensible can be assumed (budget, lot line, wildfire, termites, an old
 * wall's vapour retarder) the field stays null, so that rules that need it come out undecided.
 */
export function resolveBrief(scenario: Scenario, defaults: BriefDefaults = {}): ResolvedBrief {
  const assumptions: OpenAssumption[] = [];
  const assume = <T extends string | number | boolean | null>(
    field: string,
    value: T,
    why: string,
    alternatives: OpenAssumption['alternatives'] = [],
  ): T => {
    assumptions.push({ field, value, why, alternatives });
    return value;
  };

  const project =
    said(scenario.project) ??
    assume('project', 'new', 'Not said whether the wall exists; taken as new work.', [
      // A standing wall brings other assumptions with it: its studs, its filling, its openings.
      {
        label: 'the wall is a retrofit',
        change: resolveBrief({ ...scenario, project: 'retrofit' }, defaults).brief,
      },
    ]);
  const isRetrofit = project === 'retrofit';
  const framing = resolveFraming(scenario, isRetrofit, assume);
  const cavity =
    said(scenario.cavity_insulation_r) ??
    assume(
      'cavity_insulation_r',
      usualCavityR(framing.depth_in, framing.material === 'steel'),
      isRetrofit
        ? 'Not said; the usual fill for this stud depth. An old wall may hold less, or nothing: look before ordering.'
        : 'Not said; the usual fill for this stud depth.',
      isRetrofit
        ? [
            { label: 'the stud bays are poorly filled (R-11)', change: { cavity_insulation_r: 11 } },
            // No table says what a steel stud wall with empty bays comes to at every spacing.
            ...(framing.material === 'wood'
              ? [{ label: 'the stud bays are empty', change: { cavity_insulation_r: 0 } }]
              : []),
          ]
        : [],
    );
  const windows = resolveWindows(scenario, assume);
  const brief: Brief = {
    name: scenario.name?.trim() || nameOf(scenario, project),
    place: scenario.place,
    project,
    code_edition:
      said(scenario.code_edition) ??
      assume(
        'code_edition',
        ASSUMED_EDITION,
        'Not said which edition is adopted; ask the building department.',
        CODE_EDITIONS.filter((edition) => edition !== ASSUMED_EDITION).map((edition) => ({
          label: `the ${edition} edition is adopted`,
          change: { code_edition: edition },
        })),
      ),
    framing,
    sheathing:
      said(scenario.sheathing) ??
      assume(
        'sheathing',
        'osb',
        'Not said; OSB is the tightest common sheathing, so the harder case for drying.',
        [
          { label: 'the sheathing is boards', change: { sheathing: 'boards' } },
          { label: 'the sheathing is gypsum', change: { sheathing: 'gypsum' } },
        ],
      ),
    cavity_insulation_r: cavity,
    interior_vapour_retarder: resolveRetarder(scenario, isRetrofit, assume),
    windows,
    rough_opening_can_change:
      said(scenario.rough_opening_can_change) ??
      // Without windows there is no opening that could hold anything back: nothing to assume, nothing to find out.
      (windows.length === 0 ||
        assume(
          'rough_opening_can_change',
          !isRetrofit,
          isRetrofit
            ? 'Not said; an existing opening is taken as it is.'
            : 'Not said; in new work the openings can be framed to suit.',
          [
            {
              label: isRetrofit ? 'the openings can be enlarged' : 'the openings are already fixed',
              change: { rough_opening_can_change: isRetrofit },
            },
          ],
        )),
    flange_plane: said(scenario.flange_plane) ?? null,
    finish:
      said(scenario.finish) ??
      assume(
        'finish',
        'stucco-look',
        'Not said; stucco, or at least its look, is what is mostly asked for.',
        [
          { label: 'only true cement stucco will do', change: { finish: 'cement-stucco' } },
          { label: 'any finish will do', change: { finish: 'any' } },
        ],
      ),
    budget_usd_per_ft2:
      said(scenario.budget_usd_per_ft2) ??
      assume('budget_usd_per_ft2', null, 'Not said; nothing is ruled out for its price.', [
        { label: 'the budget is $20 a square foot', change: { budget_usd_per_ft2: 20 } },
      ]),
    crew_skill: said(scenario.crew_skill) ?? assumedCrew(defaults, assumptions, assume),
    wall_area_ft2:
      said(scenario.wall_area_ft2) ??
      assume(
        'wall_area_ft2',
        assumedWallArea_ft2(windows),
        'Not said; only totals and the shares of the windows and of the corner zone depend on it.',
        [
          {
            label: 'there is twice as much wall',
            change: { wall_area_ft2: 2 * assumedWallArea_ft2(windows) },
          },
        ],
      ),
    open_share_is_known: saysOpenShare(scenario),
    basic_wind_speed_mph:
      said(scenario.basic_wind_speed_mph) ??
      assume(
        'basic_wind_speed_mph',
        115,
        'Not said; a common inland figure. Read the wind map or ask the building department; coasts are far higher.',
        [{ label: 'the basic wind speed is 140 mph', change: { basic_wind_speed_mph: 140 } }],
      ),
    exposure:
      said(scenario.exposure) ??
      assume('exposure', 'C', 'Not said; open country, the harsher of the two usual cases.', [
        { label: 'the site is built-up or wooded (exposure B)', change: { exposure: 'B' } },
      ]),
    mean_roof_height_ft:
      said(scenario.mean_roof_height_ft) ??
      assume('mean_roof_height_ft', 30, 'Not said; a tall two-storey house, the harsher case.', [
        { label: 'the roof is 18 ft high on average', change: { mean_roof_height_ft: 18 } },
      ]),
    // Not listed when left out: the corner zone says beside its width what was taken.
    building_least_width_ft: said(scenario.building_least_width_ft) ?? null,
    fire_separation_ft:
      said(scenario.fire_separation_ft) ??
      assume('fire_separation_ft', null, 'Not said; whether the wall must be fire-rated stays open.', [
        { label: 'the lot line is 3 ft away', change: { fire_separation_ft: 3 } },
        { label: 'the lot line is 30 ft away', change: { fire_separation_ft: 30 } },
      ]),
    wildfire_area:
      said(scenario.wildfire_area) ??
      assume('wildfire_area', null, 'Not said; ask the fire authority whether the site is mapped.', [
        { label: 'the site lies in a wildfire area', change: { wildfire_area: true } },
      ]),
    termite_area:
      said(scenario.termite_area) ??
      assume('termite_area', null, 'Not said; see the termite map of the residential code.', [
        { label: 'the termite probability is very heavy', change: { termite_area: 'very-heavy' } },
      ]),
    max_added_thickness_in:
      said(scenario.max_added_thickness_in) ??
      assume(
        'max_added_thickness_in',
        null,
        'Not said; no limit taken. Check eaves, lot line and utilities.',
        [{ label: 'no more than 3 in. may be added', change: { max_added_thickness_in: 3 } }],
      ),
    thermal_assumptions: thermalAssumptions(scenario),
    priorities: resolvePriorities(scenario, assume),
    price_book: said(scenario.price_book) ?? null,
  };
  assumeKeptOpenings(brief, assume);
  checkOpenings(brief);
  return { brief, assumptions };
}

const OTHER_CREWS: readonly { readonly crew: CrewSkill; readonly label: string }[] = [
  { crew: 'general', label: 'a general building crew builds it' },
  { crew: 'stucco-experienced', label: 'the crew knows stucco' },
  { crew: 'first-time', label: 'the crew does this for the first time' },
];

/** The firm's own crew where it has one, else a general one. */
function assumedCrew(
  { crew_skill: own }: BriefDefaults,
  assumptions: OpenAssumption[],
  assume: Assume,
): CrewSkill {
  const crew = own?.value ?? 'general';
  const alternatives = OTHER_CREWS.filter((other) => other.crew !== crew).map(
    ({ crew: crew_skill, label }) => ({
      label,
      change: { crew_skill },
    }),
  );
  if (!own)
    return assume(
      'crew_skill',
      crew,
      'Not said; a general building crew without a plasterer of its own.',
      alternatives,
    );
  const why = `Not said; the crew of ${own.firm}.`;
  assumptions.push({ field: 'crew_skill', value: crew, why, alternatives, house: own.pack });
  return crew;
}

/** A name for a wall that was given none, so that its record can be told from others. */
function nameOf({ place }: Scenario, project: Brief['project']): string {
  const kind = project === 'retrofit' ? 'Retrofit' : 'New wall';
  if ('county' in place) return `${kind}, ${place.county}, ${place.state.toUpperCase()}`;
  return 'climate_zone' in place ? `${kind}, zone ${place.climate_zone}` : kind;
}

type Assume = <T extends string | number | boolean | null>(
  field: string,
  value: T,
  why: string,
  alternatives?: OpenAssumption['alternatives'],
) => T;

function resolveFraming(scenario: Scenario, isRetrofit: boolean, assume: Assume): Brief['framing'] {
  const given = said(scenario.framing) ?? {};
  const material =
    said(given.material) ?? assume('framing.material', 'wood', 'Not said; most houses are wood-framed.');
  const isSteel = material === 'steel';
  const depth_in =
    said(given.depth_in) ??
    assume(
      'framing.depth_in',
      isSteel ? 6 : isRetrofit ? 3.5 : 5.5,
      isRetrofit && !isSteel
        ? 'Not said; older walls are mostly 2x4.'
        : 'Not said; the usual depth in new work.',
    );
  const species_gravity = said(given.species_gravity) ?? LIGHTEST_GRAVITY;
  const given_mil = said(given.steel_thickness_mil);
  if (!isSteel && given_mil !== undefined) {
    throw new Refusal({
      field: 'framing.steel_thickness_mil',
      value: String(given_mil),
      accepted: 'Give it for steel studs only: "material": "steel".',
    });
  }
  const steel = isSteel ? { steel_thickness_mil: given_mil ?? THINNEST_STUD_MIL } : {};
  const spacing_in =
    said(given.spacing_in) ??
    assume('framing.spacing_in', 16, 'Not said; 16 in. on center is the usual spacing.', [
      {
        label: 'the studs stand at 24 in.',
        change: { framing: { material, depth_in, spacing_in: 24, species_gravity, ...steel } },
      },
    ]);
  const framing = { material, depth_in, spacing_in, species_gravity, ...steel };
  if (!isSteel && said(given.species_gravity) === undefined) {
    assume(
      'framing.species_gravity',
      LIGHTEST_GRAVITY,
      'Not said; spruce-pine-fir, the lightest species that the fastening tables cover.',
      [
        {
          label: 'the studs are denser wood (specific gravity 0.50)',
          change: { framing: { ...framing, species_gravity: 0.5 } },
        },
      ],
    );
  }
  if (isSteel && given_mil === undefined) {
    assume(
      'framing.steel_thickness_mil',
      THINNEST_STUD_MIL,
      'Not said; the thinnest structural stud, which holds a screw least. Read the thickness or its colour on the studs.',
      ([43, 54] as const).map((mil) => ({
        label: `the steel studs are ${mil} mil`,
        change: { framing: { ...framing, steel_thickness_mil: mil } },
      })),
    );
  }
  return framing;
}

/** The thinnest stud that the fastening tables know. */
const THINNEST_STUD_MIL = 33;

/** Spruce-pine-fir: the wood fastening tables start here (0.42, seen in the code table's footnote). */
const LIGHTEST_GRAVITY = 0.42;

function resolveRetarder(
  scenario: Scenario,
  isRetrofit: boolean,
  assume: Assume,
): Brief['interior_vapour_retarder'] {
  const given = said(scenario.interior_vapour_retarder);
  if (given !== undefined) return given;
  if (!isRetrofit) return null; // left to the candidates: each brings its own
  return assume(
    'interior_vapour_retarder',
    null,
    'Not said what is behind the lining; look behind an outlet plate for sheet plastic or kraft paper before ordering.',
    RETARDERS.map((interior_vapour_retarder) => ({
      label: LINING_READINGS[interior_vapour_retarder],
      change: { interior_vapour_retarder },
    })),
  );
}

function resolveWindows(
  scenario: Pick<Scenario, 'windows' | 'wall_area_ft2'>,
  assume: Assume,
): readonly BriefWindow[] {
  const given = said(scenario.windows);
  if (given === undefined) {
    const count = usualWindowCount(said(scenario.wall_area_ft2));
    if (count === 0) {
      assume('windows', 'none', 'Not said; a wall this small is taken without windows.');
      return [];
    }
    assume(
      'windows',
      `${count} double-glazed flanged casements, 36 x 60 in.`,
      'Not said; an ordinary set, so that the bucks can be judged.',
    );
    return [{ ...TYPICAL_WINDOW, count }];
  }
  return given.map((window, index) => resolveWindow(window, index, assume));
}

/** Whether it was said how much of the wall is open: every window's size and number, and the area of the wall. */
function saysOpenShare({ windows, wall_area_ft2 }: Scenario): boolean {
  const given = said(windows);
  if (given === undefined || said(wall_area_ft2) === undefined) return false;
  return given.every((window) =>
    [window.count, window.width_in, window.height_in].every((figure) => said(figure) !== undefined),
  );
}

/** The wall area that is assumed where only the windows are known, ft². */
export function assumedArea_ft2(windows: Scenario['windows']): number {
  return assumedWallArea_ft2(resolveWindows({ windows }, (_field, value) => value));
}

function resolveWindow(window: ScenarioWindow, index: number, assume: Assume): BriefWindow {
  const at = (key: string) => `windows[${index}].${key}`;
  const weight = said(window.weight_lb);
  if (weight === undefined) {
    assume(
      at('weight_lb'),
      null,
      'Not said; worked out from the glass and the frame. Get the maker’s figure.',
    );
  }
  return {
    count: said(window.count) ?? assume(at('count'), 1, 'Not said; one taken.'),
    width_in: said(window.width_in) ?? assume(at('width_in'), 36, 'Not said; an ordinary width.'),
    height_in: said(window.height_in) ?? assume(at('height_in'), 60, 'Not said; an ordinary height.'),
    glazing:
      said(window.glazing) ?? assume(at('glazing'), 'triple', 'Not said; triple glazing, the heavier case.'),
    mounting:
      said(window.mounting) ??
      assume(at('mounting'), 'flanged', 'Not said; most residential windows have a mounting flange.'),
    operation:
      said(window.operation) ??
      assume(at('operation'), 'fixed', 'Not said; a fixed unit, the harder case for a buck that hangs.'),
    weight_lb: weight ?? null,
    frame: said(window.frame) ?? null,
    lite_in: said(window.lite_in) ?? null,
    rough_opening_width_in: said(window.rough_opening_width_in) ?? null,
    rough_opening_height_in: said(window.rough_opening_height_in) ?? null,
  };
}

/** Openings that stay are taken as made for their units where nobody measured them. */
function assumeKeptOpenings({ windows, rough_opening_can_change }: Brief, assume: Assume): void {
  if (rough_opening_can_change) return;
  windows.forEach((window, index) => {
    for (const key of ['rough_opening_width_in', 'rough_opening_height_in'] as const) {
      if (window[key] !== null) continue;
      assume(
        `windows[${index}].${key}`,
        'as made for the unit',
        'Not said; taken as the unit with its shim and seal space round it. Measure before ordering.',
      );
    }
  });
}

const DEFAULT_PRIORITIES: Brief['priorities'] = {
  cost: 1,
  moisture_safety: 1,
  energy: 1,
  ease: 1,
  carbon: 0.5,
};

/** Not listed when left out: the answer states what it counts heat by in any case. */
function thermalAssumptions({ thermal_assumptions }: Scenario): Brief['thermal_assumptions'] {
  const given = said(thermal_assumptions) ?? {};
  return {
    framing_style: said(given.framing_style) ?? null,
    framing_fraction: said(given.framing_fraction) ?? null,
    film_inside_r: said(given.film_inside_r) ?? null,
    film_outside_r: said(given.film_outside_r) ?? null,
  };
}

function resolvePriorities(scenario: Scenario, assume: Assume): Brief['priorities'] {
  const given = said(scenario.priorities);
  if (given === undefined) {
    assume('priorities', 'equal, carbon at half weight', 'Not said what matters most.', [
      {
        label: 'cost matters three times as much',
        change: { priorities: { ...DEFAULT_PRIORITIES, cost: 3 } },
      },
    ]);
    return DEFAULT_PRIORITIES;
  }
  const pick = (key: PriorityKey) => said(given[key]) ?? DEFAULT_PRIORITIES[key];
  const priorities = {
    cost: pick('cost'),
    moisture_safety: pick('moisture_safety'),
    energy: pick('energy'),
    ease: pick('ease'),
    carbon: pick('carbon'),
  };
  const unnamed = PRIORITY_KEYS.filter((key) => said(given[key]) === undefined);
  if (unnamed.length > 0) {
    const words = unnamed.map((key) => key.replaceAll('_', ' ')).join(', ');
    const without = Object.fromEntries(unnamed.map((key) => [key, 0]));
    assume('priorities', `the usual weight for ${words}`, 'Not said how much these weigh.', [
      { label: `${words} should not count at all`, change: { priorities: { ...priorities, ...without } } },
    ]);
  }
  return priorities;
}
