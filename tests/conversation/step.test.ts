import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { draftSchema } from '../../src/conversation/draft-schema.ts';
import { QUESTIONS } from '../../src/conversation/questions.ts';
import { sampleAdvice } from './sample-advice.ts';
import { Talk, WHOLE_SCENARIO, WHOLE_TALK } from './talk.ts';

describe('a whole talk', () => {
  it('asks every question once and ends with the scenario that was said', () => {
    const talk = new Talk();
    const asked: string[] = [];
    for (const line of WHOLE_TALK) {
      asked.push(talk.prompt.label);
      talk.say(line);
    }
    expect(new Set(asked).size).toBe(QUESTIONS.length);
    expect(talk.advised).toEqual([WHOLE_SCENARIO]);
    expect(talk.state.stage).toBe('told');
  });

  it('does not ask about rough openings when the wall is new', () => {
    const talk = new Talk().say('zone 5B', 'new');
    const labels: string[] = [];
    for (let i = 0; i < 20 && talk.state.stage === 'asking'; i += 1) {
      labels.push(talk.prompt.label);
      talk.say("don't know");
    }
    expect(labels).not.toContain('Rough openings');
    expect(labels).toHaveLength(12);
    expect(talk.prompt.label).toBe('Decision record');
  });

  it('asks a wall without windows nothing about them: no kinds, no weights, no openings', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 6), 'no windows');
    expect(talk.prompt.label).toBe('Finish');
    talk.say(...WHOLE_TALK.slice(9));
    expect(talk.advised).toMatchObject([{ project: 'retrofit', windows: [] }]);
    expect(talk.advised[0]).not.toHaveProperty('rough_opening_can_change');
  });

  it('asks about the openings after all once windows are said', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 6), 'no windows', 'change windows');
    expect(talk.say(...WHOLE_TALK.slice(6, 8)).prompt.label).toBe('Rough openings');
  });

  it('says of every question why it is asked', () => {
    const talk = new Talk();
    for (const line of WHOLE_TALK) {
      const before = talk.prompt.key;
      expect(talk.say('why').last()).toMatch(/^Why: /);
      expect(talk.prompt.key).toBe(before);
      talk.say(line);
    }
  });

  it('has between 12 and 15 questions, each with a reason and an example', () => {
    expect(QUESTIONS.length).toBeGreaterThanOrEqual(12);
    expect(QUESTIONS.length).toBeLessThanOrEqual(15);
    for (const question of QUESTIONS) {
      expect(question.why.length).toBeGreaterThan(20);
      expect(question.example).not.toBe('');
    }
  });
});

describe("don't know", () => {
  it.each(QUESTIONS.filter(({ id }) => id !== 'place').map(({ id, label }) => [id, label] as const))(
    'is an answer to %s and becomes an open field',
    (id, label) => {
      const talk = new Talk().say('zone 5B', 'retrofit');
      if (id === 'project') talk.say('back');
      for (let i = 0; i < 20 && talk.prompt.label !== label; i += 1) talk.say('skip');
      talk.say('no idea');
      const question = QUESTIONS.find((candidate) => candidate.id === id);
      const asked = (question?.parts ?? []).filter((part) => part.isAsked?.(talk.state.answers) ?? true);
      for (const { field } of asked) expect(talk.state.answers[field]).toBe('unknown');
      expect(talk.last(2)).toContain('Left open');
    },
  );

  it('is not an answer to the place: the zones are named instead', () => {
    const talk = new Talk().say("don't know");
    expect(talk.state.answers.place).toBeUndefined();
    expect(talk.prompt.label).toBe('Place');
    expect(talk.last()).toContain('5B: cool and dry');
  });

  it('about the rest of a half-answered question leaves what was said', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6');
    expect(talk.prompt.title).toContain('the spacing of the studs');
    talk.say('not sure');
    expect(talk.state.answers).toMatchObject({
      'framing.material': 'wood',
      'framing.depth_in': 5.5,
      'framing.spacing_in': 'unknown',
    });
  });

  it('about the rest of the windows keeps their number and asks no more about them', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 6), "four windows, don't know the rest");
    expect(talk.state.answers.windows).toMatchObject([{ count: 4, width_in: 'unknown' }]);
    expect(talk.prompt.label).toBe('Rough openings');
  });

  it('makes a scenario that the schema takes', () => {
    const talk = new Talk().say('zone 5B');
    for (let i = 0; i < 20 && talk.state.stage === 'asking'; i += 1) talk.say('?');
    expect(scenarioSchema.safeParse(talk.advised[0]).success).toBe(true);
  });
});

