import { describe, expect, it } from 'vitest';
import data from '../../src/conversation/data/vague-answers.json' with { type: 'json' };
import { vagueAnswersSchema } from '../../src/conversation/understanding/vague-answers.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

const CAVITY = 4;
const RETARDER = 5;
const WIND = 13;
const asked = (question: number, ...lines: readonly string[]) =>
  new Talk().say(...WHOLE_TALK.slice(0, question), ...lines);

describe('what is named without its figure', () => {
  it('has hints that keep to their form', () => {
    expect(vagueAnswersSchema.parse(data)).toEqual(data);
  });

  // Batts as sold, and R-3.6 (3 to 3.8) an inch of cellulose, R-3.4 (3 to 4) of mineral wool: the reference tables.
  it.each([
    ['fiberglass batts', 'for a bay of 5-1/2 in. as R-19, R-20, R-21 or R-23 (from memory, not verified)'],
    ['3.5 inches of fiberglass', 'for a bay of 3-1/2 in. as R-11, R-13 or R-15 (from memory'],
    ['it is insulated with batts', 'the facing or the label says which'],
    [
      'cellulose',
      'about R-3.6, from 3 to 3.8 (verified in a published source); over 5-1/2 in., filled to the full, about R-20',
    ],
    [
      'about 4 inches of rock wool',
      'from 3 to 4 (verified in a published source); over 4 in., filled to the full, about R-14',
    ],
    ['foam', 'Is it soft (open-cell) or hard (closed-cell) spray foam'],
    ['some insulation', '"how can I tell" says where to look'],
    ['3.5 in.', 'What fills it'],
  ])('between the studs is left open after "%s", with what to look for', (line, hint) => {
    const talk = asked(CAVITY, line);
    expect(talk.last()).toContain(hint);
    expect(talk.state.answers.cavity_insulation_r).toBeUndefined();
    expect(talk.prompt.label).toBe('Cavity insulation');
  });

  it.each(['fiberglass batts, R-13', 'R-13 fiberglass', 'insulated, R-13 mineral wool'])(
    'is no matter where the figure stands beside it, as in "%s"',
    (line) => {
      const talk = asked(CAVITY, line);
      expect(talk.state.answers.cavity_insulation_r).toBe(13);
      expect(talk.last()).not.toContain('leaves something open');
    },
  );

  it('may be left open in the same line', () => {
    expect(asked(CAVITY, "fiberglass, don't know the r-value").state.answers.cavity_insulation_r).toBe(
      'unknown',
    );
  });

  it.each(['painted plaster', 'drywall', 'lath and plaster', 'wallpaper'])(
    'inside is left open after "%s", with what to look for',
    (line) => {
      const talk = asked(RETARDER, line);
      expect(talk.last()).toContain('Is there kraft paper or plastic sheet behind it');
      expect(talk.state.answers.interior_vapour_retarder).toBeUndefined();
    },
  );

  it('inside is no matter where the layer behind is named', () => {
    const talk = asked(RETARDER, 'plaster with kraft paper behind');
    expect(talk.state.answers.interior_vapour_retarder).toBe('class-ii');
    expect(talk.last()).not.toContain('leaves something open');
  });
});

// 10 ft a storey and 5 ft to the middle of the roof, the guess of vague-answers.json.
describe('storeys, where the height of the roof is asked', () => {
  it.each([
    ['two stories', 25],
    ['one-storey', 15],
    ['single storey', 15],
    ['3 storeys', 35],
    ['a story and a half', 20],
    ['roof is two storeys', 25],
  ])('make "%s" a question with the guess in it', (line, height_ft) => {
    const talk = asked(WIND, line);
    expect(talk.state.answers.mean_roof_height_ft).toBeUndefined();
    expect(talk.prompt.title).toContain(`taken as about ${height_ft} ft (10 ft a storey`);
    expect(talk.prompt.title).toContain('a rough guess of ours');
    expect(talk.say('yes').state.answers.mean_roof_height_ft).toBe(height_ft);
  });

  it.each([
    ['no', 'unknown'],
    ["don't know", 'unknown'],
    ['2', 'unknown'],
    ['24 ft', 24],
    ['24', 24],
    ['no, 22 ft', 22],
    ['sounds about right', 25],
  ] as const)('take "%s" for an answer to the guess', (line, height_ft) => {
    const talk = asked(WIND, '115 mph, exposure C, two stories', line);
    expect(talk.state.answers).toMatchObject({ basic_wind_speed_mph: 115, mean_roof_height_ft: height_ft });
    expect(talk.prompt.label).toBe('Surroundings');
  });

  it('are told how to measure where they are too many to guess by', () => {
    const talk = asked(WIND, '5 stories');
    expect(talk.last()).toContain('measure from the ground to the eaves and to the ridge');
    expect(talk.prompt.label).toBe('Wind');
  });
});
