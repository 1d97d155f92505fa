import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/advice/advice-schema.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import {
  affordBlocks,
  cheaperBlocks,
  contractorBlocks,
  soundBlocks,
} from '../../src/conversation/tell-owner-questions.ts';
import { sampleAdvice, sampleWall } from './sample-advice.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

const scenario = { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' } } as const;
const advice = sampleAdvice(scenario);
const sound = (of: Advice = advice) => blocksToText(soundBlocks(of), 400);
const afford = (budget: number | null, of: Advice = advice) => blocksToText(affordBlocks(of, budget), 400);
const contractor = (of: Advice = advice) => blocksToText(contractorBlocks(of), 400);

describe('"is it sane?"', () => {
  it('says what the rules say, what is open, the weak points and who must sign', () => {
    expect(sound()).toContain('breaks none of the 2 rules that apply.');
    expect(sound()).toContain('1 cannot be decided with what is known, and counts as open, not as kept.');
    expect(sound()).toContain('Caution (what holds it up): Have the fastening checked.');
    expect(sound()).toContain('A designer must sign: licensed, for what this answer leaves open');
  });

  it('says so when nothing passes', () => {
    expect(sound(sampleAdvice(scenario, { ranked: [] }))).toContain('No wall passes');
  });
});

// The sample wall costs 24, 29 or 37 dollars a square foot and is 1,800 ft² large; totals by hand.
describe('"is it affordable?"', () => {
  it('tells dollars for the whole wall from low to high, and what they do not pay for', () => {
    expect(afford(null)).toContain(
      'about $52,200 for 1,800 sq ft of wall; from $43,200 to $66,600. That is $29 a square foot ($24 to $37)',
    );
    expect(afford(null)).toContain('What is not in these figures');
    expect(afford(null)).toContain('permits, and the fee of an engineer or designer');
    expect(afford(null)).toContain('You gave no budget');
    expect(afford(null)).toContain('Get at least two quotes');
  });

  it('holds them against the budget', () => {
    expect(afford(30)).toContain('The likely cost fits the budget of $30 per ft², the high end does not');
    expect(afford(30)).toContain('For the whole wall your budget is $54,000.');
    expect(afford(20)).toContain('Even the low end is over the budget of $20 per ft².');
  });

  it('owns up to an assumed area', () => {
    const assumption = { field: 'wall_area_ft2', value: 1800, why: 'Not said.', could_change_answer: false };
    expect(afford(30, sampleAdvice(scenario, { assumptions: [assumption] }))).toContain(
      'I assumed the area.',
    );
    expect(afford(30)).not.toContain('I assumed the area.');
  });

  it('names what is found under an old cladding only where there is one', () => {
    const hidden = { text: 'Nobody has seen it.', kind: 'site-work', rule: 'safety.hidden-decay' } as const;
    expect(afford(30, sampleAdvice(scenario, { cautions: [hidden] }))).toContain(
      'taking the old cladding off',
    );
    expect(afford(30)).not.toContain('old cladding');
  });
});

describe('"that is too expensive"', () => {
  const [first, second, third] = advice.ranked;
  if (!first || !second || !third) throw new Error('the sample has three walls');
  const priced = (wall: typeof first, likely: number, change: Partial<typeof first> = {}) => ({
    ...wall,
    installed_cost_usd_per_ft2: { low: likely - 4, likely, high: likely + 6 },
    ...change,
  });
  const cheaper = (budget: number | null, ranked: Advice['ranked'], change: Partial<Advice> = {}) =>
    blocksToText(cheaperBlocks(sampleAdvice(scenario, { ranked, ...change }), budget), 400);

  // 1,800 ft² of wall: $9 a square foot less is $16,200, $4 is $7,200.
  it('names what passes for less, the cheapest first, with what is saved and given up', () => {
    const told = cheaper(26, [
      priced(first, 29),
      priced(second, 25),
      priced(third, 20, { gives_up: ['Less forgiving to knocks'] }),
    ]);
    expect(told).toContain('The likely cost is over the budget of $26 per ft²');
    expect(told.indexOf(`${third.title}: likely $20`)).toBeLessThan(
      told.indexOf(`${second.title}: likely $25`),
    );
    expect(told).toContain(
      'likely $20 a square foot, about $16,200 less. It gives up: Less forgiving to knocks.',
    );
    expect(told).toContain('about $7,200 less');
    // Its low end is $25.
    expect(told).toContain('"change budget to 24"');
  });

  it('says so where no other ranked wall costs less', () => {
    const told = cheaper(null, [priced(first, 20), priced(second, 25)]);
    expect(told).toContain('None of the other walls that I ranked likely costs less.');
    expect(told).toContain('"what if the budget were $15 a foot"');
  });

  it('tells the dearest part first, and nothing where the parts are not known', () => {
    const told = cheaper(null, [first]);
    const parts = [
      /Cladding in place +\$19.00 \(\$16.00 to \$24.00\), 66 %/,
      /Boards laid and taped +\$10.00 \(\$8.00 to \$13.00\), 34 %/,
      /All of it +\$29.00 \(\$24.00 to \$37.00\)/,
      /Times 1,800 ft² +\$52,200 \(\$43,200 to \$66,600\)/,
    ];
    for (const part of parts) expect(told).toMatch(part);
    expect(parts.map((part) => told.search(part))).toEqual(
      parts.map((part) => told.search(part)).sort((a, b) => a - b),
    );
    expect(cheaper(null, [priced(first, 29, { cost_parts: [] })])).not.toContain('part by part');
  });

  it('is answered of the answer in hand, and of none before there is one', () => {
    expect(new Talk().say(...WHOLE_TALK, 'the price is too high').last()).toContain('If it costs too much');
    expect(new Talk().say('zone 5B', 'the price is too high').last(1)).toContain('There is no answer yet');
  });
});

describe('"what should I ask a contractor?"', () => {
  it('asks what follows from the first choice', () => {
    expect(contractor()).toContain('Have you built a cladding over 3 in. of mineral wool before?');
    expect(contractor()).toContain('My plan: the mat with its bonded lath, No. 12 wood screw');
    expect(contractor()).toContain('a design professional must size it');
    expect(contractor()).toContain('Which evaluation report');
    expect(contractor()).toContain('Where does rain that gets behind the cladding run out');
    expect(contractor()).toContain('Who takes out the permit');
    expect(contractor()).toContain('the boards delivered (mineral wool, 3 in.)');
  });

  it('asks about windows where there are any, with the places to look at in between', () => {
    const wall = sampleWall(1, 'A wall');
    expect(contractor()).not.toContain('flash a window');
    const opening = { verdict: 'fits' } as (typeof wall.openings)[number];
    const buck = { ...wall.buck, flashing_sequence: ['Pan in. HOLD: Flood it.', 'Window in.'] };
    const asked = contractor(sampleAdvice(scenario, { ranked: [{ ...wall, buck, openings: [opening] }] }));
    expect(asked).toContain('How do you carry the windows out to the new face? My plan: 2x buck');
    expect(asked).toContain('My plan has 2 steps. Stop and let me look each time: Flood it.');
  });
});

describe('a talk', () => {
  it('answers all three once there is an answer, and changes nothing by it', () => {
    const talk = new Talk({ reader: 'homeowner' }).say(...WHOLE_TALK);
    const { answers } = talk.state;
    expect(talk.say('is it sane?').last()).toContain('Is it a sound plan?');
    expect(talk.say('is it affordable?').last()).toContain('For the whole wall your budget is $54,000.');
    expect(talk.say('what should I ask a contractor?').last()).toContain('What to ask a contractor');
    expect(talk.state.answers).toBe(answers);
    expect(talk.advised).toHaveLength(1);
  });

  it('says before there is one how to get it', () => {
    expect(new Talk().say('zone 5B', 'is it sane?').last()).toContain('"done" assumes what is still open');
  });
});