describe('the thickness of the steel', () => {
  it('is asked of steel studs alone, and goes into the scenario', () => {
    const wood = new Talk().say('zone 5B', 'new', '2x6 at 16');
    expect(wood.prompt.label).toBe('Sheathing');
    const steel = new Talk().say('zone 5B', 'new', '6 in. steel studs at 16');
    expect(steel.prompt.title).toBe('Still open: how thick the steel of the studs is.');
    expect(steel.prompt.choices).toEqual(['33 mil steel', '43 mil steel', '54 mil steel']);
    steel.say('2');
    expect(steel.state.answers['framing.steel_thickness_mil']).toBe(43);
    expect(steel.prompt.label).toBe('Sheathing');
    for (let i = 0; i < 20 && steel.state.stage === 'asking'; i += 1) steel.say('?');
    expect(steel.advised[0]?.framing).toMatchObject({ material: 'steel', steel_thickness_mil: 43 });
  });

  it('of another size is refused with the sizes that are taken', () => {
    const talk = new Talk().say('zone 5B', 'new', '6 in. steel studs at 16', '68');
    expect(talk.last()).toMatch(/33, 43, 54/);
    expect(talk.state.answers['framing.steel_thickness_mil']).toBeUndefined();
  });

  it('means nothing any more once the studs are wood', () => {
    const talk = new Talk().say(
      'zone 5B',
      'new',
      '6 in. steel studs at 16, 54 mil',
      'change framing',
      'wood studs, 2x6 at 16',
    );
    for (let i = 0; i < 20 && talk.state.stage === 'asking'; i += 1) talk.say('?');
    expect(talk.advised[0]?.framing).toEqual({ material: 'wood', depth_in: 5.5, spacing_in: 16 });
  });
});

describe('several answers in one line', () => {
  it('fill their questions, are echoed, and are not asked for again', () => {
    const talk = new Talk().say('zone 6B', 'retrofit', '2x6 at 16, plywood, R-21, kraft');
    expect(talk.last()).toContain('Stud spacing: 16 in. on center');
    expect(talk.last()).toContain('Cavity insulation: R-21');
    expect(talk.prompt.label).toBe('Windows');
  });

  it('are taken together with a place that must be looked up', () => {
    const talk = new Talk().say('retrofit in Gallatin county MT, 2x6 at 24, $30 a foot');
    expect(talk.state.answers).toMatchObject({
      place: { state: 'MT', county: 'Gallatin' },
      project: 'retrofit',
      'framing.spacing_in': 24,
      budget_usd_per_ft2: 30,
    });
    expect(talk.prompt.label).toBe('Sheathing');
  });

  it('keep what was understood while the rest is asked about', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16, lots of love');
    expect(talk.state.answers['framing.spacing_in']).toBe(16);
    expect(talk.last()).toContain('Not understood: "lots of love"');
  });
});

describe('what is not understood', () => {
  it('is asked again with what would be accepted', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16').say('mud');
    expect(talk.prompt.label).toBe('Sheathing');
    expect(talk.last()).toContain('Not understood: "mud"');
    expect(talk.last()).toContain('I take one of the choices');
  });

  it('gets the nearest word, which is not taken by itself', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'plywod');
    expect(talk.last()).toContain('Did you mean "plywood"?');
    expect(talk.state.answers.sheathing).toBeUndefined();
  });

  it.each([
    ['2x6 at 48', / to 24\b/],
    ['wood, 30 in. deep', /from 1\.5 to 12\b/],
  ])('an impossible size ("%s") is refused with the range', (line, range) => {
    const talk = new Talk().say('zone 5B', 'new', line);
    expect(talk.last()).toMatch(range);
    expect(talk.prompt.label).toBe('Framing');
  });

  it('a negative number is refused with the range', () => {
    const talk = new Talk().say('zone 5B', 'change budget', '-30');
    expect(talk.last()).toContain('from 1 to 1000');
    expect(talk.state.answers.budget_usd_per_ft2).toBeUndefined();
  });

  it('nothing at all is said to be nothing', () => {
    const talk = new Talk().say('   ');
    expect(talk.last()).toContain('Nothing was said');
    expect(talk.prompt.label).toBe('Place');
  });
});

