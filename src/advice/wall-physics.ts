import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { waterYear } from '../assessment/water-year.ts';
import { round } from './rounded.ts';
import { wallEnergy } from './wall-energy-words.ts';
import type { WallPhysics } from './wall-physics-schema.ts';
import { temperatureProfile } from './wall-profile-words.ts';
import { wallThermal } from './wall-thermal-words.ts';

/** Heat and moisture of one ranked wall, written out: profile, water by month, energy route, parts of the U-factor. */
export function wallPhysics(
  candidate: Candidate,
  parts: CalculatedParts,
  context: AnswerContext,
): WallPhysics {
  return {
    temperature_profile: temperatureProfile(candidate, context),
    ...condensate(candidate, context),
    energy: wallEnergy(candidate, parts, context),
    thermal: wallThermal(candidate, parts, context),
  };
}

function condensate(
  candidate: Candidate,
  context: AnswerContext,
): Pick<WallPhysics, 'condensate_by_month' | 'condensate_planes' | 'condensate_note'> {
  const year = waterYear(candidate, context);
  if ('why' in year) {
    return {
      condensate_by_month: null,
      condensate_planes: [],
      condensate_note: `The condensate by month could not be worked out. ${year.why}`,
    };
  }
  const dries = year.dries_within_year
    ? 'all of it dries again within the year'
    : 'not all of it dries within the year';
  return {
    condensate_by_month: year.months.map((m) => ({
      month: m.month,
      condensate_g_m2: round(m.condensate_g_m2, 3),
      accumulated_g_m2: round(m.accumulated_g_m2, 3),
    })),
    condensate_planes: year.planes.map(({ where, peak_g_m2 }) => ({ where, peak_g_m2: round(peak_g_m2, 3) })),
    condensate_note: `${year.peak_g_m2 > 0 ? `Peak ${round(year.peak_g_m2, 1)} g/m²; ${dries}.` : 'No water forms in any month.'} Diffusion only, by the monthly method of ISO 13788: no air leakage, which carries far more, no rain, no sun.`,
  };
}
