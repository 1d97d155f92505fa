import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choicesFor } from '../../src/conversation/agenda.ts';
import { FIELD_IDS, type FieldId } from '../../src/conversation/answers.ts';
import { answersSchema } from '../../src/conversation/answers-schema.ts';
import { QUESTION_IDS, QUESTIONS, questionOf } from '../../src/conversation/questions.ts';
import type { Reading } from '../../src/conversation/understanding/reading.ts';
import { understand } from '../../src/conversation/understanding/understand.ts';
import { withUnknownAspects } from '../../src/conversation/windows.ts';
import {
  ASKED_AGAIN as FIRST_ASKED_AGAIN,
  UNDERSTOOD as FIRST_UNDERSTOOD,
  type Utterance,
} from './utterances.ts';
import { ASKED_AGAIN_MIXED, UNDERSTOOD_MIXED } from './utterances-mixed.ts';

const UNDERSTOOD = [...FIRST_UNDERSTOOD, ...UNDERSTOOD_MIXED];
const ASKED_AGAIN = [...FIRST_ASKED_AGAIN, ...ASKED_AGAIN_MIXED];

function read({ asked, said, open, answers, phase, missing }: Utterance): Reading {
  const question = asked === null ? null : questionOf(asked);
  // What hangs on another answer is not open at first.
  const first = question?.parts.filter((part) => !part.isAsked).map((part) => part.field);
  const fields: readonly FieldId[] = open ?? first ?? [];
  return understand(said, {
    question: asked,
    open: fields,
    answers: answers ?? {},
    choices: question && phase === undefined ? choicesFor(question, fields) : [],
    windowsPhase: asked === 'windows' ? (phase ?? 'kinds') : null,
    windowsMissing: missing ?? [],
    isHomeowner: false,
  });
}

function foundIn(reading: Reading): Record<string, unknown> {
  return Object.fromEntries(reading.findings.map(({ field, value }) => [field, value]));
}

