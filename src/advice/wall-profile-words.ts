import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { curveOf, type SeasonProfile, type WallProfile, wallProfile } from '../assessment/wall-profile.ts';
import { round, roundOrNull } from './rounded.ts';
import type { ProfileSeason, TemperatureProfile } from './wall-physics-schema.ts';

/** The temperature profile of one wall with everything that was assumed for it. */
export function temperatureProfile(candidate: Candidate, context: AnswerContext): TemperatureProfile {
  const profile = wallProfile(candidate, context);
  return {
    winter: profile ? season(profile.winter) : null,
    summer: profile ? season(profile.summer) : null,
    notes: profile
      ? profileNotes(profile, candidate, context)
      : ['The monthly temperatures of the place are not known: no profile can be drawn.'],
  };
}

function season(given: SeasonProfile): ProfileSeason {
  return {
    month: given.month,
    indoor_temp_f: round(given.indoor_temp_f, 1),
    outdoor_temp_f: round(given.outdoor_temp_f, 1),
    indoor_dew_point_f: roundOrNull(given.indoor_dew_point_f, 1),
    outdoor_dew_point_f: roundOrNull(given.outdoor_dew_point_f, 1),
    insulation_r: round(given.insulation_r, 2),
    cavity: given.cavity.map(({ after, role, temp_f, dew_point_f }) => ({
      after,
      role,
      temp_f: round(temp_f, 1),
      dew_point_f: roundOrNull(dew_point_f, 1),
    })),
    stud: given.stud?.map(({ after, temp_f }) => ({ after, temp_f: round(temp_f, 1) })) ?? null,
  };
}

function profileNotes(
  { winter, summer }: NonNullable<WallProfile>,
  candidate: Candidate,
  context: AnswerContext,
): string[] {
  const { indoor_winter, indoor_summer } = context.tables.moisture;
  const { outside_winter_r, outside_summer_r } = context.tables.thermal.films;
  const isRecalled = [indoor_winter, indoor_summer].some(({ provenance }) => provenance === 'memory');
  return [
    'Steady state at the mean air temperatures of the coldest and the warmest month: no sun, no storage, no air leakage. A sunlit face is far hotter, a clear night colder.',
    `Indoors ${indoor_winter.temp_f} °F in winter and ${indoor_summer.temp_f} °F in summer${isRecalled ? ', from memory' : ''}; outside film R-${outside_winter_r.value} in winter, R-${outside_summer_r.value} in summer.`,
    insulationNote(winter, candidate, context),
    ...(winter.stud === null
      ? [
          'There is no stud path: heat spreads sideways in the flanges of steel studs, and their temperature needs a two-dimensional calculation. Over a stud the lining is colder and the sheathing warmer than shown.',
        ]
      : []),
    dewPointNote(summer, candidate),
  ];
}

function insulationNote(winter: SeasonProfile, candidate: Candidate, context: AnswerContext): string {
  const { build } = candidate;
  const curve = curveOf(candidate, context);
  const rated = `R-${round(build.r, 2)}`;
  if (!curve)
    return `No measurement of ${build.insulation.label} in the cold is carried: its rated ${rated} stands in both seasons.`;
  const change = winter.insulation_r - build.r;
  const words = Math.abs(change) < 0.05 ? 'no different from' : change < 0 ? 'less than' : 'more than';
  return `In winter the exterior insulation is taken at its own temperature: R-${round(winter.insulation_r, 2)}, ${words} its rated ${rated} (${curve.source}${winter.is_beyond_measurements ? '; colder than it was measured, so the coldest measurement stands' : ''}). The U-factor held against the code uses the rated value.`;
}

function dewPointNote({ indoor_dew_point_f }: SeasonProfile, { inside }: Candidate): string {
  if (indoor_dew_point_f === null)
    return 'The humidity of the place is not known month by month: no dew point can be drawn.';
  if (!inside.retarder) return 'The interior vapour retarder is not known: no dew point can be drawn.';
  return 'Dew points are those of the month-by-month diffusion method (ISO 13788), indoor humidity by its class 3, from memory; below 32 °F they are frost points. They may differ a little from the condensate by month, which takes rated insulation and that method’s own films and room temperature.';
}
