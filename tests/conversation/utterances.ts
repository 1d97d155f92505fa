import type { ScenarioWindow } from '../../src/brief/scenario.ts';
import type { Answers, FieldId } from '../../src/conversation/answers.ts';
import type { QuestionId } from '../../src/conversation/questions.ts';
import type { WindowAspect } from '../../src/conversation/windows.ts';

/** A line said while a question is open, and what must be understood. Everything else must stay empty. */
export type Utterance = {
  readonly asked: QuestionId | null;
  readonly said: string;
  readonly open?: readonly FieldId[];
  readonly answers?: Answers;
  readonly phase?: 'kinds' | 'details' | 'more';
  readonly missing?: readonly WindowAspect[];
  readonly found?: Partial<Answers>;
  readonly unknown?: readonly FieldId[];
  readonly windows?: readonly ScenarioWindow[];
  readonly place?: string;
  readonly complete?: boolean;
  readonly detailsUnknown?: boolean;
  /** What of the line must be asked about; all the rest is taken. */
  readonly unclear?: readonly string[];
};

const wood = (depth_in: number, spacing_in?: number): Partial<Answers> => ({
  'framing.material': 'wood',
  'framing.depth_in': depth_in,
  ...(spacing_in === undefined ? {} : { 'framing.spacing_in': spacing_in }),
});
const steel = (depth_in: number, spacing_in?: number): Partial<Answers> => ({
  ...wood(depth_in, spacing_in),
  'framing.material': 'steel',
});

