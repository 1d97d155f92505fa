import { describe, expect, it } from 'vitest';
import { Talk } from './talk.ts';

const AT_HOME = 'Boulder County, Colorado';
const answersTo = (...lines: readonly string[]) => new Talk().say(AT_HOME, ...lines).state.answers;

describe('what is not taken for an answer', () => {
  it.each([
    "i don't think there's poly",
    'i doubt there is poly',
    'the poly was removed',
    'poly was taken out in 2010',
    'we never had kraft paper',
  ])('is a retarder that may not be there: "%s"', (line) => {
    const talk = new Talk().say(AT_HOME, line);
    expect(talk.state.answers.interior_vapour_retarder).toBeUndefined();
    expect(talk.last()).toMatch(/Not understood|leaves something open/);
  });

  it('is insulation that used to be there', () => {
    expect(answersTo('used to be R-11').cavity_insulation_r).toBeUndefined();
  });

  it.each(['want new stucco on it', 'we are putting new siding on', 'need new cladding', 'new windows too'])(
    'is a new skin for a new wall: "%s"',
    (line) => expect(answersTo(line).project).toBeUndefined(),
  );

  it.each([
    'how much is r-13',
    'is 2x6 better?',
    'should i use 2x6',
    'do I need poly',
    'do i need real stucco?',
    'does plywood matter',
    'is it ok to have kraft',
  ])('is a question: "%s"', (line) => {
    const before = answersTo();
    const talk = new Talk().say(AT_HOME, line);
    expect(talk.state.answers).toEqual(before);
    expect(talk.last()).toContain('That asks, so I took nothing from it.');
  });

  it('is a number of things for a length', () => {
    const talk = new Talk().say(AT_HOME);
    const sized = talk.say('change thickness limit', 'there are 4');
    expect(sized.state.answers.max_added_thickness_in).toBeUndefined();
  });

  it('is what does not matter, or another kind of safety, for what matters most', () => {
    for (const line of ["carbon doesn't matter, cost does", 'fire safety'])
      expect(new Talk().say(AT_HOME, 'change priorities', line).state.answers.priorities).toBeUndefined();
  });
});

describe('studs beside windows', () => {
  it.each([
    ['2x4 wall no windows', { 'framing.depth_in': 3.5, windows: [] }],
    ['2x6 24oc R-23 osb no windows', { 'framing.depth_in': 5.5, cavity_insulation_r: 23, windows: [] }],
  ])('are studs: "%s"', (line, found) => expect(answersTo(line)).toMatchObject(found));

  it('leave the windows their own size', () => {
    const answers = answersTo('our 2x6 wall has 5 windows');
    expect(answers['framing.depth_in']).toBe(5.5);
    expect(answers.windows).toMatchObject([{ count: 5 }]);
    expect(answers.windows).not.toMatchObject([{ width_in: 24 }]);
  });

  it.each(['five 2x4 windows', '5 windows 2x4', 'windows are 2x4'])(
    'are windows all the same: "%s"',
    (line) => {
      const answers = answersTo(line);
      expect(answers.windows).toMatchObject([{ width_in: 24, height_in: 48 }]);
      expect(answers['framing.depth_in']).toBeUndefined();
    },
  );
});

describe('an addition', () => {
  it('is new, whatever it is added to', () => {
    expect(answersTo('the addition to our old house').project).toBe('new');
    expect(answersTo('in addition to our old house, osb').project).toBe('retrofit');
  });
});

describe('a trial', () => {
  it('is left with the word that the prompt offers, without leaving the talk', () => {
    const trying = new Talk().say(AT_HOME, 'new', 'done', 'what if 24 oc');
    const left = trying.say('leave');
    expect(left.last()).toBe('Left as it was.');
    expect(left.state.stage).toBe('told');
  });

  it('of another area divides the sum for the whole wall anew', () => {
    const talk = new Talk().say(AT_HOME, 'new', 'budget is 60k', '2600 sq ft', 'done');
    expect(talk.state.answers.budget_usd_per_ft2).toBeCloseTo(23.08, 2);
    const kept = talk.say('what if the wall were 1500 sq ft', 'keep');
    expect(kept.state.answers).toMatchObject({ wall_area_ft2: 1500, budget_usd_per_ft2: 40 });
  });
});