describe('a place', () => {
  it('that is certain is taken, with its zone', () => {
    const talk = new Talk().say('Boulder, CO');
    expect(talk.state.answers.place).toEqual({ state: 'CO', county: 'Boulder' });
    expect(talk.last(2)).toContain('zone 5B');
  });

  it('that may be two is put to the user', () => {
    const talk = new Talk().say('lincoln');
    expect(talk.prompt.choices).toEqual([
      'Lincoln County, ME (zone 6A)',
      'Lincoln County, OR (zone 4C)',
      'None of these',
    ]);
    expect(talk.say('2').state.answers.place).toEqual({ state: 'OR', county: 'Lincoln' });
  });

  it.each(['Orleans Parish', 'Boulder County', 'Kodiak Island Borough'])(
    'notes %s by its name with its kind',
    (title) => {
      const talk = new Talk().say('somewhere');
      const places = [
        { state: 'LA', county: title.split(' ')[0] ?? '', title, zone: '2A', match: 'exact' as const },
      ];
      talk.event({ kind: 'places-found', text: 'somewhere', places });
      expect(talk.last(2)).toContain(`Noted [Place: ${title}, LA]`);
      expect(talk.last(2)).toContain(`${title}, LA lies in climate zone 2A`);
      expect(talk.state.answers.place).toEqual({ state: 'LA', county: title.split(' ')[0] });
    },
  );

  it('that is only a town in a county is put to the user', () => {
    const talk = new Talk().say('Bozeman');
    expect(talk.state.answers.place).toBeUndefined();
    expect(talk.prompt.title).toContain('Is this the county that "Bozeman" lies in?');
    expect(talk.prompt.choices[0]).toBe('Gallatin County, MT (zone 6B)');
    expect(talk.say('yes').state.answers.place).toEqual({ state: 'MT', county: 'Gallatin' });
    expect(talk.last(2)).toContain('Gallatin County, MT lies in climate zone 6B');
  });

  it('is asked about again after an answer to another question, which is taken', () => {
    const talk = new Talk().say('Bozeman', '2x6 at 16');
    expect(talk.state.answers).toMatchObject({ 'framing.depth_in': 5.5, 'framing.spacing_in': 16 });
    expect(talk.prompt.title).toContain('"Bozeman"');
    expect(talk.say("that's it").state.answers.place).toEqual({ state: 'MT', county: 'Gallatin' });
  });

  it('is taken from a hesitant yes', () => {
    const talk = new Talk().say('somewhere near Bozeman I guess', 'yes I think so');
    expect(talk.state.answers.place).toEqual({ state: 'MT', county: 'Gallatin' });
    expect(talk.effects).toContainEqual({ kind: 'find-places', text: 'Bozeman' });
  });

  it('stays offered beside what is not understood, until another is found', () => {
    const talk = new Talk().say('Bozeman', '2x6, purple monkeys');
    expect(talk.state.answers).toMatchObject({ 'framing.depth_in': 5.5 });
    expect(talk.say('Atlantis').last(2)).toContain('"Atlantis"');
    expect(talk.prompt.title).toContain('"Bozeman"');
    expect(talk.say('Boulder').state.answers.place).toEqual({ state: 'CO', county: 'Boulder' });
    expect(talk.state.asides).toEqual([]);
  });

  it.each(['no', "no, that's wrong", 'none of these', "that's not it", 'not right'])(
    'is asked for anew when "%s" is said of the one offered',
    (line) => {
      const talk = new Talk().say('Bozeman', line);
      expect(talk.state.answers.place).toBeUndefined();
      expect(talk.prompt.title).toBe('Where does the wall stand?');
    },
  );

  it('that is named behind a "no" is looked up without it', () => {
    const talk = new Talk().say('Bozeman', 'no, Boulder');
    expect(talk.state.answers.place).toEqual({ state: 'CO', county: 'Boulder' });
    expect(talk.effects).toContainEqual({ kind: 'find-places', text: 'Boulder' });
  });

  it('that nobody knows is asked for again', () => {
    const talk = new Talk().say('Atlantis');
    expect(talk.last(2)).toContain('"Atlantis"');
    expect(talk.prompt.label).toBe('Place');
  });

  it('may be answered anew when none of those offered is meant', () => {
    const talk = new Talk().say('lincoln', 'none', 'zone 7');
    expect(talk.state.answers.place).toEqual({ climate_zone: '7' });
  });
});

describe('contradictions', () => {
  it('are put to the user with both values; the earlier one stands until then', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4');
    expect(talk.prompt.title).toContain('5.5 in. (2x6)');
    expect(talk.prompt.title).toContain('3.5 in. (2x4)');
    expect(talk.state.answers['framing.depth_in']).toBe(5.5);
  });

  it('end with one period behind a unit', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'studs 4 in. deep');
    expect(talk.prompt.title).toMatch(/; now 4 in\. Which holds\?$/);
  });

  it('keep the earlier answer when that is said', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4', 'keep');
    expect(talk.state.answers['framing.depth_in']).toBe(5.5);
    expect(talk.prompt.label).toBe('Sheathing');
  });

  it('take the later answer only after it was confirmed', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4', '2');
    expect(talk.state.answers['framing.depth_in']).toBe(3.5);
    expect(talk.state.answers['framing.spacing_in']).toBe(16);
  });

  it('are not settled by a line that says neither', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4', 'hm');
    expect(talk.prompt.label).toBe('Two answers');
  });

  it('are put off by an answer to something else, and asked again before the answer', () => {
    const talk = new Talk().say(...WHOLE_TALK.slice(0, 3), '2x4', 'plywood', 'R-21');
    expect(talk.state.answers).toMatchObject({ sheathing: 'plywood', 'framing.depth_in': 5.5 });
    expect(talk.last(6)).toContain('Stud depth: not settled, the first answer stands meanwhile.');
    expect(talk.say('show').last()).toContain('Not settled: you also said stud depth 3.5 in. (2x4).');
    talk.say(...WHOLE_TALK.slice(5));
    expect(talk.advised).toEqual([]);
    expect(talk.prompt.label).toBe('Two answers');
    talk.say('take the new one');
    expect(talk.advised.map(({ framing }) => framing)).toEqual([
      { material: 'wood', depth_in: 3.5, spacing_in: 16 },
    ]);
  });

  it('are said to be assumed away when no more is to be asked', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4', 'done');
    const said = talk.last(3);
    expect(said).toContain('Stud depth: I assume the first, 5.5 in. (2x6), and not 3.5 in. (2x4).');
    expect(talk.state.stage).toBe('told');
  });

  it('are settled by saying one of the two again, and left with the first by "don\'t know"', () => {
    const put = () => new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4');
    expect(put().say('2x4, plywood').state.answers).toMatchObject({
      'framing.depth_in': 3.5,
      sheathing: 'plywood',
    });
    expect(put().say('2x6').prompt.label).toBe('Sheathing');
    const left = put().say("don't know");
    expect(left.last()).toContain('I assume the first, 5.5 in. (2x6)');
    expect(left.prompt.label).toBe('Sheathing');
  });

  it('about the place name both places', () => {
    const talk = new Talk().say('Boulder, CO', 'in Gallatin county, MT');
    expect(talk.prompt.title).toContain('Boulder, CO');
    expect(talk.prompt.title).toContain('Gallatin, MT');
    expect(talk.say('new').state.answers.place).toEqual({ state: 'MT', county: 'Gallatin' });
  });

  it('do not arise from saying the same again', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'OSB, 2x6');
    expect(talk.prompt.label).toBe('Cavity insulation');
  });

  it('about windows name both lists', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'osb', 'R-21', 'skip');
    talk.say('six 3x5 ft triple casements, 130 lb, flanged', 'no more');
    talk.say('four 24x36 in. fixed windows');
    expect(talk.prompt.label).toBe('Two answers');
    talk.say('take the new one');
    expect(talk.state.answers.windows).toMatchObject([{ count: 4, width_in: 24 }]);
    expect(talk.prompt.label).toBe('Windows');
  });
});

