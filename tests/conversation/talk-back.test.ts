import { describe, expect, it } from 'vitest';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { sampleAdvice } from './sample-advice.ts';
import { Talk, WHOLE_SCENARIO, WHOLE_TALK } from './talk.ts';

/** A talk that has its answer. */
const answered = () => new Talk().say(...WHOLE_TALK);
const opened = () => new Talk().say('zone 5B', 'new', '2x6 at 16, R-21', '$30 a foot');

describe('what was understood', () => {
  it('is echoed as chips, each in one piece', () => {
    const talk = new Talk().say('zone 5B', 'retrofit, 2x6 at 16');
    expect(talk.last()).toContain(
      'Noted [New or retrofit: retrofit of an existing wall] [Framing: wood studs]',
    );
    expect(talk.last()).toContain('"not right" takes the line back');
  });

  it('is taken back as a whole with "not right", and asked for again', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16, plywood, R-21');
    talk.say('not right');
    expect(talk.state.answers).toEqual({ place: { climate_zone: '5B' }, project: 'new' });
    expect(talk.last(1)).toContain('Taken back [Framing: wood studs] [Stud depth: 5.5 in. (2x6)]');
    expect(talk.prompt.label).toBe('Framing');
    expect(talk.drafts.at(-1)?.answers).toEqual(talk.state.answers);
    talk.say('undo');
    expect(talk.last()).toContain('There is nothing to take back.');
  });

  it('is taken back with its place, which was looked up in between', () => {
    const talk = new Talk().say('retrofit in Gallatin county MT, 2x6 at 24');
    expect(talk.state.answers.place).toEqual({ state: 'MT', county: 'Gallatin' });
    talk.say('not right');
    expect(talk.state.answers).toEqual({});
    expect(talk.prompt.label).toBe('Place');
  });

  it('is asked about when "not right" comes later, and nothing is lost until that is answered', () => {
    const talk = new Talk().say('zone 5B', 'new', 'true stucco, $38 a foot', 'why', 'what is a buck?');
    const { answers } = talk.state;
    talk.say('not right');
    expect(talk.state.answers).toEqual(answers);
    expect(talk.prompt.title).toContain('"true stucco, $38 a foot"');
    expect(talk.prompt.title).toContain('Finish: true cement stucco; Budget: $38 per square foot.');
    expect(talk.say('leave it').state.answers).toEqual(answers);
    talk.say('not right', 'take it back');
    expect(talk.state.answers).toEqual({ place: { climate_zone: '5B' }, project: 'new' });
  });

  it('is put back after the answer only when that is said, and then asked for, not assumed', () => {
    const talk = new Talk().say(
      'zone 5B',
      'true stucco, stucco crew',
      'done',
      'how firm is that',
      'not right',
    );
    expect(talk.advised).toHaveLength(1);
    expect(talk.prompt.label).toBe('What is not right?');
    talk.say('yes');
    expect(talk.last()).toContain(
      'Taken back [Finish: true cement stucco] [Who builds it: experienced with stucco]',
    );
    expect(talk.advised).toHaveLength(1);
    expect(talk.prompt.label).toBe('Finish');
  });

  it('goes back to what was said before where a line changed it', () => {
    const talk = new Talk().say(...WHOLE_TALK, 'change budget to 26', 'not right', 'yes');
    expect(talk.last(3)).toContain('[Budget: $26 per square foot -> $30 per square foot]');
    expect(talk.state.answers.budget_usd_per_ft2).toBe(30);
    expect(talk.state.stage).toBe('told');
  });

  it('is left alone by "not right" to a question that came back', () => {
    const tried = answered().say('what if the budget were 24 a foot', 'not right');
    expect(tried.state.answers).toEqual(answered().state.answers);
    expect(tried.state.asides).toEqual([]);
    const contradicted = opened().say('osb', '2x4', 'not right');
    expect(contradicted.state.answers).toMatchObject({ sheathing: 'osb', 'framing.depth_in': 5.5 });
    expect(contradicted.prompt.label).toBe('Vapour retarder');
  });

  it('is not a kept talk that was taken up', () => {
    const draft = {
      schema: 'cladwright-draft/1' as const,
      saved_at: '2024-05-06T07:08:09.000Z',
      answers: { place: { climate_zone: '5B' as const }, project: 'new' as const },
      windows_complete: false,
      history: [],
    };
    const talk = new Talk({ draft }).say('go on', 'not right');
    expect(talk.state.answers).toEqual(draft.answers);
    expect(talk.last()).toContain('There is nothing to take back.');
  });
});

