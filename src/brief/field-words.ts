import { listed } from '../base/listed.ts';

/** What a field of a scenario is called, the unit of its figures, and its values in words. */
type FieldWords = {
  readonly words: string;
  /** Left out where the value has none, or says it itself. */
  readonly unit?: string;
  readonly values?: Readonly<Record<string, string>>;
  /** A figure with its unit, where that is more than the two in a row. */
  readonly say?: (value: number) => string;
};

/** Largest thickness a scenario takes; stands for "no limit". */
export const NO_THICKNESS_LIMIT_IN = 20;

const YES_NO = { true: 'yes', false: 'no' };

const FIELDS: Readonly<Record<string, FieldWords>> = {
  name: { words: 'name' },
  place: { words: 'place' },
  'place.climate': { words: 'climate of the place' },
  project: {
    words: 'new or retrofit',
    values: { new: 'new wall', retrofit: 'retrofit of an existing wall' },
  },
  code_edition: { words: 'code edition' },
  'framing.material': { words: 'stud material', values: { wood: 'wood studs', steel: 'steel studs' } },
  'framing.depth_in': { words: 'stud depth', unit: 'in.', say: depthWords },
  'framing.spacing_in': { words: 'stud spacing', unit: 'in.', say: (inches) => `${inches} in. on center` },
  'framing.species_gravity': { words: 'specific gravity of the studs' },
  'framing.steel_thickness_mil': { words: 'thickness of the steel studs', unit: 'mil' },
  sheathing: {
    words: 'sheathing',
    values: {
      osb: 'OSB',
      plywood: 'plywood',
      gypsum: 'exterior gypsum board',
      fibreboard: 'fibreboard',
      boards: 'solid boards',
      none: 'no sheathing',
    },
  },
  cavity_insulation_r: {
    words: 'R-value between the studs',
    say: (r) => (r === 0 ? 'none, empty stud bays' : `R-${r}`),
  },
  interior_vapour_retarder: {
    words: 'interior vapour retarder',
    values: {
      none: 'no vapour retarder',
      'class-iii': 'Class III: latex paint',
      'class-ii': 'Class II: kraft facing',
      'class-i': 'Class I: polyethylene sheet or foil',
      responsive: 'responsive membrane',
    },
  },
  windows: { words: 'windows' },
  rough_opening_can_change: {
    words: 'rough openings',
    values: { true: 'can change', false: 'stay as they are' },
  },
  flange_plane: {
    words: 'window flange',
    values: {
      'insulation-face': 'at the face of the insulation',
      'furring-face': 'at the face of the furring',
    },
  },
  finish: {
    words: 'finish',
    values: {
      'cement-stucco': 'true cement stucco',
      'stucco-look': 'the look of stucco is enough',
      any: 'any finish',
    },
  },
  budget_usd_per_ft2: {
    words: 'budget',
    unit: '$ per ft²',
    say: (usd) => `${dollarsAFoot(usd)} per square foot`,
  },
  crew_skill: {
    words: 'crew',
    values: {
      'first-time': 'first time doing this',
      general: 'general carpenters',
      'stucco-experienced': 'experienced with stucco',
      'exterior-insulation-experienced': 'experienced with exterior insulation',
    },
  },
  wall_area_ft2: {
    words: 'wall area',
    unit: 'ft²',
    say: (area) => `${area.toLocaleString('en-US')} sq ft`,
  },
  basic_wind_speed_mph: { words: 'basic wind speed', unit: 'mph' },
  exposure: {
    words: 'wind exposure',
    values: { B: 'B, town, suburb or woods', C: 'C, open country', D: 'D, open water or flats' },
  },
  mean_roof_height_ft: { words: 'mean roof height', unit: 'ft' },
  building_least_width_ft: { words: 'least plan dimension', unit: 'ft' },
  fire_separation_ft: { words: 'distance to the lot line', unit: 'ft' },
  wildfire_area: { words: 'wildfire area', values: YES_NO },
  termite_area: {
    words: 'termite probability',
    values: {
      'none-to-slight': 'none to slight',
      'slight-to-moderate': 'slight to moderate',
      'moderate-to-heavy': 'moderate to heavy',
      'very-heavy': 'very heavy',
    },
  },
  max_added_thickness_in: { words: 'room outside the sheathing', unit: 'in.', say: roomWords },
  'thermal_assumptions.framing_style': { words: 'style of framing' },
  'thermal_assumptions.framing_fraction': { words: 'share of the wall that is framing' },
  'thermal_assumptions.film_inside_r': { words: 'R-value of the inside air film' },
  'thermal_assumptions.film_outside_r': { words: 'R-value of the outside air film' },
  price_book: { words: 'prices' },
  priorities: { words: 'priorities' },
};

