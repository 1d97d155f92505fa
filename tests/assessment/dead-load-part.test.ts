import { describe, expect, it } from 'vitest';
import { deadLoadPart, deadLoadSchema } from '../../src/assessment/dead-load-part.ts';
import { fasteningPart } from '../../src/assessment/fastening-part.ts';
import { contextOf, everyFace, wallOf } from './schedule-walls.ts';

const context = await contextOf();
const loadOf = (cladding: string, build: string) =>
  deadLoadSchema.parse(deadLoadPart(wallOf(context, cladding, build).face));

describe('deadLoadPart', () => {
  // 3 in. at 8 lb/ft³ is 2.0 psf; mat 0.2; 7/8 in. of plaster 10 dry, 7/8 x 145 / 12 = 10.6 wet.
  it('adds boards and layers, dry and wet (hand-worked, weights from memory)', () => {
    const load = loadOf('plaster-on-mat-separate-lath', 'mineral-wool-3');
    expect(load.dry_psf).toBeCloseTo(12.2, 9);
    expect(load.wet_psf).toBeCloseTo(12.8, 9);
    expect(load.wet_is_lower_bound).toBe(true);
    expect(load.notes[0]).toMatch(/Wet weight not known for mineral wool board/);
  });

  // Handbooks give 7/8 in. of Portland cement plaster near 10 to 12 psf (10 and 12 psf from memory, a web page seen).
  it('takes three-coat plaster near 10 to 12 psf, wet or dry', () => {
    const plaster = loadOf('plaster-on-mat-integral-lath', 'xps-2').layers.find(({ label }) =>
      label.startsWith('three-coat'),
    );
    expect(plaster?.dry_psf).toBeGreaterThanOrEqual(10);
    expect(plaster?.wet_psf ?? 0).toBeGreaterThan(plaster?.dry_psf ?? 99);
    expect(plaster?.wet_psf).toBeLessThanOrEqual(12);
    expect(plaster?.provenance).toBe('memory');
  });

  it('names each board of two layers, and gives every layer a source', () => {
    const load = loadOf('plaster-on-mat-integral-lath', 'mineral-wool-1.5+1.5');
    expect(load.layers.slice(0, 2).map(({ label }) => label)).toEqual([
      'mineral wool board, layer 1',
      'mineral wool board, layer 2',
    ]);
    for (const layer of load.layers) expect(layer.source.length).toBeGreaterThan(3);
  });

  it('agrees with the weights that the walls are judged by, and is never lighter wet', () => {
    for (const { face } of everyFace(context)) {
      const load = deadLoadPart(face);
      const part = fasteningPart(face, context);
      expect(load.dry_psf).toBeCloseTo(part.cladding_psf + part.insulation_psf, 9);
      expect(load.wet_psf).toBeGreaterThanOrEqual(load.dry_psf);
    }
  });
});
