import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { wholeFigures } from '../../src/conversation/tell-advice.ts';
import { contractorBlocks } from '../../src/conversation/tell-owner-questions.ts';
import { workOutChanges } from '../../src/firm/changes.ts';
import { alternatives } from '../../src/record/sections/comparison.ts';
import { openings } from '../../src/record/sections/wall.ts';
import {
  answer,
  board,
  briefOf,
  job,
  judge,
  KNOWLEDGE,
  SMALL,
  TINY,
  TYPICAL,
  withCatalogue,
} from './pipeline.ts';

function sample(name: string) {
  const text = readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), 'utf8');
  return parseInput(scenarioSchema, JSON.parse(text), name);
}
const [WINDOW] = TYPICAL.windows;
const excludedFor = (advice: Awaited<ReturnType<typeof answer>>, rule: string) =>
  advice.excluded.flatMap(({ because }) => because).find((reason) => reason.rule === rule);

describe('six windows of three kinds whose openings cannot change, against one large fixed triple in new work', async () => {
  const kept = await answer(sample('retrofit-fixed-openings'), SMALL);
  const fresh = await answer(sample('new-large-fixed-window'), SMALL);
  const [old] = kept.ranked;
  const [young] = fresh.ranked;

  it('hang on the face, or bear on the sill', () => {
    expect(old?.openings.map(({ count }) => count)).toEqual([3, 2, 1]);
    expect(old?.buck.support).toBe('face-fastened');
    expect(young?.buck.support).toBe('bears-on-sill');
    expect(old?.buck.verdict).toBe('fits');
    expect(young?.buck.verdict).toBe('fits');
  });
  it('give reasons of their own', () => {
    expect(excludedFor(kept, 'openings.no-room-in-the-opening')).toBeDefined();
    expect(excludedFor(fresh, 'openings.only-large-fixed-triple')?.remedy).toMatch(/bears on the rough sill/);
    expect(old?.openings.map(({ set_apart }) => set_apart !== null)).toEqual([false, false, true]);
    expect(old?.openings[2]).toMatchObject({ own_buck: 'steel-bracket', verdict: 'engineer' });
    expect(young?.openings[0]).toMatchObject({ set_apart: null, own_buck: null, verdict: 'fits' });
  });
  it('take screws of their own', () => {
    // Through 2-1/2 in. or more of buck and 1/2 in. of sheathing, against 1-3/4 in. of member; 1-1/2 in. into the framing.
    expect(old?.openings[0]?.min_screw_length_in).toBeGreaterThanOrEqual(4.5);
    expect(young?.openings[0]?.min_screw_length_in).toBe(3.25);
    for (const wall of [old, young])
      for (const { screw_length_in: length, min_screw_length_in: least } of wall?.openings ?? [])
        if (length !== null) expect(length).toBeGreaterThanOrEqual(least ?? Number.NaN);
    // 58 and 96 in. of jamb from 4 in. off the corners at 12 in.
    expect(old?.openings[0]?.screws_per_side).toBe(6);
    expect(young?.openings[0]?.screws_per_side).toBe(9);
  });
  it('are flashed in orders of their own', () => {
    expect(old?.buck.flashing_sequence[0]).toMatch(/^Old window and trim out/);
    expect(young?.buck.flashing_sequence.join(' ')).not.toMatch(/Old window/);
    expect(old?.buck.flashing_sequence.join(' ')).toMatch(/bedded in flashing on the barrier/);
    expect(young?.buck.flashing_sequence.join(' ')).toMatch(/set on the rough sill with full bearing/);
    expect(old?.openings[2]?.flashing_sequence.join(' ')).toMatch(/Brackets set and fastened/);
  });
  it('say what unit a buck inside would leave, or what opening to frame', () => {
    // 34 + 1 less 1 of clearance and 1-1/2 of panel; 72 and 1 of clearance and twice 1-3/4, and the slope in height.
    expect(old?.openings[0]?.kept_opening?.unit_with_buck_inside_in?.width_in).toBe(32.5);
    expect(young?.openings[0]?.rough_opening_needed_in).toEqual({ width_in: 76.5, height_in: 100.75 });
  });
  it('name psi, corner temperature and what mould asks for', () => {
    for (const wall of [old, young]) {
      const value = (id: string) => wall?.figures.find((f) => f.id === id)?.value ?? Number.NaN;
      expect(value('buck-psi')).toBeGreaterThan(0);
      expect(value('buck-corner-factor')).toBeGreaterThan(value('buck-corner-factor-needed'));
      expect(value('buck-corner-temp')).toBeGreaterThan(32);
      expect(value('buck-corner-temp')).toBeLessThan(68);
    }
  });
});

