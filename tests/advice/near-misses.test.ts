import { describe, expect, it, vi } from 'vitest';
import { closestWalls, reasonsAgainst } from '../../src/advice/excluded.ts';
import { foldedInto } from '../../src/advice/folds.ts';
import { byCloseness, type Judged } from '../../src/advice/judge-walls.ts';
import { buildTitle } from '../../src/advice/titles.ts';
import { whyNot } from '../../src/advice/why-not.ts';
import { addedThickness } from '../../src/assessment/wall-layers.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { nothingPasses } from '../../src/conversation/tell-advice.ts';
import { against, answer, board, briefOf, job, judge, SMALL, withCatalogue } from './pipeline.ts';

// Whole answers, on a machine that may be busy.
vi.setConfig({ testTimeout: 240_000 });

/** An invented house in a cold zone, new work, of which the stud bays, the room and the money change. */
const COLD = { place: { climate_zone: '5A' }, interior_vapour_retarder: 'class-ii' };

/** Jobs in which nothing on the small market passes, and whether one changed answer is enough. */
const CASES: readonly { name: string; change: object; isSingle: boolean; fields: RegExp }[] = [
  { name: 'too little room', change: { max_added_thickness_in: 1 }, isSingle: true, fields: /be added/ },
  { name: 'too small a budget', change: { budget_usd_per_ft2: 8 }, isSingle: true, fields: /budget/ },
  {
    name: 'empty stud bays and little room',
    change: { ...COLD, cavity_insulation_r: 0, max_added_thickness_in: 3 },
    isSingle: true,
    fields: /stud bays held R-/,
  },
  {
    name: 'plaster by a crew that never did it',
    change: { finish: 'cement-stucco', crew_skill: 'first-time' },
    isSingle: true,
    fields: /crew|finish|look/,
  },
  {
    name: 'too little room and too small a budget',
    change: { max_added_thickness_in: 1, budget_usd_per_ft2: 8 },
    isSingle: false,
    fields: /budget.*be added/,
  },
  {
    name: 'a storm, studs far apart and little room',
    change: {
      basic_wind_speed_mph: 200,
      exposure: 'D',
      mean_roof_height_ft: 60,
      max_added_thickness_in: 1,
      framing: { material: 'wood', depth_in: 5.5, spacing_in: 24, species_gravity: 0.42 },
    },
    isSingle: true,
    fields: /be added/,
  },
  {
    name: 'the wrong finish, crew, room and budget at once',
    change: {
      ...COLD,
      finish: 'cement-stucco',
      crew_skill: 'first-time',
      max_added_thickness_in: 1,
      budget_usd_per_ft2: 8,
    },
    isSingle: false,
    fields: /budget/,
  },
];

function inchesOf(text: string): number {
  const [whole = 0, top = 0, bottom = 1] = text.match(/\d+/g)?.map(Number) ?? [];
  return text.includes('/') && !/[\s-]/.test(text.trim()) ? whole / top : whole + top / bottom;
}

/** What an answer given otherwise is called in words, and the answer itself. */
const READERS: readonly [RegExp, (found: string) => object][] = [
  [/the budget were \$(\d+)/, (usd) => ({ budget_usd_per_ft2: Number(usd) })],
  [/([\d/-]+) in\. could be added/, (size) => ({ max_added_thickness_in: inchesOf(size) })],
  [/stud bays held R-(\d+)/, (r) => ({ cavity_insulation_r: Number(r) })],
  [/the crew were (a general one|[a-z ]+?) \(/, (crew) => ({ crew_skill: crewOf(crew) })],
  [/(the look of stucco) were enough/, () => ({ finish: 'stucco-look' })],
  [/(any finish) would do/, () => ({ finish: 'any' })],
  [/sheathing were (\w+)/, (sheathing) => ({ sheathing })],
  [/(no sheathing)/, () => ({ sheathing: 'none' })],
  [
    /retarder inside were Class (I+)/,
    (roman) => ({ interior_vapour_retarder: `class-${roman.toLowerCase()}` }),
  ],
  [/retarder inside were a (responsive)/, (name) => ({ interior_vapour_retarder: name })],
];

const crewOf = (words: string) => (words === 'a general one' ? 'general' : words.replaceAll(' ', '-'));

/** The answers that a sentence of changes stands for; each "now" closes one of them. */
function changesIn(sentence: string): object {
  const parts = sentence.match(/.*?\(now [^)]*\)/g) ?? [];
  expect(parts.length, sentence).toBeGreaterThan(0);
  const read = parts.map((part) => {
    const found = READERS.flatMap(([pattern, change]) => {
      const word = pattern.exec(part)?.[1];
      return word === undefined ? [] : [change(word)];
    });
    expect(found, part).toHaveLength(1);
    return found[0] ?? {};
  });
  return Object.assign({}, ...read);
}

