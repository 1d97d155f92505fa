import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { Advice } from '../../src/advice/advice-schema.ts';
import type { Knowledge } from '../../src/advice/judge-walls.ts';
import { ruleInScenario } from '../../src/advice/rule-in-scenario.ts';
import { parseInput } from '../../src/base/parse-input.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { adviceBlocks } from '../../src/conversation/tell-advice.ts';
import { rawHouse, shippedWith } from '../rulebook/house-packs.ts';
import { answer, job, KNOWLEDGE, SMALL } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const WHY = 'The firm learned this the hard way.';

async function withHouse(parts: object, knowledge: Knowledge = SMALL): Promise<Knowledge> {
  return { ...knowledge, rulebook: await shippedWith(rawHouse(parts)) };
}

function sample(name: string) {
  const path = fileURLToPath(new URL(`../../scenarios/${name}.json`, import.meta.url));
  return parseInput(scenarioSchema, JSON.parse(readFileSync(path, 'utf8')), name);
}

describe('an answer with house rules', () => {
  let plain: Advice;
  let house: Advice;
  beforeAll(async () => {
    plain = await answer(job());
    const first = plain.ranked[0]?.insulation.id;
    house = await answer(
      job(),
      await withHouse({
        products: [{ category: 'insulation', forbid: [first], reason: WHY }],
        tighten: [{ rule: 'fire.foam-label', verdict: 'forbid', reason: WHY }],
      }),
    );
  });

  it('marks what the firm says and nothing else', () => {
    const marked = house.excluded.flatMap(({ because }) => because.filter((one) => one.house !== undefined));
    expect(marked.length).toBeGreaterThan(0);
    for (const one of marked) {
      expect(one.house).toBe('larch-row');
      expect(one.text).toMatch(/^House rule \(larch-row\): /);
      expect(['larch-row.forbid-insulation', 'fire.foam-label']).toContain(one.rule);
    }
    for (const { because } of house.excluded)
      for (const one of because) expect(one.house !== undefined).toBe(one.text.startsWith('House rule'));
  });

  it('says how many walls they turn down and what would come first without', () => {
    expect(house.house).toMatchObject({
      packs: [{ name: 'larch-row', version: '2.1.0', firm: 'Larch Row Framers' }],
      raised: [{ rule: 'fire.foam-label', from: 'caution' }],
      changes_first_choice: true,
    });
    expect(house.house?.turned_down).toBe(plain.considered.admitted - house.considered.admitted);
    expect(house.house?.sentences.join(' ')).toContain(plain.ranked[0]?.title);
    const [change] = house.would_change_the_answer;
    expect(change?.if).toContain('Larch Row Framers');
    expect(change?.then).toContain(plain.ranked[0]?.title);
  });

  it('names the pack among the others', () => {
    expect(house.rules.packs.filter((pack) => pack.house)).toMatchObject([
      { name: 'larch-row', version: '2.1.0', house: true },
    ]);
  });

  it('says "House rule" in the conversation', () => {
    const text = blocksToText(adviceBlocks(house), 80, { ascii: false });
    expect(text).toContain('House rules');
    expect(text).toMatch(/House rule \(larch-row\):/);
  });

  it('has none of this without a pack', () => {
    expect(plain.house).toBeUndefined();
    expect(JSON.stringify(plain)).not.toMatch(/"house"|House rule/);
  });
});

describe('what a firm prefers', () => {
  it('gets a reason and a small bonus, and never a wall that is forbidden', async () => {
    const plain = await answer(job());
    const second = plain.ranked[1];
    if (!second) throw new Error('one wall only');
    const id = KNOWLEDGE.catalogue.claddings.find(({ label }) => second.id.startsWith(`${label}/`))?.id;
    const cladding = id ?? second.id.split('/', 1)[0];
    const wished = await answer(
      job(),
      await withHouse({ products: [{ category: 'cladding', prefer: [cladding], reason: WHY }] }),
    );
    const same = wished.ranked.find((wall) => wall.id === second.id);
    expect(same?.score).toBeCloseTo(second.score + 0.03, 3);
    expect(same?.reasons.some(({ house, text }) => house === 'larch-row' && text.includes(WHY))).toBe(true);
    expect(wished.considered).toEqual(plain.considered);
  });
});

