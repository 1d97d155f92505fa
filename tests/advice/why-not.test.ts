import { describe, expect, it, vi } from 'vitest';
import { firstChoice } from '../../src/advice/choose-alternatives.ts';
import { smallestChanges, type Trial } from '../../src/advice/smallest-change.ts';
import { whyNot } from '../../src/advice/why-not.ts';
import { type WhyNot, whyNotSchema } from '../../src/advice/why-not-schema.ts';
import type { Option, Step } from '../../src/advice/why-not-steps.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { against, answer, job, judge, KNOWLEDGE, SMALL, TYPICAL } from './pipeline.ts';

vi.setConfig({ testTimeout: 120_000 });

const ask = async (change: object, asked: string, knowledge = SMALL): Promise<WhyNot> =>
  whyNotSchema.parse(await whyNot(job(change), asked, knowledge, '0.0.0-test'));

/** Judges the whole job with other answers, on the same market. */
const judged = (change: object, knowledge = SMALL) => judge(resolveBrief(job(change)).brief, knowledge);

describe('a wall that the budget rules out', async () => {
  const asked = 'three-coat stucco on furring over 3 in. mineral wool';
  const told = await ask({ budget_usd_per_ft2: 14 }, asked);

  it('is told by the rules that speak against the closest way to build it', async () => {
    expect(told.verdict).toBe('excluded');
    expect(told.considered.admitted).toBe(0);
    const { walls } = await judged({ budget_usd_per_ft2: 14 });
    const wall = walls.find(({ candidate }) => candidate.id === told.wall?.id);
    expect(wall?.candidate.cladding.id).toBe('plaster-on-furred-lath');
    expect(told.because.map(({ rule }) => rule)).toEqual(wall && against(wall));
  });

  it('would be admitted by the smallest budget that admits it, and by no dollar less', async () => {
    const [smallest] = told.smallest_changes;
    expect(smallest?.changes.map(({ field }) => field)).toEqual(['budget_usd_per_ft2']);
    const usd = Number(smallest?.changes[0]?.to.replace('$', ''));
    const passes = async (budget: number) =>
      (await judged({ budget_usd_per_ft2: budget })).admitted.some(
        ({ candidate }) =>
          candidate.cladding.id === 'plaster-on-furred-lath' &&
          candidate.build.insulation.id === 'mineral-wool' &&
          candidate.build.thickness_in === 3,
      );
    expect(await passes(usd)).toBe(true);
    expect(await passes(usd - 1)).toBe(false);
  });
});

describe('a wall that two answers rule out', async () => {
  const told = await ask(
    { budget_usd_per_ft2: 12, max_added_thickness_in: 3 },
    'fibre-cement panels over 4 in. mineral wool in one layer',
  );

  it('needs both changed at once, each no further than it must', async () => {
    const pair = told.smallest_changes.find(
      ({ changes }) =>
        changes
          .map(({ field }) => field)
          .sort()
          .join() === 'budget_usd_per_ft2,max_added_thickness_in',
    );
    expect(pair).toBeDefined();
    for (const { changes } of told.smallest_changes) expect(changes.length).toBe(2);
    const to = (field: string) => pair?.changes.find((change) => change.field === field)?.to ?? '';
    const usd = Number(to('budget_usd_per_ft2').replace('$', ''));
    const passes = async (budget: number, room: number) =>
      (await judged({ budget_usd_per_ft2: budget, max_added_thickness_in: room })).admitted.some(
        ({ candidate }) =>
          candidate.cladding.id === 'fibre-cement-panels' &&
          candidate.build.insulation.id === 'mineral-wool' &&
          candidate.build.thickness_in === 4,
      );
    const [whole = 0, top = 0, bottom = 1] = to('max_added_thickness_in').match(/\d+/g)?.map(Number) ?? [];
    const room = whole + top / bottom;
    expect(await passes(usd, room)).toBe(true);
    expect(await passes(usd - 1, room)).toBe(false);
    expect(await passes(usd, room - 1 / 8)).toBe(false);
  });
});

describe('a wall that is held back by the finish', () => {
  it('would be admitted were another finish wanted; the crew and the budget have nothing to do with it', async () => {
    const told = await ask({ finish: 'cement-stucco' }, 'wood siding over 3 in. mineral wool');
    expect(told.because.map(({ rule }) => rule)).toEqual(['buildability.finish-wanted']);
    expect(
      told.smallest_changes.map(({ changes }) => changes.map(({ field, to }) => `${field}: ${to}`)),
    ).toEqual([['finish: any']]);
  });
});