describe('what if', () => {
  it('tries an answer out, shows both first choices, and changes nothing', () => {
    const talk = opened().say('what if the budget were $24 a foot?');
    expect(talk.state.answers.budget_usd_per_ft2).toBe(30);
    expect(talk.last()).toContain('Tried [Budget: $30 per square foot -> $24 per square foot]');
    expect(talk.last()).toContain('$29 a square foot -> $22 a square foot');
    expect(talk.prompt.title).toContain('Nothing is changed yet');
  });

  it('is kept when told to, and answered anew after the answer', () => {
    const talk = answered().say('what if the budget were 24 a foot', 'keep');
    expect(talk.state.answers.budget_usd_per_ft2).toBe(24);
    expect(talk.advised.map(({ budget_usd_per_ft2 }) => budget_usd_per_ft2)).toEqual([30, 24]);
    expect(talk.state.stage).toBe('told');
  });

  it('is left when told to, or when the talk goes on otherwise', () => {
    const left = answered().say('what if the budget were 24 a foot', 'leave it as it was');
    expect(left.state.answers).toEqual(answered().state.answers);
    expect(left.advised).toHaveLength(1);
    const passed = opened().say('what if the budget were 24 a foot', 'plywood');
    expect(passed.state.answers).toMatchObject({ budget_usd_per_ft2: 30, sheathing: 'plywood' });
  });

  it.each([
    ['what if the crew knew stucco', { crew_skill: 'stucco-experienced' }],
    ['what if it were 2x4 at 24', { 'framing.depth_in': 3.5, 'framing.spacing_in': 24 }],
    ['suppose the studs were steel', { 'framing.material': 'steel' }],
    ['what if the finish were anything', { finish: 'any' }],
    ['what if we used true stucco', { finish: 'cement-stucco' }],
    ['what if the lot line were 3 ft away', { fire_separation_ft: 3 }],
    ['what if it stood in climate zone 7', { place: { climate_zone: '7' } }],
    ["what if I didn't know the budget", null],
  ])('reads "%s"', (said, expected) => {
    const talk = answered().say(said);
    const [aside] = talk.state.asides;
    if (expected === null) expect(talk.last()).toContain('what should be tried');
    else expect(aside?.kind === 'trial' ? aside.trial.answers : null).toMatchObject(expected);
  });

  it('changes every kind of window by a loose word', () => {
    const [aside] = answered().say('what if double glazing').state.asides;
    expect(aside?.kind === 'trial' ? aside.trial.answers.windows : null).toEqual([
      {
        count: 6,
        width_in: 36,
        height_in: 60,
        glazing: 'double',
        mounting: 'flanged',
        operation: 'casement',
        weight_lb: 130,
      },
    ]);
  });

  it.each(['what if 25', 'what if pigs fly', 'what if the budget were -4'])(
    'asks again after "%s"',
    (said) => {
      const talk = opened().say(said);
      expect(talk.last()).toContain('what should be tried');
      expect(talk.state.asides).toEqual([]);
    },
  );

  it('needs the place', () => {
    expect(new Talk().say('what if the budget were 24 a foot').last()).toContain('once I know the place');
  });
});