describe('understanding a line', () => {
  it('is tried on a corpus of a fair size', () => {
    expect(UNDERSTOOD.length).toBeGreaterThanOrEqual(150);
    expect(ASKED_AGAIN.length).toBeGreaterThanOrEqual(50);
  });

  it.each(UNDERSTOOD.map((u) => [u.asked ?? 'nothing', u.said, u] as const))(
    'asked about %s, takes "%s"',
    (_asked, _said, expected) => {
      const reading = read(expected);
      expect(foundIn(reading)).toEqual(expected.found ?? {});
      expect(reading.unknowns).toEqual(expected.unknown ?? []);
      expect(reading.windows.map(({ window }) => window)).toEqual(expected.windows ?? []);
      expect(reading.place).toBe(expected.place ?? null);
      expect(reading.windowsComplete).toBe(expected.complete ?? false);
      expect(reading.windowDetailsUnknown).toBe(expected.detailsUnknown ?? false);
      expect(reading.unclear.map(({ words }) => words)).toEqual(expected.unclear ?? []);
      expect(reading.either).toBeNull();
    },
  );

  it.each(ASKED_AGAIN.map((u) => [u.asked ?? 'nothing', u.said, u] as const))(
    'asked about %s, asks again after "%s"',
    (_asked, _said, line) => {
      const reading = read(line);
      expect(reading.findings).toEqual([]);
      expect(reading.unknowns).toEqual([]);
      expect(reading.windows).toEqual([]);
      expect(reading.place).toBeNull();
      expect(reading.unclear.length).toBeGreaterThan(0);
    },
  );

  it.each([
    [
      'framing',
      '2x4, sorry 2x6',
      { 'framing.depth_in': 5.5 },
      'I took “2x6”, which you put in the place of “2x4”.',
    ],
    ['framing', '2x4 I mean 2x6', { 'framing.depth_in': 5.5 }],
    ['framing', '2x4 no wait 2x6', { 'framing.depth_in': 5.5 }],
    ['framing', '2x6, not 2x4', { 'framing.depth_in': 5.5 }],
    ['framing', 'no, 2x4, not 2x6', { 'framing.depth_in': 3.5 }],
    ['framing', '2x4 at 16, no sorry 24', { 'framing.depth_in': 3.5, 'framing.spacing_in': 24 }],
    [
      'cavity',
      'R-13, make that 19',
      { cavity_insulation_r: 19 },
      'I took “R-19”, which you put in the place of “R-13”.',
    ],
    ['budget', '$30 a foot, sorry $40 a foot', { budget_usd_per_ft2: 40 }],
    ['framing', '2x4, no wait 2x6, at 16', { 'framing.depth_in': 5.5, 'framing.spacing_in': 16 }],
    ['framing', '2x4 at 16, sorry 24, R-13', { 'framing.spacing_in': 24, cavity_insulation_r: 13 }],
    ['place', 'zone 5B, I mean 6A', { place: { climate_zone: '6A' } }],
    [
      'project',
      'retrofit, 2x4 scratch that 2x6, R-13',
      { project: 'retrofit', 'framing.depth_in': 5.5, cavity_insulation_r: 13 },
    ],
  ] as const)(
    'asked about %s, takes what a slip was mended to in "%s"',
    (asked, said, found, told?: string) => {
      const reading = read({ asked, said });
      expect(foundIn(reading)).toMatchObject(found);
      expect(reading.unclear).toEqual([]);
      expect(reading.notes).toEqual([expect.stringContaining(told ?? 'which you put in the place of')]);
    },
  );

  it('mends a slip though it puzzles over what is said besides', () => {
    const reading = read({ asked: 'framing', said: 'reno, 2x4 sorry 2x6, my neighbor has 2x4' });
    expect(foundIn(reading)).toMatchObject({ project: 'retrofit', 'framing.depth_in': 5.5 });
    expect(reading.unclear.map(({ words }) => words)).toEqual(['my neighbor has 2x4']);
    expect(reading.notes).toHaveLength(1);
  });

  it('takes a mended place and a mended kind of window once', () => {
    const place = read({
      asked: 'place',
      said: 'Boulder County, Colorado, actually Larimer County, Colorado',
    });
    expect(place).toMatchObject({ place: 'Larimer County, Colorado', unclear: [] });
    const town = read({ asked: 'place', said: 'Boulder County, Colorado, I mean Fort Collins, CO' });
    expect(town).toMatchObject({ place: 'Fort Collins, CO', unclear: [] });
    const { windows } = read({ asked: 'windows', said: 'six 36x60 casements, sorry eight 36x60 casements' });
    expect(windows.map(({ window }) => window.count)).toEqual([8]);
  });

  it.each([
    ['framing', '2x4 no 2x6'],
    ['framing', '2x4, sorry about the wait'],
    ['place', 'Boulder County, Colorado, sorry about the wait'],
    ['cavity', 'R-13, actually purple'],
  ] as const)('asked about %s, mends nothing in "%s" and says what it could not take', (asked, said) => {
    const { unclear, notes } = read({ asked, said });
    expect(unclear.length).toBeGreaterThan(0);
    expect(notes).toEqual([]);
  });

  it('keeps what it understood and says what it did not', () => {
    const reading = read({ asked: 'framing', said: '2x6 at 16, purple monkeys' });
    expect(foundIn(reading)).toMatchObject({ 'framing.depth_in': 5.5, 'framing.spacing_in': 16 });
    expect(reading.unclear.map(({ words }) => words)).toEqual(['purple monkeys']);
  });

  it('says whose word it is that there are no termites', () => {
    const { notes } = read({ asked: 'surroundings', said: 'no termites' });
    expect(notes).toEqual([expect.stringContaining('The map of the residential code decides')]);
    expect(read({ asked: 'surroundings', said: 'termites none to slight' }).notes).toEqual([]);
  });

  it.each([
    "four windows, don't know the rest",
    '4 windows dont know the rest',
    "the rest I don't know, four windows",
    "4, that's all I know",
  ])('takes the number of windows out of "%s", and nothing more is asked of them', (said) => {
    const { windows, windowsComplete, unknowns, unclear } = read({ asked: 'windows', said });
    expect(windows.map(({ window }) => window)).toEqual([withUnknownAspects({ count: 4 })]);
    expect([windowsComplete, unknowns, unclear]).toEqual([true, [], []]);
  });

  it('takes the rest for the rest of the windows where they alone were spoken of', () => {
    const said = "four windows, don't know the rest";
    const { windows, unknowns } = read({ asked: 'finish', said });
    expect(windows.map(({ window }) => window)).toEqual([withUnknownAspects({ count: 4 })]);
    expect(unknowns).toEqual([]);
    expect(read({ asked: 'finish', said: "four windows, don't know" }).unknowns).toEqual(['finish']);
  });

  it('puts a number that is both a choice and a figure to the user', () => {
    const reading = read({ asked: 'surroundings', said: '5' });
    expect(reading.findings).toEqual([]);
    expect(reading.either?.findings.map(({ field, value }) => [field, value])).toEqual([
      ['termite_area', 'moderate-to-heavy'],
      ['fire_separation_ft', 5],
    ]);
  });

  it('says which standard size it takes for a metric one, and how far off that may be', () => {
    expect(read({ asked: 'framing', said: '2x4 at 40 cm' }).notes).toEqual([
      'I take "at 40 cm" as 16 in., the nearest standard spacing (within 10 mm).',
    ]);
    expect(read({ asked: 'framing', said: '38x140 at 16' }).notes).toEqual([]);
  });

  it.each([
    ['about 25k total', 25_000],
    ['$54,000 total', 54_000],
    ['30k', 30_000],
    ['we have 40 thousand dollars for the whole house', 40_000],
    ['18000 dollars in all', 18_000],
    ['$25,000', 25_000],
    ['25000 all in', 25_000],
  ])('takes "%s" for a budget of the whole wall, to be divided by it', (said, usd) => {
    const reading = read({ asked: 'budget', said });
    expect(reading.budgetTotal?.usd).toBe(usd);
    expect(reading.findings).toEqual([]);
    expect(reading.unclear).toEqual([]);
  });

  it.each(['$30 a foot', '1.2k a sq ft', 'eight in all', '1800 sq ft in total'])(
    'takes no total from "%s"',
    (said) => {
      expect(read({ asked: 'budget', said }).budgetTotal).toBeNull();
    },
  );

  it('says of an old house that its stud bays may be empty, unless that was said', () => {
    const notes = (said: string) => read({ asked: 'project', said }).notes.join(' ');
    expect(notes('from 1954')).toContain('A house of 1954 may have nothing between the studs');
    expect(notes('from 1954, R-13 batts')).toBe('');
    expect(notes('built in 2005')).toBe('');
    expect(read({ asked: 'windows', said: 'eight windows from 1995' }).windows).toMatchObject([
      { window: { count: 8 } },
    ]);
    expect(
      read({ asked: 'windows', said: 'eight windows from 1995' }).windows[0]?.window.width_in,
    ).toBeUndefined();
  });

  it.each([
    'no windows and no doors',
    'no doors or windows',
    'zero windows',
    '0',
    'windowless',
    "there aren't any windows on this side",
    'no openings at all',
    'there are none',
  ])('takes "%s" for a wall without windows', (said) => {
    const reading = read({ asked: 'windows', said });
    expect(foundIn(reading)).toEqual({ windows: [] });
    expect(reading.unclear).toEqual([]);
  });

  it.each(['no window flanges', "that's not a window", '10 windows', 'six windows, no doors'])(
    'does not take "%s" for a wall without windows',
    (said) => {
      expect(foundIn(read({ asked: 'windows', said }))).not.toHaveProperty('windows');
    },
  );

  it('says what to say to whoever names another cladding than stucco', () => {
    const { unclear, findings } = read({ asked: 'finish', said: 'wood siding is fine' });
    expect(unclear).toMatchObject([{ hint: expect.stringContaining('Say "anything"') }]);
    expect(findings).toEqual([]);
  });

  it('does not take nominal lumber for the depth of steel studs', () => {
    const reading = read({ asked: 'framing', said: '2x6 steel at 16' });
    expect(foundIn(reading)).toEqual({ 'framing.material': 'steel', 'framing.spacing_in': 16 });
    expect(reading.unclear).toHaveLength(1);
  });

  it('takes neither of two sizes said in one line', () => {
    const reading = read({ asked: 'framing', said: '2x4, 2x6' });
    expect(foundIn(reading)).toEqual({ 'framing.material': 'wood' });
    expect(reading.unclear.map(({ words }) => words)).toEqual(['2x4 / 2x6']);
  });

  it('takes several choices in one line when they answer different things', () => {
    const reading = read({ asked: 'surroundings', said: '2, 4', open: ['wildfire_area', 'termite_area'] });
    expect(foundIn(reading)).toEqual({ wildfire_area: false, termite_area: 'slight-to-moderate' });
  });

  it('passes a negative figure on by name, so that it is refused and not misread', () => {
    expect(foundIn(read({ asked: 'budget', said: '-5' }))).toEqual({ budget_usd_per_ft2: -5 });
    expect(foundIn(read({ asked: 'size', said: '-200 sq ft' }))).toEqual({ wall_area_ft2: -200 });
  });

  it('never throws, and never gives one field two values, whatever is typed', () => {
    const asked = fc.constantFrom(...QUESTION_IDS, null);
    const word = fc.constantFrom(
      '2x6',
      '16',
      'R-21',
      'or',
      'not',
      'osb',
      'ft',
      '$',
      '30',
      'zone',
      ',',
      'mph',
      'C',
    );
    const line = fc.oneof(
      fc.string(),
      fc.array(word, { maxLength: 12 }).map((words) => words.join(' ')),
    );
    fc.assert(
      fc.property(asked, line, (question, said) => {
        const fields = read({ asked: question, said }).findings.map(({ field }) => field);
        expect(new Set(fields).size).toBe(fields.length);
      }),
      { numRuns: 500 },
    );
  });
});

