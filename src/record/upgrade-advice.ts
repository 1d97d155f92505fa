/**
 * Brings what an older program called otherwise under today's names. What it did not have at all is filled by
 * `fillMissing`.
 *
 * Corner zones: once `width_if_unmeasured_ft`, always worked out without the plan.
 */
export function upgradeAdvice(advice: unknown): unknown {
  if (!isObject(advice)) return advice;
  const { wind, ranked, fallback } = advice;
  return {
    ...advice,
    ...(isObject(wind) ? { wind: withCornerZone(wind) } : {}),
    ...(Array.isArray(ranked) ? { ranked: ranked.map(upgradeWall) } : {}),
    ...(isObject(fallback) ? { fallback: { ...fallback, assembly: upgradeWall(fallback.assembly) } } : {}),
  };
}

function upgradeWall(wall: unknown): unknown {
  if (!isObject(wall) || !isObject(wall.fastening_schedule)) return wall;
  return { ...wall, fastening_schedule: withCornerZone(wall.fastening_schedule) };
}

function withCornerZone(holder: Record<string, unknown>): Record<string, unknown> {
  const zone = holder.corner_zone;
  if (!isObject(zone) || Object.hasOwn(zone, 'corner_width_ft')) return holder;
  return {
    ...holder,
    corner_zone: { ...zone, corner_width_ft: zone.width_if_unmeasured_ft, is_assumed: true },
  };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