describe('what cannot be', () => {
  it('a window larger than its wall is refused by name', async () => {
    const large = job({ windows: [{ ...WINDOW, width_in: 200, height_in: 120 }], wall_area_ft2: 100 });
    await expect(answer(large)).rejects.toThrow(/^windows\[0\]: "200 x 120 in\."/);
  });
  it('a flangeless window keeps flange-only fixing out, and says what would do', async () => {
    const advice = await answer(job({ windows: [{ ...WINDOW, mounting: 'flangeless' }] }));
    const reason = excludedFor(advice, 'openings.flangeless-needs-a-frame');
    expect(reason?.text).toMatch(/no mounting flange/);
    expect(reason?.remedy).toMatch(/screw or strap the jambs/);
    for (const { buck } of advice.ranked) expect(buck.support).not.toBe('flange-over-insulation');
  });
  it('a projection beyond every buck is excluded with its reason, not left out unseen', async () => {
    // A market without deep bucks: 4 in. of board is out of reach of all.
    const short = KNOWLEDGE.catalogue.bucks.filter(({ max_projection_in }) => max_projection_in <= 3.5);
    const advice = await answer(
      job(),
      withCatalogue({ builds: [board('eps', 4), board('xps', 1)], bucks: short }),
    );
    expect(excludedFor(advice, 'openings.projection-limit')?.text).toMatch(
      /sit 4(\.4375)? in\. outside .* at most 3\.5 in\./,
    );
  });
  it('a weight below that of the glass is a question in the cautions', async () => {
    const advice = await answer(job({ windows: [{ ...WINDOW, weight_lb: 9 }] }));
    for (const wall of advice.ranked) {
      const asked = wall.cautions.filter(({ kind, text }) => kind === 'data' && /Is 9 lb right\?/.test(text));
      expect(asked).toHaveLength(1);
      expect(wall.openings[0]?.weight_question).toMatch(/Is 9 lb right\?/);
    }
  });
});

describe('a window set apart', () => {
  it('has its own support in the price of the wall, and says so', async () => {
    const kept = sample('retrofit-fixed-openings');
    const { assess, walls, context } = await judge(resolveBrief(kept).brief, SMALL);
    const wall = walls.find(({ candidate }) => candidate.buck.id === 'lumber-2x4-face');
    const parts = assess.partsOf((wall ?? expect.unreachable()).candidate);
    // Five frames on the face at $220 and one set of brackets at $550, as the catalogue prices them.
    expect(
      parts.buck.supports.reduce((sum, { buck, count }) => sum + count * buck.cost_each.usd.likely, 0),
    ).toBe(5 * 220 + 550);
    const [first] = (await answer(kept, SMALL)).ranked;
    const large = first?.openings[2];
    expect(large?.notes.join(' ')).toMatch(
      /in the wall’s price: about \$550 each \(\$300 to \$1000, from memory\)/,
    );
    expect(large?.notes.join(' ')).toMatch(/Inside corner: Not estimated: steel brackets/);
    expect(large?.corner.temp_factor).toBeNull();
    // Brackets round 64 x 60 in. at 0.1, frames round the others at 0.025 Btu/(h·ft·°F), over 1,250 ft².
    const frames_ft = (3 * 2 * (34 + 58) + 2 * 2 * (30 + 36)) / 12;
    const brackets_ft = (2 * (64 + 60)) / 12;
    expect(parts.buck.delta_u).toBeCloseTo((0.025 * frames_ft + 0.1 * brackets_ft) / 1250, 9);
    expect(context.brief.wall_area_ft2).toBe(1250);
  });
});

describe('what the bucks let out', () => {
  // 60 windows of 16 ft round: 960 ft of plywood box at 0.017 over 1,800 ft² add 0.0091 to the wall's U-factor.
  it('is counted against the energy of the wall, by its share', async () => {
    const many = { windows: [{ ...WINDOW, count: 60 }], max_added_thickness_in: 'unknown' };
    const without = await judge(briefOf({ ...many, windows: [] }), TINY);
    const glazed = await judge(briefOf(many), TINY);
    const [id] = glazed.admitted.flatMap(({ candidate }) =>
      candidate.buck.id === 'plywood-box' ? [candidate.id] : [],
    );
    const of = (judged: typeof glazed) => {
      const wall = judged.walls.find(({ candidate }) => candidate.id === id);
      return wall ?? expect.unreachable();
    };
    const { u_factor } = glazed.assess.partsOf(of(glazed).candidate).thermal;
    const share = u_factor / (u_factor + (0.017 * 960) / 1800);
    expect(of(glazed).scores.energy).toBeCloseTo(of(without).scores.energy * share, 9);
  });
});

