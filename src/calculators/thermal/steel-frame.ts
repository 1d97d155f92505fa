import { inRange, Refusal } from '../../base/refusal.ts';
import type { SteelCavity } from './thermal-table.ts';

export type SteelWall = {
  /** Both films and all layers but the framed one, h·ft²·°F/Btu. */
  readonly series_r: number;
  /** Actual depth of the cavity, in. */
  readonly depth_in: number;
  readonly spacing_in: number;
  /** Rated resistance of the cavity insulation, h·ft²·°F/Btu; 0 for an empty cavity. */
  readonly insulation_r: number;
};

/**
 * U-factor of a wall on cold-formed steel studs, Btu/(h·ft²·°F): 1 / (Rs + ER), ER the tabulated resistance of studs
 * and cavity insulation together.
 *
 * @throws Refusal for a depth, spacing or insulation that is not tabulated
 *
 * Source: ASHRAE 90.1 Appendix A, cavity-insulation correction factors; the equation seen in a state energy code.
 * Valid for: studs of 0.043 in. to 0.054 in. steel, clear wall. Known limit: another published method (two zones,
 * thicker steel, more framing) gives U 0.183 where this one gives 0.109; always say which was used.
 */
export function steelFrameU(rows: readonly SteelCavity[], wall: SteelWall): number {
  const series_r = inRange(wall.series_r, 'series_r', 0, 1000, 'h·ft²·°F/Btu');
  return 1 / (series_r + steelCavity(rows, wall).effective_r);
}

/**
 * The table row for a steel-framed cavity.
 *
 * @throws Refusal naming what is tabulated; nothing is interpolated or extrapolated
 */
export function steelCavity(
  rows: readonly SteelCavity[],
  { depth_in, spacing_in, insulation_r }: Omit<SteelWall, 'series_r'>,
): SteelCavity {
  const ofDepth = rows.filter((row) => row.depth_in === depth_in);
  if (ofDepth.length === 0) {
    throw new Refusal({
      field: 'cavity.depth_in',
      value: String(depth_in),
      accepted: `Steel framing is tabulated for cavities ${list(rows.map((r) => r.depth_in))} in. deep; other depths need a two-dimensional calculation.`,
    });
  }
  const ofSpacing = ofDepth.filter((row) => row.spacing_in === spacing_in);
  if (ofSpacing.length === 0) {
    throw new Refusal({
      field: 'cavity.spacing_in',
      value: String(spacing_in),
      accepted: `Steel framing ${depth_in} in. deep is tabulated at ${list(ofDepth.map((r) => r.spacing_in))} in. on center.`,
    });
  }
  const row = ofSpacing.find((candidate) => candidate.insulation_r === insulation_r);
  if (row) return row;
  throw new Refusal({
    field: 'cavity.insulation_r',
    value: String(insulation_r),
    accepted: `Steel framing ${depth_in} in. deep at ${spacing_in} in. is tabulated for cavity insulation of R-${list(ofSpacing.map((r) => r.insulation_r))}.`,
  });
}

function list(values: readonly number[]): string {
  const sorted = [...new Set(values)].sort((a, b) => a - b);
  const last = sorted.pop();
  return sorted.length > 0 ? `${sorted.join(', ')} or ${last}` : `${last}`;
}
