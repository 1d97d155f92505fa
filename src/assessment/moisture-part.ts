import type { Face, RetarderChoice } from '../assembly/candidates.ts';
import type { Barrier, Retarder } from '../assembly/catalogue-schema.ts';
import { finishPermeance } from '../assembly/finish-permeance.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { DAYS_IN_MONTH } from '../base/days-in-month.ts';
import { humidityClassExcess } from '../calculators/moisture/humidity-class.ts';
import { monthlyCondensation, type YearConditions } from '../calculators/moisture/monthly-condensation.ts';
import { permFromLayers } from '../calculators/moisture/permeance.ts';
import { saturationPressure } from '../calculators/moisture/psychrometrics.ts';
import { type SheathingDewPoint, sheathingDewPoint } from '../calculators/moisture/sheathing-dew-point.ts';
import { WaterThroughYear } from '../calculators/moisture/year-of-water.ts';
import { winterProfile } from '../calculators/thermal/temperature-dependence.ts';
import type { AnswerContext } from './answer-context.ts';
import type { ThermalPart } from './thermal-part.ts';
import { insulationPermeance, LINING } from './wall-layers.ts';
import { layersInSi } from './wall-water.ts';

export type MoisturePart = {
  readonly dew_point: SheathingDewPoint;
  /** Everything outboard of the sheathing, up to the drainage space, perm. */
  readonly outward_permeance_perm: number;
  /** Lining with its retarder, dry cup, perm; null when not known. */
  readonly inward_permeance_perm: number | null;
  /** By the monthly method; null when climate or retarder is not known. */
  readonly condensate_peak_g_m2: number | null;
  readonly dries_within_year: boolean | null;
};

/** Indoor air of the monthly method: dwellings of unknown occupancy (ISO 13788 annex A, class from memory). */
const INDOOR_TEMP_C = 20;
const HUMIDITY_CLASS = 3;
/** Above this a house is dehumidified or cooled (judgement); without it a humid summer would fill the house. */
const HIGHEST_INDOOR_RH = 0.6;

/**
 * Winter check of the sheathing by the temperature alone. Insulation is taken at its own winter temperature where
 * measurements say that it loses in the cold; a gain is not credited.
 */
export function dewPointPart(face: Face, thermal: ThermalPart, context: AnswerContext): SheathingDewPoint {
  const { temp_f, rh } = context.tables.moisture.indoor_winter;
  const winter_mean_temp_f = context.site.climate?.winter_mean_temp_f ?? null;
  const lost_r =
    winter_mean_temp_f === null ? 0 : winterLoss(face, thermal, temp_f, winter_mean_temp_f, context);
  return sheathingDewPoint(
    {
      r_inside_of_sheathing: thermal.r_inside_of_sheathing,
      r_total: thermal.r_cavity_path - lost_r,
      winter_mean_temp_f,
    },
    { temp_f, rh },
  );
}

/** Resistance that the exterior insulation lacks in winter against its rating, h·ft²·°F/Btu. */
function winterLoss(
  { build }: Face,
  thermal: ThermalPart,
  inside_temp_f: number,
  outside_temp_f: number,
  context: AnswerContext,
): number {
  const curve = context.tables.thermal.temperature_curves.find((c) => c.insulation === build.insulation.id);
  if (!curve) return 0;
  const inboard = thermal.r_inside_of_sheathing;
  const { layers } = winterProfile(
    [
      { label: 'inboard of the sheathing', r: inboard },
      { label: 'insulation', r: build.r, curve },
      { label: 'the rest', r: thermal.r_cavity_path - inboard - build.r },
    ],
    inside_temp_f,
    outside_temp_f,
    false,
  );
  return build.r - (layers[1]?.r ?? build.r);
}

/** The way out: barrier, insulation and, where the finish sits straight on the board, the finish. */
export function outwardPermeance({ build, cladding }: Face, barrier: Barrier): number {
  const perms = [
    barrier.permeance_perm.value,
    insulationPermeance(build.insulation, build.thickness_in, build.boards_in.length),
  ];
  if (cladding.attachment === 'adhered') perms.push(cladding.permeance_perm.value);
  return permFromLayers(perms);
}

/** The way in: gypsum board with its retarder, dry cup. */
export function inwardPermeance({ retarder }: RetarderChoice): number | null {
  return retarder ? permFromLayers([LINING.bare_perm, retarder.dry_cup_perm.value]) : null;
}

/** Year of the site as the monthly method takes it; null without twelve months of temperature and humidity. */
export function yearConditions(context: AnswerContext): YearConditions | null {
  const monthly = context.site.climate?.monthly;
  if (monthly?.length !== 12) return null;
  const outside: { temp_c: number; pa: number; days: number }[] = [];
  for (const month of monthly) {
    if (month.rh === null) return null;
    outside.push({
      temp_c: month.temp_c,
      pa: month.rh * saturationPressure(month.temp_c),
      days: DAYS_IN_MONTH[month.month - 1] ?? 30,
    });
  }
  return {
    inside_temp_c: outside.map(() => INDOOR_TEMP_C),
    inside_pa: outside.map(({ temp_c, pa }) =>
      Math.min(
        pa + humidityClassExcess(context.tables.moisture, HUMIDITY_CLASS, temp_c),
        HIGHEST_INDOOR_RH * saturationPressure(INDOOR_TEMP_C),
      ),
    ),
    outside_temp_c: outside.map(({ temp_c }) => temp_c),
    outside_pa: outside.map(({ pa }) => pa),
    month_s: outside.map(({ days }) => days * SECONDS_A_DAY),
  };
}

const SECONDS_A_DAY = 86_400;

export type Condensate = Pick<MoisturePart, 'condensate_peak_g_m2' | 'dries_within_year'>;

const NOT_KNOWN: Condensate = { condensate_peak_g_m2: null, dries_within_year: null };

/** Works out the condensate of walls that share a site, studs and sheathing. */
export type CondensateOf = (face: Face, barrier: Barrier, retarder: Retarder | null) => Condensate;

/** Condensate through the year of the site; keep the function for many walls, it remembers what they share. */
export function condensates(context: AnswerContext): CondensateOf {
  const year = yearConditions(context);
  if (!year) return () => NOT_KNOWN;
  // Barrier, retarder and finish resist vapour only: the temperatures behind them are those of the boards. A finish that
  // vapour passes is one plane more.
  const [ventilated, covered] = [
    new Map<InsulationBuild, WaterThroughYear>(),
    new Map<InsulationBuild, WaterThroughYear>(),
  ];
  return ({ cladding, build, sheathing }, barrier, retarder) => {
    if (!retarder) return NOT_KNOWN;
    const finish_perm = finishPermeance(cladding);
    const wall = layersInSi({ finish_perm, sheathing, build, barrier, retarder }, context);
    const through = Number.isFinite(finish_perm) ? covered : ventilated;
    const boards = through.get(build) ?? new WaterThroughYear(wall, year);
    through.set(build, boards);
    const { peak_kg_m2, dries_out, unbounded } = boards.of(wall.sd_m) ?? monthlyCondensation(wall, year);
    if (unbounded) return NOT_KNOWN;
    return { condensate_peak_g_m2: peak_kg_m2 * 1000, dries_within_year: dries_out };
  };
}
