import type { Candidate } from '../assembly/candidates.ts';
import { boardAirGapLevel, isoAirGapCorrection } from '../calculators/thermal/iso-corrections.ts';
import { transmittanceToUs } from '../calculators/thermal/si-units.ts';
import type { AirGapLevel } from '../calculators/thermal/thermal-table.ts';
import { openingPerimeter } from '../calculators/thermal/whole-wall.ts';
import type { AnswerContext } from './answer-context.ts';
import type { BuckPart } from './buck-part.ts';
import { screwChi, type ThermalPart, wholeWall } from './thermal-part.ts';

/** A wall's U-factor taken apart; all parts in Btu/(h·ft²·°F). */
export type ThermalBreakdown = {
  readonly clear_wall_u_factor: number;
  readonly delta_u_fasteners: number;
  /** Furring lies outside the insulation and bridges nothing but by its screws, which are counted. */
  readonly delta_u_furring: 0;
  readonly delta_u_bucks: number;
  readonly delta_u_steel_brackets: number;
  readonly whole_wall_u_factor: number;
  /** By ISO 6946, for information: not in any of the above, since the energy code doesn't ask for it. */
  readonly air_gap: {
    readonly level: AirGapLevel;
    readonly joints: 'offset' | 'aligned';
    readonly delta_u: number;
    /** What one layer with joints that run through would add. */
    readonly delta_u_if_aligned: number;
  };
  readonly fastener_chi_btu_h_f: number;
  readonly buck_psi_btu_h_ft_f: number;
  readonly opening_perimeter_ft: number;
};

/** The parts of a wall's U-factor, each by itself. */
export function thermalBreakdown(
  { build, buck }: Candidate,
  thermal: ThermalPart,
  supports: BuckPart,
  context: AnswerContext,
): ThermalBreakdown {
  const whole = wholeWall(thermal, supports.bridges, context);
  const ofBrackets = whole.bridges.reduce(
    (sum, { delta_u }, i) => sum + (supports.bridges[i]?.is_bracket ? delta_u : 0),
    0,
  );
  const boards = build.boards_in.length;
  const joints = boards >= 2 ? 'offset' : 'aligned';
  const level = boardAirGapLevel(boards, joints);
  const share = build.r * thermal.clear_wall_u_factor;
  const gapDeltaU = (of: AirGapLevel) =>
    transmittanceToUs(isoAirGapCorrection(context.tables.thermal.iso_6946, of, Math.min(1, share)));
  return {
    clear_wall_u_factor: whole.clear_wall_u_factor,
    delta_u_fasteners: whole.delta_u_fasteners,
    delta_u_furring: 0,
    delta_u_bucks: Math.max(0, whole.delta_u_linear_bridges - ofBrackets),
    delta_u_steel_brackets: ofBrackets,
    whole_wall_u_factor: whole.whole_wall_u_factor,
    air_gap: {
      level,
      joints,
      delta_u: gapDeltaU(level),
      delta_u_if_aligned: gapDeltaU(boardAirGapLevel(1, 'aligned')),
    },
    fastener_chi_btu_h_f: screwChi(context),
    buck_psi_btu_h_ft_f: buck.psi_btu_h_ft_f.value,
    opening_perimeter_ft: openingPerimeter(context.brief.windows),
  };
}
