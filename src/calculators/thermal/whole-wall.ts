import { inRange } from '../../base/refusal.ts';

/** A bridge that runs in a line: the buck around an opening, a shelf angle, a sill support. */
export type LinearBridge = {
  readonly label: string;
  /** Linear thermal transmittance, Btu/(h·ft·°F). */
  readonly psi_btu_h_ft_f: number;
  /** Total length, ft: for bucks the sum of the openings' perimeters. */
  readonly length_ft: number;
};

export type WholeWall = {
  readonly clear_wall_u_factor: number;
  readonly delta_u_fasteners: number;
  readonly delta_u_linear_bridges: number;
  readonly whole_wall_u_factor: number;
  /** Each bridge's part of delta_u_linear_bridges, in input order. */
  readonly bridges: readonly { readonly label: string; readonly delta_u: number }[];
};

/**
 * Rise in U-factor from fasteners through the insulation, Btu/(h·ft²·°F): their number times their point thermal
 * transmittance.
 *
 * @param per_ft2      fasteners per ft² of wall, from the fastening schedule
 * @param chi_btu_h_f  point thermal transmittance of one, Btu/(h·°F)
 *
 * Source: ISO 10211 and ISO 6946 Annex F, detailed procedure: U = U0 + n chi.
 */
export function fastenerDeltaU(per_ft2: number, chi_btu_h_f: number): number {
  return (
    inRange(per_ft2, 'fasteners.per_ft2', 0, 20, 'fasteners per square foot') *
    inRange(chi_btu_h_f, 'fasteners.chi_btu_h_f', 0, 1, 'Btu/(h·°F)')
  );
}

/** Perimeter of openings, ft: the sum over all of 2 (width + height), sizes in inches. */
export function openingPerimeter(
  openings: readonly { readonly count: number; readonly width_in: number; readonly height_in: number }[],
): number {
  return openings.reduce((sum, o) => sum + (o.count * 2 * (o.width_in + o.height_in)) / 12, 0);
}

/**
 * U-factor of the whole opaque wall with the bridges that openings and supports make in it, Btu/(h·ft²·°F):
 *   U = U_clear + dU_fasteners + sum(psi · length) / area.
 *
 * @param area_ft2  opaque area of the wall, ft²
 * @throws Refusal for values below zero or an area of zero
 *
 * Source: ISO 14683 / ISO 10211 linear thermal transmittances.
 * Known limit: glass and frames are not in it; corners, floors and parapets only if given as bridges.
 */
export function wholeWallU(
  clear_wall_u_factor: number,
  delta_u_fasteners: number,
  linear_bridges: readonly LinearBridge[],
  area_ft2: number,
): WholeWall {
  inRange(clear_wall_u_factor, 'clear_wall_u_factor', 0, 20, 'Btu/(h·ft²·°F)');
  inRange(delta_u_fasteners, 'delta_u_fasteners', 0, 20, 'Btu/(h·ft²·°F)');
  inRange(area_ft2, 'area_ft2', 0.1, 1e7, 'ft² of opaque wall');
  const bridges = linear_bridges.map((bridge) => ({
    label: bridge.label,
    delta_u:
      (inRange(bridge.psi_btu_h_ft_f, `${bridge.label}.psi_btu_h_ft_f`, 0, 5, 'Btu/(h·ft·°F)') *
        inRange(bridge.length_ft, `${bridge.label}.length_ft`, 0, 1e6, 'feet')) /
      area_ft2,
  }));
  const delta_u_linear_bridges = bridges.reduce((sum, bridge) => sum + bridge.delta_u, 0);
  return {
    clear_wall_u_factor,
    delta_u_fasteners,
    delta_u_linear_bridges,
    whole_wall_u_factor: clear_wall_u_factor + delta_u_fasteners + delta_u_linear_bridges,
    bridges,
  };
}
