import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../src/assembly/candidates.ts';
import { windowPlan } from '../../src/assessment/window-plan.ts';
import { briefOf, judge, KNOWLEDGE, withCatalogue } from '../advice/pipeline.ts';

const CASEMENT = {
  count: 4,
  width_in: 36,
  height_in: 60,
  glazing: 'triple',
  mounting: 'flanged',
  operation: 'casement',
  weight_lb: 110,
};
const LARGE = { ...CASEMENT, count: 1, width_in: 72, height_in: 72, operation: 'fixed', weight_lb: 320 };
const DOOR = { ...CASEMENT, count: 1, width_in: 36, height_in: 80, operation: 'door', weight_lb: 140 };

/** One board 3 in. thick: every buck that reaches it, hardly anything else to choose from. */
const ONE_BOARD = withCatalogue({
  builds: KNOWLEDGE.catalogue.builds.filter(
    ({ insulation, boards_in }) => insulation.id === 'mineral-wool' && boards_in.join() === '3',
  ),
});

async function planned(windows: readonly object[], buck: string, change: object = {}) {
  const judged = await judge(briefOf({ windows, ...change }), ONE_BOARD);
  const wall = judged.walls.find(({ candidate }: { candidate: Candidate }) => candidate.buck.id === buck);
  if (!wall) throw new Error(`no wall with ${buck}`);
  return {
    wall,
    part: judged.assess.partsOf(wall.candidate).buck,
    plan: windowPlan(wall.candidate, judged.context),
  };
}

