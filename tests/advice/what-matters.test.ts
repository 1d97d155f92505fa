import { describe, expect, it, vi } from 'vitest';
import { openReadings } from '../../src/advice/open-readings.ts';
import { thinned, whatMatters } from '../../src/advice/what-matters.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';
import { job, KNOWLEDGE, TYPICAL } from './pipeline.ts';

vi.setConfig({ testTimeout: 120_000 });

/** What the typical job leaves open, said. */
const WHOLE = { interior_vapour_retarder: 'class-iii', building_least_width_ft: 28 };

const bare: Scenario = scenarioSchema.parse({
  schema: 'cladwright-scenario/1',
  place: { state: 'MN', county: 'Stearns' },
});

describe('the answers that are still open', () => {
  it('are all of them when only the place is known, and none when all is said', () => {
    const keys = Object.keys(scenarioSchema.shape).filter(
      (key) =>
        !['schema', 'name', 'place', 'framing', 'thermal_assumptions', 'price_book', 'flange_plane'].includes(
          key,
        ),
    );
    const fields = openReadings(bare).map(({ field }) => field);
    expect(fields).toEqual(
      [...keys, 'framing.material', 'framing.depth_in', 'framing.spacing_in'].filter((f) =>
        fields.includes(f),
      ),
    );
    expect(fields.length).toBe(keys.length + 3);
    expect(openReadings(job(WHOLE))).toEqual([]);
  });

  it('are tried with values that the schema takes', () => {
    for (const { readings } of openReadings(bare)) {
      expect(readings.length).toBeGreaterThan(1);
      for (const { scenario } of readings) expect(scenarioSchema.parse(scenario)).toEqual(scenario);
    }
  });
});

describe('what matters', async () => {
  const { finish: _, ...rest } = TYPICAL;
  const open = scenarioSchema.parse({
    ...rest,
    building_least_width_ft: 28,
    termite_area: 'unknown',
    crew_skill: 'unknown',
    max_added_thickness_in: 'unknown',
  });
  const matters = await whatMatters(open, KNOWLEDGE);

  it('is told for each open field, most telling first', () => {
    expect(matters.map(({ field }) => field).sort()).toEqual([
      'crew_skill',
      'finish',
      'interior_vapour_retarder',
      'max_added_thickness_in',
      'termite_area',
    ]);
    const effects = matters.map(({ effect }) => effect);
    expect(effects).toEqual([...effects].sort((a, b) => b - a));
    for (const { effect } of matters) expect(effect >= 0 && effect <= 1).toBe(true);
  });

  // The look of stucco is assumed and panels win it; who wants true stucco can't have them.
  it('says that the finish decides and the termites do not', () => {
    const of = (field: string) => matters.find((one) => one.field === field);
    expect(of('finish')).toMatchObject({ changesFirst: true, effect: 1 });
    expect(of('finish')?.worst?.winner).toMatch(/stucco/i);
    expect(of('termite_area')).toEqual({
      field: 'termite_area',
      changesFirst: false,
      effect: 0,
      worst: null,
    });
  });

  it('looks only at the fields it is asked for, and at none when nothing is open', async () => {
    expect((await whatMatters(open, KNOWLEDGE, ['finish'])).map(({ field }) => field)).toEqual(['finish']);
    expect(await whatMatters(job(WHOLE), KNOWLEDGE)).toEqual([]);
  });

  it('refuses what an answer would refuse', async () => {
    const nowhere = scenarioSchema.parse({ ...rest, place: { state: 'CO', county: 'Bolder' } });
    await expect(whatMatters(nowhere, KNOWLEDGE)).rejects.toBeInstanceOf(Refusal);
  });
});

describe('the thinned market', () => {
  it('still has a board of every family, a barrier for every way of hanging and a lining of every class', () => {
    const { catalogue } = KNOWLEDGE;
    const thin = thinned(catalogue);
    const families = (builds: typeof thin.builds) =>
      new Set(builds.map(({ insulation }) => insulation.family));
    expect(families(thin.builds)).toEqual(families(catalogue.builds));
    expect(thin.builds.length).toBeLessThan(catalogue.builds.length / 2);
    for (const attachment of ['direct', 'furring', 'adhered'] as const)
      expect(thin.barriers.some(({ behind }) => behind.includes(attachment))).toBe(true);
    expect(thin.retarders.map((r) => r.class)).toEqual(catalogue.retarders.map((r) => r.class));
  });
});
