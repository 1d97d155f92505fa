import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answers } from '../../src/conversation/answers.ts';
import data from '../../src/conversation/data/other-matters.json' with { type: 'json' };
import { otherMattersSchema } from '../../src/conversation/understanding/other-matters.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

/** Lines before each question of a retrofit, or of a part of it. */
const BEFORE = {
  place: [],
  project: WHOLE_TALK.slice(0, 1),
  framing: WHOLE_TALK.slice(0, 2),
  spacing: [...WHOLE_TALK.slice(0, 2), '2x6'],
  steel: [...WHOLE_TALK.slice(0, 2), '6 inch steel studs at 16'],
  sheathing: WHOLE_TALK.slice(0, 3),
  cavity: WHOLE_TALK.slice(0, 4),
  retarder: WHOLE_TALK.slice(0, 5),
  windows: WHOLE_TALK.slice(0, 6),
  'window size': [...WHOLE_TALK.slice(0, 6), '3 double hung windows'],
  'window weight': [...WHOLE_TALK.slice(0, 6), 'six 3x5 ft triple casements, flanged'],
  'more windows': WHOLE_TALK.slice(0, 7),
  openings: WHOLE_TALK.slice(0, 8),
  finish: WHOLE_TALK.slice(0, 9),
  budget: WHOLE_TALK.slice(0, 10),
  crew: WHOLE_TALK.slice(0, 11),
  size: WHOLE_TALK.slice(0, 12),
  thickness: [...WHOLE_TALK.slice(0, 12), '1800 sq ft'],
  wind: WHOLE_TALK.slice(0, 13),
  roof: [...WHOLE_TALK.slice(0, 13), '115 mph, exposure C'],
  surroundings: WHOLE_TALK.slice(0, 14),
  priorities: WHOLE_TALK.slice(0, 15),
} as const satisfies Record<string, readonly string[]>;
type Asked = keyof typeof BEFORE;
const ASKED = Object.keys(BEFORE) as Asked[];

const talks = new Map<Asked, Talk['state']>();

/** What a line sets, at a question. */
function heard(asked: Asked, said: string) {
  const state = talks.get(asked) ?? new Talk().say(...BEFORE[asked]).state;
  talks.set(asked, state);
  const talk = new Talk();
  talk.state = state;
  const before: Answers = state.answers;
  talk.say(said);
  const after = talk.state.answers;
  const fields = new Set([...Object.keys(before), ...Object.keys(after)]) as Set<keyof Answers>;
  const changed = [...fields].filter(
    (field) => JSON.stringify(before[field]) !== JSON.stringify(after[field]),
  );
  return { sets: Object.fromEntries(changed.map((field) => [field, after[field]])), talk };
}

const NOTHING: Partial<Answers> = {};
const wood = { 'framing.material': 'wood' } as const;

