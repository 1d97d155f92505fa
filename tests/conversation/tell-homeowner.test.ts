import { describe, expect, it } from 'vitest';
import { type Block, blocksToText } from '../../src/conversation/blocks.ts';
import { toldTo } from '../../src/conversation/told.ts';
import { sampleAdvice } from './sample-advice.ts';

const scenario = { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' } } as const;
const advice = sampleAdvice(scenario);
const plain = blocksToText(toldTo('homeowner', advice), 200);
const figures = blocksToText(toldTo('professional', advice), 200);

/** Everything that a block says, piece by piece. */
function sayings(block: Block): string[] {
  switch (block.kind) {
    case 'list':
    case 'chips':
      return [...block.items];
    case 'figures':
      return block.rows.map(({ value }) => value);
    case 'drawing':
      return [...block.lines];
    default:
      return [block.text];
  }
}

describe('the answer for a homeowner', () => {
  it('begins with what to beware of, before any wall is named', () => {
    const cautions = plain.indexOf('Local code and a licensed professional decide.');
    expect(cautions).toBeGreaterThan(-1);
    expect(plain.indexOf('Have the fastening checked.')).toBeLessThan(plain.indexOf('What I would build'));
    expect(cautions).toBeLessThan(plain.indexOf('Three-coat stucco over'));
  });

  it('tells the wall in sentences, and explains the words of the trade it used', () => {
    expect(plain).toContain('Mineral wool, 3 in. thick, goes over the whole outside of the wall');
    expect(plain).toContain('over that comes the cladding: a cladding.');
    expect(plain).toContain('Expect about $29 a square foot built in, between $24 and $37.');
    expect(plain).toContain('Words used above');
    expect(plain).toContain('Stiff boards spun from molten rock.');
  });

  it('says beside the wall that the budget may not cover it, and leaves rough prices to the cautions', () => {
    const [first, ...others] = advice.ranked;
    if (!first) throw new Error('no first choice');
    const over = {
      text: 'The likely cost is $20/ft² and the budget $17/ft².',
      rule: 'budget.likely-over',
      kind: 'cost' as const,
    };
    const rough = { ...over, text: 'Prices are rough.', rule: 'budget.prices-are-rough' };
    const dear = { ...advice, ranked: [{ ...first, cautions: [...first.cautions, over, rough] }, ...others] };
    const text = blocksToText(toldTo('homeowner', dear), 200);
    const wall = text.slice(text.indexOf('What I would build'));
    expect(wall).toContain(`Your budget: ${over.text}`);
    expect(wall).not.toContain(`Your budget: ${rough.text}`);
  });

  it('says plainly that no wall passes', () => {
    const none = { ...advice, ranked: [], considered: { ...advice.considered, admitted: 0 } };
    expect(blocksToText(toldTo('homeowner', none), 200)).toContain('each of them breaks at least one rule');
  });

  it('keeps citations out of the reasons, and gives them at the end', () => {
    const why = plain.slice(plain.indexOf('Why this one'), plain.indexOf('Section:'));
    expect(why).toContain('The sheathing stays warm');
    expect(why).not.toContain('[');
    expect(plain.indexOf('an invented code, from memory; rule vapour.ratio')).toBeGreaterThan(
      plain.indexOf('For whoever builds it'),
    );
  });
});

describe('the same content for both readers', () => {
  it('every reason, caution, figure, layer, step, assumption and rule is told to both', () => {
    const [first] = advice.ranked;
    if (!first) throw new Error('the sample has a first choice');
    const told = [
      ...first.reasons.map(({ text }) => text),
      ...first.cautions.map(({ text }) => text),
      ...advice.cautions.map(({ text }) => text),
      ...advice.assumptions.map(({ why }) => why),
      ...advice.excluded.flatMap(({ because }) => because.map(({ text }) => text)),
      ...first.buck.flashing_sequence,
      ...first.crew.steps,
      ...first.fastening_schedule.notes,
      first.water_resistive_barrier,
      '$29',
      '0.041',
      '4.6 in.',
      'vapour.ratio',
      'an invented code, from memory',
    ];
    for (const words of told) {
      expect(plain, words).toContain(words);
      expect(figures, words).toContain(words);
    }
  });

  it('every line of the professional’s physics, fastening and figures stands in the homeowner’s too', () => {
    const lines = new Set(toldTo('homeowner', advice).flatMap(sayings));
    const cited = /\[.*rule /;
    const missing = toldTo('professional', advice)
      .filter(({ kind }) => kind === 'figures' || kind === 'drawing')
      .flatMap(sayings)
      .filter((line) => !lines.has(line) && !cited.test(line));
    // The alternatives' key figures are told to a homeowner in a sentence.
    expect(missing.filter((line) => !/square foot|effective R|outside the sheathing/.test(line))).toEqual([]);
  });
});
