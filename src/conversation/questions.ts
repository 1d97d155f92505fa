import { NO_THICKNESS_LIMIT_IN } from '../brief/field-words.ts';
import type { Answers, FieldId } from './answers.ts';

export const QUESTION_IDS = [
  'place',
  'project',
  'framing',
  'sheathing',
  'cavity',
  'retarder',
  'windows',
  'openings',
  'finish',
  'budget',
  'crew',
  'size',
  'wind',
  'surroundings',
  'priorities',
] as const;
export type QuestionId = (typeof QUESTION_IDS)[number];

export type Choice = {
  readonly label: string;
  readonly sets: Partial<Answers>;
  /** Left out where another answer rules it out. */
  readonly isOffered?: (answers: Answers) => boolean;
};

const isSteel = (answers: Answers) => answers['framing.material'] === 'steel';

const hasNoWindows = ({ windows }: Answers) => Array.isArray(windows) && windows.length === 0;

/** One field of a question: how to ask for it alone, and what would be accepted. */
export type Part = {
  readonly field: FieldId;
  /** Completes "Still open: …". */
  readonly open: string;
  /** Completes "I take …". */
  readonly accepts: string;
  /** Left out where another answer makes it meaningless. */
  readonly isAsked?: (answers: Answers) => boolean;
};

export type Question = {
  readonly id: QuestionId;
  /** Short name: ruled title, and what "change …" takes. */
  readonly label: string;
  readonly aliases: readonly string[];
  readonly title: string;
  /** Asked instead when the wall is new. */
  readonly titleWhenNew?: string;
  /** One sentence: why it is asked. */
  readonly why: string;
  readonly parts: readonly Part[];
  readonly choices: readonly Choice[];
  /** Offered instead once some of the parts are answered. */
  readonly partChoices?: readonly Choice[];
  readonly example: string;
  readonly isAsked?: (answers: Answers) => boolean;
};