describe('the fields', () => {
  it('are listed as the schema has them, though the list is there without it', () => {
    expect([...FIELD_IDS]).toEqual(answersSchema.keyof().options);
  });
});

describe('the questions', () => {
  it.each(QUESTIONS.map((question) => [question.id, question] as const))(
    'choices of %s are understood by their label and by their number',
    (id, question) => {
      for (const choices of [question.choices, question.partChoices ?? []]) {
        const open = choices === question.choices ? undefined : choices.flatMap((c) => Object.keys(c.sets));
        const offered = choicesFor(question, (open as FieldId[]) ?? question.parts.map((p) => p.field));
        for (const choice of offered) {
          const fields = open as FieldId[] | undefined;
          const reading = read({
            asked: id,
            said: choice.label.toUpperCase(),
            ...(fields ? { open: fields } : {}),
          });
          expect(foundIn(reading), choice.label).toEqual(choice.sets);
        }
      }
    },
  );

  it.each(QUESTIONS.map((question) => [question.id, question] as const))(
    'the example of %s answers it',
    (id, question) => {
      const reading = read({ asked: id, said: question.example });
      expect(reading.unclear).toEqual([]);
      const answered = [...Object.keys(foundIn(reading)), ...(reading.windows.length > 0 ? ['windows'] : [])];
      if (reading.place !== null) answered.push('place');
      // A part that hangs on another answer is asked after it.
      for (const part of question.parts.filter(({ isAsked }) => !isAsked))
        expect(answered).toContain(part.field);
    },
  );
});
