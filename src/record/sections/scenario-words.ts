import { valueWords } from '../../brief/field-words.ts';
import { priceBookWords } from '../../brief/price-book.ts';
import type { Scenario, ScenarioWindow } from '../../brief/scenario.ts';
import { numberText } from '../figure-text.ts';

type Said<T> = Exclude<T, 'unknown' | undefined>;
type Words<K extends keyof Scenario> = Readonly<Record<Extract<Said<Scenario[K]>, string>, string>>;

const PROJECT: Words<'project'> = { new: 'a new wall', retrofit: 'retrofit of an existing wall' };
const SHEATHING: Words<'sheathing'> = {
  osb: 'OSB',
  plywood: 'plywood',
  gypsum: 'exterior gypsum board',
  fibreboard: 'fibreboard',
  boards: 'solid boards',
  none: 'none',
};
const RETARDER: Words<'interior_vapour_retarder'> = {
  none: 'none',
  'class-iii': 'Class III (latex paint)',
  'class-ii': 'Class II (kraft facing)',
  'class-i': 'Class I (polyethylene sheet or foil)',
  responsive: 'responsive membrane',
};
const FINISH: Words<'finish'> = {
  'cement-stucco': 'true cement stucco, nothing else will do',
  'stucco-look': 'the look of stucco is enough',
  any: 'any finish',
};
const CREW: Words<'crew_skill'> = {
  'first-time': 'doing this for the first time',
  general: 'general building crew',
  'stucco-experienced': 'experienced with stucco',
  'exterior-insulation-experienced': 'experienced with exterior insulation',
};
/** One field of a scenario: what it is called, and its value in words; null where nothing or "unknown" was said. */
export type SaidField = { readonly label: string; readonly value: string | null };

/** What stands, what is wished and who builds, in reading order. The place comes from the site, the rest from the questions. */
export function scenarioFields(scenario: Scenario): SaidField[] {
  return [
    { label: 'Project', value: word(PROJECT, scenario.project) },
    { label: 'Studs', value: studs(scenario.framing) },
    { label: 'Sheathing', value: word(SHEATHING, scenario.sheathing) },
    {
      label: 'Insulation between the studs',
      value: text(scenario.cavity_insulation_r, (r) => (r === 0 ? 'none' : `R-${r}`)),
    },
    {
      label: 'Interior vapour retarder',
      value: word(RETARDER, scenario.interior_vapour_retarder),
    },
    { label: 'Windows', value: windows(scenario.windows) },
    {
      label: 'Rough openings',
      value: text(scenario.rough_opening_can_change, (yes) => (yes ? 'can change' : 'stay as they are')),
    },
    {
      label: 'Window flange',
      value: text(scenario.flange_plane, (plane) =>
        plane === 'furring-face' ? 'at the face of the furring' : 'at the face of the insulation',
      ),
    },
    { label: 'Finish wanted', value: word(FINISH, scenario.finish) },
    { label: 'Budget', value: text(scenario.budget_usd_per_ft2, (usd) => `$${usd} per ft² of wall`) },
    { label: 'Crew', value: word(CREW, scenario.crew_skill) },
    {
      label: 'Wall area',
      value: text(scenario.wall_area_ft2, (ft2) => `${ft2.toLocaleString('en-US')} ft²`),
    },
    { label: 'Prices', value: text(scenario.price_book, priceBookWords) },
  ];
}

/** A value in words; null where nothing or "unknown" was said. */
function text<T>(value: T, words: (said: Said<T>) => string): string | null {
  return value === undefined || value === 'unknown' ? null : words(value as Said<T>);
}

function word<K extends string>(
  words: Readonly<Record<K, string>>,
  value: K | 'unknown' | undefined,
): string | null {
  return text(value, (said) => words[said as K]);
}

function studs(framing: Scenario['framing']): string | null {
  return text(framing, ({ material, depth_in, spacing_in, species_gravity, steel_thickness_mil }) => {
    const parts = [
      text(material, (name) => `${name} studs`),
      text(depth_in, (depth) => `${depth} in. deep`),
      text(spacing_in, (spacing) => `${spacing} in. on center`),
      text(steel_thickness_mil, (mil) => `${mil} mil steel`),
      text(species_gravity, (gravity) => `specific gravity ${gravity}`),
    ].filter((part) => part !== null);
    return parts.length > 0 ? parts.join(', ') : 'studs, nothing more said';
  });
}

function windows(given: Scenario['windows']): string | null {
  return text(given, (kinds) => (kinds.length === 0 ? 'none' : kinds.map(windowText).join('; ')));
}

function windowText(window: ScenarioWindow): string {
  const size = [window.width_in, window.height_in].map((inch) => text(inch, String) ?? '?');
  const opening = [window.rough_opening_width_in, window.rough_opening_height_in].map(
    (inch) => text(inch, String) ?? '?',
  );
  const hasOpening = opening.some((side) => side !== '?');
  const hasSize = size.some((side) => side !== '?');
  const parts = [
    text(window.glazing, (panes) => `${panes}-glazed`),
    text(window.mounting, (mounting) => mounting),
    text(window.operation, (operation) => operation),
    hasSize ? `${size.join(' x ')} in.` : null,
    text(window.weight_lb, (lb) => `${lb} lb each`),
    text(window.frame, (frame) => `${frame.replaceAll('-', ' ')} frame`),
    text(window.lite_in, (lite) => `panes of ${lite} in.`),
    hasOpening ? `rough opening ${opening.join(' x ')} in.` : null,
  ].filter((part) => part !== null);
  const count = text(window.count, String) ?? 'number not said';
  return parts.length > 0 ? `${count}: ${parts.join(', ')}` : count;
}

/** An assumed value for a table that has the unit beside the field. */
export function assumedWords(field: string, value: string | number | boolean | null): string {
  if (value === null) return 'not known';
  return typeof value === 'number' ? numberText(value) : valueWords(field, value);
}