describe('a firm’s crew and prices', () => {
  const crewless = () => {
    const { crew_skill: _, ...rest } = job();
    return rest;
  };

  it('stand in for what was not said, as an assumption with its pack', async () => {
    const told = await answer(
      crewless(),
      await withHouse({ defaults: { crew_skill: 'stucco-experienced' } }),
      1,
    );
    expect(told.assumptions.find(({ field }) => field === 'crew_skill')).toMatchObject({
      value: 'stucco-experienced',
      house: 'larch-row',
      why: expect.stringContaining('Larch Row Framers'),
    });
  });

  it('give way to what the user says', async () => {
    const said = await answer(
      job({ crew_skill: 'general' }),
      await withHouse({ defaults: { crew_skill: 'stucco-experienced' } }),
      1,
    );
    expect(said.assumptions.find(({ field }) => field === 'crew_skill')).toBeUndefined();
  });

  it('scale every price of the same wall: a region factor of 1.5 makes it half as dear again', async () => {
    const plain = await answer(job(), SMALL, 3);
    const dear = await answer(
      job({ budget_usd_per_ft2: 1000 }),
      await withHouse({ prices: { region_factor: 1.5 } }),
      20,
    );
    const both = plain.ranked.flatMap((wall) => {
      const other = dear.ranked.find(({ id }) => id === wall.id);
      return other ? [[wall.installed_cost_usd_per_ft2.likely, other.installed_cost_usd_per_ft2.likely]] : [];
    });
    expect(both.length).toBeGreaterThan(0);
    for (const [before = 0, after = 0] of both) expect(after / before).toBeCloseTo(1.5, 1);
    expect(dear.assumptions.find(({ field }) => field === 'price_book')).toMatchObject({
      house: 'larch-row',
      value: 'region factor 1.5',
    });
  });

  it('the user’s own price book speaks before the firm’s', async () => {
    const firm = await withHouse({ prices: { region_factor: 3 } });
    const told = await answer(job({ price_book: { region_factor: 1 } }), firm, 1);
    const plain = await answer(job(), SMALL, 1);
    expect(told.ranked[0]?.installed_cost_usd_per_ft2).toEqual(plain.ranked[0]?.installed_cost_usd_per_ft2);
    expect(told.answers.find(({ field }) => field === 'price_book')?.answer).toBe('region factor 1');
  });

  it('an item of the user’s that nobody sells is refused by its field', async () => {
    const book = { prices: [{ item: 'cladding/gold', low: 1, likely: 1, high: 1 }] };
    await expect(answer(job({ price_book: book }), SMALL)).rejects.toThrow(/^price_book\.prices\[0\]\.item/);
  });
});

describe('what a rule decides in a scenario', () => {
  it('is found by judging again without it', async () => {
    const knowledge = await withHouse({
      products: [{ category: 'cladding', only: ['plaster-on-furred-lath', 'adhered-veneer'], reason: WHY }],
    });
    const found = await ruleInScenario('larch-row.only-cladding', job(), knowledge);
    const plain = await answer(job(), SMALL, 1);
    expect(found.decides_first_choice).toBe(true);
    expect(found.first_without?.title).toBe(plain.ranked[0]?.title);
    expect(found.first_without?.outcome?.verdict).toBe('forbid');
    // Alone it rules out exactly what would be admitted without it.
    const admitted = plain.considered.admitted;
    const kept = await answer(job(), knowledge, 1);
    expect(found.forbids_alone).toBe(admitted - kept.considered.admitted);
    const { counts, forbids_alone, forbids_together, walls } = found;
    expect(Object.values(counts).reduce((a, b) => a + b, forbids_alone + forbids_together)).toBe(walls);
  });

  it('is nothing for a caution, and for a rule of another edition', async () => {
    const caution = await ruleInScenario('safety.falls', job(), SMALL);
    expect(caution).toMatchObject({ decides_first_choice: false, forbids_alone: 0, is_in_force: true });
    expect(caution.counts.caution).toBe(caution.walls);
    const other = await ruleInScenario('vapour.retarder-needed-2018', job(), SMALL);
    expect(other.is_in_force).toBe(false);
  });

  it('a ban that stands with others decides nothing alone', async () => {
    const found = await ruleInScenario('vapour.energy-met-vapour-not', sample('dry-cold-new'), SMALL);
    expect(found.forbids_alone).toBe(0);
    expect(found.decides_first_choice).toBe(false);
  });
});