describe('a wall that is admitted', async () => {
  const { ranked } = await answer(job());
  const [first, second] = ranked;

  it('and first is told to be so, by title as by id', async () => {
    for (const asked of [first?.title ?? '', first?.id ?? '']) {
      const told = await ask({}, asked);
      expect(told).toMatchObject({ verdict: 'first-choice', beaten_by: null, smallest_changes: [] });
      expect(told.wall?.score).toBe(first?.score);
    }
  });

  it('and not first is told by what, in parts that add up to the distance', async () => {
    const told = await ask({}, second?.id ?? '');
    expect(told.verdict).toBe('admitted');
    expect(told.beaten_by?.id).toBe(first?.id);
    const sum = told.beaten_by?.parts.reduce((total, { adds }) => total + adds, 0);
    expect(sum).toBeCloseTo(told.beaten_by?.behind ?? Number.NaN, 3);
    expect(told.beaten_by?.behind).toBeCloseTo((first?.score ?? 0) - (second?.score ?? 0), 3);
    expect(told.beaten_by?.in_everything).toBe(false);
  });

  it('would win where it is said to, when all is judged again with that weight', async () => {
    const told = await ask({}, 'wood siding over mineral wool');
    const said = told.would_win.map(
      (words) => /staying dry counts more than ([\d.]+) times/.exec(words)?.[1],
    );
    const times = Number(said.find((one) => one !== undefined));
    const kindAt = async (moisture_safety: number) => {
      const candidate = firstChoice(
        await judged({ priorities: { ...TYPICAL.priorities, moisture_safety } }),
      )?.candidate;
      return `${candidate?.cladding.id} over ${candidate?.build.insulation.id}`;
    };
    expect(times).toBeGreaterThan(1);
    expect(await kindAt(times * 1.02)).toBe('wood-siding over mineral-wool');
    expect(await kindAt(times * 0.98)).not.toBe('wood-siding over mineral-wool');
  });
});

describe('a wall whose parts do not go together', () => {
  it('is not made, and says why', async () => {
    const told = await ask({}, 'one-coat stucco over mineral wool', KNOWLEDGE);
    expect(told).toMatchObject({ verdict: 'not-made', wall: null, smallest_changes: [] });
    expect(told.because.map(({ text }) => text).join()).toMatch(
      /not made for that insulation: evaluation reports/,
    );
  });

  it('too thick for its cladding, is made with thinner boards', async () => {
    const told = await ask({}, 'one-coat stucco over 6 in. polyiso', KNOWLEDGE);
    expect(told.verdict).toBe('not-made');
    expect(told.because.map(({ text }) => text).join()).toMatch(/at most 4 in\./);
    expect(told.smallest_changes[0]?.changes[0]?.field).toBe('wall');
    expect(told.smallest_changes[0]?.then.title).toMatch(/over (?:4|3) in\. polyiso/);
  });
});

describe('the search for the smallest change', () => {
  const option = (to: string, movement: number): Option => ({ to, words: to, movement });
  const step = (field: string, ...options: Option[]): Step => ({ field, from: '', options });
  const wall = { candidate: { id: 'w' } } as unknown as NonNullable<Trial['admitted']>;
  const now: Trial = { admitted: null, walls: 1, forbids: 3 };

  it('takes one change before two, the smaller before the larger', async () => {
    const steps = [
      step('a', option('a1', 0.2), option('a2', 0.9)),
      step('b', option('b1', 0.5)),
      step('c', option('c1', 0.1)),
    ];
    const { found } = await smallestChanges(steps, now, async (taken) => {
      const said = taken.map(({ to }) => to);
      const passes =
        said.includes('a2') || said.includes('b1') || (said.includes('a1') && said.includes('c1'));
      return { admitted: passes ? wall : null, walls: 1, forbids: 2 };
    });
    expect(found.map(({ changes }) => changes.map((change) => change.option.to))).toEqual([['b1'], ['a2']]);
  });

  it('finds three at once where no two do, and leaves out what changes nothing', async () => {
    const steps = ['a', 'b', 'c', 'd'].map((name) => step(name, option(name, 1)));
    const tried: string[] = [];
    const { found } = await smallestChanges(steps, now, async (taken) => {
      const said = taken.map(({ to }) => to);
      tried.push(said.join(''));
      const helps = said.filter((one) => one !== 'd').length;
      return { admitted: helps === 3 ? wall : null, walls: 1, forbids: 3 - helps };
    });
    expect(found.map(({ changes }) => changes.map((change) => change.option.to))).toEqual([['a', 'b', 'c']]);
    expect(tried.filter((one) => one.includes('d'))).toEqual(['d']);
  });

  it('finds nothing where nothing helps, and skips what no method covers', async () => {
    const steps = [step('a', option('a1', 1)), step('b', option('b1', 1))];
    expect((await smallestChanges(steps, now, async () => null)).found).toEqual([]);
    expect((await smallestChanges(steps, now, async () => now)).found).toEqual([]);
  });
});