describe('the windows of a job', () => {
  // Four lites of 1/4 in. in 47 x 60 in.: the make-up alone comes to more than 150 lb.
  it('are offered bucks for large units by the weight that they are judged by, given or worked out', async () => {
    const fixed = { ...CASEMENT, width_in: 47, height_in: 60, operation: 'fixed', lite_in: '1/4' };
    const { weight_lb: _, ...unweighed } = fixed;
    const bucksOf = async (window: object) => {
      const judged = await judge(briefOf({ windows: [window] }), ONE_BOARD);
      return { ids: new Set(judged.walls.map(({ candidate }) => candidate.buck.id)), judged };
    };
    const { judged, ids } = await bucksOf(unweighed);
    expect(judged.assess.works.windows.work.heaviest_lb).toBeGreaterThan(150);
    expect(ids).toContain('laminated-bearing');
    expect((await bucksOf({ ...fixed, weight_lb: 198 })).ids).toEqual(ids);
    expect((await bucksOf({ ...fixed, weight_lb: 120 })).ids).not.toContain('laminated-bearing');
  });

  it('are each judged, and exactly one decides about the buck', async () => {
    const small = { ...CASEMENT, count: 2, width_in: 24, height_in: 36, weight_lb: 45 };
    const { plan, part } = await planned([small, CASEMENT], 'lumber-2x4-face');
    expect(plan.map(({ judgement }) => judgement.verdict)).toEqual(['fits', 'fits']);
    expect(plan.map(({ is_worst }) => is_worst)).toEqual([false, true]);
    expect(part.worst?.window).toBe('36 x 60 in. casement, triple-glazed, flanged');
    expect(part.worst?.utilisation).toBe(plan[1]?.judgement.utilisation);
    // 60 in. from 4 in. off each corner at 12 in.: 5 gaps, 6 screws; 36 in.: 28/12, so 3 gaps and 4 screws.
    expect(plan[1]?.judgement.strength?.screws_per_side).toBe(6);
    expect(plan[1]?.screws_in_sill).toBe(4);
  });

  it('of which one is a large fixed triple-glazed unit: it does not decide about the buck of the others', async () => {
    const alone = await planned([CASEMENT], 'lumber-2x4-face');
    const both = await planned([CASEMENT, LARGE], 'lumber-2x4-face');
    expect(both.part.worst).toEqual(alone.part.worst);
    expect(both.part.why).toMatch(/Set apart.*1 of 72 x 72 in\. fixed/);
    expect(both.wall.verdicts.rulesWith('forbid').map(({ rule }) => rule.id)).not.toContain(
      'openings.only-large-fixed-triple',
    );
    const cautions = both.wall.verdicts.rulesWith('caution').map(({ rule }) => rule.id);
    expect(cautions).toContain('openings.large-fixed-triple');
  });

  it('give the large unit a bearing buck of its own that carries it, where the opening may change', async () => {
    const { plan } = await planned([CASEMENT, LARGE], 'lumber-2x4-face');
    expect(plan[1]).toMatchObject({ apart: 'large-fixed-triple', has_own_buck: true });
    expect(plan[1]?.buck.support).toBe('bears-on-sill');
    expect(plan[1]?.judgement.verdict).toBe('fits');
    expect(plan[0]).toMatchObject({ apart: null, has_own_buck: false, is_worst: true });
  });
  it('send it to an engineer where the opening is kept', async () => {
    const { plan } = await planned([CASEMENT, LARGE], 'lumber-2x4-face', { rough_opening_can_change: false });
    expect(plan[1]?.buck.support).toBe('steel-bracket');
    expect(plan[1]?.judgement.verdict).toBe('engineer');
  });
  it('share a bearing buck with it where its check does not rule that out: there nothing is set apart', async () => {
    const medium = { ...LARGE, width_in: 48, height_in: 60, weight_lb: 100 };
    const { plan } = await planned([CASEMENT, medium], 'plywood-box');
    expect(plan.map(({ apart }) => apart)).toEqual([null, null]);
    expect(plan[1]).toMatchObject({ is_worst: true, judgement: { verdict: 'engineer' } });
  });
  it('set a large unit apart that their bearing buck does not carry, and say so', async () => {
    const { plan, part, wall } = await planned([CASEMENT, LARGE], 'plywood-box');
    expect(plan.map(({ apart }) => apart)).toEqual([null, 'large']);
    expect(part.worst?.verdict).toBe('fits');
    expect(plan[1]?.judgement.verdict).not.toBe('does-not-fit');
    expect(plan[1]?.buck.id).not.toBe('plywood-box');
    expect(wall.verdicts.rulesWith('caution').map(({ rule }) => rule.id)).toContain(
      'openings.large-set-apart',
    );
  });
  it.each(['double', 'triple'])(
    'set a heavy unit apart on the face of the wall, %s-glazed',
    async (glazing) => {
      const heavy = { ...CASEMENT, glazing, width_in: 40, height_in: 66, weight_lb: 160 };
      const { plan } = await planned([CASEMENT, heavy], 'lumber-2x4-face');
      expect(plan.map(({ apart }) => apart)).toEqual([null, 'heavy']);
      const alone = await planned([heavy], 'lumber-2x4-face');
      expect(alone.plan[0]).toMatchObject({ apart: null, judgement: { verdict: 'engineer' } });
    },
  );

  it('with nothing but such units on a face-fastened buck are forbidden, doors or not', async () => {
    for (const windows of [[LARGE], [LARGE, DOOR]]) {
      const { wall } = await planned(windows, 'lumber-2x4-face');
      const forbidden = wall.verdicts.rulesWith('forbid').map(({ rule }) => rule.id);
      expect(forbidden).toContain('openings.only-large-fixed-triple');
    }
  });

  it.each(['lumber-2x4-face', 'plywood-box'])('leave a door to an engineer, apart, on a %s', async (buck) => {
    const { plan, part, wall } = await planned([CASEMENT, DOOR], buck);
    expect(part.worst?.verdict).toBe('fits');
    expect(plan[1]).toMatchObject({ apart: 'door', is_worst: false });
    expect(plan[1]?.judgement.verdict).toBe('engineer');
    expect(plan[1]?.buck.support).toBe('bears-on-sill');
    expect(plan[1]?.flashing.steps.join(' ')).toMatch(/no threshold rests on insulation/);
    expect(wall.verdicts.rulesWith('caution').map(({ rule }) => rule.id)).toContain(
      'openings.doors-want-a-sill',
    );
  });
  it('that are all doors decide for themselves: an engineer', async () => {
    const { part, plan } = await planned([DOOR], 'plywood-box');
    expect(part.worst?.verdict).toBe('engineer');
    expect(plan[0]).toMatchObject({ apart: null, is_worst: true });
  });
  it('that are none leave nothing to plan and nothing to judge', async () => {
    const { part, plan, wall } = await planned([], 'plywood-box');
    expect(plan).toEqual([]);
    expect(part).toMatchObject({ worst: null, delta_u: 0, corner_temp_factor: null });
    for (const id of [
      'openings.buck-does-not-fit',
      'openings.buck-needs-engineer',
      'openings.buck-corner-mould',
    ])
      expect(wall.verdicts.outcomes().find(({ rule }) => rule.id === id)).toBeUndefined();
  });
});

