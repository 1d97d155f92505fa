import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { CEMENT_PLASTER_PCF, deadLoad, layerWeight_psf } from '../../src/calculators/dead-load.ts';

describe('layerWeight_psf', () => {
  it('gives 7/8 in cement plaster the 10 psf of the ASCE 7 commentary within its rounding, from memory', () => {
    const weight = layerWeight_psf({ thickness_in: 0.875, density_pcf: CEMENT_PLASTER_PCF.cured });
    expect(Math.abs(weight - 10)).toBeLessThan(0.5);
  });

  it('refuses impossible figures by layer name', () => {
    expect(() => layerWeight_psf({ thickness_in: -1, density_pcf: 142 }, 'scratch coat')).toThrow(
      /^scratch coat: thickness_in/,
    );
    expect(() => layerWeight_psf({ psf: Number.NaN })).toThrow(Refusal);
  });
});

describe('deadLoad', () => {
  const plaster = {
    label: 'plaster',
    weight: { thickness_in: 0.875, density_pcf: 142 },
    wet_weight: { thickness_in: 0.875, density_pcf: 145 },
  };
  const board = { label: 'board', weight: { thickness_in: 3, density_pcf: 8 }, wet_weight: null };

  it('adds the layers, dry and wet', () => {
    // 0.875 x 142 / 12 = 10.354; 0.875 x 145 / 12 = 10.573; 3 x 8 / 12 = 2
    const load = deadLoad([plaster, board]);
    expect(load.dry_psf).toBeCloseTo(12.354, 3);
    expect(load.wet_psf).toBeCloseTo(12.573, 3);
  });

  it('names the layer whose wet weight nobody knows', () => {
    expect(deadLoad([plaster, board]).notes.join(' ')).toMatch(/board.*lower bound/);
    expect(deadLoad([plaster]).notes).toEqual([]);
  });

  it('refuses a wet weight under the dry one', () => {
    expect(() => deadLoad([{ ...plaster, wet_weight: { psf: 5 } }])).toThrow(/plaster: wet_weight/);
  });

  it('never weighs less wet than dry', () => {
    const layer = fc.record({
      label: fc.constant('layer'),
      weight: fc.record({ psf: fc.double({ min: 0, max: 50, noNaN: true }) }),
      extra: fc.option(fc.double({ min: 0, max: 20, noNaN: true })),
    });
    fc.assert(
      fc.property(fc.array(layer, { maxLength: 8 }), (layers) => {
        const load = deadLoad(
          layers.map(({ label, weight, extra }) => ({
            label,
            weight,
            wet_weight: extra === null ? null : { psf: weight.psf + extra },
          })),
        );
        expect(load.wet_psf).toBeGreaterThanOrEqual(load.dry_psf - 1e-9);
      }),
    );
  });
});
