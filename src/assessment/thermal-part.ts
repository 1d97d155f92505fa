import type { Face } from '../assembly/candidates.ts';
import { pointTransmittanceToUs } from '../calculators/thermal/si-units.ts';
import {
  fastenerDeltaU,
  type LinearBridge,
  type WholeWall,
  wholeWallU,
} from '../calculators/thermal/whole-wall.ts';
import type { AnswerContext } from './answer-context.ts';
import { countedR, LINING } from './wall-layers.ts';

export type ThermalPart = {
  readonly clear_wall_u_factor: number;
  readonly delta_u_fasteners: number;
  /** Clear wall with its fasteners: what the energy code judges. */
  readonly u_factor: number;
  readonly r_effective: number;
  /** Cavity path: indoor air to the inner face of the sheathing, and air to air. */
  readonly r_inside_of_sheathing: number;
  readonly r_cavity_path: number;
};

/**
 * U-factor of one wall and what its fasteners add.
 *
 * @param bridging_per_100_ft2  all fasteners through the insulation, see `fastenerCounts`
 */
export function thermalPart(face: Face, bridging_per_100_ft2: number, context: AnswerContext): ThermalPart {
  const { films } = context.tables.thermal;
  const inside = films.inside_vertical_r.value + LINING.r;
  const finish = face.cladding.layers.reduce((sum, layer) => sum + countedR(face.cladding, layer.r), 0);
  const outside = face.sheathing.r.value + face.build.r + finish + films.outside_winter_r.value;
  const clear = context.framed.uFactor(inside + outside);
  const delta_u_fasteners = fastenerDeltaU(bridging_per_100_ft2 / 100, screwChi(context));
  const u_factor = clear + delta_u_fasteners;
  return {
    clear_wall_u_factor: clear,
    delta_u_fasteners,
    u_factor,
    r_effective: 1 / u_factor,
    r_inside_of_sheathing: inside + context.framed.cavity_r,
    r_cavity_path: inside + context.framed.cavity_r + outside,
  };
}

/** Point thermal transmittance of one screw into these studs, Btu/(h·°F). */
export function screwChi({ brief, tables }: AnswerContext): number {
  return pointTransmittanceToUs(tables.thermal.fastener_chi_w_k[brief.framing.material].value);
}

/** The wall with the bridges that the bucks make round the openings, spread over the wall; reported apart. */
export function wholeWall(
  thermal: ThermalPart,
  bridges: readonly LinearBridge[],
  context: AnswerContext,
): WholeWall {
  return wholeWallU(
    thermal.clear_wall_u_factor,
    thermal.delta_u_fasteners,
    bridges,
    context.brief.wall_area_ft2,
  );
}