describe('about the answer', () => {
  it('compares two of the ranked walls by number', () => {
    const text = answered().say('compare 1 and 2').last();
    expect(text).toContain('Wall 1 beside wall 2');
    expect(text).toContain('Stucco-look panels on furring over 2 in. of wood fibre');
    expect(text).toContain('wall 1  |  wall 2');
    expect(text).toMatch(/Score +0\.80 {4}\| {2}0\.70\n/);
    const marks = text.split('\n').flatMap((line) => (line.includes('  |  ') ? [line.indexOf('|')] : []));
    expect(new Set(marks).size).toBe(1);
    const turn = answered().say('compare').state.turns.at(-1);
    const narrow = blocksToText(turn?.kind === 'remark' ? turn.blocks : [], 40);
    expect(narrow).toMatch(/^ {2}U-factor +0\.041 {3}\| {2}0\.041$/m);
    expect(answered().say('compare 1 and 9').last()).toContain(
      'There is no wall 9: the answer ranks 1 to 3.',
    );
  });

  it('says why not something that was left out, with the smallest change that would admit it', () => {
    const text = answered().say('why not adhered veneer?').last();
    expect(text).toContain(
      'Twice the load its screws can carry. [an invented table; rule structure.too-heavy]',
    );
    expect(text).toContain(
      'It passes with 3 in. of insulation. Then: adhered veneer over 3 in. of XPS, score 0.550.',
    );
  });

  it('says why not a wall that passes: by its scores, or to a homeowner in plain words', () => {
    const figures = answered().say('why not wood fibre').last();
    expect(figures).toContain('low cost: 0.20 against 0.90, which costs it 0.120');
    const plain = answered().say('plain words', 'why not wood fibre').last();
    expect(plain).toContain('Nothing forbids it');
    expect(plain).toMatch(/Where it is behind\n\s+- low cost\n/);
    expect(plain).toMatch(/Where it is better\n\s+- low carbon\n/);
    expect(plain).not.toMatch(/0\.\d|rule /);
  });

  it('knows a ranked wall by its number, and names it by its id', () => {
    for (const words of ['why not 2', 'why not wall 2?', "why isn't it the second one"]) {
      expect(answered().say(words).effects.at(-1)).toMatchObject({ kind: 'why-not', words: 'wall-2' });
    }
    expect(answered().say('why not wall 9').last()).toContain('There is no wall 9');
    expect(opened().say('why not wall 2').last()).toContain('There is no answer yet');
  });

  it('looks into a wall before there is an answer, and says what it does not find', () => {
    expect(opened().say('why not adhered veneer').last()).toContain('Twice the load');
    expect(new Talk().say('why not brick').last()).toContain('once I know the place');
    const text = opened().say('why not gold leaf instead?').last();
    expect(text).toContain('I find no wall by the name "gold leaf". Nothing here is called that.');
  });

  it.each([
    ['drawing', 'Section: Three-coat stucco'],
    ['drawing 2', 'Section: Stucco-look panels'],
    ['temperatures', 'Through the wall in'],
    ['condensate', 'Condensate by month'],
    ['scores', 'its parts from 0 (worst) to 1 (best)'],
    ['numbers', 'Figures: Three-coat stucco'],
  ])('shows the %s', (said, words) => {
    const talk = answered();
    const key = talk.prompt.key;
    expect(talk.say(said).last()).toContain(words);
    expect(talk.prompt.key).toBe(key);
  });

  it('names method and source of each figure, and each rule that spoke with its citation', () => {
    const wall = sampleAdvice(WHOLE_SCENARIO).ranked;
    const figure = {
      id: 'u',
      what: 'Wall U-factor',
      value: 0.0412,
      unit: 'Btu/(h·ft²·°F)',
      method: 'parallel paths',
      source: ['a handbook, method 2'],
    };
    const ranked = wall.map((one) => ({ ...one, figures: [figure] }));
    const talk = new Talk({ advise: (scenario) => sampleAdvice(scenario, { ranked }) });
    const text = talk.say('zone 5B', 'done', 'numbers').last();
    expect(text).toContain('Wall U-factor: 0.0412 Btu/(h·ft²·°F), by parallel paths [a handbook, method 2]');
    expect(text).toContain(
      'undecided: Fire rating near the lot line [an invented code, table 2; rule fire.lot-line]',
    );
  });

  it.each(['compare 1 and 2', 'drawing', 'numbers', 'show the answer'])(
    'says that there is no answer yet to "%s"',
    (said) => {
      const talk = opened().say(said);
      expect(talk.last()).toContain('There is no answer yet');
      expect(talk.state.stage).toBe('asking');
    },
  );

  it('says that no wall passes instead of showing one', () => {
    const talk = new Talk({ advise: (scenario) => sampleAdvice(scenario, { ranked: [] }) });
    expect(talk.say('zone 5B', 'done', 'drawing').last()).toContain('No wall passes');
  });
});

