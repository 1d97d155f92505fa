import type { ScheduleCheck, ScheduleZone } from './schedule-schema.ts';

export type Spacing = {
  readonly along_in: number;
  readonly across_in: number;
};

/** One zone of a line: its spacing, the checks, and the one that decides. */
export function zoneLine(
  zone: ScheduleZone['zone'],
  outward_wind_psf: number,
  spacing: Spacing | null,
  checks: readonly ScheduleCheck[],
): ScheduleZone {
  const governing = governingCheck(checks);
  return {
    zone,
    outward_wind_psf,
    spacing_along_in: spacing?.along_in ?? null,
    spacing_across_in: spacing?.across_in ?? null,
    tributary_ft2: spacing ? (spacing.along_in * spacing.across_in) / 144 : null,
    governing: governing.check,
    utilisation: governing.utilisation,
    count_per_100_ft2: spacing ? (100 * 144) / (spacing.along_in * spacing.across_in) : null,
    checks: [...checks],
  };
}

/** Both zones with the same spacing and checks: for whatever the wind doesn't space. */
export function sameInBothZones(
  wind_psf: { readonly field: number; readonly corner: number },
  spacing: Spacing | null,
  checks: readonly ScheduleCheck[],
): ScheduleZone[] {
  return (['field', 'corner'] as const).map((zone) => zoneLine(zone, wind_psf[zone], spacing, checks));
}

/** The most used check that decides; one without a figure comes first, for nobody knows that it holds. */
function governingCheck(checks: readonly ScheduleCheck[]): ScheduleCheck {
  const deciding = checks.filter((check) => check.decides);
  const unknown = deciding.find((check) => check.utilisation === null);
  const [first, ...rest] = deciding;
  if (!first) throw new Error('a line of the schedule has no check that decides');
  return (
    unknown ??
    rest.reduce((most, check) => ((check.utilisation ?? 0) > (most.utilisation ?? 0) ? check : most), first)
  );
}

/** A check against a most allowed spacing, in. */
export function spacingCheck(
  check: 'lath-practice' | 'practice',
  what: string,
  spacing_in: number,
  most_in: number,
  source: string,
): ScheduleCheck {
  return {
    check,
    what,
    demand: spacing_in,
    capacity: most_in,
    unit: 'in.',
    utilisation: spacing_in / most_in,
    decides: true,
    source,
  };
}

/** Whether every deciding check of every zone has a figure of at most 1. */
export function holds(zones: readonly ScheduleZone[]): boolean {
  return zones.every((zone) =>
    zone.checks.every(
      (check) => !check.decides || (check.utilisation !== null && check.utilisation <= 1 + 1e-9),
    ),
  );
}