/** The questions in the order of asking. Data only: nothing here decides anything about the wall. */
export const QUESTIONS: readonly Question[] = [
  {
    id: 'place',
    label: 'Place',
    aliases: ['where', 'location', 'county', 'state', 'site', 'climate', 'zone', 'climate zone'],
    title: 'Where does the wall stand?',
    why: 'the county decides the climate zone, and with it how much insulation the code asks for and how vapour moves.',
    parts: [
      {
        field: 'place',
        open: 'the place',
        accepts: 'a county and state, a town and state, or a climate zone such as "5B"',
      },
    ],
    choices: [],
    example: 'Boulder County, Colorado',
  },
  {
    id: 'project',
    label: 'New or retrofit',
    aliases: ['project', 'retrofit', 'new', 'kind of job'],
    title: 'Is this a new wall, or one that stands already?',
    why: 'an old wall brings its own layers and openings along, and they limit what may go over it.',
    parts: [{ field: 'project', open: 'new or retrofit', accepts: '"new" or "retrofit"' }],
    choices: [
      { label: 'New wall', sets: { project: 'new' } },
      { label: 'Retrofit of an existing wall', sets: { project: 'retrofit' } },
    ],
    example: 'retrofit',
  },
  {
    id: 'framing',
    label: 'Framing',
    aliases: ['studs', 'stud', 'frame', 'spacing', 'stud size', 'stud depth', 'stud spacing'],
    title: 'What are the studs, and how far apart do they stand?',
    why: 'every screw through the insulation ends in a stud, and the depth sets how much insulation fits between.',
    parts: [
      { field: 'framing.material', open: 'wood or steel studs', accepts: '"wood" or "steel"' },
      {
        field: 'framing.depth_in',
        open: 'the size of the studs',
        accepts: 'a size such as "2x6", or the depth in inches',
      },
      {
        field: 'framing.spacing_in',
        open: 'the spacing of the studs',
        accepts: 'inches on center, such as "16 in."',
      },
      {
        field: 'framing.steel_thickness_mil',
        open: 'how thick the steel of the studs is',
        accepts: '33, 43 or 54 mil (it is stamped or coloured on the stud)',
        isAsked: isSteel,
      },
    ],
    choices: [
      {
        label: '2x4 wood studs, 16 in. on center',
        sets: { 'framing.material': 'wood', 'framing.depth_in': 3.5, 'framing.spacing_in': 16 },
      },
      {
        label: '2x6 wood studs, 16 in. on center',
        sets: { 'framing.material': 'wood', 'framing.depth_in': 5.5, 'framing.spacing_in': 16 },
      },
      {
        label: '2x6 wood studs, 24 in. on center',
        sets: { 'framing.material': 'wood', 'framing.depth_in': 5.5, 'framing.spacing_in': 24 },
      },
      {
        label: '3 5/8 in. steel studs, 16 in. on center',
        sets: { 'framing.material': 'steel', 'framing.depth_in': 3.625, 'framing.spacing_in': 16 },
      },
      {
        label: '6 in. steel studs, 16 in. on center',
        sets: { 'framing.material': 'steel', 'framing.depth_in': 6, 'framing.spacing_in': 16 },
      },
    ],
    partChoices: [
      { label: 'Wood studs', sets: { 'framing.material': 'wood' } },
      { label: 'Steel studs', sets: { 'framing.material': 'steel' } },
      { label: '2x4', sets: { 'framing.depth_in': 3.5 }, isOffered: (answers) => !isSteel(answers) },
      { label: '2x6', sets: { 'framing.depth_in': 5.5 }, isOffered: (answers) => !isSteel(answers) },
      { label: '3 5/8 in. deep', sets: { 'framing.depth_in': 3.625 }, isOffered: isSteel },
      { label: '6 in. deep', sets: { 'framing.depth_in': 6 }, isOffered: isSteel },
      { label: '16 in. on center', sets: { 'framing.spacing_in': 16 } },
      { label: '24 in. on center', sets: { 'framing.spacing_in': 24 } },
      { label: '33 mil steel', sets: { 'framing.steel_thickness_mil': 33 } },
      { label: '43 mil steel', sets: { 'framing.steel_thickness_mil': 43 } },
      { label: '54 mil steel', sets: { 'framing.steel_thickness_mil': 54 } },
    ],
    example: '2x6 at 16, R-21',
  },
  {
    id: 'sheathing',
    label: 'Sheathing',
    aliases: ['osb', 'plywood', 'boards', 'sheathing board'],
    title: 'What covers the outside of the studs now?',
    titleWhenNew: 'What will cover the outside of the studs?',
    why: 'it is the layer that gets wet first when the wall is wrong, and how well it dries differs from board to board.',
    parts: [
      { field: 'sheathing', open: 'the sheathing', accepts: 'one of the choices, by number or in words' },
    ],
    choices: [
      { label: 'OSB', sets: { sheathing: 'osb' } },
      { label: 'Plywood', sets: { sheathing: 'plywood' } },
      { label: 'Exterior gypsum board', sets: { sheathing: 'gypsum' } },
      { label: 'Fibreboard', sets: { sheathing: 'fibreboard' } },
      { label: 'Solid boards', sets: { sheathing: 'boards' } },
      { label: 'No sheathing', sets: { sheathing: 'none' } },
    ],
    example: 'plywood',
  },
  {
    id: 'cavity',
    label: 'Cavity insulation',
    aliases: ['insulation', 'batts', 'r-value', 'r value', 'cavity r'],
    title: 'How well are the stud bays insulated now?',
    titleWhenNew: 'What insulation goes between the studs?',
    why: 'the ratio between the insulation outside and between the studs decides whether the sheathing stays warm enough.',
    parts: [
      {
        field: 'cavity_insulation_r',
        open: 'the R-value between the studs',
        accepts: 'an R-value, such as "R-21"',
      },
    ],
    choices: [
      { label: 'None, empty stud bays', sets: { cavity_insulation_r: 0 } },
      { label: 'R-11', sets: { cavity_insulation_r: 11 } },
      { label: 'R-13', sets: { cavity_insulation_r: 13 } },
      { label: 'R-15', sets: { cavity_insulation_r: 15 } },
      { label: 'R-19', sets: { cavity_insulation_r: 19 } },
      { label: 'R-21', sets: { cavity_insulation_r: 21 } },
    ],
    example: 'R-19 batts',
  },
  {
    id: 'retarder',
    label: 'Vapour retarder',
    aliases: ['vapor retarder', 'vapour barrier', 'vapor barrier', 'interior', 'kraft', 'poly'],
    title: 'What is on the room side of the insulation now to slow vapour?',
    titleWhenNew: 'Is the vapour retarder on the room side settled already?',
    why: 'a tight layer inside and a tight layer outside trap water between them.',
    parts: [
      {
        field: 'interior_vapour_retarder',
        open: 'the vapour retarder on the room side',
        accepts: 'one of the choices, or words like "kraft", "poly", "latex paint"',
      },
    ],
    choices: [
      { label: 'No vapour retarder', sets: { interior_vapour_retarder: 'none' } },
      { label: 'Class III: latex paint on gypsum board', sets: { interior_vapour_retarder: 'class-iii' } },
      { label: 'Class II: kraft-faced batts', sets: { interior_vapour_retarder: 'class-ii' } },
      { label: 'Class I: polyethylene sheet or foil', sets: { interior_vapour_retarder: 'class-i' } },
      {
        label: 'Responsive membrane, tight in winter and open in summer',
        sets: { interior_vapour_retarder: 'responsive' },
      },
    ],
    example: 'kraft',
  },
  {
    id: 'windows',
    label: 'Windows',
    aliases: ['window', 'doors', 'glazing', 'casements'],
    title: 'Which windows and doors sit in the wall?',
    why: 'they move out to the new face and must be carried there: size and weight decide how.',
    parts: [
      {
        field: 'windows',
        open: 'the windows',
        accepts: 'number, size, kind, panes, flange and weight, such as "six 36x60 in. triple casements"',
      },
    ],
    choices: [{ label: 'No windows in this wall', sets: { windows: [] } }],
    example: 'six 3x5 ft triple casements about 130 lb, flanged',
  },
  {
    id: 'openings',
    label: 'Rough openings',
    aliases: ['openings', 'rough opening', 'opening'],
    title: 'May the rough openings be made larger?',
    why: 'a buck inside the opening takes room on all four sides; where the opening is fixed the buck must go on its face.',
    parts: [
      {
        field: 'rough_opening_can_change',
        open: 'whether the rough openings may change',
        accepts: '"yes" or "no"',
      },
    ],
    choices: [
      { label: 'Yes, the openings can change', sets: { rough_opening_can_change: true } },
      { label: 'No, the openings stay as they are', sets: { rough_opening_can_change: false } },
    ],
    example: 'no',
    isAsked: (answers) => answers.project === 'retrofit' && !hasNoWindows(answers),
  },
  {
    id: 'finish',
    label: 'Finish',
    aliases: ['stucco', 'cladding', 'look'],
    title: 'What should the finished wall be?',
    why: 'true cement stucco is the heaviest and asks for a plasterer; panels with its look are light and dry to hang.',
    parts: [{ field: 'finish', open: 'the finish', accepts: '"true stucco", "the look" or "anything"' }],
    choices: [
      { label: 'True cement stucco, nothing else will do', sets: { finish: 'cement-stucco' } },
      { label: 'The look of stucco is enough', sets: { finish: 'stucco-look' } },
      { label: 'Anything that serves the wall best', sets: { finish: 'any' } },
    ],
    example: 'true stucco',
  },
  {
    id: 'budget',
    label: 'Budget',
    aliases: ['cost', 'money', 'price', 'dollars'],
    title: 'What may the wall cost per square foot, outside the sheathing?',
    why: 'labour and material together sort out quickly which claddings stay in the running.',
    parts: [
      {
        field: 'budget_usd_per_ft2',
        open: 'the budget per square foot',
        accepts: 'one figure in US dollars per square foot, such as "$30 a foot"',
      },
    ],
    choices: [],
    example: '$30 a foot',
  },
  {
    id: 'crew',
    label: 'Who builds it',
    aliases: ['crew', 'builder', 'builders', 'skill', 'crew skill', 'labour', 'labor', 'who builds'],
    title: 'Whose hands will do the work, and what have they built before?',
    why: 'some assemblies forgive a learner and some do not, and plaster needs a plasterer.',
    parts: [
      {
        field: 'crew_skill',
        open: 'who does the work',
        accepts:
          'whoever does the work, hired or not, by number or in words; "don\'t know" while nobody is hired',
      },
    ],
    choices: [
      { label: 'People new to this: ourselves, or a first-time crew', sets: { crew_skill: 'first-time' } },
      { label: 'General carpenters, no plasterer', sets: { crew_skill: 'general' } },
      { label: 'A crew experienced with stucco', sets: { crew_skill: 'stucco-experienced' } },
      {
        label: 'A crew experienced with exterior insulation',
        sets: { crew_skill: 'exterior-insulation-experienced' },
      },
    ],
    example: 'general carpenters',
  },
  {
    id: 'size',
    label: 'Wall size',
    aliases: ['area', 'wall area', 'thickness', 'max thickness', 'thickness limit'],
    title: 'How much wall is there, and how far out may it grow?',
    why: 'the area turns prices into totals; eaves, sills, walks and lot lines limit the thickness.',
    parts: [
      {
        field: 'wall_area_ft2',
        open: 'the wall area',
        accepts: 'square feet of wall, such as "1800 sq ft"',
      },
      {
        field: 'max_added_thickness_in',
        open: 'the most it may grow outward',
        accepts: 'inches outside the sheathing, such as "6 in.", or "no limit"',
      },
    ],
    choices: [{ label: 'No limit on thickness', sets: { max_added_thickness_in: NO_THICKNESS_LIMIT_IN } }],
    example: '1800 sq ft, at most 6 in.',
  },
  {
    id: 'wind',
    label: 'Wind',
    aliases: ['wind speed', 'exposure', 'roof height', 'height'],
    title: 'How hard does the wind blow there, and how open and high is the wall?',
    why: 'suction pulls on every fastener; speed, exposure and height set how hard.',
    parts: [
      {
        field: 'basic_wind_speed_mph',
        open: 'the basic wind speed',
        accepts: 'miles per hour from the code’s wind map, such as "115 mph"',
      },
      { field: 'exposure', open: 'the exposure', accepts: 'exposure "B", "C" or "D"' },
      {
        field: 'mean_roof_height_ft',
        open: 'the mean roof height',
        accepts: 'feet from the ground to the middle of the roof, such as "22 ft"',
      },
    ],
    choices: [
      { label: 'Exposure B: town, suburb or woods', sets: { exposure: 'B' } },
      { label: 'Exposure C: open country', sets: { exposure: 'C' } },
      { label: 'Exposure D: open water or flats', sets: { exposure: 'D' } },
    ],
    example: '115 mph, exposure C, 22 ft to the roof',
  },
  {
    id: 'surroundings',
    label: 'Surroundings',
    aliases: ['lot line', 'fire', 'fire separation', 'wildfire', 'termites', 'termite', 'hazards'],
    title: 'How far is the lot line, and are wildfire or termites a matter there?',
    why: 'near a lot line or in a wildfire area combustible layers are limited; termites rule out foam in the ground.',
    parts: [
      {
        field: 'fire_separation_ft',
        open: 'the distance to the lot line',
        accepts:
          'feet from the wall as it stands to the lot line, such as "12 ft" (of a new building from its finished face)',
      },
      {
        field: 'wildfire_area',
        open: 'whether it is a wildfire area',
        accepts: '"wildfire" or "no wildfire"',
      },
      {
        field: 'termite_area',
        open: 'how bad termites are',
        accepts:
          'termites "none to slight", "slight to moderate", "moderate to heavy" or "very heavy" (map of the residential code)',
      },
    ],
    choices: [
      { label: 'In a wildfire area', sets: { wildfire_area: true } },
      { label: 'Not in a wildfire area', sets: { wildfire_area: false } },
      { label: 'Termites none to slight', sets: { termite_area: 'none-to-slight' } },
      { label: 'Termites slight to moderate', sets: { termite_area: 'slight-to-moderate' } },
      { label: 'Termites moderate to heavy', sets: { termite_area: 'moderate-to-heavy' } },
      { label: 'Termites very heavy', sets: { termite_area: 'very-heavy' } },
    ],
    example: '12 ft to the lot line, no wildfire, termites slight to moderate',
  },
  {
    id: 'priorities',
    label: 'Priorities',
    aliases: ['priority', 'what matters', 'weights'],
    title: 'What matters most, when walls are otherwise equal?',
    why: 'several walls will pass; this decides which of them comes first.',
    parts: [
      {
        field: 'priorities',
        open: 'what matters most',
        accepts: 'one or two of cost, moisture safety, energy, ease, carbon, in order; or "balanced"',
      },
    ],
    choices: [
      {
        label: 'Balanced',
        sets: { priorities: { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 1 } },
      },
      { label: 'Low cost', sets: { priorities: { cost: 3 } } },
      { label: 'Safety against moisture', sets: { priorities: { moisture_safety: 3 } } },
      { label: 'Low energy use', sets: { priorities: { energy: 3 } } },
      { label: 'Easy to build', sets: { priorities: { ease: 3 } } },
      { label: 'Low carbon', sets: { priorities: { carbon: 3 } } },
    ],
    example: 'cost first, then moisture safety',
  },
];

const BY_ID: ReadonlyMap<QuestionId, Question> = new Map(
  QUESTIONS.map((question) => [question.id, question]),
);

export function questionOf(id: QuestionId): Question {
  const question = BY_ID.get(id);
  if (!question) throw new RangeError(`No question is called ${id}.`);
  return question;
}

/** The question that a field of the scenario is asked in, if any. `windows[0].weight_lb` → windows. */
export function questionForField(field: string): Question | undefined {
  const exact = QUESTIONS.find((question) => question.parts.some((part) => part.field === field));
  if (exact) return exact;
  const root = field.split(/[.[]/)[0] ?? field;
  return QUESTIONS.find((question) => question.parts.some((part) => part.field.split('.')[0] === root));
}
