import { describe, expect, it } from 'vitest';
import { type Advice, adviceSchema } from '../../src/advice/advice-schema.ts';
import { alternatives, alternativesInFull } from '../../src/record/sections/comparison.ts';
import { decision, scores } from '../../src/record/sections/decision.ts';
import { findOutFirst, firmness } from '../../src/record/sections/ranking.ts';
import { FULL_ADVICE } from './fixture-advice.ts';

/** The invented answer with an invented ranking; no figure here was computed. */
const [first, second, ...others] = FULL_ADVICE.ranked;
const way = { id: 'x', insulation: 'mineral wool board', thickness_in: 3 };
const folded = {
  count: 12,
  thickness_in: { low: 3, high: 4 },
  insulations: ['mineral wool board'],
  cheapest: { ...way, usd_per_ft2: 29 },
  lightest: { ...way, weight_psf: 12 },
  least_heat_loss: { ...way, u_factor: 0.04 },
  words: '3 to 4 in. all pass; 3 in. is the cheapest.',
};
const move = { now: 1, until: 2, unit: 'weight', winner: 'x' };
const ADVICE: Advice = adviceSchema.parse({
  ...FULL_ADVICE,
  ranked: [
    { ...first, folded, tie_with_first: false, tie: null },
    {
      ...second,
      folded,
      tie_with_first: true,
      tie: { score_behind: 0.01, price_swing: 0.02, words: 'As good as the first choice.' },
    },
    ...others,
  ],
  weights: { energy: 1, cost: 1.25, ease: 1, moisture_safety: 1.5 },
  robustness: [
    { ...move, kind: 'weight', what: 'energy', sentence: 'Panels take over once heat counts more.' },
    {
      ...move,
      kind: 'budget',
      what: 'budget',
      now: 32,
      until: 24,
      unit: '$/ft²',
      sentence: 'Panels below $24.',
    },
    { ...move, kind: 'price', what: 'wool', until: null, winner: null, sentence: 'No price of wool.' },
    {
      ...move,
      kind: 'assumption',
      what: 'exposure',
      now: 'C',
      until: 'it is B',
      unit: '',
      sentence: 'Elsewhere.',
    },
  ],
  find_out_first: [
    {
      field: 'sheathing',
      why: 'Not said.',
      how: 'Look.',
      effect: { still_passes: false, score_loss: null, words: 'If it is boards, it fails.' },
    },
  ],
});

const text = (value: unknown) => JSON.stringify(value);

describe('the ranking in the record', () => {
  it('gives each score its weight, and says what the wall stands for', () => {
    const [wall] = ADVICE.ranked;
    expect(wall && text(scores(wall, ADVICE))).toContain('["Cost","0.62","1.25"]');
    expect(text(decision(ADVICE))).toContain('3 to 4 in. all pass; 3 in. is the cheapest.');
  });

  it('says a tie at the alternative', () => {
    for (const said of [alternatives(ADVICE), alternativesInFull(ADVICE)]) {
      expect(text(said)).toContain('{"lead":"A tie","text":"As good as the first choice."}');
    }
  });

  it('lists what must move, and names what changes nothing; assumptions have their own place', () => {
    const said = text(firmness(ADVICE));
    expect(said).toContain(
      '["The weight of holding heat","1","2","Panels take over once heat counts more."]',
    );
    expect(said).toContain('["The budget","32 $/ft²","24 $/ft²","Panels below $24."]');
    expect(said).toContain('these change nothing: the price of wool.');
    expect(said).not.toContain('Elsewhere.');
  });

  it('says what to find out first and how', () => {
    expect(text(findOutFirst(ADVICE))).toContain('If it is boards, it fails. How to find out: Look.');
  });

  it('says nothing of all this for an answer of before it was worked out', () => {
    expect(firmness(FULL_ADVICE)).toEqual([]);
    expect(findOutFirst(FULL_ADVICE)).toEqual([]);
    expect(text(alternatives(FULL_ADVICE))).not.toContain('"A tie"');
  });
});