// 25,000 over 1,500 ft² are 16.67 a square foot, over 2,000 ft² 12.50.
describe('who builds it', () => {
  const asked = (reader: 'homeowner' | 'professional') => {
    const talk = new Talk({ reader }).say('zone 5B', 'new');
    for (let i = 0; i < 20 && talk.prompt.label !== 'Who builds it'; i += 1) talk.say('skip');
    return talk;
  };

  it('is asked by whose hands do the work', () => {
    expect(asked('homeowner').prompt.title).toContain('Whose hands will do the work');
    expect(asked('homeowner').prompt.choices[0]).toContain('ourselves');
  });

  it('is not the homeowner who hires for the first time', () => {
    const talk = asked('homeowner').say('first time');
    expect(talk.state.answers.crew_skill).toBeUndefined();
    expect(talk.last()).toContain('is it the first time that you hire a crew');
    expect(talk.say('we do it ourselves, never done it before').state.answers.crew_skill).toBe('first-time');
    expect(talk.last()).not.toContain('leaves something open');
    expect(asked('professional').say('first time').state.answers.crew_skill).toBe('first-time');
  });
});

describe('a budget for the whole wall', () => {
  const told = () => new Talk().say('zone 5B', 'new', 'about 25k total');

  it('is divided by the area that is assumed, and anew once the area is said', () => {
    const talk = told();
    expect(talk.state.answers.budget_usd_per_ft2).toBe(16.67);
    expect(talk.last()).toContain(
      '$25,000 in all over 1,500 sq ft of wall, which I assume for now: $16.67 a square foot.',
    );
    talk.say('2,000 sq ft of wall');
    expect(talk.state.answers.budget_usd_per_ft2).toBe(12.5);
    expect(talk.last()).toContain('$25,000 in all over 2,000 sq ft of wall: $12.50 a square foot.');
    expect(talk.drafts.at(-1)).toMatchObject({ budget_total_usd: 25_000 });
  });

  it('is divided by the area that was said, also in the same line', () => {
    const talk = new Talk().say('zone 5B', 'new', '2,000 sq ft of wall, 25k total');
    expect(talk.state.answers.budget_usd_per_ft2).toBe(12.5);
    expect(talk.say('what if the budget were 30k total').state.asides).toMatchObject([
      { kind: 'trial', trial: { answers: { budget_usd_per_ft2: 15 } } },
    ]);
  });

  it('gives way to one that is told by the square foot', () => {
    const talk = told().say('change budget to 30', '2,000 sq ft of wall');
    expect(talk.state.answers.budget_usd_per_ft2).toBe(30);
  });

  it('is taken back with its line', () => {
    const talk = told().say('not right', '2,000 sq ft of wall');
    expect(talk.state.answers.budget_usd_per_ft2).toBeUndefined();
  });

  it.each(['25000', '25,000', '25 000', 'about 25000', '25,000 max', '$25,000'])(
    'is what "%s" means where the budget is asked, and that is said back',
    (said) => {
      const talk = new Talk().say('zone 5B', 'new', 'change budget', said);
      expect(talk.state).toMatchObject({
        budgetTotal_usd: 25_000,
        answers: { budget_usd_per_ft2: 16.67 },
      });
      expect(talk.last()).toContain('Taken as $25,000 in all');
      expect(talk.last()).toContain('$16.67 a square foot');
    },
  );

  it('is asked about where the sum is too dear for a foot and small for a wall', () => {
    const put = () => new Talk().say('zone 5B', 'new', '300 sq ft of wall', 'change budget', '600');
    expect(put().prompt.choices).toEqual([
      'Budget: $600 per square foot',
      'Budget: $600 in all, $2 per square foot',
    ]);
    for (const said of ['2', 'in all', '600 in all', '$600 for the whole wall']) {
      expect(put().say(said).state).toMatchObject({
        budgetTotal_usd: 600,
        answers: { budget_usd_per_ft2: 2 },
        asides: [],
      });
    }
    expect(put().say('a foot').state).toMatchObject({
      budgetTotal_usd: null,
      answers: { budget_usd_per_ft2: 600 },
    });
  });

  it('is asked about where a bare figure may as well be the area, until that is known', () => {
    const put = (...before: string[]) => new Talk().say('zone 5B', 'new', ...before, 'change budget', '1800');
    expect(put().prompt.choices).toEqual([
      'Budget: $1,800 in all, $1.20 per square foot',
      'Wall area: 1,800 sq ft',
    ]);
    expect(put().say('2').state.answers).toMatchObject({ wall_area_ft2: 1800 });
    expect(put('900 sq ft of wall').state.answers.budget_usd_per_ft2).toBe(2);
  });

  it('is refused where it comes to nothing for so much wall', () => {
    const talk = told().say('100,000 sq ft of wall');
    expect(talk.state.answers.budget_usd_per_ft2).toBeUndefined();
    expect(talk.last()).toContain('That would be $0.25 a square foot. Give US dollars per square foot');
  });
});

