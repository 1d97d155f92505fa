import { priceBookWords } from './price-book.ts';
import type { Scenario } from './scenario.ts';

/** One thing the user said, in words. */
export type Answer = { readonly field: string; readonly question: string; readonly answer: string };

type Given<K extends keyof Scenario> = Exclude<NonNullable<Scenario[K]>, 'unknown'>;
type Teller = { readonly question: string; readonly tell: (scenario: Scenario) => string | undefined };

function asked<K extends keyof Scenario>(
  field: K,
  question: string,
  say: (value: Given<K>) => string,
): [K, Teller] {
  return [
    field,
    {
      question,
      tell: (scenario) => {
        const value = scenario[field];
        return value === undefined || value === 'unknown' ? undefined : say(value as Given<K>);
      },
    },
  ];
}

const plain = (value: string) => value.replaceAll('-', ' ');
const yesNo = (value: boolean) => (value ? 'yes' : 'no');
const said = <T>(value: T | 'unknown' | undefined): value is T => value !== undefined && value !== 'unknown';

const CREWS: Readonly<Record<Given<'crew_skill'>, string>> = {
  'first-time': 'a crew doing this for the first time',
  general: 'a general building crew',
  'stucco-experienced': 'a crew experienced with stucco',
  'exterior-insulation-experienced': 'a crew experienced with exterior insulation',
};

const TELLERS: ReadonlyMap<string, Teller> = new Map<string, Teller>([
  asked('place', 'Where is it?', (place) => {
    if ('county' in place) return `${place.county}, ${place.state.toUpperCase()}`;
    return 'climate_zone' in place
      ? `climate zone ${place.climate_zone}`
      : 'twelve months of temperature and rain';
  }),
  asked('project', 'New wall or retrofit?', plain),
  asked('code_edition', 'Which code edition is adopted?', (year) => year),
  asked('framing', 'What is the wall framed with?', framingWords),
  asked('sheathing', 'What sheathing is on the studs?', (kind) => (kind === 'osb' ? 'OSB' : kind)),
  asked('cavity_insulation_r', 'What insulation is between the studs?', (r) => (r > 0 ? `R-${r}` : 'none')),
  asked('interior_vapour_retarder', 'What vapour retarder is on the inside?', (kind) =>
    kind.replace('class-iii', 'Class III').replace('class-ii', 'Class II').replace('class-i', 'Class I'),
  ),
  asked('windows', 'Which windows?', (windows) =>
    windows.length > 0 ? windows.map(windowWords).join('; ') : 'none',
  ),
  asked('rough_opening_can_change', 'Can the rough openings change?', yesNo),
  asked('flange_plane', 'Where should the window flange sit?', (plane) =>
    plane === 'furring-face' ? 'at the face of the furring' : 'at the face of the insulation',
  ),
  asked(
    'finish',
    'Which finish is wanted?',
    (finish) =>
      ({
        'cement-stucco': 'true cement stucco and nothing else',
        'stucco-look': 'the look of stucco',
        any: 'any',
      })[finish],
  ),
  asked('budget_usd_per_ft2', 'What is the budget?', (usd) => `$${usd} a square foot of wall`),
  asked('crew_skill', 'Who builds it?', (skill) => CREWS[skill]),
  asked('wall_area_ft2', 'How much wall?', (area) => `${area} ft²`),
  asked('basic_wind_speed_mph', 'What is the basic wind speed?', (mph) => `${mph} mph`),
  asked('exposure', 'How open is the site?', (letter) => `exposure ${letter}`),
  asked('mean_roof_height_ft', 'How high is the roof on average?', (ft) => `${ft} ft`),
  asked('building_least_width_ft', 'How wide is the building at its narrowest?', (ft) => `${ft} ft`),
  asked('fire_separation_ft', 'How far is the lot line?', (ft) => `${ft} ft`),
  asked('wildfire_area', 'Is it in a wildfire area?', yesNo),
  asked('termite_area', 'How likely are termites?', plain),
  asked('max_added_thickness_in', 'How much may the wall grow outward?', (inches) => `${inches} in.`),
  asked('thermal_assumptions', 'What is heat counted by?', (given) =>
    Object.entries(given)
      .map(([key, value]) => `${key.replace(/_r$/, ' R').replaceAll('_', ' ')} ${value}`)
      .join(', '),
  ),
  asked('price_book', 'Which prices?', priceBookWords),
  asked('priorities', 'What matters most?', (weights) =>
    Object.entries(weights)
      .map(([key, weight]) => `${key.replaceAll('_', ' ')} ${weight}`)
      .join(', '),
  ),
]);

/** Everything the scenario says, in the order of the questions. What was left out or "unknown" is an assumption. */
export function answersOf(scenario: Scenario): Answer[] {
  return [...TELLERS].flatMap(([field, { question, tell }]) => {
    const answer = tell(scenario);
    return answer === undefined ? [] : [{ field, question, answer }];
  });
}

function framingWords(framing: Given<'framing'>): string {
  const parts = [
    said(framing.material) ? `${framing.material} studs` : 'studs',
    ...(said(framing.depth_in) ? [`${framing.depth_in} in. deep`] : []),
    ...(said(framing.spacing_in) ? [`at ${framing.spacing_in} in. on center`] : []),
  ];
  const mil = said(framing.steel_thickness_mil) ? `, ${framing.steel_thickness_mil} mil steel` : '';
  const gravity = said(framing.species_gravity) ? `, specific gravity ${framing.species_gravity}` : '';
  return parts.join(' ') + mil + gravity;
}

function windowWords(window: Given<'windows'>[number]): string {
  const size =
    said(window.width_in) && said(window.height_in) ? [`${window.width_in} x ${window.height_in} in.`] : [];
  const parts = [
    ...(said(window.count) ? [size.length > 0 ? `${window.count} of` : `${window.count}`] : []),
    ...size,
    ...(said(window.glazing) ? [`${window.glazing}-glazed`] : []),
    ...(said(window.mounting) ? [window.mounting] : []),
    ...(said(window.operation) ? [window.operation] : []),
  ];
  const weight = said(window.weight_lb) ? `, ${window.weight_lb} lb each` : '';
  const made = [
    ...(said(window.frame) ? [`${plain(window.frame)} frame`] : []),
    ...(said(window.lite_in) ? [`panes of ${window.lite_in} in.`] : []),
  ].map((word) => `, ${word}`);
  const sides = [window.rough_opening_width_in, window.rough_opening_height_in];
  const opening = sides.some(said)
    ? `, rough opening ${sides.map((side) => (said(side) ? side : '?')).join(' x ')} in.`
    : '';
  return `${parts.join(' ')}${weight}${made.join('')}${opening}`;
}
