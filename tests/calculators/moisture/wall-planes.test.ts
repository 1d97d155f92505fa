import { describe, expect, it } from 'vitest';
import { wallPlanes } from '../../../src/calculators/moisture/wall-planes.ts';

const parts = (r: number) =>
  wallPlanes({ r_m2kw: [r, 0.1], sd_m: [1, 1], rsi_m2kw: 0.13, rse_m2kw: 0.04 })
    .nodes.flatMap((node) => node.planes)
    .filter((plane) => plane.layer === 0);

describe('wallPlanes', () => {
  // ISO 13788:2012: layers above 0.25 m²·K/W are cut into equal parts not above it.
  it.each([
    [0, 1],
    [0.25, 1],
    [0.26, 2],
    [0.5, 2],
    [0.75, 3],
    [3.52, 15],
  ])('cuts a layer of %d m²·K/W into %i', (r, count) => {
    expect(parts(r)).toHaveLength(count);
    expect(parts(r).at(-1)?.r_from_inside_m2kw).toBeCloseTo(0.13 + r, 12);
  });

  it('gathers planes with no vapour resistance between them, and the surfaces', () => {
    const wall = wallPlanes({
      r_m2kw: [0.1, 0.2, 0.1, 0.1],
      sd_m: [1, 0, 2, 0],
      rsi_m2kw: 0.13,
      rse_m2kw: 0.04,
    });
    expect(wall.nodes.map((node) => node.planes.map((plane) => plane.layer))).toEqual([[-1], [0, 1], [2, 3]]);
    expect(wall.nodes.map((node) => node.x_m)).toEqual([0, 1, 3]);
    expect(wall.r_total_m2kw).toBeCloseTo(0.67, 12);
  });
});
