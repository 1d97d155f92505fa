import { describe, expect, it } from 'vitest';
import type { Answers } from '../../src/conversation/answers.ts';
import { QUESTIONS, type QuestionId, questionForField } from '../../src/conversation/questions.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

/** Lines of {@link WHOLE_TALK} before each question. */
const BEFORE: Readonly<Record<QuestionId, number>> = {
  place: 0,
  project: 1,
  framing: 2,
  sheathing: 3,
  cavity: 4,
  retarder: 5,
  windows: 6,
  openings: 8,
  finish: 9,
  budget: 10,
  crew: 11,
  size: 12,
  wind: 13,
  surroundings: 14,
  priorities: 15,
};

/** A talk in which one question is asked, and nothing has been said of the other one. */
function askedWithout(asked: QuestionId, unsaid: QuestionId): Talk {
  const talk = new Talk().say(...WHOLE_TALK.slice(0, BEFORE[asked]));
  const fields = QUESTIONS.find(({ id }) => id === unsaid)?.parts.map(({ field }) => field) ?? [];
  const answers: Answers = { ...talk.state.answers };
  for (const field of fields) delete answers[field];
  const windowsComplete = talk.state.windowsComplete && unsaid !== 'windows';
  talk.state = { ...talk.state, answers, windowsComplete, reopened: asked };
  return talk;
}

/** What is said, of which question, and what it sets. Everyday words, each with no other meaning at any question. */
const FACTS: readonly (readonly [QuestionId, string, Partial<Answers>])[] = [
  ['place', 'zone 6A', { place: { climate_zone: '6A' } }],
  ['place', '6A', { place: { climate_zone: '6A' } }],
  ['project', "it's a retrofit", { project: 'retrofit' }],
  ['project', 'the house is from 1954', { project: 'retrofit' }],
  ['project', 'it stands already', { project: 'retrofit' }],
  ['framing', "it's steel studs", { 'framing.material': 'steel' }],
  ['framing', '2x6 studs', { 'framing.material': 'wood', 'framing.depth_in': 5.5 }],
  ['framing', '24 in. on center', { 'framing.spacing_in': 24 }],
  ['framing', '2x6 at 24', { 'framing.depth_in': 5.5, 'framing.spacing_in': 24 }],
  ['framing', '43 mil', { 'framing.steel_thickness_mil': 43 }],
  ['framing', '18 gauge', { 'framing.steel_thickness_mil': 43 }],
  ['sheathing', 'the sheathing is boards', { sheathing: 'boards' }],
  ['sheathing', 'gypsum sheathing', { sheathing: 'gypsum' }],
  ['sheathing', 'cdx', { sheathing: 'plywood' }],
  ['cavity', 'R-21 batts', { cavity_insulation_r: 21 }],
  ['cavity', 'the walls are empty', { cavity_insulation_r: 0 }],
  ['retarder', 'kraft paper', { interior_vapour_retarder: 'class-ii' }],
  ['retarder', '6 mil poly', { interior_vapour_retarder: 'class-i' }],
  ['openings', 'openings are fixed', { rough_opening_can_change: false }],
  ['finish', 'I want real stucco', { finish: 'cement-stucco' }],
  ['budget', '30 dollars a foot', { budget_usd_per_ft2: 30 }],
  ['budget', 'no budget', { budget_usd_per_ft2: 'unknown' }],
  ['crew', 'never done it before', { crew_skill: 'first-time' }],
  ['size', 'the wall area is 1800', { wall_area_ft2: 1800 }],
  ['size', '40 ft long and 9 ft high', { wall_area_ft2: 360 }],
  ['size', '6 in. at most', { max_added_thickness_in: 6 }],
  ['wind', '115 mph', { basic_wind_speed_mph: 115 }],
  ['wind', 'wind speed is 115', { basic_wind_speed_mph: 115 }],
  ['wind', '22 ft to the roof', { mean_roof_height_ft: 22 }],
  ['surroundings', '12 ft to the lot line', { fire_separation_ft: 12 }],
  ['surroundings', 'no termites', { termite_area: 'none-to-slight' }],
  ['priorities', 'cost matters most', { priorities: { cost: 3 } }],
  ['priorities', 'energy first, then cost', { priorities: { energy: 3, cost: 2 } }],
];

