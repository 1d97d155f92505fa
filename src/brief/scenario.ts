import { z } from 'zod';
import { CLIMATE_ZONES } from '../base/climate-zones.ts';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import { ended } from '../base/first-letter.ts';
import { priceBookSchema } from './price-book.ts';

/** Words for "I don't know": accepted for every field but `schema` and `place`. */
const unknown = z.literal('unknown');

function choice<const T extends readonly [string, ...string[]]>(values: T) {
  const list = values.map((v) => `"${v}"`).join(', ');
  return z.union([z.enum(values), unknown], { error: `Choose one of ${list}, or "unknown".` });
}

function number(min: number, max: number, unit: string, example: number) {
  const message = `Give ${unit} from ${min} to ${max}, for example ${example}, or "unknown".`;
  return z.union([z.number(message).min(min, message).max(max, message), unknown], { error: message });
}

function yesNo(what: string) {
  return z.union([z.boolean(), unknown], { error: `Say whether ${what}: true, false or "unknown".` });
}

const STATE_MESSAGE = 'Give a two-letter US state code, for example "CO".';

const twelve = (what: string, min: number, max: number) => {
  const message = `Give twelve numbers from ${min} to ${max}, January to December: ${ended(what)}`;
  return z.array(z.number(message).min(min, message).max(max, message), message).length(12, message);
};

/** Says of keys that a place may have, only not together with these, that they don't belong here. */
const notBeside =
  (keys: readonly string[], message: string): z.core.$ZodErrorMap =>
  (issue) =>
    issue.code === 'unrecognized_keys' && issue.keys.every((key) => keys.includes(key)) ? message : undefined;

export const placeSchema = z.union(
  [
    z.strictObject(
      {
        state: z.string(STATE_MESSAGE).regex(/^[A-Za-z]{2}$/, STATE_MESSAGE),
        county: z.string('Give a county name, for example "Boulder".').min(1).max(80),
      },
      {
        error: notBeside(
          ['climate_zone'],
          'This key does not stand beside a county, which has a zone of its own: give the one or the other.',
        ),
      },
    ),
    z.strictObject(
      {
        climate_zone: z.enum(CLIMATE_ZONES, {
          error: `Give a climate zone of the energy code: ${CLIMATE_ZONES.join(', ')}.`,
        }),
      },
      {
        error: notBeside(
          ['state', 'county'],
          'This key does not stand beside a climate zone: give the zone alone, or "state" and "county".',
        ),
      },
    ),
    z.strictObject({
      monthly_mean_temp_f: twelve('monthly mean outdoor temperature, °F', -60, 120),
      monthly_precip_in: twelve('monthly precipitation, in.', 0, 60),
    }),
  ],
  {
    error: ({ input }) =>
      input === 'unknown'
        ? 'The place is the one answer that can’t be unknown; a climate zone is enough, for example {"climate_zone":"5A"}.'
        : 'Give {"state","county"}, {"climate_zone"}, or {"monthly_mean_temp_f","monthly_precip_in"}, and nothing else.',
  },
);

export const GLAZINGS = ['double', 'triple'] as const;
export const MOUNTINGS = ['flanged', 'flangeless'] as const;
export const WINDOW_FRAMES = ['vinyl', 'fibreglass', 'aluminium-thermally-broken', 'wood-clad'] as const;
/** Nominal thickness of one pane, in. */
export const LITES = ['1/8', '3/16', '1/4', '3/8', '1/2'] as const;
/** Where the plane of the window flange may lie: the outer face of the insulation, or of the furring over it. */
export const FLANGE_PLANES = ['insulation-face', 'furring-face'] as const;
export const OPERATIONS = ['fixed', 'casement', 'awning', 'hung', 'sliding', 'door'] as const;

export const windowSchema = z.strictObject(
  {
    count: number(1, 500, 'a whole number of windows', 6)
      .refine((n) => n === 'unknown' || Number.isInteger(n), 'Give a whole number of windows, for example 6.')
      .optional(),
    width_in: number(6, 240, 'the unit width in inches', 36).optional(),
    height_in: number(6, 180, 'the unit height in inches', 60).optional(),
    glazing: choice(GLAZINGS).optional(),
    mounting: choice(MOUNTINGS).optional(),
    operation: choice(OPERATIONS).optional(),
    weight_lb: number(2, 3000, 'the weight of one unit in pounds', 130).optional(),
    /** For a weight that must be worked out. */
    frame: choice(WINDOW_FRAMES).optional(),
    lite_in: choice(LITES).optional(),
    /** The opening as it stands or will be framed, between its studs and from sill to header. */
    rough_opening_width_in: number(6, 260, 'the width of the rough opening in inches', 37).optional(),
    rough_opening_height_in: number(6, 200, 'the height of the rough opening in inches', 61).optional(),
  },
  'Give each kind of window as an object, for example {"count":6,"width_in":36,"height_in":60}.',
);

export const PROJECT_KINDS = ['new', 'retrofit'] as const;
export { CODE_EDITIONS };
export const FRAMING_MATERIALS = ['wood', 'steel'] as const;
export const SHEATHINGS = ['osb', 'plywood', 'gypsum', 'fibreboard', 'boards', 'none'] as const;
export const RETARDERS = ['none', 'class-iii', 'class-ii', 'class-i', 'responsive'] as const;
export const FINISHES = ['cement-stucco', 'stucco-look', 'any'] as const;
export const CREW_SKILLS = [
  'first-time',
  'general',
  'stucco-experienced',
  'exterior-insulation-experienced',
] as const;
export const EXPOSURES = ['B', 'C', 'D'] as const;
export const TERMITE_AREAS = [
  'none-to-slight',
  'slight-to-moderate',
  'moderate-to-heavy',
  'very-heavy',
] as const;
/** Designation thickness of cold-formed studs in mils, as the fastening tables are drawn up. */
export const STEEL_THICKNESSES_MIL = [33, 43, 54] as const;
export const FRAMING_STYLES = ['standard', 'intermediate', 'advanced'] as const;
export const PRIORITY_KEYS = ['cost', 'moisture_safety', 'energy', 'ease', 'carbon'] as const;

