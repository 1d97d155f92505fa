import { describe, expect, it } from 'vitest';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { adviceBlocks } from '../../src/conversation/tell-advice.ts';
import { sampleAdvice, sampleWall } from './sample-advice.ts';

const scenario = { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' } } as const;
const told = (change: Parameters<typeof sampleAdvice>[1] = {}) =>
  blocksToText(adviceBlocks(sampleAdvice(scenario, change)), 200);

describe('telling the answer', () => {
  it('begins with the first choice, its figures and its reasons', () => {
    const text = told();
    expect(text).toContain('Three-coat stucco over 3 in. of mineral wool');
    expect(text).toContain('about $29 a square foot ($24 to $37)');
    expect(text).toContain('U 0.041');
    expect(text).toContain('4.6 in. outside the sheathing');
    expect(text).toContain('12.1 lb per square foot');
    expect(text.indexOf('First choice')).toBeLessThan(text.indexOf('Alternatives'));
  });

  it('tells of a glued wall what glue and report must show, and no spacing or load of fasteners', () => {
    const wall = sampleWall(1, 'Synthetic finish over 2 in. of EPS');
    const why = 'Glued to the barrier: the evaluation report says with what and up to what wind.';
    const text = told({ ranked: [{ ...wall, fastening: { ...wall.fastening, support: 'adhered', why } }] });
    expect(text).toContain(why);
    expect(text).not.toContain('in. along studs');
    expect(text).not.toContain('Load on a fastener');
    expect(told()).toContain('Load on a fastener');
  });

  it('cites the rule behind a reason in a few words and says when the citation is recalled', () => {
    expect(told()).toContain('[an invented code, from memory; rule vapour.ratio]');
  });

  it('lists the alternatives with what they give up', () => {
    const text = told();
    expect(text).toContain('2. Stucco-look panels');
    expect(text).toContain('3. Wood siding');
    expect(text).toContain('the sound of real plaster');
  });

  it('ends an assumed length with one period', () => {
    const assumption = {
      field: 'framing.depth_in',
      value: 4,
      why: 'Not said.',
      could_change_answer: false,
    };
    expect(told({ assumptions: [assumption] })).toContain('stud depth: 4 in. Not said.');
  });

  it('says what was left out, what was assumed and what would change the answer', () => {
    const text = told();
    expect(text).toContain('Twice the load its screws can carry.');
    expect(text).toContain('What would admit it: Thinner insulation.');
    expect(text).toContain(
      'sheathing: OSB. Not said; the harder case for drying. Another value could change',
    );
    expect(text).toContain('distance to the lot line: left open. Not said.');
    expect(text).toContain('If the budget falls below $20: panels come first');
  });

  it('shows cautions of the wall and of the whole answer in words', () => {
    const text = told();
    expect(text).toContain('Caution (structural): Have the fastening checked.');
    expect(text).toContain('Caution (professional): Local code and a licensed professional decide.');
  });

  it('does not repeat the first choice’s cautions for each alternative, but says that they hold', () => {
    const rare = { text: 'Termites like it.', kind: 'ground' as const, rule: 'ground.termites' };
    const second = sampleWall(2, 'Another wall');
    const text = told({
      ranked: [sampleWall(1, 'A wall'), { ...second, cautions: [...second.cautions, rare] }],
    });
    expect(text.split('Have the fastening checked.')).toHaveLength(2);
    expect(text).toContain('One caution of the first choice holds here too.');
    expect(text).toContain('Caution (ground): Termites like it.');
  });

  it('says that nothing passes, and what comes closest', () => {
    const text = told({ ranked: [] });
    expect(text).toContain('No wall passes');
    expect(text).toContain('What comes closest');
    expect(text).not.toContain('First choice');
  });

  it('tells the fallback when true stucco can not be had', () => {
    const text = told({
      ranked: [],
      fallback: { why: 'True stucco does not pass here.', assembly: sampleWall(2, 'Panels') },
    });
    expect(text).toContain('Fallback: the look of stucco');
    expect(text).toContain('True stucco does not pass here.');
    expect(text).toContain('the sound of real plaster');
  });
});
