import { valueWords } from '../brief/field-words.ts';
import type { ScenarioWindow } from '../brief/scenario.ts';
import { type Answers, type AnswerValue, FIELD_IDS, type FieldId, type Finding } from './answers.ts';

/** What each field is called when the user's answers are shown. */
export const FIELD_LABELS: Readonly<Record<FieldId, string>> = {
  name: 'Name',
  place: 'Place',
  project: 'New or retrofit',
  code_edition: 'Code edition',
  'framing.material': 'Framing',
  'framing.depth_in': 'Stud depth',
  'framing.spacing_in': 'Stud spacing',
  'framing.steel_thickness_mil': 'Steel thickness',
  sheathing: 'Sheathing',
  cavity_insulation_r: 'Cavity insulation',
  interior_vapour_retarder: 'Interior vapour retarder',
  windows: 'Windows',
  rough_opening_can_change: 'Rough openings',
  finish: 'Finish',
  budget_usd_per_ft2: 'Budget',
  crew_skill: 'Who builds it',
  wall_area_ft2: 'Wall area',
  basic_wind_speed_mph: 'Basic wind speed',
  exposure: 'Wind exposure',
  mean_roof_height_ft: 'Mean roof height',
  fire_separation_ft: 'Distance to the lot line',
  wildfire_area: 'Wildfire area',
  termite_area: 'Termites',
  max_added_thickness_in: 'Thickness limit',
  priorities: 'Priorities',
};

export const NOT_KNOWN = 'not known';

const PRIORITY_WORDS: Readonly<Record<string, string>> = {
  cost: 'low cost',
  moisture_safety: 'safety against moisture',
  energy: 'low energy use',
  ease: 'easy to build',
  carbon: 'low carbon',
};

/** An answer in words: `5.5` for the stud depth → "2x6 (5.5 in.)". */
export function describeAnswer(field: FieldId, value: AnswerValue): string {
  if (value === 'unknown') return NOT_KNOWN;
  if (field === 'windows' && Array.isArray(value)) {
    return value.length === 0 ? 'no windows' : value.map(describeWindow).join('; ');
  }
  if (typeof value === 'object' && !Array.isArray(value)) {
    return field === 'place' ? describePlace(value) : describePriorities(value);
  }
  return Array.isArray(value) ? String(value) : valueWords(field, value);
}

/** What was said in words; a budget for the whole wall by both its figures. */
export function describeFinding({ field, value, total_usd }: Finding): string {
  const words = describeAnswer(field, value);
  return total_usd === undefined ? words : `${dollarsInAll(total_usd)} in all, ${words}`;
}

/** "$25,000" */
export function dollarsInAll(usd: number): string {
  return `$${Math.round(usd).toLocaleString('en-US')}`;
}

function describePlace(value: object): string {
  if ('county' in value && 'state' in value) return `${value.county}, ${value.state}`;
  if ('climate_zone' in value) return `climate zone ${value.climate_zone}`;
  return 'twelve months of climate figures';
}

const ALL_PRIORITIES = 5;

function describePriorities(value: object): string {
  const weights = Object.values(value);
  if (weights.length === ALL_PRIORITIES && new Set(weights).size === 1) return 'balanced';
  return Object.entries(value)
    .map(([key, weight]) => `${PRIORITY_WORDS[key] ?? key} (weight ${weight})`)
    .join(', ');
}

/** One kind of window in words; aspects that were not said are left out. */
export function describeWindow(window: ScenarioWindow): string {
  const known = <T>(value: T | 'unknown' | undefined): T | null =>
    value === undefined || value === 'unknown' ? null : value;
  const count = known(window.count);
  const width = known(window.width_in);
  const height = known(window.height_in);
  const operation = known(window.operation);
  const glazing = known(window.glazing);
  const weight = known(window.weight_lb);
  const openingWidth = known(window.rough_opening_width_in);
  const openingHeight = known(window.rough_opening_height_in);
  const what = operation ? OPERATION_WORDS[operation] : ['window', 'windows'];
  const parts = [
    [count, glazing ? `${glazing}-glazed` : null, what?.[count === 1 ? 0 : 1]]
      .filter((word) => word !== null)
      .join(' '),
    width && height ? `${inchesShown(width)} x ${inchesShown(height)} in.` : null,
    openingWidth && openingHeight
      ? `rough opening ${inchesShown(openingWidth)} x ${inchesShown(openingHeight)} in.`
      : null,
    known(window.mounting),
    weight === null
      ? window.weight_lb === 'unknown'
        ? 'weight to be worked out'
        : null
      : `${weight} lb each`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** Millimetres make long fractions of an inch; nobody reads more than hundredths. */
function inchesShown(value_in: number): number {
  return Number(value_in.toFixed(2));
}

const OPERATION_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  fixed: ['fixed window', 'fixed windows'],
  casement: ['casement', 'casements'],
  awning: ['awning window', 'awning windows'],
  hung: ['hung window', 'hung windows'],
  sliding: ['sliding window', 'sliding windows'],
  door: ['door', 'doors'],
};

/** "Framing: wood studs" for each answer given, in the order of the fields. */
export function describeAll(answers: Answers): { field: FieldId; label: string; value: string }[] {
  const rows: { field: FieldId; label: string; value: string }[] = [];
  for (const field of FIELD_IDS) {
    const value = answers[field];
    if (value !== undefined)
      rows.push({ field, label: FIELD_LABELS[field], value: describeAnswer(field, value) });
  }
  return rows;
}