/** Of one kind of window. */
const OF_WINDOW: Readonly<Record<string, FieldWords>> = {
  count: { words: 'number' },
  width_in: { words: 'width', unit: 'in.' },
  height_in: { words: 'height', unit: 'in.' },
  glazing: { words: 'glazing' },
  mounting: { words: 'mounting' },
  operation: { words: 'operation' },
  weight_lb: { words: 'weight', unit: 'lb' },
  frame: { words: 'frame' },
  lite_in: { words: 'thickness of a pane', unit: 'in.' },
  rough_opening_width_in: { words: 'width of the rough opening', unit: 'in.' },
  rough_opening_height_in: { words: 'height of the rough opening', unit: 'in.' },
};

/** A path in the scenario as a reader would say it: `windows[0].weight_lb` → "windows, kind 1: weight". */
export function fieldWords(path: string): string {
  return called(path, ({ words }) => words);
}

/** The same with the unit, for tables whose figures have none: "windows, kind 1: weight, lb". */
export function fieldWordsWithUnit(path: string): string {
  return called(path, withUnit);
}

/** Several paths together: "windows, kinds 1 and 2: width, in.; height, in." */
export function fieldsWordsWithUnit(paths: readonly string[]): string {
  const windows = paths.map(windowField).filter((one) => one !== null);
  const kinds = [...new Set(windows.map(({ kind }) => `${kind}`))];
  const words = [...new Set(windows.map(({ field }) => withUnit(field)))];
  // Only where every kind lacks the same: "kinds 1 and 2" must not say of one what is true of the other.
  if (windows.length < paths.length || kinds.length < 2 || kinds.length * words.length !== paths.length) {
    return paths.map(fieldWordsWithUnit).join('; ');
  }
  return `windows, kinds ${listed(kinds)}: ${words.join('; ')}`;
}

/** A value of a field in words, with its unit: "OSB", "16 in. on center"; null is an open one. */
export function valueWords(path: string, value: string | number | boolean | null): string {
  if (value === null) return 'left open';
  const field = windowField(path)?.field ?? entry(FIELDS, path);
  const words = entry(field?.values ?? {}, String(value));
  if (words !== undefined) return words;
  if (typeof value === 'boolean') return YES_NO[value ? 'true' : 'false'];
  if (typeof value === 'string') return value;
  return field?.say?.(value) ?? (field?.unit === undefined ? `${value}` : `${value} ${field.unit}`);
}

/** "$30", "$12.50" */
export function dollarsAFoot(usd: number): string {
  return `$${Number.isInteger(usd) ? usd : usd.toFixed(2)}`;
}

const NOMINAL: ReadonlyMap<number, string> = new Map([
  [3.5, '2x4'],
  [5.5, '2x6'],
  [7.25, '2x8'],
  [9.25, '2x10'],
  [11.25, '2x12'],
]);

function depthWords(depth_in: number): string {
  const nominal = NOMINAL.get(depth_in);
  return nominal ? `${depth_in} in. (${nominal})` : `${depth_in} in.`;
}

function roomWords(room_in: number): string {
  return room_in >= NO_THICKNESS_LIMIT_IN
    ? `no limit (up to ${room_in} in., the most I draw up)`
    : // A length said in millimetres has more places than anybody measures.
      `${Number(room_in.toFixed(2))} in. at most`;
}

function called(path: string, wordsOf: (field: FieldWords) => string): string {
  const whole = /^windows\[(\d+)\]$/.exec(path)?.[1];
  if (whole !== undefined) return `windows, kind ${Number(whole) + 1}`;
  const ofWindow = windowField(path);
  if (ofWindow) return `windows, kind ${ofWindow.kind}: ${wordsOf(ofWindow.field)}`;
  return wordsOf(entry(FIELDS, path) ?? { words: bareWords(path) });
}

function withUnit({ words, unit }: FieldWords): string {
  return unit === undefined ? words : `${words}, ${unit}`;
}

function windowField(path: string): { readonly kind: number; readonly field: FieldWords } | null {
  const [, index, key] = /^windows\[(\d+)\]\.(.+)$/.exec(path) ?? [];
  if (index === undefined || key === undefined) return null;
  return { kind: Number(index) + 1, field: entry(OF_WINDOW, key) ?? { words: bareWords(key) } };
}

/** For a key that a later or an earlier version has: its words without marks. */
function bareWords(key: string): string {
  return key.replace(/[_.-]+/g, ' ').trim();
}

function entry<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