describe('windows', () => {
  const toWindows = () => new Talk().say('zone 5B', 'new', '2x6 at 16', 'osb', 'R-21', 'skip');

  it('are asked about until every aspect of a kind is said or left open', () => {
    const talk = toWindows().say('six 3x5 ft casements');
    expect(talk.prompt.title).toContain('double or triple glazing');
    talk.say('triple');
    expect(talk.prompt.title).not.toContain('glazing;');
    talk.say('flanged', 'work it out');
    expect(talk.state.answers.windows).toEqual([
      {
        count: 6,
        width_in: 36,
        height_in: 60,
        operation: 'casement',
        glazing: 'triple',
        mounting: 'flanged',
        weight_lb: 'unknown',
      },
    ]);
    expect(talk.prompt.title).toContain('another kind');
  });

  it('may be of several kinds, in one line or one after the other', () => {
    const talk = toWindows().say(
      'six 3x5 ft casements and two 72x80 in. doors',
      'all triple, flanged',
      "don't know",
    );
    talk.say("don't know", 'one 2x2 ft awning, double, flanged, 40 lb', 'no more');
    expect(talk.state.answers.windows).toMatchObject([
      { count: 6, operation: 'casement', glazing: 'triple', mounting: 'flanged', weight_lb: 'unknown' },
      { count: 2, operation: 'door', glazing: 'triple', weight_lb: 'unknown' },
      { count: 1, operation: 'awning', glazing: 'double', weight_lb: 40 },
    ]);
    expect(talk.prompt.label).toBe('Finish');
  });

  it('keep the first word about a kind when a later one differs, and say so', () => {
    const talk = toWindows().say('six 3x5 ft triple casements', 'sliding, flanged');
    expect(talk.state.answers.windows).toMatchObject([{ operation: 'casement', mounting: 'flanged' }]);
    expect(talk.last()).toContain('change windows');
  });

  it('that are impossible are refused by field', () => {
    const talk = toWindows().say('six 500x500 ft casements');
    expect(talk.last()).toContain('width');
    expect(talk.state.answers.windows).toBeUndefined();
  });

  it('"change windows" begins the list anew', () => {
    const talk = toWindows().say('six 3x5 ft triple casements, 130 lb, flanged', 'no more', 'change windows');
    talk.say('two 24x24 in. fixed, double, flangeless, 50 lb', 'no more');
    expect(talk.state.answers.windows).toEqual([
      {
        count: 2,
        width_in: 24,
        height_in: 24,
        operation: 'fixed',
        glazing: 'double',
        mounting: 'flangeless',
        weight_lb: 50,
      },
    ]);
  });
});

describe('"don\'t know" after an answer', () => {
  it('is about the rest of the question, and no contradiction', () => {
    const talk = new Talk().say(
      'zone 5B',
      'new',
      'change surroundings',
      "no wildfire, the rest I don't know",
    );
    expect(talk.state.answers).toMatchObject({ wildfire_area: false, termite_area: 'unknown' });
    expect(talk.state.asides).toEqual([]);
  });
});

describe('what would be accepted', () => {
  it.each([
    ['crew', 'hm', 1],
    ['budget', 'hm', 1],
  ])('names "don\'t know" once where the %s is asked', (question, said, times) => {
    const text = new Talk().say('zone 5B', 'new', `change ${question}`, said).last();
    expect(text.split("don't know").length - 1).toBe(times);
  });
});

