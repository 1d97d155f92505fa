import { describe, expect, it } from 'vitest';
import { fastenerCost } from '../../src/assessment/cost-part.ts';
import { boardGroups, fastenerCounts } from '../../src/assessment/fastener-counts.ts';
import { fasteningContext, fasteningOptions, fasteningPart } from '../../src/assessment/fastening-part.ts';
import { fasteningPractice } from '../../src/assessment/schedule/fastening-practice.ts';
import { chooseFastening } from '../../src/calculators/fastening/choose-fastening.ts';
import { KNOWLEDGE } from '../advice/pipeline.ts';
import { contextOf, everyFace, line, schedule, scheduleOf, wallOf } from './schedule-walls.ts';

async function counted(cladding: string, build: string, change: object = {}) {
  const context = await contextOf(change);
  const { face } = wallOf(context, cladding, build);
  return {
    counts: fastenerCounts(fasteningPart(face, context), boardGroups(face, context), context),
    context,
  };
}

describe('fastenerCounts', () => {
  // A mat at 6 by 16 in. takes 150 in 100 ft², one board at 24 by 16 in. 37.5.
  it('counts what carries and what holds the board (hand-worked)', async () => {
    const { counts } = await counted('plaster-on-mat-integral-lath', 'mineral-wool-3');
    expect(counts).toMatchObject({
      through_per_100_ft2: 187.5,
      inner_per_100_ft2: 0,
      bridging_per_100_ft2: 187.5,
    });
  });

  // Three boards of 2 in.: the inner two on every second stud, 18.75 each, a third and two thirds of the way through.
  // 0.8 d1/d0 of ISO 6946 (from memory: the linear form): 18.75 x (1/3 + 2/3) = 18.75 more than what goes through.
  it('counts fasteners of inner boards by their depth (hand-worked)', async () => {
    const { counts } = await counted('wood-siding', 'mineral-wool-2+2+2');
    expect(counts.inner_per_100_ft2).toBeCloseTo(37.5, 9);
    expect(counts.bridging_per_100_ft2 - counts.through_per_100_ft2).toBeCloseTo(18.75, 9);
  });

  it('counts none where the boards are glued', async () => {
    const { counts, context } = await counted('insulated-finish', 'eps-2');
    expect(counts).toMatchObject({ groups: [], through_per_100_ft2: 0, bridging_per_100_ft2: 0 });
    expect(fastenerCost(counts, context).labour_usd_per_ft2).toEqual({ low: 0, likely: 0, high: 0 });
  });

  // 170 mph, exposure D, 25 ft: furring screws every 24 in. in the field (37.5), 16 in. at the corners (56.25). A plan
  // 30 ft wide has 8 x 3 x 25 = 600 ft² of corner in 1,800: (600 x 56.25 + 1200 x 37.5) / 1800 = 43.75.
  it('takes field and corners each by its share of the wall (hand-worked)', async () => {
    const storm = { basic_wind_speed_mph: 170, exposure: 'D', mean_roof_height_ft: 25 };
    const { counts } = await counted('wood-siding', 'eps-2', {
      ...storm,
      building_least_width_ft: 30,
    });
    expect(counts.groups[0]?.per_100_ft2).toBeCloseTo(43.75, 9);
    const all = await counted('wood-siding', 'eps-2', storm);
    expect(all.counts.groups[0]?.per_100_ft2).toBe(56.25);
  });

  it.each([
    { building_least_width_ft: 40, basic_wind_speed_mph: 150, exposure: 'C' },
    { framing: { material: 'steel', depth_in: 6, spacing_in: 24 }, sheathing: 'gypsum' },
  ])('agrees with the schedule, line by line: %j', async (change) => {
    const context = await contextOf(change);
    for (const wall of everyFace(context).filter((_, i) => i % 9 === 0)) {
      const counts = fastenerCounts(
        fasteningPart(wall.face, context),
        boardGroups(wall.face, context),
        context,
      );
      const told = scheduleOf(wall, context).steps.filter(
        ({ labour }) => labour?.priced_with === 'fasteners',
      );
      const order = [...counts.groups.slice(1), ...counts.groups.slice(0, 1)];
      expect(told.map((step) => step.count_per_100_ft2)).toEqual(
        order.map((group) => Number(group.per_100_ft2.toFixed(4))),
      );
      expect(told.map((step) => step.length_in ?? step.min_length_in)).toEqual(
        order.map((group) => Number(group.length_in.toFixed(4))),
      );
    }
  });
});

