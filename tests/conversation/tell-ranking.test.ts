import { describe, expect, it, vi } from 'vitest';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { adviceBlocks } from '../../src/conversation/tell-advice.ts';
import { answer, job } from '../advice/pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

describe('the ranking told', async () => {
  const advice = await answer(job({ sheathing: 'unknown', budget_usd_per_ft2: 24 }));
  const text = blocksToText(adviceBlocks(advice), 80).replace(/\s+/g, ' ');

  it('gives every score with its weight', () => {
    expect(text).toContain(`How it scores: ${advice.ranked[0]?.score.toFixed(3)} of 1`);
    expect(text).toContain(`Staying dry ${advice.ranked[0]?.scores.moisture_safety?.toFixed(2)}, weight 1.5`);
  });

  it('says what stands for what, ties or no ties, and how firm the first choice is', () => {
    for (const { folded, tie } of advice.ranked) {
      expect(text).toContain(folded?.words);
      if (tie) expect(text).toContain(tie.words);
    }
    const moves = (advice.robustness ?? []).filter(
      ({ kind, until }) => kind !== 'assumption' && until !== null,
    );
    expect(moves.length).toBeGreaterThan(0);
    for (const { sentence } of moves.slice(0, 6)) expect(text).toContain(sentence);
    expect(text).toContain('Moved alone within these ranges, none of the following changes it:');
  });

  it('says what to find out first exactly when there is something', () => {
    expect(text.includes('Find out first')).toBe((advice.find_out_first ?? []).length > 0);
    for (const { how } of advice.find_out_first ?? []) expect(text).toContain(how);
  });

  it('leaves all of it out where nothing passes', async () => {
    const none = blocksToText(adviceBlocks(await answer(job({ budget_usd_per_ft2: 2 }))), 80);
    expect(none).not.toContain('How firm the first choice is');
    expect(none).not.toContain('How it scores');
  });
});
