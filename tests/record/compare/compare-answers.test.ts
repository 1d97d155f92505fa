import { describe, expect, it } from 'vitest';
import type { Advice } from '../../../src/advice/advice-schema.ts';
import { compareAnswers, type Side } from '../../../src/record/compare/compare-answers.ts';
import { comparisonDocument } from '../../../src/record/compare/comparison-document.ts';
import { documentText } from '../../../src/record/record-text.ts';
import { EMPTY_ADVICE, FULL_ADVICE } from '../fixture-advice.ts';

const side = (advice: Advice, file = 'a.json'): Side => ({
  file,
  kind: 'record',
  title: advice.name,
  state: 'proposed, revision 1',
  advice,
});

const [stucco, panels] = FULL_ADVICE.ranked;
if (!stucco || !panels) throw new Error('two walls are ranked');
const OTHER: Advice = {
  ...FULL_ADVICE,
  name: 'The other one',
  ranked: [panels, stucco],
  answers: [
    { field: 'place', question: 'Where does the house stand?', answer: 'Boulder County, CO' },
    { field: 'crew_skill', question: 'Who builds it?', answer: 'a general crew' },
  ],
};

describe('compareAnswers', () => {
  it('finds no difference between an answer and itself', () => {
    const found = compareAnswers(side(FULL_ADVICE), side(FULL_ADVICE));
    expect(found.is_same_decision).toBe(true);
    expect(found.answers.differ).toEqual([]);
    expect(found.figures.filter((row) => row.a !== row.b)).toEqual([]);
    expect([found.cautions.only_a, found.cautions.only_b]).toEqual([[], []]);
    expect(documentText(comparisonDocument(found), 80)).toContain('Both were answered alike.');
  });

  it('calls what only one side assumed by words', () => {
    const assumption = { value: 37, why: 'Not said.', could_change_answer: false };
    const only = {
      ...FULL_ADVICE,
      assumptions: [{ ...assumption, field: 'windows[0].rough_opening_width_in' }],
    };
    const none = { ...FULL_ADVICE, assumptions: [] };
    const text = documentText(comparisonDocument(compareAnswers(side(only), side(none))), 200);
    expect(text).toContain('windows, kind 1: width of the rough opening');
    expect(text).not.toContain('windows[0]');
  });

  it('sets answers, figures, cost and cautions of two walls against each other', () => {
    const found = compareAnswers(side(FULL_ADVICE), side(OTHER, 'b.json'));
    expect(found.is_same_decision).toBe(false);
    expect(found.answers.differ).toEqual([
      { field: 'finish', question: 'What should the face be?', a: 'true cement stucco', b: null },
      { field: 'crew_skill', question: 'Who builds it?', a: null, b: 'a general crew' },
    ]);
    expect(found.figures[0]).toEqual({
      what: 'Likely cost',
      unit: '$ per ft²',
      a: 29,
      b: 19.5,
      difference: -9.5,
    });
    expect(found.figures).toContainEqual({
      what: 'Wall U-factor, fasteners included',
      unit: 'Btu/(h·ft²·°F)',
      a: 0.0412,
      b: null,
      difference: null,
    });
    expect(found.cautions.only_a).toEqual([]);
    expect(found.cautions.only_b).toEqual([
      { text: 'Silica dust when cutting', rule: 'safety.fibre-cement-dust' },
    ]);
    expect(documentText(comparisonDocument(found), 80)).toContain('different walls');
  });

  it('shows an answer without a wall as not known, never as nothing', () => {
    const found = compareAnswers(side(FULL_ADVICE), side(EMPTY_ADVICE));
    expect(found.b.decision.kind).toBe('none');
    expect(found.figures[0]).toMatchObject({ a: 29, b: null, difference: null });
    expect(documentText(comparisonDocument(found), 80)).toContain('not known');
  });
});