describe('a number that may be two things', () => {
  it('is put to the user and then taken as said', () => {
    const talk = new Talk().say('zone 5B', 'change surroundings', '5');
    expect(talk.prompt.choices).toHaveLength(2);
    expect(talk.state.answers.fire_separation_ft).toBeUndefined();
    expect(talk.say('2').state.answers.fire_separation_ft).toBe(5);
  });

  it('is settled as well by saying it with its unit', () => {
    const talk = new Talk().say('zone 5B', 'change surroundings', '5', '5 ft');
    expect(talk.state.answers.fire_separation_ft).toBe(5);
  });
});

describe('going back', () => {
  it('opens the question before, shows the answer, and takes a new one without asking which holds', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'back');
    expect(talk.prompt.title).toContain('5.5 in. (2x6)');
    talk.say('2x4 at 24');
    expect(talk.state.answers).toMatchObject({ 'framing.depth_in': 3.5, 'framing.spacing_in': 24 });
    expect(talk.prompt.label).toBe('Sheathing');
  });

  it('goes further back each time, and stops at the first', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'back', 'back', 'back');
    expect(talk.prompt.label).toBe('Place');
    talk.say('back');
    expect(talk.last()).toContain('first question');
  });

  it('keeps the answer when that is said', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'back', 'keep');
    expect(talk.state.answers['framing.depth_in']).toBe(5.5);
    expect(talk.prompt.label).toBe('Sheathing');
  });

  it('changes one part and leaves the others', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', 'change spacing', '24 in.');
    expect(talk.state.answers).toMatchObject({ 'framing.depth_in': 5.5, 'framing.spacing_in': 24 });
  });

  it('takes an event of its own, for the key that means back', () => {
    const talk = new Talk().say('zone 5B').event({ kind: 'back' });
    expect(talk.prompt.label).toBe('Place');
  });

  it.each(QUESTIONS.filter(({ id }) => id !== 'windows').map(({ id, label }) => [id, label] as const))(
    '"change" reopens %s by its name',
    (_id, label) => {
      const talk = new Talk().say(...WHOLE_TALK, `change ${label.toLowerCase()}`);
      expect(talk.prompt.label).toBe(label);
      talk.say('keep');
      expect(talk.advised).toEqual([WHOLE_SCENARIO]);
    },
  );

  it('takes what is said to be wrong for what is to be changed, with the answer so far', () => {
    const talk = new Talk().say('zone 5B', 'new', "that's not my climate zone");
    expect(talk.prompt.title).toContain('So far: climate zone 5B.');
    talk.say('zone 6A', 'budget 30 a foot', 'the budget is wrong, it should be 25,000');
    expect(talk.state).toMatchObject({
      answers: { place: { climate_zone: '6A' }, budget_usd_per_ft2: 16.67 },
      asides: [],
    });
  });

  it('says so when no question has that name', () => {
    const talk = new Talk().say('change framng');
    expect(talk.last()).toContain('Did you mean "framing"?');
  });
});

