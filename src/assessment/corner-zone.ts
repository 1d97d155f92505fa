import { z } from 'zod';
import type { Brief } from '../brief/brief.ts';
import { edgeZoneWidth_ft } from '../calculators/wind.ts';

export const cornerZoneSchema = z.object({
  /** From each corner of the building along both walls. */
  corner_width_ft: z.number(),
  /** Null where it is not known: then the width is the widest that an ordinary plan can have. */
  building_least_width_ft: z.number().nullable(),
  is_assumed: z.boolean(),
  /** How much of the wall is counted with the corner’s spacing, and how much with the field’s. */
  corner_area_ft2: z.number(),
  field_area_ft2: z.number(),
  text: z.string(),
});
export type CornerZone = z.output<typeof cornerZoneSchema>;

/** A plan of ordinary shape has four corners, each with two walls. */
const CORNER_STRIPS = 8;

/** Plans wider than this many heights are left to a survey: beyond it 4 % of the plan would rule. */
const WIDEST_PLAN_IN_HEIGHTS = 10;

/**
 * Where the wind's corner zone (zone 5) ends and how much of the wall lies in it.
 *
 * Width a: a tenth of the least plan dimension or 0.4 h, the lesser, but at least 4 % of that dimension and 3 ft
 * (ASCE 7 Figure 30.3-1). Where the dimension is not known, the widest that a plan of at most ten heights can have.
 * Area: four corners, both walls of each, as tall as the mean roof; at most the whole wall, so that a wall which is
 * only part of a building counts as corner before it counts as field. A plan with more corners has more.
 *
 * @throws Refusal where height or plan lie outside the range of `edgeZoneWidth_ft`
 */
export function cornerZone(
  brief: Pick<Brief, 'mean_roof_height_ft' | 'building_least_width_ft' | 'wall_area_ft2'>,
): CornerZone {
  const { mean_roof_height_ft: height_ft, building_least_width_ft, wall_area_ft2 } = brief;
  const isAssumed = building_least_width_ft === null;
  const corner_width_ft = oneDecimal(
    edgeZoneWidth_ft(building_least_width_ft ?? widestPlan_ft(height_ft), height_ft),
  );
  const corner_area_ft2 = Math.min(wall_area_ft2, CORNER_STRIPS * corner_width_ft * height_ft);
  const rule = `10 % of its least plan dimension or ${oneDecimal(0.4 * height_ft)} ft (0.4 of the mean roof height), whichever is less, but at least 3 ft and at least 4 % of that dimension`;
  const width = isAssumed
    ? `The least plan dimension is not known: ${corner_width_ft} ft is taken, the widest for a plan of at most ${WIDEST_PLAN_IN_HEIGHTS} heights. Measure the plan, and most buildings need less.`
    : `With a least plan dimension of ${building_least_width_ft} ft that is ${corner_width_ft} ft.`;
  return {
    corner_width_ft,
    building_least_width_ft,
    is_assumed: isAssumed,
    corner_area_ft2,
    field_area_ft2: wall_area_ft2 - corner_area_ft2,
    text: `Corner zone (zone 5): from every corner of the building, ${rule}. ${width} Mark it from each corner; the field (zone 4) is the rest. Counted as corner: ${Math.round(corner_area_ft2)} of ${Math.round(wall_area_ft2)} ft² (four corners, two walls each, as tall as the mean roof).`,
  };
}

/** At four heights a tenth of the plan meets 0.4 h; up to ten heights 4 % of the plan stays below both. */
function widestPlan_ft(mean_roof_height_ft: number): number {
  return 4 * mean_roof_height_ft;
}

function oneDecimal(value: number): number {
  return Number(value.toFixed(1));
}

/** A rate in the field and one at the corners, as the mean over the whole wall. */
export function overWholeWall(
  rate: { readonly field: number; readonly corner: number },
  zone: Pick<CornerZone, 'corner_area_ft2' | 'field_area_ft2'>,
): number {
  const area = zone.corner_area_ft2 + zone.field_area_ft2;
  // The same in both: exactly that, without the noise of a division.
  if (rate.field === rate.corner) return rate.corner;
  return (rate.field * zone.field_area_ft2 + rate.corner * zone.corner_area_ft2) / area;
}
