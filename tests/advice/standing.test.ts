import { describe, expect, it, vi } from 'vitest';
import { firstChoice } from '../../src/advice/choose-alternatives.ts';
import { COLD_SHEATHING } from '../../src/advice/grounds.ts';
import { byCloseness, byScore, type JudgedWall } from '../../src/advice/judge-walls.ts';
import { robustness } from '../../src/advice/robustness.ts';
import { standingBy } from '../../src/advice/standing.ts';
import { rankedOnlyWhere } from '../../src/advice/standing-words.ts';
import { whyNot } from '../../src/advice/why-not.ts';
import { addedThickness } from '../../src/assessment/wall-layers.ts';
import { wallToday } from '../../src/record/check/wall-today.ts';
import { answer, board, briefOf, job, judge, KNOWLEDGE, SMALL, withCatalogue } from './pipeline.ts';

vi.setConfig({ testTimeout: 60_000 });

const FOAM = withCatalogue({ builds: [board('eps', 1.5), board('eps', 2.5)] }, SMALL);

/** Very cold: thin boards meet the code by an R-value option and leave the sheathing far below the dew point. */
const COLD = {
  place: { state: 'MN', county: 'St. Louis' },
  priorities: { cost: 3 },
  finish: 'cement-stucco',
  max_added_thickness_in: 'unknown',
  budget_usd_per_ft2: 'unknown',
};

const isCold = ({ standing }: JudgedWall) => (standing & standingBy('cold-sheathing')) !== 0;

describe('a wall whose sheathing is far too cold', () => {
  it('is not put first by its score where a warmer one passes, and the first choice says so', async () => {
    const judged = await judge(briefOf(COLD));
    const [best] = [...judged.admitted].sort(byScore);
    const first = firstChoice(judged);
    expect(judged.admitted[0]).toBe(first);
    expect(best && isCold(best)).toBe(true);
    expect(best?.parts.dewPoint.dew_point_margin_f).toBeLessThan(-5);
    expect(first?.standing).toBe(0);
    expect(first?.parts.dewPoint.dew_point_margin_f).toBeGreaterThanOrEqual(-5);
    const [told] = (await answer(job(COLD))).ranked;
    expect(told?.id).toBe(first?.candidate.id);
    expect(told?.reasons[0]).toMatchObject({
      rule: COLD_SHEATHING,
      text: expect.stringContaining('would score higher'),
    });
  });

  it('is ranked with a caution where nothing warmer passes', async () => {
    const advice = await answer(job({ ...COLD, max_added_thickness_in: 3 }));
    expect(advice.ranked.length).toBeGreaterThan(0);
    for (const { cautions } of advice.ranked) {
      expect(cautions.map(({ rule }) => rule)).toContain(COLD_SHEATHING);
    }
    for (const { text } of advice.ranked.flatMap(({ reasons }) => reasons))
      expect(text).not.toContain('so far below the indoor dew point');
  });

  it('comes after any that is warmer by the step that counts, where all are too cold', async () => {
    const place = { climate_zone: '8' };
    const { admitted } = await judge(briefOf({ ...COLD, place, finish: 'any', max_added_thickness_in: 4 }));
    const walls = admitted.filter(({ candidate }) => !candidate.cladding.is_insulated_finish);
    const below_f = walls.map(({ parts }) => -(parts.dewPoint.dew_point_margin_f ?? 0));
    expect(walls.every(isCold)).toBe(true);
    expect(Math.max(...below_f) - Math.min(...below_f)).toBeGreaterThan(9);
    for (const [i, cold_f] of below_f.entries())
      expect(cold_f, walls[i]?.candidate.id).toBeLessThan(Math.min(...below_f.slice(i)) + 5);
  });

  it('is told why it does not win, although it scores higher', async () => {
    const [best] = [...(await judge(briefOf(COLD))).admitted].sort(byScore);
    const told = await whyNot(job(COLD), best?.candidate.id ?? '', KNOWLEDGE, 'test');
    expect(told.verdict).toBe('admitted');
    expect(told.would_win).toEqual([
      expect.stringContaining('only where no wall passes whose sheathing is warmer'),
    ]);
  });

  it('does not unseat a decision that was made for a warmer one, and is told why itself when decided on', async () => {
    const { admitted } = await judge(briefOf(COLD));
    const [best] = [...admitted].sort(byScore);
    const today = (wall: JudgedWall | undefined) => wallToday(wall?.candidate.id ?? '', job(COLD), SMALL);
    expect((await today(admitted[0])).state).toBe('still-first');
    const colder = await today(best);
    expect(colder.state).toBe('outranked');
    expect(colder.why.join()).toContain('only where no wall passes whose sheathing is warmer');
  });

  it('may become the first choice when the room outside shrinks', async () => {
    const judged = await judge(briefOf(COLD));
    const first = firstChoice(judged);
    const moves = await robustness(first ? [first] : [], judged, KNOWLEDGE);
    const [room] = moves.filter(({ kind, winner }) => kind === 'room' && winner !== null);
    const winner = judged.walls.find(({ candidate }) => candidate.id === room?.winner);
    expect(winner && isCold(winner)).toBe(true);
  });
});