describe('words', () => {
  it('are explained at any question, which is still asked then', () => {
    const talk = new Talk().say('zone 5B').say('what is a buck?');
    expect(talk.last()).toContain('Buck: A frame of lumber');
    expect(talk.prompt.label).toBe('New or retrofit');
  });

  it('that nobody knows get the nearest that are', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16');
    expect(talk.say('plywod').last(2)).toContain('Did you mean "plywood"?');
    expect(talk.say('compair').last(2)).toContain('Did you mean "compare"');
    expect(talk.say('glosary').last(2)).toContain('"glossary"');
  });

  it('of help list every command by what it is about', () => {
    const text = new Talk().say('help').last();
    for (const words of ['While I ask', 'About the answer', 'Words and readers', 'Keeping and leaving']) {
      expect(text).toContain(words);
    }
  });
});

describe('two readers', () => {
  it('hear the same answer in another order, switched by a phrase and remembered', () => {
    const talk = new Talk().say('zone 5B', 'plain words');
    expect(talk.state.reader).toBe('homeowner');
    expect(talk.drafts.at(-1)?.reader).toBe('homeowner');
    talk.say('done');
    expect(talk.last()).toContain('The answer, in plain words');
    talk.say('figures first', 'show the answer');
    expect(talk.last()).toContain('First choice');
    // A turn that was told stays as it was told.
    expect(talk.state.turns.filter(({ kind }) => kind === 'advice')).toMatchObject([
      { reader: 'homeowner' },
      { reader: 'professional' },
    ]);
  });

  it('come back with a kept talk, unless the program was started for one', () => {
    const draft = {
      schema: 'cladwright-draft/1' as const,
      saved_at: '2024-05-06T07:08:09.000Z',
      answers: { place: { climate_zone: '5B' as const } },
      windows_complete: false,
      history: [],
      reader: 'homeowner' as const,
    };
    expect(new Talk({ draft }).say('go on').state.reader).toBe('homeowner');
    expect(new Talk({ draft, reader: 'professional' }).say('go on').state.reader).toBe('professional');
  });
});

describe('a question inside a line', () => {
  it.each([
    ["I don't know, how can I tell?", undefined],
    ["don't know how can I tell", undefined],
    ['plywood I think. How do I find out?', 'plywood'],
  ])('is answered with "%s", and the rest is taken', (line, sheathing) => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16', line);
    const said = talk.last(3);
    expect(said).toContain('How to find out');
    expect(said).toContain('Look from the attic or garage side');
    expect(said).not.toContain('Not understood');
    expect(talk.state.answers.sheathing).toBe(sheathing ?? 'unknown');
    expect(talk.prompt.label).toBe('Cavity insulation');
  });

  it('explains a word beside the answer, and takes no answer from it', () => {
    const talk = new Talk().say('zone 5B', 'new', '2x6 at 16, R-21, what is kraft facing?');
    expect(talk.last(2)).toContain('Class II retarder: A layer');
    expect(talk.state.answers).toMatchObject({ cavity_insulation_r: 21 });
    expect(talk.state.answers.interior_vapour_retarder).toBeUndefined();
  });
});