// Dressed sizes: 2x4 is 1.5 x 3.5 in., 2x6 5.5, 2x8 7.25 (American Softwood Lumber Standard PS 20).
export const UNDERSTOOD: readonly Utterance[] = [
  { asked: 'place', said: 'Boulder, CO', place: 'Boulder, CO' },
  { asked: 'place', said: 'in Gallatin County, Montana', place: 'Gallatin County, Montana' },
  { asked: 'place', said: 'climate zone 5B', found: { place: { climate_zone: '5B' } } },
  { asked: 'place', said: '6a', found: { place: { climate_zone: '6A' } } },
  {
    asked: 'place',
    said: 'zone 5B, new, 2x6 at 16',
    found: { place: { climate_zone: '5B' }, project: 'new', ...wood(5.5, 16) },
  },
  { asked: 'place', said: 'zone 7', found: { place: { climate_zone: '7' } } },
  { asked: 'place', said: 'zone 4 marine', found: { place: { climate_zone: '4C' } } },
  { asked: 'place', said: 'zone 5 dry', found: { place: { climate_zone: '5B' } } },
  { asked: 'place', said: 'Lewis and Clark County, MT', place: 'Lewis and Clark County, MT' },
  {
    asked: 'place',
    said: 'boulder county colorado, retrofit, 2x6 at 16',
    place: 'boulder county colorado',
    found: { project: 'retrofit', ...wood(5.5, 16) },
  },
  { asked: 'project', said: 'retrofit', found: { project: 'retrofit' } },
  { asked: 'project', said: 'a new house', found: { project: 'new' } },
  { asked: 'project', said: 'new', found: { project: 'new' } },
  { asked: 'project', said: "it's an existing wall", found: { project: 'retrofit' } },
  { asked: 'project', said: '2', found: { project: 'retrofit' } },
  { asked: 'framing', said: 'wood', found: { 'framing.material': 'wood' } },
  { asked: 'framing', said: '2x6', found: wood(5.5) },
  { asked: 'framing', said: '2x6 at 16, R-21', found: { ...wood(5.5, 16), cavity_insulation_r: 21 } },
  { asked: 'framing', said: '2 by 4 wood studs, 24" o.c.', found: wood(3.5, 24) },
  { asked: 'framing', said: '2×8 @ 12 in. on center', found: wood(7.25, 12) },
  { asked: 'framing', said: '2', found: wood(5.5, 16) },
  { asked: 'framing', said: 'choice 4', found: steel(3.625, 16) },
  { asked: 'framing', said: '3 5/8" steel studs 16 oc', found: steel(3.625, 16) },
  { asked: 'framing', said: '6 inch metal studs at 24', found: steel(6, 24) },
  {
    asked: 'framing',
    said: '600S162-54 at 16',
    found: { ...steel(6, 16), 'framing.steel_thickness_mil': 54 },
  },
  {
    asked: 'framing',
    said: '6 inch steel studs, 43 mil, at 16',
    found: { ...steel(6, 16), 'framing.steel_thickness_mil': 43 },
  },
  {
    asked: 'framing',
    said: '18 ga',
    open: ['framing.steel_thickness_mil'],
    found: { 'framing.steel_thickness_mil': 43 },
  },
  {
    asked: 'framing',
    said: '54',
    open: ['framing.steel_thickness_mil'],
    found: { 'framing.steel_thickness_mil': 54 },
  },
  { asked: 'framing', said: '140 mm timber studs at 600 mm centres', found: wood(5.5, 24) },
  { asked: 'framing', said: '16', open: ['framing.spacing_in'], found: { 'framing.spacing_in': 16 } },
  { asked: 'framing', said: '24 inches', open: ['framing.spacing_in'], found: { 'framing.spacing_in': 24 } },
  {
    asked: 'framing',
    said: "2x6, don't know the spacing",
    found: wood(5.5),
    unknown: ['framing.spacing_in'],
  },
  {
    asked: 'framing',
    said: 'skip',
    unknown: ['framing.material', 'framing.depth_in', 'framing.spacing_in'],
  },
  { asked: 'sheathing', said: 'OSB', found: { sheathing: 'osb' } },
  { asked: 'sheathing', said: '2', found: { sheathing: 'plywood' } },
  { asked: 'sheathing', said: 'diagonal boards', found: { sheathing: 'boards' } },
  { asked: 'sheathing', said: 'glass-mat gypsum', found: { sheathing: 'gypsum' } },
  { asked: 'sheathing', said: 'fiberboard', found: { sheathing: 'fibreboard' } },
  { asked: 'sheathing', said: 'none', found: { sheathing: 'none' } },
  { asked: 'cavity', said: 'R-19 batts', found: { cavity_insulation_r: 19 } },
  { asked: 'cavity', said: '13', found: { cavity_insulation_r: 13 } },
  { asked: 'cavity', said: 'uninsulated', found: { cavity_insulation_r: 0 } },
  // 1 m²K/W = 5.678 h·ft²·°F/Btu
  { asked: 'cavity', said: 'RSI 3.7', found: { cavity_insulation_r: 21.01 } },
  { asked: 'retarder', said: 'kraft', found: { interior_vapour_retarder: 'class-ii' } },
  { asked: 'retarder', said: '6 mil poly', found: { interior_vapour_retarder: 'class-i' } },
  { asked: 'retarder', said: 'just latex paint', found: { interior_vapour_retarder: 'class-iii' } },
  { asked: 'retarder', said: 'a smart membrane', found: { interior_vapour_retarder: 'responsive' } },
  { asked: 'retarder', said: 'Class II', found: { interior_vapour_retarder: 'class-ii' } },
  { asked: 'retarder', said: 'no vapor barrier', found: { interior_vapour_retarder: 'none' } },
  {
    asked: 'windows',
    said: 'six 3x5 ft triple casements about 130 lb',
    windows: [
      {
        count: 6,
        width_in: 36,
        height_in: 60,
        operation: 'casement',
        glazing: 'triple',
        weight_lb: 130,
      },
    ],
  },
  {
    asked: 'windows',
    said: '4 double-hung 36x60 in. double pane with nail fins, work it out',
    windows: [
      {
        count: 4,
        width_in: 36,
        height_in: 60,
        operation: 'hung',
        glazing: 'double',
        mounting: 'flanged',
        weight_lb: 'unknown',
      },
    ],
  },
  {
    asked: 'windows',
    said: 'six 3050 casements and two 6-0 x 6-8 sliding doors, no fins',
    windows: [
      { count: 6, width_in: 36, height_in: 60, operation: 'casement' },
      { count: 2, width_in: 72, height_in: 80, operation: 'door', mounting: 'flangeless' },
    ],
  },
  // 1 kg = 2.20462 lb; 25.4 mm = 1 in.
  {
    asked: 'windows',
    said: 'one fixed 900 x 1500 mm, 45 kg',
    windows: [{ count: 1, width_in: 35.433, height_in: 59.055, operation: 'fixed', weight_lb: 99.21 }],
  },
  {
    asked: 'windows',
    phase: 'details',
    missing: ['glazing', 'mounting'],
    said: 'triple, flanged',
    windows: [{ glazing: 'triple', mounting: 'flanged' }],
  },
  { asked: 'windows', phase: 'details', missing: ['weight_lb'], said: '130', windows: [{ weight_lb: 130 }] },
  { asked: 'windows', phase: 'details', missing: ['weight_lb'], said: 'work it out', detailsUnknown: true },
  { asked: 'windows', phase: 'more', said: 'no more', complete: true },
  { asked: 'windows', phase: 'more', said: 'no', complete: true },
  { asked: 'windows', said: 'no windows', found: { windows: [] } },
  { asked: 'openings', said: 'yes', found: { rough_opening_can_change: true } },
  { asked: 'openings', said: 'the openings are fixed', found: { rough_opening_can_change: false } },
  { asked: 'openings', said: "openings can't change", found: { rough_opening_can_change: false } },
  { asked: 'finish', said: 'true stucco', found: { finish: 'cement-stucco' } },
  { asked: 'finish', said: 'real cement stucco', found: { finish: 'cement-stucco' } },
  { asked: 'finish', said: 'the look of stucco is enough', found: { finish: 'stucco-look' } },
  { asked: 'finish', said: 'looks like stucco', found: { finish: 'stucco-look' } },
  { asked: 'finish', said: 'anything', found: { finish: 'any' } },
  { asked: 'budget', said: '30 a foot', found: { budget_usd_per_ft2: 30 } },
  { asked: 'budget', said: 'about $32/sq ft', found: { budget_usd_per_ft2: 32 } },
  { asked: 'budget', said: 'thirty dollars', found: { budget_usd_per_ft2: 30 } },
  { asked: 'budget', said: 'up to 27.50', found: { budget_usd_per_ft2: 27.5 } },
  // 10.7639 ft² in a square metre
  { asked: 'budget', said: '$300 per square metre', found: { budget_usd_per_ft2: 27.87 } },
  { asked: 'budget', said: '?', unknown: ['budget_usd_per_ft2'] },
  { asked: 'crew', said: 'first time', found: { crew_skill: 'first-time' } },
  { asked: 'crew', said: 'DIY', found: { crew_skill: 'first-time' } },
  { asked: 'crew', said: 'general carpenters, no plasterer', found: { crew_skill: 'general' } },
  { asked: 'crew', said: 'a stucco crew', found: { crew_skill: 'stucco-experienced' } },
  { asked: 'place', said: 'experienced stucco crew', found: { crew_skill: 'stucco-experienced' } },
  { asked: 'crew', said: 'skilled plasterers', found: { crew_skill: 'stucco-experienced' } },
  {
    asked: 'crew',
    said: 'experienced with exterior insulation',
    found: { crew_skill: 'exterior-insulation-experienced' },
  },
  {
    asked: 'size',
    said: '1,800 sq ft, at most 6 in.',
    found: { wall_area_ft2: 1800, max_added_thickness_in: 6 },
  },
  { asked: 'size', said: '1800, 6', found: { wall_area_ft2: 1800, max_added_thickness_in: 6 } },
  { asked: 'size', said: '150 m2, no limit', found: { wall_area_ft2: 1615, max_added_thickness_in: 20 } },
  {
    asked: 'wind',
    said: '115 mph exposure C',
    found: { basic_wind_speed_mph: 115, exposure: 'C' },
  },
  {
    asked: 'wind',
    said: '120 mph, suburban, 25 ft to the roof',
    found: { basic_wind_speed_mph: 120, exposure: 'B', mean_roof_height_ft: 25 },
  },
  // 1 m/s = 2.23694 mph
  { asked: 'wind', said: '50 m/s', found: { basic_wind_speed_mph: 111.85 } },
  {
    asked: 'surroundings',
    said: '12 ft to the lot line, no wildfire, termites slight to moderate',
    found: { fire_separation_ft: 12, wildfire_area: false, termite_area: 'slight-to-moderate' },
  },
  {
    asked: 'surroundings',
    said: '3 m, in a wildfire area, very heavy termites',
    found: { fire_separation_ft: 9.84, wildfire_area: true, termite_area: 'very-heavy' },
  },
  {
    asked: 'priorities',
    said: 'balanced',
    found: { priorities: { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 1 } },
  },
  {
    asked: 'priorities',
    said: 'cost first, then moisture safety',
    found: { priorities: { cost: 3, moisture_safety: 2 } },
  },
  {
    asked: 'sheathing',
    said: 'plywood, R-13, kraft, true stucco, $28 a foot',
    found: {
      sheathing: 'plywood',
      cavity_insulation_r: 13,
      interior_vapour_retarder: 'class-ii',
      finish: 'cement-stucco',
      budget_usd_per_ft2: 28,
    },
  },
  {
    asked: 'project',
    said: 'retrofit in Gallatin county MT, 2x6 at 24, old kraft batts, six 3x5 triple pane casements about 130 lb, 30 a foot',
    place: 'Gallatin county MT',
    found: {
      project: 'retrofit',
      ...wood(5.5, 24),
      interior_vapour_retarder: 'class-ii',
      budget_usd_per_ft2: 30,
    },
    windows: [
      { count: 6, width_in: 36, height_in: 60, operation: 'casement', glazing: 'triple', weight_lb: 130 },
    ],
  },
  { asked: null, said: 'my budget is 20', found: { budget_usd_per_ft2: 20 } },
  { asked: null, said: 'budget 25 a foot', found: { budget_usd_per_ft2: 25 } },
  // Homeowners' words.
  { asked: 'project', said: 'our house is from the fifties', found: { project: 'retrofit' } },
  { asked: 'project', said: 'it stands since 1962', found: { project: 'retrofit' } },
  { asked: 'project', said: "it's there already", found: { project: 'retrofit' } },
  { asked: 'project', said: 'brand new', found: { project: 'new' } },
  { asked: 'cavity', said: "there's nothing in there", found: { cavity_insulation_r: 0 } },
  {
    asked: 'windows',
    said: 'three double hungs, 30 by 50',
    windows: [{ count: 3, operation: 'hung', width_in: 30, height_in: 50 }],
  },
  { asked: 'openings', said: "I'd rather not", found: { rough_opening_can_change: false } },
  { asked: 'openings', said: 'please leave them', found: { rough_opening_can_change: false } },
  { asked: 'openings', said: 'leave them alone', found: { rough_opening_can_change: false } },
  {
    asked: 'openings',
    said: 'they must stay the same size',
    found: { rough_opening_can_change: false },
  },
  { asked: 'openings', said: 'they can be bigger', found: { rough_opening_can_change: true } },
  { asked: 'finish', said: "I don't care how it looks", found: { finish: 'any' } },
  { asked: 'finish', said: "doesn't matter", found: { finish: 'any' } },
  { asked: 'finish', said: 'whatever looks good', found: { finish: 'any' } },
  { asked: 'budget', said: 'no limit', unknown: ['budget_usd_per_ft2'] },
  { asked: 'budget', said: 'money is no object', unknown: ['budget_usd_per_ft2'] },
  { asked: 'size', said: 'no limit', found: { max_added_thickness_in: 20 } },
  { asked: 'size', said: '40 by 9 feet', found: { wall_area_ft2: 360 } },
  { asked: 'size', said: 'one side, 30 by 9 ft', found: { wall_area_ft2: 270 }, unclear: ['one side'] },
  { asked: 'windows', said: 'no idea about the rest', phase: 'details', detailsUnknown: true },
  { asked: 'framing', said: '2*6', found: { 'framing.depth_in': 5.5, 'framing.material': 'wood' } },
  { asked: 'project', said: 'reno', found: { project: 'retrofit' } },
  { asked: 'project', said: 'retro', found: { project: 'retrofit' } },
  {
    asked: 'framing',
    said: 'existing, 2x4',
    found: { project: 'retrofit', 'framing.depth_in': 3.5, 'framing.material': 'wood' },
  },
  { asked: 'place', said: 'Reno, Nevada', place: 'Reno, Nevada' },
  { asked: 'finish', said: 'cheapest', found: { finish: 'any' } },
  { asked: 'size', said: 'wall is 30 ft by 9 ft', found: { wall_area_ft2: 270 } },
  { asked: 'size', said: 'the wall is 30 by 9', found: { wall_area_ft2: 270 } },
  { asked: 'cavity', said: 'some, not sure how much', unknown: ['cavity_insulation_r'] },
  { asked: 'crew', said: 'nobody yet', unknown: ['crew_skill'] },
  { asked: 'crew', said: "I'm a carpenter", found: { crew_skill: 'general' } },
  { asked: 'finish', said: '2021 code', found: { code_edition: '2021' } },
];

