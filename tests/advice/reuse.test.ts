import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { firstChoice } from '../../src/advice/choose-alternatives.ts';
import {
  byCloseness,
  byScore,
  type Judged,
  judgeWalls,
  type Knowledge,
} from '../../src/advice/judge-walls.ts';
import { CRITERIA, SCORE_FACTORS, type Scores, totalScore, weightsOf } from '../../src/advice/scoring.ts';
import { buckPart } from '../../src/assessment/buck-part.ts';
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';
import { PlainEvaluator } from '../../src/rulebook/plain-evaluation.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';
import { answer, briefOf, job, judge, KNOWLEDGE, TINY, withCatalogue } from './pipeline.ts';
import { scenarios } from './random-scenarios.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 120_000 });

/** The same knowledge, with nothing kept of earlier answers. */
const afresh = (knowledge: Knowledge) => withCatalogue({}, knowledge);

async function answerOrRefusal(scenario: Scenario, knowledge: Knowledge) {
  try {
    return await answer(scenario, knowledge);
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
}

async function judged(scenario: Scenario, knowledge: Knowledge): Promise<Judged> {
  const { brief } = resolveBrief(scenario);
  return judgeWalls(brief, await resolveSite(brief.place, brief.code_edition), knowledge);
}

const SAMPLES = readdirSync('scenarios')
  .filter((file) => file.endsWith('.json'))
  .map((file): [string, Scenario] => [
    file,
    parseInput(scenarioSchema, JSON.parse(readFileSync(`scenarios/${file}`, 'utf8'))),
  ]);

describe('what is kept of earlier answers', () => {
  it('changes nothing in the next ones, whatever they are', async () => {
    const kept = afresh(TINY);
    await fc.assert(
      fc.asyncProperty(scenarios, async (scenario) => {
        const expected = await answerOrRefusal(scenario, afresh(TINY));
        expect(await answerOrRefusal(scenario, kept)).toEqual(expected);
      }),
      { numRuns: 60, seed: 41 },
    );
  });

  // Each of these is read by some calculator; were it missing from what that calculator rests on, the figure kept for the
  // job before would come back.
  it.each([
    { framing: { material: 'wood', depth_in: 3.5, spacing_in: 16, species_gravity: 0.42 } },
    { framing: { material: 'wood', depth_in: 5.5, spacing_in: 24, species_gravity: 0.42 } },
    { framing: { material: 'wood', depth_in: 5.5, spacing_in: 16, species_gravity: 0.5 } },
    { framing: { material: 'steel', depth_in: 6, spacing_in: 16, steel_thickness_mil: 33 } },
    { framing: { material: 'steel', depth_in: 6, spacing_in: 16, steel_thickness_mil: 54 } },
    { sheathing: 'plywood' },
    { cavity_insulation_r: 21 },
    { code_edition: '2018' },
    { code_edition: '2024' },
    { place: { state: 'MN', county: 'Stearns' } },
    { place: { climate_zone: '4C' } },
    { basic_wind_speed_mph: 150 },
    { exposure: 'D' },
    { mean_roof_height_ft: 45 },
    { building_least_width_ft: 20 },
    { wall_area_ft2: 600 },
    { windows: [{ count: 2, width_in: 96, height_in: 80, glazing: 'triple', operation: 'fixed' }] },
    { thermal_assumptions: { framing_fraction: 0.15 } },
    { thermal_assumptions: { film_outside_r: 0.25 } },
    { priorities: { cost: 9 } },
    { budget_usd_per_ft2: 26 },
    { crew_skill: 'first-time' },
    { finish: 'cement-stucco' },
  ])('is not mistaken for what another job asks: %j', async (change) => {
    const kept = afresh(TINY);
    await answer(job(), kept);
    expect(await answer(job(change), kept)).toEqual(await answer(job(change), afresh(TINY)));
    expect(await answer(job(), kept)).toEqual(await answer(job(), afresh(TINY)));
  });
});

describe('what walls share', () => {
  it('gives each wall of the samples the score that it gets alone, to the last bit', async () => {
    for (const [, scenario] of SAMPLES) {
      const { walls, assess, context, set } = await judged(scenario, TINY);
      const weights = weightsOf(context.brief.priorities);
      for (const wall of walls) {
        const parts = assess.partsOf(wall.candidate);
        const alone = Object.fromEntries(
          CRITERIA.map((criterion) => [
            criterion,
            SCORE_FACTORS[criterion].reduce(
              (all, terms) =>
                all * terms.reduce((sum, { of }) => sum + of(wall.candidate, parts, context), 0),
              1,
            ),
          ]),
        ) as Scores;
        expect(wall.scores).toEqual(alone);
        expect(wall.score).toBe(totalScore(alone, weights));
      }
      for (let i = 0; i < walls.length; i += 37) {
        const wall = set.candidates[i];
        if (!wall) continue;
        const [one, all] = [assess.partsOf(wall), assess.partsAt(set, i)];
        const { buck, build, sheathing, seat } = wall;
        const own = buckPart(
          { buck, build, sheathing, place: seat.place },
          assess.works.windows.work,
          context,
        );
        expect(one.buck).toEqual(own);
        expect([all.cost, all.moisture]).toEqual([one.cost, one.moisture]);
      }
    }
  });

  it('gives the first choice that the whole list begins with', async () => {
    for (const [, scenario] of SAMPLES) {
      const all = await judged(scenario, TINY);
      const [first = null] = [...all.admitted].sort((a, b) => a.standing - b.standing || byScore(a, b));
      expect(firstChoice(all)).toBe(first);
    }
  });

  it('still gives the closest of what is excluded, as a list of all walls would', async () => {
    const all = await judge(briefOf({ budget_usd_per_ft2: 10, max_added_thickness_in: 2 }), TINY);
    expect(all.admitted).toEqual([]);
    const [closest] = all.closestOfExcluded('site', () => 'any');
    expect(closest).toBe([...all.walls].sort(byCloseness)[0]);
  });
});

describe('verdicts of shared facts', () => {
  async function holdAgainstPlain(scenario: Scenario, knowledge: Knowledge, every: number): Promise<void> {
    const { walls, context } = await judged(scenario, knowledge);
    const plain = new PlainEvaluator(knowledge.rulebook, context.brief.code_edition);
    for (let i = 0; i < walls.length; i += every) {
      const verdicts = walls[i]?.verdicts;
      if (verdicts) expect(verdicts.outcomes()).toEqual(await plain.evaluate(verdicts.facts));
    }
  }

  it.each(SAMPLES)('are those of one engine run for each wall: %s', async (_, scenario) => {
    await holdAgainstPlain(scenario, KNOWLEDGE, 997);
  });

  it('are those of one engine run for each wall, for random scenarios', async () => {
    await fc.assert(
      fc.asyncProperty(scenarios, async (scenario) => {
        try {
          await holdAgainstPlain(scenario, TINY, 61);
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
        }
      }),
      { numRuns: 25, seed: 42 },
    );
  });
});