describe('rough openings as they are measured', () => {
  const measured = (by_in: number) => ({
    rough_opening_can_change: false,
    windows: [
      {
        ...WINDOW,
        rough_opening_width_in: WINDOW.width_in + by_in,
        rough_opening_height_in: WINDOW.height_in + by_in,
      },
    ],
  });
  it('keep bearing bucks out when they were made for the unit, and let them in when they have the room', async () => {
    const tight = await answer(job(measured(1)), SMALL);
    expect(excludedFor(tight, 'openings.no-room-in-the-opening')).toBeDefined();
    for (const { buck } of tight.ranked) expect(buck.support).not.toBe('bears-on-sill');
    // Clearance of 1/2 in. and a member of 1-1/2 in. on each side: 4 in., and the slope.
    const roomy = await judge(briefOf(measured(4.25)), SMALL);
    expect(roomy.admitted.some(({ candidate }) => candidate.buck.support === 'bears-on-sill')).toBe(true);
  });
  it('that leave no room for shims, or far too much, are asked about', async () => {
    for (const [by_in, words] of [
      [0.25, /Is the rough opening .* leave 0\.13 in\./],
      [5, /leave 2\.5 in\. on each side .* is this the opening of this unit\?/],
    ] as const) {
      const advice = await answer(job(measured(by_in)), SMALL);
      const asked = advice.ranked.flatMap(({ openings }) => openings.map((o) => o.opening_question));
      if (by_in < 1) expect(asked.every((question) => words.test(question ?? ''))).toBe(true);
      else expect(advice.ranked.length).toBeGreaterThan(0);
    }
  });
  it('smaller than the unit are refused by name where they stay', async () => {
    await expect(answer(job(measured(-1)))).rejects.toThrow(/^windows\[0\]\.rough_opening_width_in: /);
  });
});

describe('the corner at the bucks', () => {
  it('is not known for steel studs, and says so instead of passing', async () => {
    const steel = { framing: { material: 'steel', depth_in: 6, spacing_in: 16 }, cavity_insulation_r: 19 };
    const advice = await answer(job(steel));
    for (const { verdicts, figures } of advice.ranked) {
      expect(verdicts.find(({ rule }) => rule === 'openings.buck-corner-mould')?.verdict).toBe('undecided');
      expect(figures.find(({ id }) => id === 'buck-corner-factor')).toMatchObject({
        value: null,
        note: expect.stringMatching(/^Not estimated: steel studs/),
      });
      expect(verdicts.find(({ rule }) => rule === 'openings.buck-corner-not-estimated')).toMatchObject({
        verdict: 'caution',
        text: expect.stringMatching(/Not estimated: steel studs/),
      });
    }
  });
});

describe('a wall without windows', async () => {
  const advice = await answer(
    job({ project: 'retrofit', windows: [], rough_opening_can_change: 'unknown' }),
    SMALL,
  );
  const [first] = advice.ranked;
  if (!first) throw new Error('no wall passes');

  it('misses no buck, and nobody is sent to look at an opening', () => {
    expect(advice.excluded.map(({ title }) => title).filter((title) => /buck/i.test(title))).toEqual([]);
    expect((advice.find_out_first ?? []).map(({ field }) => field)).not.toContain('rough_opening_can_change');
  });

  it('is told without one, on the screen and in the record', () => {
    expect(wholeFigures(first).find(({ label }) => label === 'Windows')?.value).toBe('none in this wall');
    expect(blocksToText(contractorBlocks(advice), 400)).not.toMatch(/window/);
    expect(openings(first)).toEqual([{ kind: 'paragraph', text: 'No windows in this wall.' }]);
  });

  it('names no buck or sill anywhere in its reasons, its folds, its heat or its other choices', () => {
    const told = [
      ...first.reasons.map(({ text }) => text),
      ...advice.ranked.map(({ folded }) => folded?.words ?? ''),
      ...first.thermal.notes,
      JSON.stringify(alternatives(advice)),
    ];
    expect(told.join(' ')).toContain('to suit');
    expect(told.join(' ')).not.toMatch(/buck|rough sill/);
    expect(first.buck.why).toBe('No windows in this wall: no buck is needed.');
  });

  it('has no buck in the reports of a firm', async () => {
    const scenario = job({ project: 'retrofit', windows: [] });
    const set = { edition: null, knowledge: SMALL };
    const { projects } = await workOutChanges([{ file: 'a.json', scenario }], set, set, { toolVersion: '0' });
    expect(projects[0]?.after.choice?.buck).toBe('no windows, no buck');
  });
});

describe('a buck deeper than any lumber sold', async () => {
  const onlyLumber = withCatalogue({
    bucks: KNOWLEDGE.catalogue.bucks.filter(({ id }) => id === 'lumber-2x6-bearing'),
    builds: [board('eps', 4)],
  });
  const framing = { material: 'wood', depth_in: 7.25, spacing_in: 16, species_gravity: 0.42 };
  const { ranked } = await answer(job({ framing, cavity_insulation_r: 30 }), onlyLumber);
  const built = ranked
    .flatMap(({ openings }) => openings)
    .filter(({ carried_by: { label } }) => /built up/.test(label));

  it('is left to an engineer, because the checks count each piece as whole', () => {
    expect(built.length).toBeGreaterThan(0);
    for (const { verdict, why, carried_by } of built) {
      expect(carried_by.depth_in).toBeGreaterThan(11.25);
      expect(verdict).toBe('engineer');
      expect(why).toContain('an engineer says how they are built up');
    }
  });
});