describe('what can be said at any time', () => {
  it('help lists the commands', () => {
    const text = new Talk().say('help').last();
    for (const word of ['back', 'why', 'change', 'show', 'done', 'save', 'start over', 'quit']) {
      expect(text).toContain(word);
    }
  });

  it('show lists the answers so far', () => {
    const text = new Talk().say('zone 5B', 'new', 'show').last();
    expect(text).toContain('climate zone 5B');
    expect(text).toContain('new wall');
  });

  it('done assumes the rest', () => {
    const talk = new Talk().say('zone 5B', 'new', 'done');
    expect(talk.advised).toEqual([
      { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' }, project: 'new' },
    ]);
  });

  it('done without a place asks for the place and nothing else', () => {
    const talk = new Talk().say('done');
    expect(talk.prompt.label).toBe('Place');
    expect(talk.say('zone 5B').advised).toHaveLength(1);
  });

  it('save before there is an answer says how to get one', () => {
    const talk = new Talk().say('zone 5B', 'save');
    expect(talk.last()).toContain('done');
    expect(talk.effects.some((effect) => effect.kind === 'save-record')).toBe(false);
  });

  it('a name is taken into the scenario', () => {
    const talk = new Talk().say('zone 5B', 'call it Quarry Lane', 'done');
    expect(talk.advised[0]?.name).toBe('Quarry Lane');
  });

  it('start over asks first, then forgets everything but the talk so far', () => {
    const talk = new Talk().say('zone 5B', 'new', 'start over');
    const turns = talk.state.turns.length;
    expect(talk.state.answers.place).toBeDefined();
    talk.say('yes');
    expect(talk.state.answers).toEqual({});
    expect(talk.state.turns.length).toBeGreaterThan(turns);
    expect(talk.prompt.label).toBe('Place');
    expect(talk.effects.at(-1)).toEqual({ kind: 'drop-draft' });
  });

  it('quit leaves and keeps the draft', () => {
    const talk = new Talk().say('zone 5B', 'quit');
    expect(talk.state).toMatchObject({ stage: 'left', exitCode: 0 });
    expect(talk.last()).toContain('kept');
    expect(talk.effects.some((effect) => effect.kind === 'drop-draft')).toBe(false);
  });
});

describe('the draft', () => {
  it('is kept after every accepted answer and not after anything else', () => {
    const talk = new Talk().say('zone 5B', 'why', 'new', 'mud');
    expect(talk.drafts.map(({ answers }) => Object.keys(answers).length)).toEqual([1, 2]);
  });

  it('is offered at the start, and taken up where it was left', () => {
    const [draft] = new Talk().say('zone 5B', 'new', '2x6 at 16').drafts.slice(-1);
    if (!draft) throw new Error('no draft was kept');
    const talk = new Talk({ draft: { ...draft, saved_at: '2024-05-06T07:08:09.000Z' } });
    expect(talk.prompt.title).toContain('2024-05-06');
    talk.say('done');
    expect(talk.prompt.key).toBe('resume');
    talk.say('go on');
    expect(talk.prompt.label).toBe('Sheathing');
    expect(talk.say('back').prompt.label).toBe('Framing');
  });

  const SAVED_AT = '2024-05-06T07:08:09.000Z';
  /** The last draft of a talk as the next one gets it: through JSON, and checked. */
  const takenUp = (talk: Talk): Talk => {
    const text = JSON.stringify({ ...talk.drafts.at(-1), saved_at: SAVED_AT });
    return new Talk({ draft: draftSchema.parse(JSON.parse(text)) }).say('go on');
  };

  it.each([
    ['being asked about', []],
    ['put off', ['plywood']],
  ])('remembers a contradiction that was %s, and asks about it before the answer', (_, after) => {
    const talk = takenUp(new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4', ...after, 'quit'));
    expect(talk.last()).toContain('Not settled: you also said stud depth 3.5 in. (2x4).');
    expect(talk.state.answers['framing.depth_in']).toBe(5.5);
    talk.say(...WHOLE_TALK.slice(3));
    expect(talk.prompt.title).toContain('before you said 5.5 in. (2x6); now 3.5 in. (2x4)');
    expect(talk.say('take the new one').advised.at(-1)?.framing).toMatchObject({ depth_in: 3.5 });
  });

  it('says on leaving that a contradiction is kept open', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4', 'quit');
    expect(talk.last(2)).toContain(
      'Stud depth, 5.5 in. (2x6), or 3.5 in. (2x4). I ask again when you go on.',
    );
    expect(talk.last(2)).not.toContain('I assume');
  });

  it('remembers that the second of two budgets was for the whole wall', () => {
    const talk = takenUp(new Talk().say('zone 5B', 'new', 'budget 30 a foot', '$25,000 in all', 'plywood'));
    expect(talk.state.unsettled).toMatchObject([{ field: 'budget_usd_per_ft2', total_usd: 25_000 }]);
  });

  it('forgets a contradiction once it is settled', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', '2x4');
    expect(talk.drafts.at(-1)?.unsettled).toEqual({ 'framing.depth_in': 3.5 });
    expect(talk.say('keep').drafts.at(-1)?.unsettled).toBeUndefined();
  });

  it('asks what a kept talk left open before an answer that was stopped is worked out after all', () => {
    const draft = new Talk().say(...WHOLE_TALK, '2x4').drafts.at(-1);
    if (!draft) throw new Error('no draft was kept');
    const talk = new Talk().event({
      kind: 'project-opened',
      name: 'Shed',
      draft: { ...draft, saved_at: SAVED_AT },
      near: [],
    });
    expect(talk.say('work it out').prompt.label).toBe('Two answers');
    expect(talk.say('keep').advised).toEqual([WHOLE_SCENARIO]);
  });

  it('whose record was saved is kept again only while a contradiction stands open', () => {
    const talk = new Talk().say('zone 5B', '2x6', 'done', 'save', '2x4');
    expect(talk.effects.at(-1)).toMatchObject({ kind: 'keep-draft' });
    expect(talk.say('keep').effects.at(-1)).toEqual({ kind: 'drop-draft' });
  });

  it('is dropped when the user starts fresh', () => {
    const [draft] = new Talk().say('zone 5B').drafts;
    if (!draft) throw new Error('no draft was kept');
    const talk = new Talk({ draft: { ...draft, saved_at: '2024-05-06T07:08:09.000Z' } }).say('2');
    expect(talk.state.answers).toEqual({});
    expect(talk.effects).toEqual([{ kind: 'drop-draft' }]);
  });

  it('that could not be read is named, and a fresh talk begins', () => {
    const talk = new Talk({ setAside: '/home/x/draft.json.corrupt-1' });
    expect(talk.last()).toContain('/home/x/draft.json.corrupt-1');
    expect(talk.prompt.label).toBe('Place');
  });
});

