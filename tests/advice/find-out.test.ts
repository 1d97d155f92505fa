import { describe, expect, it, vi } from 'vitest';
import { findOutFirst, howToFindOut } from '../../src/advice/find-out.ts';
import type { Reading } from '../../src/advice/readings.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { answer, briefOf, judge, MINUTE, TINY } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const bare = (change: object = {}) =>
  scenarioSchema.parse({
    schema: 'cladwright-scenario/1',
    place: { state: 'CO', county: 'Boulder' },
    ...change,
  });

describe('how to find out', () => {
  it('is known for everything that can be assumed, windows and studs included', () => {
    const fields = new Set(
      [bare(), bare({ project: 'retrofit' }), bare({ windows: [{}], priorities: { cost: 2 } })].flatMap(
        (scenario) => resolveBrief(scenario).assumptions.map(({ field }) => field),
      ),
    );
    expect(fields.size).toBeGreaterThan(20);
    const general = howToFindOut('nothing-of-the-kind');
    for (const field of fields) expect([field, howToFindOut(field)]).not.toEqual([field, general]);
  });

  it('warns where somebody opens an old wall or a live outlet', () => {
    expect(howToFindOut('interior_vapour_retarder')).toMatch(/switch off the circuit.*lead paint/i);
    for (const field of ['framing.material', 'cavity_insulation_r'])
      expect(howToFindOut(field)).toMatch(/switch off the circuit/i);
  });
});

describe('what to find out first', async () => {
  const judgedOnce = await judge(briefOf(), MINUTE);
  const reading = (field: string, label: string, loss: number | null): Reading => ({
    field,
    assumed: null,
    why: 'Not said.',
    label,
    winner: null,
    stillPasses: loss !== null,
    loss,
  });

  it('is what makes the wall fail, then what costs most, each field once with its worst reading', () => {
    const open = findOutFirst([
      reading('exposure', 'small', 0.01),
      reading('finish', 'larger', 0.1),
      reading('exposure', 'largest', 0.2),
      reading('sheathing', 'fails', null),
    ]);
    expect(open.map(({ field }) => field)).toEqual(['sheathing', 'exposure', 'finish']);
    expect(open[0]?.effect).toMatchObject({ still_passes: false, score_loss: null });
    expect(open[1]?.effect.score_loss).toBe(0.2);
  });

  it('tells of one field the reading under which nothing passes, though another passes nothing built', () => {
    const { admitted } = judgedOnce;
    const winner = admitted[0] ?? null;
    const open = findOutFirst([
      { ...reading('interior_vapour_retarder', 'there is paint', null), winner },
      reading('interior_vapour_retarder', 'it is bare', null),
    ]);
    expect(winner).not.toBeNull();
    expect(open.map(({ effect }) => effect.words)).toEqual([
      'If it is bare, nothing on the list passes any more.',
    ]);
  });

  it('is in the answer exactly what another reading of changes the first choice', async () => {
    const advice = await answer(bare({ project: 'retrofit' }), TINY);
    const labels = advice.would_change_the_answer.map((change) => change.if);
    expect(labels.length).toBeGreaterThan(1);
    const { assumptions } = resolveBrief(bare({ project: 'retrofit' }));
    const expected = assumptions
      .filter(({ alternatives }) => alternatives.some(({ label }) => labels.includes(label)))
      .map(({ field }) => field);
    expect(advice.find_out_first?.map(({ field }) => field).sort()).toEqual([...new Set(expected)].sort());
    for (const { field, how, effect } of advice.find_out_first ?? []) {
      expect(advice.assumptions.find((one) => one.field === field)?.could_change_answer).toBe(true);
      expect(how.length).toBeGreaterThan(10);
      expect(effect.still_passes).toBe(effect.score_loss !== null);
    }
  });
});
