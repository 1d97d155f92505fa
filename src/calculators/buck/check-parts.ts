import type { BuckScrew } from './buck-types.ts';
import type { BuckMember, WoodTable } from './wood-table.ts';

/** The pieces of an option that a strength check needs, looked up. */
export type MemberAndScrew = {
  readonly member: BuckMember;
  readonly gravity: number;
  readonly screw: BuckScrew;
  /** Spacing counted: as given, but not closer than the minimum. */
  readonly spacing_in: number;
};

/** Least screw length, in.: through member and gap, then 6 diameters and at least the table's penetration. */
export function minimumScrewLength_in(
  through_in: number,
  gap_in: number,
  screw: BuckScrew,
  table: WoodTable,
): number {
  return through_in + gap_in + Math.max(6 * screw.diameter_in, table.screws.min_penetration_in);
}

/** What is wrong with a screw that is too short; null when it is long enough. */
export function lengthShortfall(screw: BuckScrew, minimum_in: number): string | null {
  if (screw.length_in >= minimum_in - 1e-9) return null;
  return `A ${screw.length_in} in. screw is too short: use at least ${Number(minimum_in.toFixed(2))} in.`;
}

export function percent(use: number): string {
  return `${Math.round(use * 100)} %`;
}