/** What is asked, what is typed, and what it sets: all of it. */
const LINES: readonly (readonly [Asked, string, Partial<Answers>])[] = [
  // A number has to be of what is asked.
  ['windows', 'no thicker than 4 inches', { max_added_thickness_in: 4 }],
  ['framing', 'no thicker than 4 inches', { max_added_thickness_in: 4 }],
  ['windows', 'it can only stick out 3 inches', { max_added_thickness_in: 3 }],
  ['framing', "it can't come out more than 5 in.", { max_added_thickness_in: 5 }],
  ['windows', 'eaves are 12 inches', NOTHING],
  ['windows', "there's 1 inch of foam already", NOTHING],
  ['windows', '2 layers of siding', NOTHING],
  ['windows', 'need it done in 6 weeks', NOTHING],
  ['windows', 'we have 3 kids', NOTHING],
  ['windows', "I'm 65", NOTHING],
  ['windows', '15 year old windows', NOTHING],
  ['windows', 'our budget is 20 percent of 100k', NOTHING],
  ['more windows', 'eave 20 ft', NOTHING],
  ['more windows', '2 skylights in the roof', NOTHING],
  ['window size', '4 of them', NOTHING],
  ['windows', 'front has 3', NOTHING],
  ['windows', '2 windows in each', NOTHING],
  ['windows', '8', { windows: [{ count: 8 }] }],
  ['windows', 'about 8 I think', { windows: [{ count: 8 }] }],
  ['windows', 'six of them', { windows: [{ count: 6 }] }],
  ['windows', '4 triple flanged', { windows: [{ count: 4, glazing: 'triple', mounting: 'flanged' }] }],
  ['windows', '4 kitchen windows', { windows: [{ count: 4 }] }],
  ['framing', 'mineral wool 3 inches', NOTHING],
  ['framing', '4 kids', NOTHING],
  ['cavity', 'blown in cellulose 10 years ago', NOTHING],
  ['budget', "I'm 65", NOTHING],
  ['budget', 'I have 3 kids', NOTHING],
  ['budget', 'in 1995', NOTHING],
  ['size', '3 neighbors', NOTHING],
  ['size', 'the house is 6 years old', NOTHING],
  ['size', '18 square', NOTHING],
  ['size', '1 inch of stucco', NOTHING],
  ['thickness', '9 ft walls', NOTHING],
  ['framing', '3/4 inch thick plywood', { sheathing: 'plywood' }],
  // Ages are neither numbers nor heights.
  ['framing', 'windows are 30 years old', NOTHING],
  ['windows', 'the roof is 8 years old', NOTHING],
  ['wind', 'the roof is 8 years old', NOTHING],
  ['windows', 'windows replaced in 1995', NOTHING],
  [
    'windows',
    '10 yr old double hung windows 3x5',
    { windows: [{ width_in: 36, height_in: 60, operation: 'hung' }] },
  ],
  ['project', 'the house has stood since 1955', { project: 'retrofit' }],
  // What is not so is not so.
  ['framing', 'not doing it myself', NOTHING],
  ['framing', "we won't be doing it ourselves", NOTHING],
  ['framing', 'not stucco', NOTHING],
  ['framing', 'I hate stucco', NOTHING],
  ['framing', 'not going to use real stucco', NOTHING],
  ['framing', 'true stucco is not for us', NOTHING],
  ['framing', "it isn't plywood", NOTHING],
  ['framing', "we don't have plywood", NOTHING],
  ['cavity', 'R-13 not R-19', { cavity_insulation_r: 13 }],
  ['surroundings', 'wildfire is not an issue', { wildfire_area: false }],
  ['openings', 'I dont want to make them bigger', { rough_opening_can_change: false }],
  // Other parts of the house are not the wall.
  ['framing', 'attic has R-38', NOTHING],
  ['framing', 'R-13 in the walls, R-38 in the attic', { cavity_insulation_r: 13 }],
  ['framing', 'R-19 attic, nothing in walls', { cavity_insulation_r: 0 }],
  ['cavity', 'R-38 ceiling', NOTHING],
  ['framing', 'basement is R-10', NOTHING],
  ['framing', 'roof sheathing is osb', NOTHING],
  ['framing', 'plywood subfloor', NOTHING],
  ['framing', '2x10 rafters', NOTHING],
  ['cavity', 'blown-in cellulose in the attic', NOTHING],
  ['framing', 'garage wall is 2x4', { ...wood, 'framing.depth_in': 3.5 }],
  ['framing', 'first floor is 2x6', { ...wood, 'framing.depth_in': 5.5 }],
  // A house is no window, and its floor no wall.
  ['framing', '30x40 house, 9 ft walls', NOTHING],
  ['size', 'house is 28x40', NOTHING],
  ['framing', '50x120 lot', NOTHING],
  ['framing', '1200 square foot house', NOTHING],
  ['framing', 'ranch, 1400 sqft', NOTHING],
  ['size', 'my house is 1800 sq ft', NOTHING],
  ['size', '1800 sq ft', { wall_area_ft2: 1800 }],
  ['framing', 'house walls come to 1800 sq ft', { wall_area_ft2: 1800 }],
  ['size', '30 x 9 ft each, 4 walls', NOTHING],
  ['size', '120 linear feet by 9 ft', { wall_area_ft2: 1080 }],
  // Lengths are read whole.
  [
    'framing',
    'one window 5 feet by 8 feet 6 1/2 inches',
    { windows: [{ count: 1, width_in: 60, height_in: 102.5 }] },
  ],
  ['framing', '2 doors 3x6-8', { windows: [{ count: 2, width_in: 36, height_in: 80, operation: 'door' }] }],
  ['windows', 'six 3-0 5-0 SH', { windows: [{ count: 6, width_in: 36, height_in: 60, operation: 'hung' }] }],
  ['framing', '8 windows 36" wide 60" tall', { windows: [{ count: 8, width_in: 36, height_in: 60 }] }],
  [
    'framing',
    'windows: 4 3x5, 2 2x3',
    {
      windows: [
        { count: 4, width_in: 36, height_in: 60 },
        { count: 2, width_in: 24, height_in: 36 },
      ],
    },
  ],
  // Words of the trade in plain English.
  ['framing', 'eaves stick out 12 inches', NOTHING],
  ['framing', 'stick with what I have', NOTHING],
  ['framing', 'wood siding finish', NOTHING],
  ['framing', 'wood stove', NOTHING],
  ['framing', 'metal roof', NOTHING],
  ['framing', 'stick framed', wood],
  ['framing', 'wood, I think', wood],
  ['framing', 'wood 2x6 at 16', { ...wood, 'framing.depth_in': 5.5, 'framing.spacing_in': 16 }],
  ['wind', 'walls are 9 ft high', NOTHING],
  ['framing', 'trees are 40 ft tall', NOTHING],
  ['wind', "20' eave height", NOTHING],
  ['framing', 'the house is 22 ft high', { mean_roof_height_ft: 22 }],
  // Gusts are not the speed of the map, and other sums not the budget.
  ['wind', '95 mph gusts', NOTHING],
  ['framing', 'we get 90 mph winds', NOTHING],
  ['wind', 'basic wind speed 115 mph, a 3-second gust', { basic_wind_speed_mph: 115 }],
  ['budget', 'I make 60k a year', NOTHING],
  ['budget', 'heating costs $200 a month', NOTHING],
  ['framing', 'we paid 20k for windows', NOTHING],
  ['framing', 'my mortgage is 200k', NOTHING],
  ['budget', 'spent 20k on the roof', NOTHING],
  ['budget', '2', NOTHING],
  ['budget', '$2 a foot', NOTHING],
  ['budget', '30', { budget_usd_per_ft2: 30 }],
  // Shorter ways to say it.
  ['place', '5B new', { place: { climate_zone: '5B' }, project: 'new' }],
  [
    'place',
    '6A retrofit, R-13',
    { place: { climate_zone: '6A' }, project: 'retrofit', cavity_insulation_r: 13 },
  ],
  ['place', '5B, new', { place: { climate_zone: '5B' }, project: 'new' }],
  ['sheathing', 'empty, plywood', { cavity_insulation_r: 0, sheathing: 'plywood' }],
  ['framing', '38x140 at 400', { ...wood, 'framing.depth_in': 5.5, 'framing.spacing_in': 16 }],
  ['framing', 'rough sawn 2x4', wood],
  ['framing', 'drywall with plastic behind', { interior_vapour_retarder: 'class-i' }],
  ['retarder', '2 coats of latex paint', { interior_vapour_retarder: 'class-iii' }],
  ['size', 'balanced', { priorities: { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 1 } }],
];

