import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layer } from '../../src/record/record-document.ts';
import { spreadKeys } from '../../src/record/spread-keys.ts';
import { KEY_RADIUS, wallSection } from '../../src/record/wall-section.ts';
import { wallSectionSvg } from '../../src/record/wall-section-svg.ts';
import { FULL_ADVICE } from './fixture-advice.ts';

const layers = FULL_ADVICE.ranked[0]?.layers ?? [];
const wall = { layers, added_thickness_in: 4.27 };

function drawnRects(svg: string): { x: number; width: number }[] {
  return [...svg.matchAll(/<rect class="layer"[^>]* x="([\d.]+)"[^>]* width="([\d.]+)"/g)].map((m) => ({
    x: Number(m[1]),
    width: Number(m[2]),
  }));
}

describe('wallSectionSvg', () => {
  const svg = wallSectionSvg(wall) ?? '';
  const rects = drawnRects(svg);

  it('draws every layer as wide as it is thick, one after the other', () => {
    expect(rects).toHaveLength(layers.length);
    const perInch = (rects[1]?.width ?? 0) / 5.5;
    expect(perInch).toBeGreaterThan(20);
    layers.forEach((layer, i) => {
      // Coordinates carry three decimals.
      expect(rects[i]?.width).toBeCloseTo(layer.thickness_in * perInch, 2);
    });
    rects.slice(1).forEach((rect, i) => {
      const before = rects[i];
      expect(rect.x).toBeCloseTo((before?.x ?? 0) + (before?.width ?? 0), 2);
    });
  });

  it('shows a layer thinner than a line as a line', () => {
    expect(svg.match(/class="sheet"/g)).toHaveLength(1);
  });

  it('says in words what it shows', () => {
    expect(svg).toContain('role="img" aria-labelledby="wall-title wall-desc"');
    expect(svg).toContain('<title id="wall-title">Section through the wall, to scale</title>');
    for (const [i, layer] of layers.entries()) expect(svg).toContain(`${i + 1} ${layer.label}`);
    expect(svg).toContain('10.71 in. in all');
    expect(svg).toContain('4.27 in. added outside the sheathing');
  });

  it('draws nothing for a wall without thickness', () => {
    expect(wallSectionSvg({ layers: [], added_thickness_in: 0 })).toBeNull();
    expect(
      wallSectionSvg({ layers: layers.map((l) => ({ ...l, thickness_in: 0 })), added_thickness_in: 0 }),
    ).toBeNull();
  });

  it('leaves the added thickness out when it makes no sense in the drawing', () => {
    expect(wallSection({ ...wall, added_thickness_in: 99 })?.added).toBeNull();
    expect(wallSection({ ...wall, added_thickness_in: 0 })?.added).toBeNull();
  });

  it('keeps a hostile label and role harmless', () => {
    const hostile: Layer = {
      label: '"><script>x</script>',
      role: '"/><script>',
      thickness_in: 1,
      r: 1,
      provenance: 'given',
    };
    const drawn = wallSectionSvg({ layers: [hostile], added_thickness_in: 0 }) ?? '';
    expect(drawn).not.toContain('<script');
    expect(drawn).toContain('fill="none"');
  });
});

describe('the keys of the drawing', () => {
  const thickness = fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 8, noNaN: true }));
  const anyLayers = fc.array(thickness, { minLength: 1, maxLength: 24 });

  it('never collide, keep the order of the layers and stay in the drawing', () => {
    fc.assert(
      fc.property(anyLayers, (thicknesses) => {
        const section = wallSection({
          layers: thicknesses.map((thickness_in) => ({
            label: 'x',
            role: 'insulation',
            r: 1,
            provenance: 'given',
            thickness_in,
          })),
          added_thickness_in: 0,
        });
        if (!section) return;
        const places = section.layers.map((layer) => layer.keyX);
        for (let i = 1; i < places.length; i++) {
          expect((places[i] ?? 0) - (places[i - 1] ?? 0)).toBeGreaterThan(2 * KEY_RADIUS);
        }
        expect(places[0]).toBeGreaterThanOrEqual(KEY_RADIUS);
        expect(places.at(-1)).toBeLessThanOrEqual(section.width - KEY_RADIUS);
      }),
    );
  });

  it('stand right above their layer where there is room', () => {
    expect(spreadKeys([10, 100, 200], 20, 0, 300)).toEqual([10, 100, 200]);
  });

  // Hand-worked: three wishes at 100 with a gap of 20 stand around 100; two at the edge are pushed inside.
  it('give way to both sides', () => {
    expect(spreadKeys([100, 100, 100], 20, 0, 300)).toEqual([80, 100, 120]);
    expect(spreadKeys([0, 0], 20, 0, 300)).toEqual([0, 20]);
    expect(spreadKeys([300, 300], 20, 0, 300)).toEqual([280, 300]);
  });
});
