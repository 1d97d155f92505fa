import { describe, expect, it } from 'vitest';
import { answer, job, KNOWLEDGE } from './pipeline.ts';

const told = await answer(job({ finish: 'cement-stucco' }));

describe('loads in the answer', () => {
  it('stand in every ranked wall, in agreement with its other figures', () => {
    expect(told.ranked.length).toBeGreaterThan(0);
    for (const wall of told.ranked) {
      expect(wall.dead_load.dry_psf).toBeCloseTo(wall.weight_psf, 1);
      const carrying = wall.fastening_schedule.steps.find(
        (step) => step.aim !== null && step.does === 'carries',
      );
      expect(carrying?.fastener).toBe(wall.fastening.fastener);
      expect(carrying?.length_in).toBe(wall.fastening.length_in);
      const corner = carrying?.zones.find((zone) => zone.zone === 'corner');
      expect(Math.ceil(corner?.count_per_100_ft2 ?? 0)).toBe(wall.fastening.count_per_100_ft2);
      // 1,800 ft² of wall.
      expect(carrying?.project_count).toBe(Math.ceil(18 * (carrying?.count_per_100_ft2 ?? 0) - 1e-6));
    }
  });

  it('feed the U-factor and the price with the same count (chi 0.004 W/K, $60 an hour, both from memory)', () => {
    for (const wall of told.ranked) {
      const { steps, labour } = wall.fastening_schedule;
      const through = steps.filter((step) => step.labour?.priced_with === 'fasteners');
      const count = through.reduce((sum, step) => sum + (step.count_per_100_ft2 ?? 0), 0);
      const { fasteners_per_100_ft2, inner_fasteners_per_100_ft2 } = wall.thermal.assumptions;
      expect(fasteners_per_100_ft2 + inner_fasteners_per_100_ft2).toBeCloseTo(count, 1);
      if (inner_fasteners_per_100_ft2 === 0)
        expect(wall.thermal.delta_u_fasteners).toBeCloseTo((count / 100) * 0.00758, 4);
      const figure = wall.figures.find(({ id }) => id === 'fastener-labour-cost')?.value ?? Number.NaN;
      expect(figure).toBeCloseTo((labour.hours_priced_with_fasteners.likely * 60) / 1800, 3);
    }
  });

  it('tell of the price the cladding and the boards, which with the rest do not come to more than all of it', () => {
    for (const wall of told.ranked) {
      const usd = (id: string) => wall.figures.find((figure) => figure.id === id)?.value ?? Number.NaN;
      const cladding = KNOWLEDGE.catalogue.claddings.find(({ id }) => wall.id.startsWith(`${id}/`));
      expect(usd('cladding-cost')).toBeCloseTo(cladding?.cost.usd_per_ft2.likely ?? Number.NaN, 2);
      const parts = [
        'cladding-cost',
        'insulation-cost',
        'fastener-material-cost',
        'fastener-labour-cost',
      ].map(usd);
      expect(Math.min(...parts)).toBeGreaterThan(0);
      expect(parts.reduce((sum, part) => sum + part, 0)).toBeLessThanOrEqual(usd('installed-cost') + 0.01);
    }
  });

  it('tell where the money goes: parts that add up to the price, low, likely and high, the dearest first', () => {
    for (const wall of told.ranked) {
      const parts = wall.cost_parts;
      expect(parts.map(({ part }) => part)).toEqual(
        expect.arrayContaining([
          'cladding',
          'insulation',
          'water-resistive-barrier',
          'window-bucks',
          'opening-flashing',
          'fasteners-through-the-boards',
          'driving-them',
        ]),
      );
      for (const end of ['low', 'likely', 'high'] as const) {
        const sum = parts.reduce((usd, { usd_per_ft2 }) => usd + usd_per_ft2[end], 0);
        // Each part is told to the cent, the whole to ten.
        expect(Math.abs(sum - wall.installed_cost_usd_per_ft2[end])).toBeLessThan(
          0.05 + 0.005 * parts.length,
        );
      }
      const likely = parts.map(({ usd_per_ft2 }) => usd_per_ft2.likely);
      expect(likely).toEqual([...likely].sort((a, b) => b - a));
    }
  });

  // ASCE 7-16 by hand, 115 mph, exposure B, 22 ft: Kz = 2.01 (22/1200)^(2/7) = 0.641; q = 0.00256 x 0.641 x 0.85 x 115²
  // = 18.45 psf; corners 18.45 x 1.58 x 0.6 = 17.5 psf outward.
  it('have the wind of field and corners by the edition’s standard (hand-worked)', () => {
    expect(told.wind.standard).toBe('ASCE 7-16');
    expect(told.wind.velocity_pressure_psf).toBeCloseTo(18.45, 1);
    expect(told.wind.zones.map(({ zone }) => zone)).toEqual([4, 5]);
    expect(told.wind.zones[1]?.allowable.outward_psf).toBeCloseTo(-17.5, 1);
  });
});