describe('weights', () => {
  it('that are not given are worked out, and judged by the high end', async () => {
    const { weight_lb: _, ...unweighed } = CASEMENT;
    const { plan } = await planned([unweighed], 'plywood-box');
    const { window } = plan[0] ?? expect.unreachable();
    expect(window.judged_weight_lb).toBe(window.estimate.high_lb);
    expect(window.estimate.low_lb).toBeLessThan(window.estimate.likely_lb);
  });
  // 31 x 55 in. inside the sight lines, three lites of 1.54 lb/ft²: 55 lb of glass alone.
  it('that cannot be right for the glass are asked about, not refused', async () => {
    const { plan } = await planned([{ ...CASEMENT, weight_lb: 12 }], 'plywood-box');
    expect(plan[0]?.weight_question).toMatch(/Is 12 lb right\? .* about 55 lb/);
    expect((await planned([CASEMENT], 'plywood-box')).plan[0]?.weight_question).toBeNull();
  });
});

describe('the opening', () => {
  // Clearance 1/2 in. and a 3/4 in. panel on each side: 36 + 2·1.25 = 38.5. Slope: 2.25·tan 6° = 0.2365.
  it('needed for a panel box grows by clearance, panel and slope', async () => {
    const { plan } = await planned([CASEMENT], 'plywood-box');
    expect(plan[0]?.fit.rough_opening_needed_in.width_in).toBeCloseTo(38.5, 9);
    expect(plan[0]?.fit.rough_opening_needed_in.height_in).toBeCloseTo(62.7365, 3);
    expect(plan[0]?.fit.kept_opening).toBeNull();
  });
  it('that is kept leaves a smaller unit with a buck inside, the same one with a buck on the face', async () => {
    const { plan } = await planned([CASEMENT], 'lumber-2x4-face', { rough_opening_can_change: false });
    const kept = plan[0]?.fit.kept_opening;
    expect(kept?.opening_in).toEqual({ width_in: 37, height_in: 61 });
    expect(kept?.unit_with_buck_inside_in?.width_in).toBeCloseTo(34.5, 9);
    expect(kept?.unit_with_buck_inside_in?.height_in).toBeCloseTo(58.2635, 3);
    expect(kept?.unit_with_buck_on_face_in).toEqual({ width_in: 36, height_in: 60 });
  });
  it('that a buck would fill is said to leave nothing, without breaking off', async () => {
    const slit = { ...CASEMENT, width_in: 7, height_in: 40, weight_lb: 20, operation: 'fixed' };
    const { plan } = await planned([slit], 'lumber-2x4-face', { rough_opening_can_change: false });
    expect(plan[0]?.fit.kept_opening?.unit_with_buck_inside_in).toBeNull();
  });
  it('has its flange outside sheathing and insulation, and says how much finish stands before it', async () => {
    const { plan, wall } = await planned([CASEMENT], 'plywood-box');
    const outside = wall.candidate.cladding.layers.reduce((sum, l) => sum + l.thickness_in, 0);
    expect(plan[0]?.plane).toEqual({
      at: 'insulation-face',
      reason: 'nothing-else',
      behind_furring_in: 0,
      outside_framing_in: 3 + 0.4375,
      outside_barrier_in: 3,
      outside_insulation_in: 0,
      behind_finished_face_in: outside,
    });
  });
});

