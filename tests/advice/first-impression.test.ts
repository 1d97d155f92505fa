import { describe, expect, it, vi } from 'vitest';
import { fieldsThatMatter, firstImpression } from '../../src/advice/first-impression.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { loadKnowledge } from '../../src/cli/knowledge.ts';
import { isAskedAbout } from '../../src/conversation/matter.ts';
import { answer, job, KNOWLEDGE } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const without = ({ ...said }: Scenario, ...fields: (keyof Scenario)[]): Scenario => {
  for (const field of fields) delete said[field];
  return said;
};

describe('the first impression', () => {
  it('names the first choice of the answer, and as many walls', async () => {
    const scenario = job({ budget_usd_per_ft2: 30 });
    const [impression, advice] = [
      await firstImpression(scenario, KNOWLEDGE),
      await answer(scenario, KNOWLEDGE),
    ];
    expect(impression.first?.title).toBe(advice.ranked[0]?.title);
    expect(impression).toMatchObject({
      drawn: advice.considered.candidates,
      admitted: advice.considered.admitted,
    });
  });

  it('has no first choice where nothing passes', async () => {
    const impression = await firstImpression(job({ budget_usd_per_ft2: 2 }), KNOWLEDGE);
    expect(impression).toMatchObject({ admitted: 0, first: null });
  });

  it('takes a firm’s crew and prices, as the answer does', async () => {
    const house = await loadKnowledge({ housePacks: ['scenarios/house-packs/harrow-lane.rules.json'] });
    const open = without(job({ finish: 'cement-stucco' }), 'crew_skill');
    const said: Scenario = { ...open, crew_skill: 'stucco-experienced' };
    expect(await firstImpression(open, house)).toEqual(await firstImpression(said, house));
    expect((await firstImpression(said, house)).first?.likely_usd_per_ft2).not.toBe(
      (await firstImpression(said, KNOWLEDGE)).first?.likely_usd_per_ft2,
    );
  });
});

describe('fields that matter', () => {
  it('are those still open that the conversation asks about, most telling first', async () => {
    const open = without(job({}), 'finish', 'code_edition', 'termite_area');
    const fields = await fieldsThatMatter(open, KNOWLEDGE, isAskedAbout);
    expect(fields[0]).toBe('finish');
    expect(fields).not.toContain('code_edition');
  });

  it('leave out what the user said they don’t know', async () => {
    const unknown = job({ finish: 'unknown' });
    expect(await fieldsThatMatter(unknown, KNOWLEDGE, isAskedAbout)).not.toContain('finish');
    const framing: Scenario = { ...job({}), framing: 'unknown' };
    const fields = await fieldsThatMatter(framing, KNOWLEDGE, isAskedAbout);
    expect(fields.filter((field) => field.startsWith('framing'))).toEqual([]);
  });

  it('are none where every answer is given', async () => {
    expect(await fieldsThatMatter(job({}), KNOWLEDGE, isAskedAbout)).toEqual([]);
  });
});