const judged = (change: object): Promise<Judged> => judge(resolveBrief(job(change)).brief, SMALL);

describe.each(CASES)('where nothing passes: $name', async ({ change, isSingle, fields }) => {
  const advice = await answer(job(change), SMALL);
  const [lead, ...rest] = advice.would_change_the_answer;
  const changes = isSingle ? advice.would_change_the_answer : rest;

  it('says which answer alone would admit a wall, or that none would', () => {
    expect(advice.ranked).toEqual([]);
    expect(lead?.if === 'a single one of your answers were another').toBe(!isSingle);
    expect(changes.map((one) => one.if).join(' | ')).toMatch(fields);
    for (const one of changes) expect((one.if.match(/\(now /g)?.length ?? 0) === 1).toBe(isSingle);
  });

  it('has tried it: as many walls pass as it says, and the first choice is the one it names', async () => {
    expect(changes.length).toBeGreaterThan(0);
    for (const { if: words, then } of changes) {
      const after = await judged({ ...change, ...changesIn(words) });
      const count = /^one wall/.test(then) ? 1 : Number(/^([\d,]+) walls/.exec(then)?.[1]?.replace(',', ''));
      expect(after.admitted.length, words).toBe(count);
      const build = after.best && buildTitle(after.best.candidate.build);
      expect(then.endsWith(`over ${build}`), then).toBe(true);
    }
  });

  // Of two amounts at once either could be less at the cost of the other: only a single one has a least.
  it.runIf(isSingle)('asks for no more room and money than it must', async () => {
    for (const { if: words } of changes) {
      const otherwise = changesIn(words);
      for (const [key, step] of [
        ['max_added_thickness_in', 1 / 8],
        ['budget_usd_per_ft2', 1],
      ] as const) {
        const value: unknown = Object.entries(otherwise).find(([name]) => name === key)?.[1];
        if (typeof value !== 'number') continue;
        const less = await judged({ ...change, ...otherwise, [key]: value - step });
        expect(
          less.admitted.map(({ candidate }) => candidate.id),
          `${words}, less ${key}`,
        ).toEqual([]);
      }
    }
  });

  it('says of each near miss what admits that cladding over those boards, and has tried that too', async () => {
    const now = await judged(change);
    expect(advice.excluded.map(({ id }) => id)).toEqual(
      closestWalls(now).map(({ candidate }) => candidate.id),
    );
    for (const { id, because } of advice.excluded) {
      const tested = /^Tested.*? In general: /.exec(because[0]?.remedy ?? '')?.[0] ?? '';
      expect(tested, id).not.toBe('');
      const alone = /^Tested, one change at a time: it passes (.*)\. In general/.exec(tested)?.[1];
      const ways = alone?.split(/ or (?=if )|, (?=if )/) ?? [tested].filter((one) => one.includes('(now '));
      for (const way of ways) {
        const after = await judged({ ...change, ...changesIn(way) });
        const kind = id?.split('/').slice(0, 2).join('/');
        const passing = after.admitted.filter(({ candidate }) => candidate.id.startsWith(`${kind}/`));
        expect(passing.length, way).toBeGreaterThan(0);
      }
    }
  });

  it('tells it before anything else', () => {
    const text = JSON.stringify(nothingPasses(advice));
    for (const { if: words } of advice.would_change_the_answer)
      expect(text).toContain(JSON.stringify(words).slice(1, -1));
  });
});

describe('what comes closest', () => {
  it('breaks the fewest limits, and of those misses its limit by the smallest share', async () => {
    const { walls } = await judged({ ...COLD, cavity_insulation_r: 0, max_added_thickness_in: 4 });
    const [closest] = [...walls].sort(byCloseness);
    const miss = ({ candidate, verdicts }: (typeof walls)[number]) => {
      const { facts } = verdicts;
      const u = Number(facts['thermal.u_factor']) / Number(facts['energy.max_u_factor']) - 1;
      const room = addedThickness(candidate.face, candidate.barrier) / 4 - 1;
      return (facts['energy.complies'] === false ? u : 0) + Math.max(0, room);
    };
    const ofTwo = ['buildability.thickness-limit', 'energy.wall-complies'];
    const single = walls.filter(
      (wall) => against(wall).length === 1 && ofTwo.includes(against(wall)[0] ?? ''),
    );
    expect(single.length).toBeGreaterThan(10);
    expect(closest && Math.round(100 * miss(closest))).toBe(Math.round(100 * Math.min(...single.map(miss))));
    for (const wall of single) expect(wall.missedBy).toBeCloseTo(miss(wall), 9);
  });

  it('counts two rules that hold a wall against one figure as one limit', async () => {
    // Paint inside in zone 6 asks for insulation outside; one rule says so, another that the energy table asks for less.
    const { walls } = await judged({
      place: { climate_zone: '6A' },
      interior_vapour_retarder: 'class-iii',
      cavity_insulation_r: 20,
    });
    const both = walls.filter((wall) => {
      const ids = against(wall);
      return ids.includes('vapour.class-iii-needs-ci') && ids.includes('vapour.energy-met-vapour-not');
    });
    expect(both.length).toBeGreaterThan(0);
    for (const wall of both) expect(wall.limitsMissed).toBeLessThan(wall.forbids);
  });

  it('is never the synthetic finish while another cladding can be shown', async () => {
    const closest = closestWalls(await judged({ max_added_thickness_in: 0.5 }));
    const synthetic = closest.map(({ candidate }) => candidate.cladding.is_insulated_finish);
    expect(closest.length).toBeGreaterThan(2);
    expect(synthetic.slice(0, -1)).not.toContain(true);
  });
});

describe('a thickness that would meet the energy code', () => {
  const thin = { place: { climate_zone: '4A' }, cavity_insulation_r: 13, max_added_thickness_in: 3 };
  const market = withCatalogue({ builds: [board('eps', 1), board('eps', 4)] });

  it('is said to break another limit where it does, also when one asks why not', async () => {
    const all = await judge(briefOf(thin), market);
    const wall = all.walls.find((one) => against(one).join() === 'energy.wall-complies');
    if (!wall) throw new Error('no wall that only misses the energy code');
    const [reason] = reasonsAgainst(wall, all);
    expect(reason?.remedy).toMatch(/is 4 in\., .*But at that thickness .*at most 3 in\. may be added\.$/);
    const { because } = await whyNot(job(thin), wall.candidate.id, market, '0.0.0-test');
    expect(because[0]?.remedy).toBe(reason?.remedy);
  });

  it('is named without a but where it breaks none', async () => {
    const all = await judge(briefOf({ ...thin, max_added_thickness_in: 8 }), market);
    const wall = all.walls.find((one) => against(one).join() === 'energy.wall-complies');
    const [reason] = wall ? reasonsAgainst(wall, all) : [];
    expect(reason?.remedy).toMatch(/is 4 in\., by /);
    expect(reason?.remedy).not.toContain('But');
  });
});

describe('the thicknesses of a ranked wall', () => {
  it('that only stand where nothing warmer passes are not said to be as good as the others', async () => {
    const builds = [board('mineral-wool', 1.5), board('mineral-wool', 6)];
    const all = await judge(
      briefOf({ place: { climate_zone: '7' }, cavity_insulation_r: 30, max_added_thickness_in: 'unknown' }),
      withCatalogue({ builds }),
    );
    const first = all.best;
    if (!first) throw new Error('nothing passes');
    const { words } = foldedInto(first, all);
    const thin = all.admitted.filter(
      ({ candidate }) =>
        candidate.cladding === first.candidate.cladding && candidate.build.thickness_in === 1.5,
    );
    expect(thin.length).toBeGreaterThan(0);
    expect(thin.every(({ standing }) => standing > first.standing)).toBe(true);
    expect(words).toMatch(/^Only 6 in\. of it competes/);
    expect(words).toMatch(
      /At 1-1\/2 in\. no rule forbids it either; but whatever its score, it is ranked only where no wall passes whose sheathing is warmer in winter\.$/,
    );
  });

  it('that do not pass in between are told with the rule against them', async () => {
    const builds = [board('eps', 2), board('eps', 3), board('eps', 4)];
    const all = await judge(briefOf(), withCatalogue({ builds }));
    const wall = all.admitted.find(({ candidate }) => candidate.cladding.id === 'fibre-cement-panels');
    if (!wall) throw new Error('no panels');
    const admitted = all.admitted.filter(({ candidate }) => candidate.build !== builds[1]);
    const out = all.walls.find(
      ({ candidate, forbids }) =>
        candidate.cladding === wall.candidate.cladding && candidate.build === builds[1] && forbids > 0,
    );
    const title = out?.verdicts.rulesWith('forbid')[0]?.rule.title ?? 'no rule';
    const { words } = foldedInto(wall, { ...all, admitted });
    expect(words.toLowerCase()).toContain(`2 to 4 in. pass, but not 3 in. (${title.toLowerCase()})`);
  });
});