describe('a figure of something else', () => {
  it('is known by data that keep to their form', () => {
    expect(otherMattersSchema.parse(data)).toEqual(data);
  });

  it.each(LINES)('asked about %s, "%s" sets no more than it says', (asked, said, sets) => {
    expect(heard(asked, said).sets).toEqual(sets);
  });

  const noun = fc.constantFrom(
    'kids',
    'children',
    'people',
    'dogs',
    'chickens',
    'neighbors',
    'bedrooms',
    'rooms',
    'skylights',
    'weeks',
    'days',
    'months',
    'years old',
    'years ago',
    'yr old',
    'percent',
    '%',
    'acres',
    'miles',
    'layers of siding',
    'rolls of felt',
    'bids',
    'contractors',
    'trees',
    'bushes',
    'amps',
    'gallons',
    'inches of snow',
    'ft of fence',
    'goldfish',
  );
  const lead = fc.constantFrom('', 'we have ', 'about ', 'there are ', 'it is ', 'I have ', 'maybe ');
  const number = fc.oneof(
    fc.integer({ min: 1, max: 200 }).map(String),
    fc.constantFrom('two', 'six', 'a dozen'),
  );

  it('changes no answer, whatever is asked', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ASKED), lead, number, noun, (asked, before, count, of) => {
        const said = `${before}${count} ${of}`;
        expect(heard(asked, said).sets, `${asked}: ${said}`).toEqual({});
      }),
      { numRuns: 400 },
    );
  });

  it('is said to be of no use, or asked about', () => {
    expect(heard('windows', 'we have 3 kids').talk.last()).toContain(
      '"3 kids": Who lives there changes nothing in the answer.',
    );
    expect(heard('wind', '95 mph gusts').talk.last()).toContain('the basic wind speed of the code’s map');
    expect(heard('framing', '1200 square foot house').talk.last()).toContain(
      'how many square feet of wall is that?',
    );
    expect(heard('framing', 'I hate stucco').talk.last()).toContain('Say "anything"');
  });
});

describe('a budget below any wall', () => {
  it('is said back before it is taken', () => {
    const { talk } = heard('budget', '2');
    expect(talk.prompt.title).toContain('"2": $2 a square foot? No wall that I know is built for so little');
    expect(talk.say('yes').state.answers.budget_usd_per_ft2).toBe(2);
    expect(heard('budget', '2').talk.say('25').state.answers.budget_usd_per_ft2).toBe(25);
    expect(heard('budget', '2').talk.say('no').state.answers.budget_usd_per_ft2).toBe('unknown');
  });

  it('is remarked on where it is a sum for the whole wall', () => {
    expect(heard('budget', '2000 in all').talk.last()).toContain('Is "2000 in all" all of it?');
  });
});