describe('the end', () => {
  it('tells the answer as a turn and offers to save the record', () => {
    const talk = new Talk().say('zone 5B', 'done');
    expect(talk.state.turns.at(-1)?.kind).toBe('advice');
    expect(talk.prompt.title).toContain('Save the decision record?');
  });

  it('saves and shows the paths', () => {
    const talk = new Talk().say('zone 5B', 'done', 'yes');
    expect(talk.last()).toContain('/records/wall.md');
    expect(talk.effects.at(-1)).toEqual({ kind: 'drop-draft' });
    expect(talk.say('finish').state).toMatchObject({ stage: 'left', exitCode: 0 });
  });

  it('says on leaving that the record saved before is of earlier answers', () => {
    const EARLIER = 'The record that was saved is of your earlier answers';
    const saved = new Talk().say('zone 5B', 'done', 'save');
    expect(new Talk().say('zone 5B', 'done', 'save', 'finish').last()).not.toContain(EARLIER);
    const changed = saved.say('change budget to 20 a foot');
    expect(changed.prompt.title).toContain('The one saved before is of your earlier answers');
    expect(changed.say('finish').last()).toContain(EARLIER);
    const again = new Talk().say('zone 5B', 'done', 'save', 'change budget to 20 a foot', 'save', 'finish');
    expect(again.last()).not.toContain(EARLIER);
  });

  it('saves under a name when one is said', () => {
    const talk = new Talk().say('zone 5B', 'done', 'save as Quarry Lane');
    const saved = talk.effects.find((effect) => effect.kind === 'save-record');
    expect(saved).toMatchObject({ scenario: { name: 'Quarry Lane' }, advice: { name: 'Quarry Lane' } });
  });

  it('says why a record was not saved and asks again', () => {
    const talk = new Talk({ saveFails: 'The disc is full.' }).say('zone 5B', 'done', 'save');
    expect(talk.last()).toContain('The disc is full.');
    expect(talk.prompt.choices).toContain('Save the record');
  });

  it('answers anew when an answer is changed', () => {
    const talk = new Talk().say('zone 5B', 'done', 'change budget to 20 a foot');
    expect(talk.advised.map((scenario) => scenario.budget_usd_per_ft2)).toEqual([undefined, 20]);
    talk.say('budget 25 a foot', 'take the new one');
    expect(talk.advised.at(-1)?.budget_usd_per_ft2).toBe(25);
  });

  it('does not answer anew when nothing changed', () => {
    const talk = new Talk().say('zone 5B', 'done', 'change place', 'keep', 'show');
    expect(talk.advised).toHaveLength(1);
    expect(talk.state.stage).toBe('told');
  });

  it('leaves with 1 when no wall passes', () => {
    const advise = (scenario: Parameters<typeof sampleAdvice>[0]) => sampleAdvice(scenario, { ranked: [] });
    const talk = new Talk({ advise }).say('zone 5B', 'done', 'finish');
    expect(talk.state.exitCode).toBe(1);
  });

  it('goes back to the question whose answer was refused', () => {
    const talk = new Talk({
      advise: () => {
        throw new Refusal({ field: 'framing.depth_in', value: '5.5', accepted: 'Give another depth.' });
      },
    }).say('zone 5B', '2x6 at 16', 'done');
    expect(talk.last()).toContain('Give another depth.');
    expect(talk.prompt.label).toBe('Framing');
  });
});

describe('the end of input', () => {
  it('assumes the rest and leaves after the answer', () => {
    const talk = new Talk().say('zone 5B', 'new').event({ kind: 'input-ended' });
    expect(talk.advised).toHaveLength(1);
    expect(talk.state).toMatchObject({ stage: 'left', exitCode: 0 });
  });

  it('without a place is refused by field', () => {
    const talk = new Talk().say('new').event({ kind: 'input-ended' });
    expect(talk.advised).toEqual([]);
    expect(talk.state.exitCode).toBe(2);
    expect(talk.state.refused[0]?.field).toBe('place');
  });

  it('in the middle of a contradiction keeps the earlier answer', () => {
    const talk = new Talk().say('zone 5B', '2x6 at 16', '2x4').event({ kind: 'input-ended' });
    expect(talk.advised[0]?.framing).toMatchObject({ depth_in: 5.5 });
  });

  it('saves when that was asked for at the start', () => {
    const talk = new Talk({ saveWhenTold: true }).say('zone 5B').event({ kind: 'input-ended' });
    expect(talk.effects.map(({ kind }) => kind)).toContain('save-record');
    expect(talk.state).toMatchObject({ stage: 'left', exitCode: 0 });
  });

  it('leaves with 2 when the record can not be saved then', () => {
    const talk = new Talk({ saveWhenTold: true, saveFails: 'No room.' }).say('zone 5B');
    talk.event({ kind: 'input-ended' });
    expect(talk.state.exitCode).toBe(2);
    expect(talk.state.refused).toEqual([
      { field: '--save', value: 'the record', accepted: 'It could not be written: No room.' },
    ]);
  });
});

describe('the talk so far', () => {
  it('only ever grows, and writes each question once', () => {
    const talk = new Talk();
    let before = talk.state.turns;
    for (const line of [
      'zone 5B',
      'mud',
      'why',
      'new',
      '2x6',
      'back',
      'keep',
      '24',
      'start over',
      'yes',
      'zone 7',
    ]) {
      talk.say(line);
      expect(talk.state.turns.slice(0, before.length)).toEqual(before);
      before = talk.state.turns;
    }
    const ids = talk.state.turns.map(({ id }) => id);
    expect(ids).toEqual(ids.map((_, i) => i));
    const places = talk.state.turns.filter(
      (turn) => turn.kind === 'question' && turn.prompt.label === 'Place',
    );
    expect(places).toHaveLength(2);
  });
});
