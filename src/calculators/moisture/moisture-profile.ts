import { dewPoint, saturationPressure } from './psychrometrics.ts';
import { stretchVapourLine } from './vapour-line.ts';
import { type WallLayers, wallPlanes } from './wall-planes.ts';

/** Air on both sides of a wall in one month. */
export type MonthAir = {
  readonly inside_temp_c: number;
  readonly inside_pa: number;
  readonly outside_temp_c: number;
  readonly outside_pa: number;
};

export type ProfilePoint = {
  /** Index of the layer passed; -1 for the inside surface. */
  readonly layer: number;
  readonly temp_c: number;
  readonly vapour_pa: number;
  readonly saturation_pa: number;
  /** Null where the air is too dry to have a dew point above -60 °C. */
  readonly dew_point_c: number | null;
  /** Whether the vapour line touches saturation here. */
  readonly condenses: boolean;
};

/** Drier air has a dew point below -60 °C, where the formula ends. */
const DRIEST_PA = 1.03;

/**
 * Temperature and dew point through a dry wall in one month: at the inside surface and after each layer.
 *
 * @param wall  layers inside to outside (m²·K/W and m)
 * @param air   temperatures, °C (-60 to 80), and vapour pressures, Pa, cut to saturation at the surfaces
 * @returns     one point for the inside surface and one after each layer
 * @throws Refusal for temperatures outside the range
 *
 * Source: ISO 13788:2012, clause 6: temperatures from resistances, vapour line with tangents.
 */
export function moistureProfile(wall: WallLayers, air: MonthAir): ProfilePoint[] {
  const planes = wallPlanes(wall);
  const temp = (r: number) =>
    air.inside_temp_c - ((air.inside_temp_c - air.outside_temp_c) * r) / planes.r_total_m2kw;
  for (const node of planes.nodes) {
    node.saturation_pa = Math.min(...node.planes.map((p) => saturationPressure(temp(p.r_from_inside_m2kw))));
  }
  const inside_pa = Math.min(air.inside_pa, planes.inside.saturation_pa);
  const outside_pa = Math.min(
    air.outside_pa,
    planes.outside.saturation_pa,
    saturationPressure(air.outside_temp_c),
  );
  stretchVapourLine(planes, inside_pa, outside_pa);
  const onLine = linePressures(planes.outside);
  return planes.nodes.flatMap((node) => {
    const vapour_pa = onLine(node.x_m);
    return node.planes
      .filter((plane) => plane.part === plane.parts)
      .map((plane) => {
        const temp_c = temp(plane.r_from_inside_m2kw);
        return {
          layer: plane.layer,
          temp_c,
          vapour_pa,
          saturation_pa: saturationPressure(temp_c),
          dew_point_c: vapour_pa < DRIEST_PA ? null : dewPoint(vapour_pa),
          condenses: node.rate > 0,
        };
      });
  });
}

/** Reads the stretched line between its corner points. */
function linePressures(outside: ReturnType<typeof wallPlanes>['outside']): (x_m: number) => number {
  return (x_m) => {
    let outer = outside;
    while (outer.inner && outer.inner.x_m > x_m) outer = outer.inner;
    const inner = outer.inner;
    if (!inner) return outer.vapour_pa;
    const share = (x_m - inner.x_m) / (outer.x_m - inner.x_m);
    return inner.vapour_pa + share * (outer.vapour_pa - inner.vapour_pa);
  };
}
