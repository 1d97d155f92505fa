/**
 * Brings what an older program called otherwise under today's names. What it did not have at all is filled by
 * `fillMissing`.
 *
 * Corner zones: once `width_if_unmeasured_ft`, always worked out without the plan. Openings: once always made for the
 * unit, the flange at the face of the insulation, a buck on the face leaving the unit its size.
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
  if (!isObject(wall)) return wall;
  const { fastening_schedule: schedule, openings } = wall;
  return {
    ...wall,
    ...(isObject(schedule) ? { fastening_schedule: withCornerZone(schedule) } : {}),
    ...(Array.isArray(openings) ? { openings: openings.map(upgradeOpening) } : {}),
  };
}

function upgradeOpening(opening: unknown): unknown {
  if (!isObject(opening)) return opening;
  const { rough_opening_needed_in, rough_opening_in, flange_plane, kept_opening } = opening;
  return {
    ...opening,
    rough_opening_in: rough_opening_in ?? { ...group(rough_opening_needed_in), is_given: false },
    flange_plane: { at: 'insulation-face', ...group(flange_plane) },
    ...(isObject(kept_opening)
      ? { kept_opening: { unit_keeps_its_size_on_face: true, ...kept_opening } }
      : {}),
  };
}

function group(value: unknown): Record<string, unknown> {
  return isObject(value) ? value : {};
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