const priority = number(0, 10, 'a weight', 1).optional();

const SCENARIO_MESSAGE =
  'Give a scenario: one object in braces, for example {"schema":"cladwright-scenario/1","place":{"state":"CO","county":"Boulder"}}.';

/** A scenario file, `cladwright-scenario/1`. Only `schema` and `place` are required; unknown keys are an error. */
export const scenarioSchema = z.strictObject(
  {
    schema: z.literal('cladwright-scenario/1', 'Give "cladwright-scenario/1".'),
    name: z
      .string('Give a name in quotes, at most 120 characters.')
      .max(120, 'Give at most 120 characters.')
      .optional(),
    place: placeSchema,
    project: choice(PROJECT_KINDS).optional(),
    code_edition: choice(CODE_EDITIONS).optional(),
    framing: z
      .union(
        [
          z.strictObject({
            material: choice(FRAMING_MATERIALS).optional(),
            depth_in: number(1.5, 12, 'the actual stud depth in inches', 5.5).optional(),
            spacing_in: number(16, 24, 'the stud spacing in inches on center', 16).optional(),
            species_gravity: number(0.3, 0.75, 'the specific gravity of the studs', 0.42).optional(),
            steel_thickness_mil: z
              .union([z.literal(STEEL_THICKNESSES_MIL), unknown], {
                error: `Give the designation thickness of steel studs in mils: ${STEEL_THICKNESSES_MIL.join(', ')}, or "unknown". A thicker stud counts as the thickest of these.`,
              })
              .optional(),
          }),
          unknown,
        ],
        {
          error:
            'Give an object, for example {"material":"wood","depth_in":5.5,"spacing_in":16}, or "unknown".',
        },
      )
      .optional(),
    sheathing: choice(SHEATHINGS).optional(),
    cavity_insulation_r: number(0, 60, 'the R-value of the insulation between the studs', 21).optional(),
    interior_vapour_retarder: choice(RETARDERS).optional(),
    windows: z
      .union([z.array(windowSchema).max(200, 'Give at most 200 kinds of window.'), unknown], {
        error:
          'Give a list of windows, for example [{"count":6,"width_in":36,"height_in":60}], or "unknown".',
      })
      .optional(),
    rough_opening_can_change: yesNo('the rough openings can be enlarged').optional(),
    /** Left out, the plane is chosen wall by wall, and the answer says which and why. */
    flange_plane: choice(FLANGE_PLANES).optional(),
    finish: choice(FINISHES).optional(),
    budget_usd_per_ft2: number(1, 1000, 'US dollars per square foot of wall', 32).optional(),
    crew_skill: choice(CREW_SKILLS).optional(),
    wall_area_ft2: number(10, 1_000_000, 'square feet of wall', 1800).optional(),
    basic_wind_speed_mph: number(85, 220, 'the basic wind speed in miles per hour', 115).optional(),
    exposure: choice(EXPOSURES).optional(),
    mean_roof_height_ft: number(8, 60, 'the mean roof height in feet', 22).optional(),
    building_least_width_ft: number(
      4,
      1000,
      'the least plan dimension of the building in feet',
      28,
    ).optional(),
    fire_separation_ft: number(0, 10_000, 'feet to the lot line', 12).optional(),
    wildfire_area: yesNo('the site lies in a wildfire area').optional(),
    termite_area: choice(TERMITE_AREAS).optional(),
    max_added_thickness_in: number(0.5, 20, 'inches outside the sheathing', 6).optional(),
    /** For who counts heat by other conventions than the tables; left out, the tables stand. */
    thermal_assumptions: z
      .union(
        [
          z.strictObject({
            framing_style: choice(FRAMING_STYLES).optional(),
            framing_fraction: number(0, 0.6, 'the share of wall area that is framing', 0.25).optional(),
            film_inside_r: number(0.1, 2, 'the resistance of the inside air film', 0.68).optional(),
            film_outside_r: number(0, 2, 'the resistance of the outside air film', 0.17).optional(),
          }),
          unknown,
        ],
        { error: 'Give an object, for example {"framing_fraction":0.25}, or "unknown".' },
      )
      .optional(),
    /** Prices, labour and carbon of one's own; left out, the shipped ones stand. */
    price_book: z
      .union([priceBookSchema, unknown], {
        error: 'Give an object, for example {"region_factor":1.15,"labour_usd_per_h":80}, or "unknown".',
      })
      .optional(),
    priorities: z
      .union(
        [
          z.strictObject({
            cost: priority,
            moisture_safety: priority,
            energy: priority,
            ease: priority,
            carbon: priority,
          }),
          unknown,
        ],
        { error: 'Give weights, for example {"cost":1,"energy":1}, or "unknown".' },
      )
      .optional(),
  },
  SCENARIO_MESSAGE,
);

export type Scenario = z.output<typeof scenarioSchema>;
export type Place = z.output<typeof placeSchema>;
export type ScenarioWindow = z.output<typeof windowSchema>;