/** Where it stands may be a part of a place's name. */
const FACTS_BUT_FOR_PLACE: typeof FACTS = [
  ['wind', 'open country', { exposure: 'C' }],
  ['wind', 'in the woods', { exposure: 'B' }],
  ['wind', 'on the coast', { exposure: 'D' }],
];

/** Understood at its own question and not enough to answer it; what is said back of it. */
const NOT_ENOUGH: readonly (readonly [QuestionId, string, string])[] = [
  ['cavity', 'blown-in cellulose', 'cellulose'],
  ['cavity', 'fiberglass batts', 'fiberglass'],
  ['cavity', 'spray foam', 'spray foam'],
  ['retarder', 'painted plaster', 'painted plaster'],
  ['retarder', 'lath and plaster', 'lath-and-plaster'],
  ['retarder', 'drywall', 'drywall'],
  ['retarder', 'wood panelling', 'wood panelling'],
  ['crew', 'we hire a contractor', 'we hire a contractor'],
  ['wind', "it's two stories", 'two stories'],
  ['wind', 'roof is two storeys', 'two storeys'],
  ['surroundings', 'next house 30 ft', 'next house 30 ft'],
  ['surroundings', 'the neighbours are 20 ft away', 'the neighbours are 20 ft away'],
];

const OTHERS = (own: QuestionId) => QUESTIONS.map(({ id }) => id).filter((id) => id !== own);

