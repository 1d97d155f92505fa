import { describe, expect, it } from 'vitest';
import type { Advice, Caution } from '../../src/advice/advice-schema.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { readCommand } from '../../src/conversation/command.ts';
import {
  nextStepBlocks,
  nonePassBlocks,
  type OfFirstChoice,
  shortAnswerBlocks,
} from '../../src/conversation/tell-short-answers.ts';
import { sampleAdvice } from './sample-advice.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

const scenario = { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' } } as const;
const advice = sampleAdvice(scenario);
const [first] = advice.ranked;
if (!first) throw new Error('the sample has three walls');
const told = (question: OfFirstChoice, of: Advice = advice) =>
  blocksToText(shortAnswerBlocks(question, of), 400);
/** The sample with other cautions of the first choice. */
const warned = (...cautions: readonly Caution[]): Advice =>
  sampleAdvice(scenario, { ranked: [{ ...first, cautions: [...cautions] }] });

describe('the commonest questions', () => {
  it.each([
    [
      'affordable',
      ['how much in total?', 'how much', 'whats the total cost going to be', 'how much will it cost me'],
    ],
    [
      'screws',
      [
        'how many screws do I need',
        'what length screws',
        'fastening schedule',
        'how far apart are the screws',
        'which fasteners',
      ],
    ],
    ['rot', ['will it rot?', 'will it get mouldy', 'is it safe from moisture', 'can the wall dry out']],
    ['cracks', ['will it crack', 'will the stucco crack?', 'what about cracks']],
    ['lasting', ['how long does it last', 'how long will that last?', 'how durable is it', 'lifespan']],
    ['safe', ['is it safe?', 'is that safe', 'how safe is this', 'is it dangerous']],
    ['own-hands', ['can I do it myself?', 'could we build it ourselves', 'is this a diy job']],
    ['next-step', ['so what should I do', 'what should I do next?', 'now what', 'next steps']],
    ['none-pass', ['why does nothing pass', 'why does no wall pass?', 'why is there nothing that works']],
    ['meaning', ['what does that mean?', "I don't understand", 'what do those words mean']],
  ] as const)('are heard for what they are: %s', (kind, lines) => {
    for (const line of lines) expect(readCommand(line), line).toEqual({ kind });
  });

  it.each([
    'do it myself',
    'no screws',
    'in total',
    'vinyl, how much I do not know',
    'what length the county says',
    'it is safe to assume 16',
  ])('are not heard in "%s"', (line) => expect(readCommand(line)).toBeNull());

  it('ask for two walls side by side', () => {
    const ranks = [1, 3];
    for (const line of ['whats the diff between 1 and 3', "what's the difference between wall 1 and wall 3?"])
      expect(readCommand(line)).toEqual({ kind: 'compare', ranks });
  });

  it('change no answer and wait for one', () => {
    const asked = new Talk().say('zone 5B', 'new', 'can I do it myself?', 'will it rot', 'what should I do');
    expect(asked.state.answers).toEqual({ place: { climate_zone: '5B' }, project: 'new' });
    expect(asked.last(4)).toContain('There is no answer yet');
    expect(asked.last()).toContain('Answer what is asked');
    expect(asked.prompt.label).toBe('Framing');
  });

  it('explain the words of what is asked, or of what was said', () => {
    expect(new Talk().say('zone 5B', 'new', 'what does that mean?').last()).toContain('stud  ');
    const answer = new Talk().say(...WHOLE_TALK, 'what does that mean');
    expect(answer.last()).toContain('Words in it');
  });
});

describe('how many screws', () => {
  it('tells each fastener, its length, spacing and number, and who must size it', () => {
    const [step] = first.fastening_schedule.steps;
    if (!step) throw new Error('the sample has a schedule');
    const text = told('screws');
    expect(text).toContain(step.fastener);
    expect(text).toContain(`${step.project_count_with_waste?.toLocaleString('en-US')} to buy`);
    expect(text).toContain('waste included');
    const open = { ...first.fastening_schedule, verdict: 'permitted' as const };
    const settled = sampleAdvice(scenario, { ranked: [{ ...first, fastening_schedule: open }] });
    expect(text).toContain('Caution (structural): do not order these');
    expect(told('screws', settled)).not.toContain('do not order these');
  });

  it('owns up to an assumed area', () => {
    const assumption = { field: 'wall_area_ft2', value: 1800, why: 'Not said.', could_change_answer: false };
    expect(told('screws', sampleAdvice(scenario, { assumptions: [assumption] }))).toContain(
      'The area was assumed',
    );
    expect(told('screws')).not.toContain('The area was assumed');
  });
});

describe('will it rot, crack, last', () => {
  it('counts the rules on vapour and rain, and tells what is condensed and what can still wet it', () => {
    const lap = { kind: 'moisture', text: 'Only its laps hold.', rule: 'rain.laps' } as const;
    const text = told('rot', warned(lap));
    expect(text).toContain('Nobody can promise that it won’t. Of the 1 rules on vapour and rain');
    expect(text).toContain(first.condensate_note);
    expect(text).toMatch(/What keeps it dry\n\s+- The sheathing stays warm/);
    expect(text).toMatch(/What can still wet it\n\s+- Caution \(damp\): Only its laps hold\./);
  });

  it('says of cracks what the wall is warned of, and that it has no figure', () => {
    const joints = {
      kind: 'practice',
      text: 'Panels of 144 ft².',
      rule: 'stucco-practice.control-joints',
    } as const;
    const hurried = { kind: 'practice', text: 'A hurried finish cracks.', rule: 'x.curing' } as const;
    const text = told('cracks', warned(joints, hurried, { kind: 'cost', text: 'Rough prices.' }));
    expect(text).toContain('It can. I have no figure');
    expect(text).toContain('Panels of 144 ft².');
    expect(text).toContain('A hurried finish cracks.');
    expect(text).not.toContain('Rough prices');
    expect(told('cracks', warned())).toContain('nothing that I hold against a cladding speaks of cracks');
  });

  it('makes up no years', () => {
    const text = told('lasting');
    expect(text).toContain('I have no figure in years');
    expect(text).toContain('What the fasteners must be');
    expect(text).not.toMatch(/\d+ years/);
  });
});

describe('is it safe', () => {
  it('answers first whether a designer must sign, then names what may hurt, a line a kind', () => {
    const text = told('safe');
    expect(text).toContain('Is it safe?');
    expect(text).toContain('Not before a designer has signed');
    expect(text).toContain('What holds it up: Have the fastening checked');
    expect(text).toMatch(/What cannot be decided with what is known\n\s+- Fire rating near the lot line/);
    expect(text).toContain('"cautions" tells each point');
  });
});

describe('what to do next', () => {
  const text = (of: Advice, isSaved = false) => blocksToText(nextStepBlocks(of, isSaved), 400);

  it('follows from the answer', () => {
    const lead = {
      kind: 'health',
      text: 'Paint may hold lead.',
      rule: 'safety.lead-and-asbestos',
      remedy: 'Have it tested.',
    } as const;
    const found = sampleAdvice(scenario, { cautions: [lead] });
    expect(text(found)).toContain('Paint may hold lead. Have it tested.');
    expect(text(found)).toContain('"save" writes it');
    expect(text(found, true)).toContain('Give the build sheet that was saved');
    expect(text(advice)).not.toContain('lead');
  });
});

describe('when nothing passes', () => {
  const nothing = sampleAdvice(scenario, { ranked: [] });

  it('tells what comes closest and the rules against it, whatever was asked', () => {
    for (const text of [told('safe', nothing), blocksToText(nonePassBlocks(nothing), 400)]) {
      expect(text).toContain('What comes closest');
      expect(text).toContain('Twice the load its screws can carry.');
      expect(text).toContain('"change …" with the name of a question');
    }
    const dear = new Talk({ advise: () => nothing }).say(...WHOLE_TALK, 'too expensive').last();
    expect(dear).toContain('Twice the load its screws can carry.');
  });

  it('says how many pass where some do', () => {
    expect(blocksToText(nonePassBlocks(advice), 400)).toContain('87 of 4,321 walls pass.');
  });
});

describe('money without a figure', () => {
  it('is asked for, with a figure to try', () => {
    const talk = new Talk().say(...WHOLE_TALK, 'what if I had more money');
    expect(talk.last()).toContain('Your budget is $30 a square foot; "what if the budget were $36 a foot"');
    expect(new Talk().say('zone 5B', 'what if I had more money').last()).toContain('You gave no budget');
  });

  it('and a crew to be hired are tried', () => {
    const talk = new Talk().say(...WHOLE_TALK, 'what if I hire a stucco crew');
    expect(talk.last()).toContain('-> experienced with stucco');
  });
});

describe('beside the questions', () => {
  it('a wish for or against a board is told how to be asked', () => {
    const framing = (line: string) => new Talk().say('zone 5B', 'new', line).last();
    expect(framing('no foam')).toContain('"why not mineral wool" tells what stands against it');
    expect(framing("I don't want foam")).toContain('"why not mineral wool"');
    expect(framing('we prefer rockwool')).toContain('"why not rock wool"');
    expect(framing('mineral wool boards outside')).toContain('which board goes outside is what I work out');
    expect(framing('no mineral wool')).not.toContain('"why not mineral wool"');
    const cavity = new Talk().say(...WHOLE_TALK.slice(0, 4), 'mineral wool').last();
    expect(cavity).toContain('"mineral wool" leaves something open');
  });

  it('an answer is changed by the name that "show" gives it', () => {
    expect(readCommand('change distance to the lot line')).toMatchObject({ question: 'surroundings' });
    expect(readCommand('change interior vapour retarder')).toMatchObject({ question: 'retarder' });
  });

  it('"don\'t know" at "enough asked" answers no question that was not shown', () => {
    const talk = new Talk({ looksAhead: true, matters: () => [] }).say('zone 5B', 'new');
    expect(talk.prompt.label).toBe('Enough asked');
    talk.say("don't know");
    expect(talk.prompt.label).toBe('Enough asked');
    expect(talk.last()).toContain('Either will do.');
    expect(Object.values(talk.state.answers)).not.toContain('unknown');
  });
});