describe('the synthetic finish, where nothing else passes', () => {
  const ONLY = {
    place: { state: 'MN', county: 'St. Louis' },
    project: 'retrofit',
    framing: { material: 'wood', depth_in: 3.5, spacing_in: 16 },
    finish: 'stucco-look',
    crew_skill: 'first-time',
    interior_vapour_retarder: 'class-iii',
    max_added_thickness_in: 3,
    budget_usd_per_ft2: 'unknown',
    cavity_insulation_r: 13,
  };

  it('stays first when a price or the room moves by a hair', async () => {
    const judged = await judge(briefOf(ONLY));
    const first = firstChoice(judged);
    expect(first?.standing).toBeGreaterThanOrEqual(standingBy('synthetic-finish'));
    for (const { kind, now, until } of await robustness(first ? [first] : [], judged, KNOWLEDGE)) {
      if (kind !== 'price' && kind !== 'room') continue;
      if (typeof now === 'number' && typeof until === 'number') {
        expect(Math.abs(until / now - 1), kind).toBeGreaterThan(0.02);
      }
    }
  });
});

/** A new house that gets both foam and mineral wool, panels and plaster, by rules that forbid none of them. */
const DRY = { place: { climate_zone: '3B' }, finish: 'stucco-look', crew_skill: 'general' };
const burns = ({ candidate }: JudgedWall) => candidate.build.insulation.is_combustible;
const isOpen = ({ candidate }: JudgedWall) => candidate.cladding.drainage.is_ventilated;

describe('a wall that burns close to the lot line', () => {
  const CLOSE = { ...DRY, fire_separation_ft: 3 };

  it('comes after one that does not, which says so', async () => {
    const judged = await judge(briefOf(CLOSE));
    const [best] = [...judged.admitted].sort(byScore);
    const first = firstChoice(judged);
    expect(best && burns(best)).toBe(true);
    expect(first && burns(first)).toBe(false);
    const [told] = (await answer(job(CLOSE))).ranked;
    expect(told?.id).toBe(first?.candidate.id);
    expect(told?.reasons[0]).toMatchObject({
      rule: 'fire.insulation-burns-close-to-the-line',
      text: expect.stringContaining('its insulation burns'),
    });
  });

  it('comes first by its score when it stands far enough off', async () => {
    const first = firstChoice(await judge(briefOf({ ...DRY, fire_separation_ft: 5.1 })));
    expect(first && burns(first)).toBe(true);
    expect(first?.standing).toBe(0);
  });

  it('is ranked with its caution where nothing else passes', async () => {
    const [told] = (await answer(job(CLOSE), FOAM)).ranked;
    expect(told?.cautions.map(({ rule }) => rule)).toContain('fire.insulation-burns-close-to-the-line');
  });

  it('is put after one with a face that does not burn, if both have foam', async () => {
    const { admitted } = await judge(briefOf({ ...CLOSE, finish: 'any' }), FOAM);
    const isWood = ({ candidate }: JudgedWall) => candidate.cladding.is_wood_siding;
    const lastFace = admitted.findLastIndex(
      (wall) => !isWood(wall) && !wall.candidate.cladding.is_insulated_finish,
    );
    expect(admitted.some(isWood)).toBe(true);
    expect(admitted.findIndex(isWood)).toBeGreaterThan(lastFace);
  });
});

// Mobile County has 65.8 in. of rain a year by its station.
describe('a plaster that rain keeps wet', () => {
  const WET = {
    place: { state: 'AL', county: 'Mobile' },
    finish: 'cement-stucco',
    budget_usd_per_ft2: 'unknown',
  };
  const staysWet = ({ verdicts }: JudgedWall) => verdicts.fires('rain.extreme-rain-wants-air');

  it('comes after one that hangs in front of moving air, whatever it scores', async () => {
    const { admitted } = await judge(briefOf(WET));
    const [best] = [...admitted].sort(byScore);
    expect(best && staysWet(best)).toBe(true);
    expect(admitted[0] && staysWet(admitted[0])).toBe(false);
    expect(admitted[0]?.candidate.cladding.drainage.is_ventilated).toBe(true);
  });
});