describe('an unfinished talk', () => {
  it.each(['done', 'finish', 'save'])('says after "%s" what can be said instead', (line) => {
    const draft = {
      schema: 'cladwright-draft/1' as const,
      saved_at: '2024-05-06T07:08:09.000Z',
      answers: { place: { climate_zone: '5B' as const } },
      windows_complete: false,
      history: [],
    };
    const said = new Talk({ draft }).say(line).last();
    for (const words of ['"go on"', '"start fresh"', '"quit"', '"projects"']) expect(said).toContain(words);
    expect(said).not.toContain("don't know");
  });
});

describe('a slip of the fingers', () => {
  it('at the end is answered by what was meant', () => {
    expect(answered().say('finsh').last(2)).toContain('Did you mean "finish"?');
  });
});

describe('how to find out', () => {
  it('is said for what is asked, on its own and with the reason', () => {
    const talk = new Talk().say('zone 5B', 'retrofit', 'how can I tell?');
    expect(talk.last()).toContain('Find three neighbouring studs');
    expect(talk.state.answers['framing.spacing_in']).toBeUndefined();
    expect(talk.say('why').last()).toMatch(/Why: every screw[\s\S]*How to find out/);
    expect(new Talk().say('how do I find out?').last()).toContain('nothing to look up for this one');
  });

  it('is said of what the first choice hangs on, once there is an answer', () => {
    const open = {
      field: 'sheathing',
      why: 'Not said.',
      how: 'Look from the attic side.',
      effect: { still_passes: false, score_loss: null, words: 'If it is boards, it breaks a rule.' },
    };
    const talk = new Talk({ advise: (scenario) => sampleAdvice(scenario, { find_out_first: [open] }) });
    talk.say('zone 5B', 'done');
    expect(talk.last()).toContain('Find out first');
    expect(talk.say('what should I find out first?').last()).toContain('Look from the attic side.');
    expect(answered().say('what should I check first').last()).toContain('Nothing that I assumed');
  });
});

describe('the answer', () => {
  it('is told briefly, and whole when asked for', () => {
    const talk = answered();
    expect(talk.last()).toContain('First choice');
    expect(talk.last()).toContain('"whole answer" tells all of it');
    expect(talk.last()).not.toContain('Windows, in this order');
    expect(talk.say('the whole answer, please.').last()).toContain('Windows, in this order');
  });

  it('names every wall and every caution that may hurt somebody, also when told briefly', () => {
    for (const reader of ['homeowner', 'professional'] as const) {
      const text = new Talk({ reader }).say('zone 5B', 'done').last();
      for (const { title } of sampleAdvice(WHOLE_SCENARIO).ranked) expect(text).toContain(title);
      expect(text).toContain('Have the fastening checked.');
      expect(text).toContain('Local code and a licensed professional decide.');
      expect(text).toContain('Twice the load its screws can carry.');
    }
  });

  it('tells its ties: as figures, or to a homeowner in plain words', () => {
    const tied = (scenario: Parameters<typeof sampleAdvice>[0]) => {
      const { ranked } = sampleAdvice(scenario);
      const tie = { score_behind: 0.01, price_swing: 0.02, words: 'As good: it scores 0.010 behind.' };
      return sampleAdvice(scenario, {
        ranked: ranked.map((wall) => (wall.rank === 2 ? { ...wall, tie, tie_with_first: true } : wall)),
      });
    };
    const figures = new Talk({ advise: tied }).say('zone 5B', 'done');
    expect(figures.last()).toContain('As good: it scores 0.010 behind.');
    expect(figures.say('are you sure?').last()).toContain('As good: it scores 0.010 behind.');
    const plain = new Talk({ advise: tied, reader: 'homeowner' }).say('zone 5B', 'done');
    expect(plain.last()).toContain('as far as prices can tell: get quotes for both');
    expect(plain.say('how sure are you').last()).toContain('get quotes for both');
  });
});
