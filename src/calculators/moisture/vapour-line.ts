import { AIR_PERMEABILITY } from './permeance.ts';
import type { Node, WallPlanes } from './wall-planes.ts';

export type BoundaryFlows = {
  /** Vapour entering at the inside surface and leaving at the outside surface, kg/(m²·s). */
  readonly in: number;
  readonly out: number;
  /** Whether the line touches saturation anywhere between the surfaces. */
  readonly touches: boolean;
};

/**
 * Stretches the vapour pressure line through the wall and sets each node's pressure and rate of gain.
 *
 * Over cumulative sd the line runs from the inside to the outside vapour pressure. Where the straight line would
 * pass above saturation it is replaced by the tangents: the taut line on or below the saturation pressures, which
 * is the lower convex hull of the points. A node that holds water is pinned to saturation and may dry.
 *
 * @param wall  planes with `saturation_pa` and `water_kg_m2` of the moment
 * @param inside_pa, outside_pa  vapour pressures at the two surfaces, Pa, not above saturation there
 *
 * Source: ISO 13788:2012, clause 6: tangent construction, g = δ0 (Δp/Δsd inside - Δp/Δsd outside).
 */
export function stretchVapourLine(wall: WallPlanes, inside_pa: number, outside_pa: number): BoundaryFlows {
  const { nodes, inside, outside } = wall;
  let tail = inside;
  inside.vapour_pa = inside_pa;
  inside.inner = null;
  for (const node of nodes) {
    if (node === inside) continue;
    node.rate = 0;
    node.vapour_pa = node === outside ? outside_pa : node.saturation_pa;
    while (tail.inner && tail.water_kg_m2 === 0 && isAboveChord(tail.inner, tail, node)) tail = tail.inner;
    node.inner = tail;
    tail = node;
  }
  return setRates(inside, outside);
}

/** Whether b lies on or above the straight line from a to c. */
function isAboveChord(a: Node, b: Node, c: Node): boolean {
  return (b.vapour_pa - a.vapour_pa) * (c.x_m - a.x_m) >= (c.vapour_pa - a.vapour_pa) * (b.x_m - a.x_m);
}

function setRates(inside: Node, outside: Node): BoundaryFlows {
  let out = 0;
  let fromInside = 0;
  let outer: Node | null = null;
  for (let here = outside; here.inner; here = here.inner) {
    const inner: Node = here.inner;
    const flow = (AIR_PERMEABILITY * (inner.vapour_pa - here.vapour_pa)) / (here.x_m - inner.x_m);
    if (outer) here.rate = flow - fromInside;
    else out = flow;
    outer = here;
    fromInside = flow;
  }
  return { in: fromInside, out, touches: outside.inner !== inside };
}