describe('the spacing in the field', () => {
  it.each([
    {},
    { basic_wind_speed_mph: 170, exposure: 'D', mean_roof_height_ft: 60 },
    {
      basic_wind_speed_mph: 140,
      exposure: 'C',
      framing: { material: 'steel', depth_in: 6, spacing_in: 24 },
      sheathing: 'gypsum',
    },
  ])('is what the same fastener would be given under the field’s wind: %j', async (change) => {
    const context = await contextOf(change);
    for (const { face } of everyFace(context).filter((_, i) => i % 3 === 0)) {
      const { schedule: corner, field_spacing_in } = fasteningPart(face, context);
      if (!corner) continue;
      const field = chooseFastening(
        fasteningOptions(face, context).filter(({ fastener }) => fastener === corner.fastener),
        { ...fasteningContext(face, context), outward_wind_psf: context.field_wind_psf },
        context.tables.fastening,
      );
      expect(field_spacing_in).toBe(Math.max(field.fastener_spacing_in, corner.fastener_spacing_in));
    }
  });
});

describe('the labour of fastening', () => {
  // 2,700 screws of 6 in. at 0.35 min (from memory) are 15.75 h, 675 of more than 4 in. for the boards 3.94 h.
  it('is count times minutes, and the price holds the same hours (hand-worked, minutes from memory)', async () => {
    const told = await schedule('plaster-on-mat-integral-lath', 'mineral-wool-3');
    expect(line(told, 'the mat').labour).toMatchObject({
      hours: { likely: 15.75 },
      priced_with: 'fasteners',
    });
    expect(line(told, 'mineral wool').length_in).toBeGreaterThan(4);
    expect(line(told, 'mineral wool').labour?.hours.likely).toBeCloseTo((675 * 0.35) / 60, 4);
    const { counts, context } = await counted('plaster-on-mat-integral-lath', 'mineral-wool-3');
    const paid = told.labour.hours_priced_with_fasteners;
    for (const end of ['low', 'likely', 'high'] as const) {
      const rate = KNOWLEDGE.catalogue.prices.labour_usd_per_hour[end];
      expect(fastenerCost(counts, context).labour_usd_per_ft2[end]).toBeCloseTo((paid[end] * rate) / 1800, 4);
    }
  });

  // Drilling takes 0.35 min beside 0.35 min of driving a 6 in. lag, the boards’ screws of 4 in. take 0.2 (from
  // memory and judgement): the price pays for all of it.
  it('pays for the holes of lag screws', async () => {
    const { counts, context } = await counted('plaster-on-furred-lath', 'graphite-eps-2.5');
    const [carrying] = counts.groups;
    expect(carrying).toMatchObject({ work: 'lag-screw', length_in: 6 });
    const told = await schedule('plaster-on-furred-lath', 'graphite-eps-2.5');
    const boards = counts.groups.slice(1).reduce((sum, { per_100_ft2 }) => sum + per_100_ft2, 0);
    const minutes = (carrying?.per_100_ft2 ?? 0) * 0.7 + boards * 0.2;
    expect(fastenerCost(counts, context).minutes_per_ft2.likely).toBeCloseTo(minutes / 100, 6);
    expect(told.labour.hours_priced_with_fasteners.likely).toBeCloseTo((minutes * 18) / 60, 1);
  });

  it('adds up over the lines, and says which price pays for which', async () => {
    const told = await schedule('plaster-on-mat-separate-lath', 'mineral-wool-3');
    const hours = told.steps.map(({ labour }) => labour?.hours.likely ?? 0);
    expect(told.labour.hours.likely).toBeCloseTo(
      hours.reduce((sum, one) => sum + one, 0),
      3,
    );
    expect(new Set(told.steps.map(({ labour }) => labour?.priced_with))).toEqual(
      new Set(['bucks', 'fasteners', 'cladding']),
    );
    expect(told.labour.hours_priced_with_fasteners.likely).toBeLessThan(told.labour.hours.likely);
    expect(told.labour.source).toMatch(/memory/);
  });

  it('never takes less time for a longer screw', () => {
    const { screw_up_to_4_in, screw_up_to_6_in, longer_screw } = fasteningPractice().minutes_each;
    for (const end of ['low', 'likely', 'high'] as const) {
      expect(screw_up_to_4_in[end]).toBeLessThanOrEqual(screw_up_to_6_in[end]);
      expect(screw_up_to_6_in[end]).toBeLessThanOrEqual(longer_screw[end]);
    }
  });
});