describe('a fact of another question, said beside the one that is asked', () => {
  it.each([...FACTS, ...FACTS_BUT_FOR_PLACE])(
    'of the %s, "%s", is noted at every question',
    (own, said, sets) => {
      const isOfPlace = FACTS_BUT_FOR_PLACE.some(([, words]) => words === said);
      for (const asked of OTHERS(own).filter((id) => !(isOfPlace && id === 'place'))) {
        const talk = askedWithout(asked, own);
        const { key } = talk.prompt;
        const before = talk.state.answers;
        talk.say(said);
        const at = `at ${asked}`;
        const isLeftOpen = Object.values(sets).includes('unknown');
        expect(talk.last(), at).toMatch(isLeftOpen ? /Left open/ : /Noted \[/);
        expect(talk.last(), at).not.toContain('Not understood');
        expect(talk.state.answers, at).toMatchObject(sets);
        expect(talk.prompt.key, at).toBe(key);
        // Nothing else was taken from it.
        const others = Object.keys(talk.state.answers).filter((f) => !(f in before));
        expect(
          others.every((f) => questionForField(f)?.id === own),
          at,
        ).toBe(true);
      }
    },
  );

  it.each(NOT_ENOUGH)('of the %s, "%s", is said back as "%s" at every question', (own, said, words) => {
    for (const asked of OTHERS(own)) {
      const talk = askedWithout(asked, own);
      const { key } = talk.prompt;
      const before = talk.state.answers;
      talk.say(said);
      expect(talk.last(), asked).toMatch(new RegExp(`^"${words}" is about this: .* Noted for later`));
      expect(talk.state.answers, asked).toEqual(before);
      expect(talk.prompt.key, asked).toBe(key);
    }
  });

  it('without its figure is taken up when its question comes', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 10), 'two stories');
    expect(talk.prompt.label).toBe('Budget');
    talk.say(...WHOLE_TALK.slice(10, 13));
    expect(talk.prompt.title).toContain('"two stories": taken as about 25 ft');
    talk.say('yes', '115 mph, exposure C');
    expect(talk.state.answers).toMatchObject({ basic_wind_speed_mph: 115, mean_roof_height_ft: 25 });
    const lining = new Talk().say('zone 5B', 'painted plaster', ...WHOLE_TALK.slice(1, 5));
    expect(lining.last()).toContain('Is there kraft paper or plastic sheet behind it');
    expect(lining.prompt.label).toBe('Vapour retarder');
    lining.say('kraft');
    expect(lining.state.early).toEqual([]);
  });

  it('is kept with the talk, and is taken back with its line', () => {
    const talk = new Talk().say('zone 5B', 'new', 'R-21, two stories');
    expect(talk.drafts.at(-1)?.early).toEqual([{ field: 'mean_roof_height_ft', words: 'two stories' }]);
    const draft = { saved_at: '2024-05-06T07:08:09.000Z', ...talk.drafts.at(-1) };
    const again = new Talk({ draft: draft as never }).say('go on', '115 mph, exposure C');
    expect(again.state.early).toHaveLength(1);
    expect(talk.say('not right').state.early).toEqual([]);
  });

  it('adds nothing where its question is answered, and says so', () => {
    const talk = new Talk().say(...WHOLE_TALK, 'two stories');
    expect(talk.last()).toContain(
      '"two stories" adds nothing to what you said of this (mean roof height: 22 ft)',
    );
    const open = new Talk().say('zone 5B', 'done', 'painted plaster');
    expect(open.last()).toContain('"change vapour retarder" opens that question');
  });

  it('leaves a county on offer and a contradiction as they are', () => {
    expect(new Talk().say('Bozeman, MT', 'two stories').prompt.key).toMatch(/^which-place/);
    const talk = new Talk().say('zone 5B', 'new', 'retrofit', 'painted plaster');
    expect(talk.state.early).toHaveLength(1);
    expect(talk.state.unsettled).toHaveLength(1);
  });

  it('asks which letter a climate zone has, at any question', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 10), 'zone 6');
    expect(talk.last()).toContain('A is moist, B dry, C marine. Which one is it: 6A or 6B?');
    expect(talk.prompt.label).toBe('Budget');
  });

  it.each(['a casement 3 ft wide by 5 ft high', 'a casement 3 ft wide and 5 ft high'])(
    'takes "%s" for a window, not for the wall or its roof',
    (said) => {
      for (const asked of ['windows', 'size', 'wind'] as const) {
        const { answers } = askedWithout(asked, 'windows').say(said).state;
        expect(answers.windows).toEqual([{ count: 1, width_in: 36, height_in: 60, operation: 'casement' }]);
      }
    },
  );

  it('of a kind of window whose number is known does not become its weight', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 6), 'six windows', 'a casement 3 by 5 feet');
    expect(talk.state.answers.windows).toEqual([
      { count: 6, width_in: 36, height_in: 60, operation: 'casement' },
    ]);
  });
});

describe('a figure beside words that are not understood', () => {
  it.each([
    ['cavity', 'about 40 acres of pasture'],
    ['budget', 'we have 12 chickens'],
    ['wind', 'the fence is 20 ft off'],
    ['surroundings', 'the driveway is 40 ft'],
    ['windows', 'the driveway is 40 ft'],
    ['windows', 'two storeys'],
  ] as const)('is not taken for the %s in "%s"', (asked, said) => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, BEFORE[asked]));
    const before = talk.state.answers;
    expect(talk.say(said).state.answers).toEqual(before);
  });

  it.each(['no budget', 'no fire risk', 'no idea yet what to do'])('"%s" is not "no sheathing"', (said) => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, BEFORE.sheathing), said);
    expect(talk.state.answers.sheathing).toBeUndefined();
  });

  it('leaves "no limit" open while it may be of the budget or of the thickness', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, BEFORE.finish), 'no limit');
    expect(talk.last()).toContain('Say "no limit on thickness" or "no budget".');
    expect(talk.state.answers.max_added_thickness_in).toBeUndefined();
  });
});
