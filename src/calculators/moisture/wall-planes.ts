/** Layers of a wall as plain arrays, inside to outside. */
export type WallLayers = {
  /** Thermal resistance of each layer, m²·K/W. */
  readonly r_m2kw: readonly number[];
  /** Equivalent air layer thickness of each layer, m. */
  readonly sd_m: readonly number[];
  /** Surface resistances, m²·K/W. */
  readonly rsi_m2kw: number;
  readonly rse_m2kw: number;
};

/** A plane at which water may form: a boundary between layers, or between the parts of a thick one. */
export type Plane = {
  /** Index of the layer passed, -1 for the inside surface. */
  readonly layer: number;
  /** Which of the layer's equal parts ends here; the last part ends at the true boundary. */
  readonly part: number;
  readonly parts: number;
  /** Resistance from the inside air to here, m²·K/W. */
  readonly r_from_inside_m2kw: number;
  /** Highest month-end amount of water, kg/m². */
  peak_kg_m2: number;
};

/** Planes with no vapour resistance between them: they share one vapour pressure and one store of water. */
export type Node = {
  readonly index: number;
  /** Vapour resistance from the inside surface as an air layer, m. */
  readonly x_m: number;
  readonly planes: Plane[];
  /** Saturation pressure at the coldest plane in the month at hand, Pa. */
  saturation_pa: number;
  /** Vapour pressure on the vapour line, Pa. */
  vapour_pa: number;
  water_kg_m2: number;
  /** Rate of gain on the present vapour line, kg/(m²·s); negative while drying. */
  rate: number;
  /** The next point of the vapour line towards the inside. */
  inner: Node | null;
};

export type WallPlanes = {
  readonly nodes: readonly Node[];
  readonly inside: Node;
  readonly outside: Node;
  readonly r_total_m2kw: number;
};

/** ISO 13788:2012: layers above this resistance are cut into equal parts not above it, m²·K/W. */
export const SPLIT_ABOVE_M2KW = 0.25;
/** Vapour resistances below a micrometre of air count as none. */
export const NO_RESISTANCE_M = 1e-6;
/** Less than a thousandth of a milligram per square metre is dry. */
export const DRY_KG_M2 = 1e-9;

/**
 * Cuts a wall into the planes of the ISO 13788 method and gathers those that no vapour resistance divides.
 * The first node holds the inside surface, the last the outside surface.
 */
export function wallPlanes(wall: WallLayers): WallPlanes {
  const inside = node(0, 0, {
    layer: -1,
    part: 1,
    parts: 1,
    r_from_inside_m2kw: wall.rsi_m2kw,
    peak_kg_m2: 0,
  });
  const nodes: Node[] = [inside];
  let outside = inside;
  let r = wall.rsi_m2kw;
  let x = 0;
  for (const [layer, layerR] of wall.r_m2kw.entries()) {
    const layerSd = wall.sd_m[layer] ?? 0;
    const parts = partsOfLayer(layerR);
    for (let part = 1; part <= parts; part++) {
      const plane = {
        layer,
        part,
        parts,
        r_from_inside_m2kw: r + (layerR * part) / parts,
        peak_kg_m2: 0,
      };
      const x_m = x + (layerSd * part) / parts;
      if (x_m - outside.x_m < NO_RESISTANCE_M) {
        outside.planes.push(plane);
      } else {
        outside = node(nodes.length, x_m, plane);
        nodes.push(outside);
      }
    }
    r += layerR;
    x += layerSd;
  }
  return { nodes, inside, outside, r_total_m2kw: r + wall.rse_m2kw };
}

/** How many equal parts a layer of this resistance is cut into. */
export function partsOfLayer(r_m2kw: number): number {
  // The small allowance keeps 0.5 at two parts although 0.5/0.25 may come out as 2.0000000000000004.
  return Math.max(1, Math.ceil(r_m2kw / SPLIT_ABOVE_M2KW - 1e-9));
}

function node(index: number, x_m: number, plane: Plane): Node {
  return {
    index,
    x_m,
    planes: [plane],
    saturation_pa: 0,
    vapour_pa: 0,
    water_kg_m2: 0,
    rate: 0,
    inner: null,
  };
}
