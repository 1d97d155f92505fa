import type { Candidate } from '../assembly/candidates.ts';
import type { Barrier, Retarder, SheathingEntry } from '../assembly/catalogue-schema.ts';
import { finishPermeance } from '../assembly/finish-permeance.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import {
  type MonthlyCondensation,
  monthlyCondensation,
  type YearConditions,
} from '../calculators/moisture/monthly-condensation.ts';
import { permFromLayers, permFromPermeability, sdFromPerm } from '../calculators/moisture/permeance.ts';
import { rSiFromUs } from '../calculators/moisture/units.ts';
import type { WallLayers } from '../calculators/moisture/wall-planes.ts';
import type { AnswerContext } from './answer-context.ts';
import { CAVITY_PERMEABILITY_PERM_IN, insulationPermeance, LINING, type WallLayer } from './wall-layers.ts';

/** The parts of a wall that vapour passes. */
export type WetWall = {
  readonly build: InsulationBuild;
  readonly barrier: Barrier;
  readonly retarder: Retarder;
  readonly sheathing: SheathingEntry;
  /** Infinite where air moves behind the cladding. */
  readonly finish_perm: number;
};

/** The parts of one candidate that vapour passes. */
export function wetWall({ cladding, build, sheathing, barrier }: Candidate, retarder: Retarder): WetWall {
  return { build, barrier, retarder, sheathing, finish_perm: finishPermeance(cladding) };
}

/** One layer as the monthly method takes it. */
export type WaterLayer = {
  readonly role: WallLayer['role'];
  /** h·ft²·°F/Btu */
  readonly r: number;
  readonly perm: number;
};

/** The layers that vapour passes, inside to outside; no resistance to heat is counted for the finish. */
export function waterLayers(wall: WetWall, { framed, brief }: AnswerContext): WaterLayer[] {
  const { build, barrier, retarder, sheathing, finish_perm } = wall;
  const layers: WaterLayer[] = [
    { role: 'lining', r: LINING.r, perm: permFromLayers([LINING.bare_perm, retarder.dry_cup_perm.value]) },
    {
      role: 'framing',
      r: framed.cavity_r,
      perm: permFromPermeability(CAVITY_PERMEABILITY_PERM_IN, brief.framing.depth_in),
    },
  ];
  if (sheathing.thickness_in > 0) {
    layers.push({ role: 'sheathing', r: sheathing.r.value, perm: sheathing.dry_cup_perm.value });
  }
  layers.push({ role: 'barrier', r: 0, perm: barrier.permeance_perm.value });
  layers.push({
    role: 'insulation',
    r: build.r,
    perm: insulationPermeance(build.insulation, build.thickness_in, build.boards_in.length),
  });
  if (Number.isFinite(finish_perm)) layers.push({ role: 'finish', r: 0, perm: finish_perm });
  return layers;
}

/** Runs a wall through the year of the site by the monthly method. */
export function monthsOfWater(
  wall: WetWall,
  context: AnswerContext,
  year: YearConditions,
): MonthlyCondensation {
  return monthlyCondensation(layersInSi(wall, context), year);
}

/** The layers that vapour passes, as plain arrays in SI units. */
export function layersInSi(wall: WetWall, context: AnswerContext): WallLayers {
  const layers = waterLayers(wall, context);
  const { rsi_m2kw, rse_m2kw } = context.tables.moisture.surface_resistances;
  return {
    r_m2kw: layers.map((l) => rSiFromUs(l.r)),
    sd_m: layers.map((l) => sdFromPerm(l.perm)),
    rsi_m2kw,
    rse_m2kw,
  };
}