/** Lines that must not be taken for an answer to what is asked: vague, contradictory, impossible to place. */
export const ASKED_AGAIN: readonly Pick<Utterance, 'asked' | 'said' | 'open' | 'phase' | 'answers'>[] = [
  { asked: 'framing', said: 'my neighbor has 2x6' },
  { asked: 'framing', said: 'our neighbour’s house is 2x4 at 16' },
  { asked: 'finish', said: 'cedar' },
  { asked: 'place', said: 'zone 5' },
  { asked: 'place', said: '5' },
  { asked: 'project', said: 'maybe' },
  { asked: 'framing', said: '2x4 or 2x6' },
  { asked: 'framing', said: 'either wood or steel' },
  { asked: 'framing', said: 'not steel' },
  { asked: 'sheathing', said: 'plywod' },
  { asked: 'sheathing', said: 'not osb' },
  { asked: 'sheathing', said: 'osb or plywood' },
  { asked: 'sheathing', said: '7' },
  { asked: 'sheathing', said: 'some kind of particle board' },
  { asked: 'cavity', said: 'R-20+5' },
  { asked: 'cavity', said: 'R-10 continuous' },
  { asked: 'cavity', said: 'R-13 to R-15' },
  { asked: 'cavity', said: 'plenty' },
  { asked: 'retarder', said: 'vapor barrier' },
  { asked: 'retarder', said: 'no poly' },
  { asked: 'windows', said: '2x6' },
  { asked: 'windows', said: 'lots of glass' },
  { asked: 'openings', said: 'perhaps' },
  { asked: 'finish', said: 'stucco' },
  { asked: 'finish', said: 'not true stucco' },
  { asked: 'finish', said: 'brick' },
  { asked: 'budget', said: '25-30 a foot' },
  { asked: 'budget', said: 'cheap' },
  { asked: 'budget', said: '$25k to $30k' },
  { asked: 'budget', said: '€20000' },
  { asked: 'budget', said: '30 euros a foot' },
  { asked: 'size', said: '3 by 4 feet' },
  { asked: 'crew', said: 'no plasterers' },
  { asked: 'crew', said: 'my cousin' },
  { asked: 'crew', said: 'we are hiring a contractor' },
  { asked: 'crew', said: 'a builder' },
  { asked: 'crew', said: 'I do it myself' },
  { asked: 'wind', said: 'windy' },
  { asked: 'surroundings', said: 'some termites' },
  { asked: 'surroundings', said: 'far away' },
  { asked: 'surroundings', said: '3 acres' },
  { asked: 'surroundings', said: 'the next house is 20 feet away' },
  { asked: 'surroundings', said: "20 ft to the neighbour's house" },
  { asked: 'priorities', said: 'not cost' },
  { asked: 'budget', said: '\u001b[2J\u001b[31mred' },
];
