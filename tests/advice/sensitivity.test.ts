import { describe, expect, it, vi } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import type { Brief } from '../../src/brief/brief.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';
import { answer as answerFrom, judge as judgeFrom, TINY } from './pipeline.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const answer = (scenario: Scenario) => answerFrom(scenario, TINY);
const judge = (brief: Brief) => judgeFrom(brief, TINY);

const bare = (change: object = {}): Scenario =>
  parseInput(scenarioSchema, {
    schema: 'cladwright-scenario/1',
    place: { state: 'CO', county: 'Boulder' },
    ...change,
  });

/** "the first choice becomes …" in the words of a ranked wall's title. */
const becomes = (title: string) => `the first choice becomes ${title}`.toLowerCase();

/** The scenario as it would be written if a changed brief were what the user had said. */
function said(scenario: Scenario, field: string, change: object): Scenario {
  const values = new Map<string, unknown>(Object.entries(change));
  const [key = field] = field.split('.');
  return parseInput(scenarioSchema, { ...scenario, [key]: values.get(key) });
}

describe.each([
  ['a new wall of which only the place is known', bare()],
  ['a standing wall of which only the place is known', bare({ project: 'retrofit' })],
  // Zone 3A in the 2015 and 2018 county tables, 2A since 2021 (PNNL-33270 county data file).
  ['a county that moved to another zone', bare({ place: { state: 'GA', county: 'Calhoun' } })],
])('%s', async (_, scenario) => {
  const advice = await answer(scenario);
  const { assumptions } = resolveBrief(scenario);
  const readings = assumptions.flatMap(({ field, alternatives }) =>
    alternatives.map((alternative) => ({ field, ...alternative })),
  );

  it('is told for each assumption whether it could change the answer', () => {
    for (const { field, could_change_answer } of advice.assumptions) {
      const own = readings.filter((reading) => reading.field === field);
      const sentences = advice.would_change_the_answer.filter((s) => own.some(({ label }) => label === s.if));
      // What has no other reading to try is never called harmless.
      expect([field, could_change_answer]).toEqual([field, own.length === 0 || sentences.length > 0]);
    }
    expect(advice.assumptions.some((a) => a.could_change_answer)).toBe(true);
    expect(advice.assumptions.some((a) => !a.could_change_answer)).toBe(true);
  });

  it('gets the promised first choice when it answers again with the other reading', async () => {
    expect(advice.would_change_the_answer.length).toBeGreaterThanOrEqual(2);
    const first = advice.ranked[0]?.title ?? '';
    for (const { if: label, then } of advice.would_change_the_answer) {
      const reading = readings.find((one) => one.label === label);
      if (!reading) throw new Error(`no reading is called "${label}"`);
      const again = await answer(said(scenario, reading.field, reading.change));
      const title = again.ranked[0]?.title;
      expect([label, then.toLowerCase()]).toEqual([
        label,
        title ? becomes(title) : 'nothing on the list passes any more',
      ]);
      expect(title).not.toBe(first);
    }
  });

  it('keeps its first choice under every other reading that is not told', async () => {
    const before = (await judge(resolveBrief(scenario).brief)).admitted[0]?.candidate;
    const told = new Set(advice.would_change_the_answer.map((s) => s.if));
    for (const { label, field, change } of readings.filter((reading) => !told.has(reading.label))) {
      const { brief } = resolveBrief(said(scenario, field, change));
      const after = (await judge(brief)).admitted[0]?.candidate;
      expect([label, after?.cladding.id, after?.build.thickness_in]).toEqual([
        label,
        before?.cladding.id,
        before?.build.thickness_in,
      ]);
    }
  });
});

describe('an assumption whose other reading no method covers', () => {
  // IECC 2018 has zones 1 to 8: in zone 0 that edition cannot be tried.
  it('is said to be able to change the answer, and does not stop it', async () => {
    const advice = await answer(bare({ place: { climate_zone: '0A' } }));
    expect(advice.ranked.length).toBeGreaterThan(0);
    expect(advice.assumptions.find(({ field }) => field === 'code_edition')?.could_change_answer).toBe(true);
    expect(advice.would_change_the_answer.map((s) => s.if)).not.toContain('the 2018 edition is adopted');
  });

  it('as for the filling of old steel studs, which is tabulated at R-19 and R-21 only', async () => {
    const advice = await answer(bare({ project: 'retrofit', framing: { material: 'steel' } }));
    expect(advice.ranked.length).toBeGreaterThan(0);
    expect(advice.assumptions.find(({ field }) => field === 'cavity_insulation_r')?.could_change_answer).toBe(
      true,
    );
  });
});

describe('a value outside a method’s range', () => {
  it.each([
    [{ framing: { material: 'steel', depth_in: 5 } }, 'framing.depth_in'],
    [{ framing: { material: 'steel', depth_in: 6, spacing_in: 20 } }, 'framing.spacing_in'],
    [{ framing: { material: 'steel', depth_in: 6 }, cavity_insulation_r: 11 }, 'cavity_insulation_r'],
    [{ framing: { material: 'wood', depth_in: 3.5 }, cavity_insulation_r: 40 }, 'cavity_insulation_r'],
    [{ place: { climate_zone: '0B' }, code_edition: '2018' }, 'place'],
    [{ place: { state: 'CO', county: 'Bolder' } }, 'place.county'],
  ])('%j is refused by the name that the user gave it', async (change, field) => {
    await expect(answer(bare(change))).rejects.toMatchObject({
      name: 'Refusal',
      issues: [expect.objectContaining({ field })],
    });
  });
});

describe('could change the answer', async () => {
  const { assumptions } = await answer(bare());
  const could = (field: string) => assumptions.find((a) => a.field === field)?.could_change_answer;

  // The first choice is no stucco, and foam in termite country is warned of, not forbidden.
  it('is yes for the finish, and no for the termites', () => {
    expect(could('finish')).toBe(true);
    expect(could('termite_area')).toBe(false);
  });
});