describe('a face that would stand over the lot line', () => {
  const ALLEY = { project: 'retrofit', interior_vapour_retarder: 'class-ii', finish: 'any' };
  const isOver = ({ verdicts }: JudgedWall) => verdicts.fires('fire.added-thickness-over-the-line');

  it('is ranked only where none stays off it, and says so before anything speaks for it', async () => {
    const near = await judge(briefOf({ ...ALLEY, fire_separation_ft: 0.35 }));
    const first = firstChoice(near);
    expect(first && isOver(first)).toBe(false);
    expect(near.admitted.some(isOver)).toBe(true);
    const [told] = (await answer(job({ ...ALLEY, fire_separation_ft: 0 }))).ranked;
    const [because] = told?.reasons.filter(({ rule }) => rule === 'fire.added-thickness-over-the-line') ?? [];
    expect(because?.text).toContain('neighbour’s written consent');
  });
});

describe('a wall of a tall building', () => {
  const TALL = { ...DRY, finish: 'any', mean_roof_height_ft: 55, fire_separation_ft: 40 };

  it('burns only where nothing else passes, its face or its insulation', async () => {
    const judged = await judge(briefOf(TALL));
    const first = firstChoice(judged);
    const low = firstChoice(await judge(briefOf({ ...TALL, mean_roof_height_ft: 22 })));
    expect(low && (burns(low) || low.candidate.cladding.is_wood_siding)).toBe(true);
    expect(judged.admitted.some(burns)).toBe(true);
    expect(first && (burns(first) || first.candidate.cladding.is_wood_siding)).toBe(false);
    const [told] = (await answer(job(TALL))).ranked;
    expect(told?.reasons.map(({ rule }) => rule)).toContain('fire.tall-foam-wall');
  });

  it('puts a face that burns after foam behind one that does not', async () => {
    const { admitted } = await judge(briefOf(TALL), FOAM);
    const burning = admitted.findIndex(({ candidate }) => candidate.cladding.is_wood_siding);
    const closed = admitted.findLastIndex(
      ({ candidate: { cladding } }) => !cladding.is_wood_siding && !cladding.is_insulated_finish,
    );
    expect(burning).toBeGreaterThan(closed);
    expect(closed).toBeGreaterThanOrEqual(0);
  });
});

describe('foam in a wildfire area', () => {
  const WILD = { ...DRY, wildfire_area: true };

  it('competes behind a closed face, but not behind an open gap', async () => {
    const { admitted } = await judge(briefOf(WILD), SMALL);
    const foam = admitted.filter((wall) => burns(wall) && !wall.candidate.cladding.is_insulated_finish);
    const [open, closed] = [foam.filter(isOpen), foam.filter((wall) => !isOpen(wall))];
    expect(new Set(open.map(({ standing }) => standing))).toEqual(new Set([standingBy('burns-in-the-open')]));
    expect(new Set(closed.map(({ standing }) => standing))).toEqual(new Set([0]));
  });

  it('does not stand first behind an open gap', async () => {
    const first = firstChoice(await judge(briefOf(WILD)));
    expect(first && burns(first) && isOpen(first)).toBe(false);
  });
});

describe('several grounds together', () => {
  it('are weighed by the weightiest that only one of two walls has', () => {
    const [milder, weightier] = [
      standingBy('energy-exception', 'cold-sheathing'),
      standingBy('burns-in-the-open'),
    ];
    expect(milder).toBeLessThan(weightier);
    expect(weightier).toBeLessThan(standingBy('burns-in-the-open', 'energy-exception'));
    expect(
      rankedOnlyWhere(standingBy('cold-sheathing', 'energy-exception'), standingBy('cold-sheathing')),
    ).toContain('meets the tables of the energy code');
  });
});

describe('what comes closest where nothing passes', () => {
  it('is the wall that goes least past the room, among those that break as few rules', async () => {
    const judged = await judge(briefOf({ max_added_thickness_in: 1, budget_usd_per_ft2: 'unknown' }));
    expect(judged.admitted).toEqual([]);
    const [closest] = judged.closestOfExcluded('site', () => 'any');
    const fewest = Math.min(...judged.walls.map(({ forbids }) => forbids));
    const added = judged.walls
      .filter(({ forbids }) => forbids === fewest)
      .map(({ candidate }) => addedThickness(candidate.face, candidate.barrier));
    expect(closest?.forbids).toBe(fewest);
    expect(closest && addedThickness(closest.candidate.face, closest.candidate.barrier)).toBeCloseTo(
      Math.min(...added),
      2,
    );
    expect(closest).toBe([...judged.walls].sort(byCloseness)[0]);
  });
});