describe('a flange at the face of the furring', () => {
  // 3 in. of board and 3/4 in. of furring outside 7/16 in. of sheathing; 7/8 in. of plaster beside 1 in. of frame.
  it('lies further out, gives the plaster a joint, and says where it is', async () => {
    const judged = await judge(briefOf({ windows: [CASEMENT] }), ONE_BOARD);
    const at = (buck: string) => {
      const wall = judged.walls.find(
        ({ candidate: c }) => c.cladding.id === 'plaster-on-furred-lath' && c.buck.id === buck,
      );
      const { candidate } = wall ?? expect.unreachable();
      return { part: judged.assess.partsOf(candidate).buck, plan: windowPlan(candidate, judged.context)[0] };
    };
    const { part, plan } = at('plywood-box');
    expect(part.projection_in).toBeCloseTo(3 + 0.75 + 0.4375, 9);
    expect(plan?.plane).toMatchObject({
      at: 'furring-face',
      outside_framing_in: 4.1875,
      outside_barrier_in: 3.75,
      outside_insulation_in: 0.75,
      behind_furring_in: 0,
      behind_finished_face_in: 0.875,
    });
    // From the insulation: furring, plaster and 3/8 in. of drip.
    expect(plan?.room).toMatchObject({ joint_depth_in: 0.875, joint_has_room: true, recess_in: -0.125 });
    expect(plan?.room.head_flashing_leg_in).toBeCloseTo(2, 9);
    expect(plan?.flashing.steps.join(' ')).toMatch(/in line with the outer edge of the buck/);
    // A 2x4 on the face does not reach: colder at the furring than behind it.
    const near = at('lumber-2x4-face');
    expect(near.plan?.plane).toMatchObject({ at: 'insulation-face', behind_furring_in: 0.75 });
    expect(near.plan?.flashing.steps.join(' ')).toMatch(/carry the trim/);
    expect(part.corner_temp_factor).toBeLessThan(near.part.corner_temp_factor ?? 0);
  });
});

describe('room outside the flange', () => {
  const roomOf = async (cladding: string, window: object = CASEMENT) => {
    const judged = await judge(briefOf({ windows: [window] }), ONE_BOARD);
    const wall = judged.walls.find((w) => w.candidate.cladding.id === cladding);
    return windowPlan((wall ?? expect.unreachable()).candidate, judged.context)[0]?.room;
  };
  // 3/8 in. of mat and 7/8 in. of plaster: 1-1/4 in.; the frame stands 1 in. out, so 5/8 in. of plaster lie beside it.
  it('is enough for a sealant joint over a mat', async () => {
    expect(await roomOf('plaster-on-mat-integral-lath')).toMatchObject({
      recess_in: 0.25,
      joint_depth_in: 0.625,
      joint_has_room: true,
      head_flashing_leg_in: 1.625,
    });
  });
  // 3/4 in. of furring: the plaster begins 1/4 in. before the frame ends.
  it('is not over furring, nor for a frame without a flange: the reveal is lined', async () => {
    expect(await roomOf('plaster-on-furred-lath')).toMatchObject({
      joint_depth_in: 0.25,
      joint_has_room: false,
    });
    const room = await roomOf('plaster-on-mat-integral-lath', { ...CASEMENT, mounting: 'flangeless' });
    expect(room).toMatchObject({ recess_in: 1.25, joint_depth_in: 0, joint_has_room: false });
    expect(room?.advice).toMatch(/line the reveal/);
  });
});
